package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.DocumentFile;
import doughtide.cli.session.Environment;
import doughtide.core.document.StagesDocument;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Share;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** The options of a starter that is built in stages. */
public final class StageOptions {

  public static final String STAGE = "stage";
  public static final String STAGES = "stages";
  private static final String FLOUR = "flour";

  private StageOptions() {}

  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
                STAGE,
                "STAGE",
                "full sour, 1:2:2, rye, 30C, until ripe",
                "A stage of a starter built up in several, in their order: parts of what the stage"
                    + " before made, flour and water, or 1:5 with dough yield 200; temperature;"
                    + " hours or until ripe; perhaps a flour and a name.")
            .repeatable(),
        OptionSpec.value(
            STAGES,
            "FILE",
            "rye-sour.txt",
            "Instead of --stage: a file with a line stage: … for each, and the seed's starter"
                + " hydration, condition and flour."));
  }

  /** The build, if stages were given. */
  public static Optional<StagedBuild> read(Arguments arguments, Environment environment) {
    arguments.exclusive(STAGE, STAGES);
    if (arguments.has(STAGES)) {
      String name = arguments.text(STAGES).orElseThrow();
      return Optional.of(
          DocumentFile.read(
              "--" + STAGES,
              name,
              environment,
              lines -> StagesDocument.read(lines, environment.catalogue())));
    }
    return arguments.has(STAGE) ? Optional.of(build(arguments)) : Optional.empty();
  }

  private static StagedBuild build(Arguments arguments) {
    Flour usual = arguments.flour(FLOUR).orElse(FlourClass.WHITE.flour());
    List<BuildStage> stages =
        arguments.all(STAGE).stream()
            .flatMap(text -> Stream.of(text.split(";", -1)))
            .map(text -> StagesDocument.stage("--" + STAGE, text, usual, arguments.catalogue()))
            .toList();
    Starter seed =
        new Starter(
            arguments.share("starter-hydration").orElse(Share.ofPercent(100)),
            asked(arguments, "starter-flour", arguments::flour).orElse(stages.get(0).flour()),
            asked(arguments, "starter-condition", arguments::condition)
                .orElse(StarterCondition.RIPE));
    return new StagedBuild(seed, stages, arguments.altitude("altitude").orElse(Altitude.SEA_LEVEL));
  }

  /** Not every command asks for it. */
  private static <T> Optional<T> asked(
      Arguments arguments, String option, Function<String, Optional<T>> read) {
    return arguments.offers(option) ? read.apply(option) : Optional.empty();
  }
}
