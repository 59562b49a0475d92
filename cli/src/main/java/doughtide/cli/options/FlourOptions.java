package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.DocumentFile;
import doughtide.cli.file.FlourFile;
import doughtide.cli.session.Environment;
import doughtide.core.document.BowlsDocument;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.flourtrial.Experience;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Share;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The options of the flour command, and the flour they describe. */
public final class FlourOptions {

  public static final String BOWL_FLOUR = "bowl-flour";
  public static final String DRIEST = "driest";
  public static final String WETTEST = "wettest";
  public static final String STEP = "step";
  public static final String SCALE = "scale";
  public static final String BOWL_REST = "bowl-rest";
  public static final String HYDRATION = "hydration";
  public static final String TRIAL = "trial";
  private static final String FLOUR = "flour";
  private static final String NAME = "flour-name";
  private static final String LOT = "lot";
  private static final String DATE = "date";
  private static final String PROTEIN = "protein";
  private static final String MOISTURE = "moisture";
  private static final String ASH = "ash";
  private static final String EXPERIENCE = "experience";
  private static final int LONGEST = 100;

  private FlourOptions() {}

  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(BOWL_FLOUR, "MASS", "50g", "plan: flour in each bowl, 5 g to 2 kg.")
            .withDefault("50g"),
        OptionSpec.value(DRIEST, "SHARE", "60%", "plan: water over flour of the driest bowl.")
            .withDefault("60%; 80% for rye"),
        OptionSpec.value(WETTEST, "SHARE", "80%", "plan: water over flour of the wettest bowl.")
            .withDefault("80%; 100% for rye"),
        OptionSpec.value(STEP, "SHARE", "4%", "plan: from one bowl to the next.").withDefault("4%"),
        OptionSpec.value(SCALE, "MASS", "0.1g", "plan: the smallest step your scale shows.")
            .withDefault("1g"),
        OptionSpec.value(BOWL_REST, "TIME", "30min", "plan: from mixing a bowl to judging it.")
            .withDefault("30min"),
        OptionSpec.value(
                FLOUR, "FLOUR", "white", "The flour: " + FlourClass.names() + ", or a mix.")
            .withDefault("white"),
        FlourFile.option(),
        OptionSpec.value(NAME, "TEXT", "Harrow white", "Name of the flour.")
            .withDefault("as --flour"),
        OptionSpec.value(LOT, "TEXT", "A12", "save: the lot printed on the bag."),
        OptionSpec.value(DATE, "DATE", "2027-03-06", "save: the day."),
        OptionSpec.value(PROTEIN, "SHARE", "12.4%", "Protein as the bag says.")
            .withDefault("usual for the flour"),
        OptionSpec.value(MOISTURE, "SHARE", "13%", "Water in the flour as sold.")
            .withDefault("14%"),
        OptionSpec.value(ASH, "SHARE", "0.6%", "Minerals of the flour.")
            .withDefault("usual for the flour"),
        OptionSpec.value(
                EXPERIENCE,
                "WORD",
                "beginner",
                "read and save: beginner, experienced or practised; how far below the limit to"
                    + " work.")
            .withDefault("beginner"),
        OptionSpec.value(TRIAL, "FILE", "trial.csv", "save: a file of grades to put in."),
        OptionSpec.value(
                HYDRATION, "SHARE", "70%", "save: the hydration chosen for this flour, 45 to 200%.")
            .withDefault("from the grades, by --experience"));
  }

  public static Experience experience(Arguments arguments) {
    return arguments.choice(EXPERIENCE, Experience.class).orElse(Experience.BEGINNER);
  }

  /** The flour described, without grades. */
  public static FlourRecord record(Arguments arguments, Environment environment) {
    arguments.exclusive(FLOUR, FlourFile.OPTION);
    FlourRecord base =
        FlourFile.read(arguments, environment)
            .orElseGet(
                () -> {
                  Flour flour = arguments.flour(FLOUR).orElse(FlourClass.WHITE.flour());
                  return new FlourRecord(
                      flour.name(),
                      Optional.empty(),
                      Optional.empty(),
                      flour,
                      OptionalDouble.empty(),
                      OptionalDouble.empty(),
                      OptionalDouble.empty(),
                      List.of(),
                      OptionalDouble.empty());
                });
    return new FlourRecord(
        word(arguments, NAME).orElse(base.name()),
        word(arguments, LOT).or(base::lot),
        arguments.text(DATE).map(text -> Quantities.date("--" + DATE, text)).or(base::date),
        base.classes(),
        percent(arguments, PROTEIN, base.proteinPercent()),
        percent(arguments, MOISTURE, base.moisturePercent()),
        percent(arguments, ASH, base.ashPercent()),
        base.bowls(),
        base.hydrationPercent());
  }

  private static Optional<String> word(Arguments arguments, String option) {
    Optional<String> text = arguments.text(option).map(Quantities::clean);
    text.ifPresent(
        value -> Checks.inRange("length of --" + option, value.length(), 1, LONGEST, "characters"));
    return text;
  }

  private static OptionalDouble percent(
      Arguments arguments, String option, OptionalDouble otherwise) {
    Optional<Share> given = arguments.share(option);
    return given.isPresent() ? OptionalDouble.of(given.get().percent()) : otherwise;
  }

  /** The grades in a file. */
  public static List<GradedBowl> grades(String option, String name, Environment environment) {
    return DocumentFile.read(
        option,
        name,
        environment,
        lines -> BowlsDocument.read(lines, environment.catalogue().vocabulary()));
  }

  /** Refuses options that say nothing here. */
  public static void refuse(Arguments arguments, String action, String... options) {
    Arrays.stream(options)
        .filter(arguments::given)
        .findFirst()
        .ifPresent(
            option -> {
              throw new InputException(
                  "--" + option + " says nothing with flour " + action + ": leave it out");
            });
  }
}
