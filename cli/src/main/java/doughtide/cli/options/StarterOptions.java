package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.file.StarterFile;
import doughtide.cli.session.Environment;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.learning.JarError;
import doughtide.core.learning.LearnedStarter;
import java.util.List;
import java.util.Optional;

/** The options that bring in what is known of a starter, and of the dough in hand. */
public final class StarterOptions {

  public static final String STARTER_FILE = "starter-file";
  public static final String READINGS = "readings";
  private static final String MEMBERS = "members";

  private StarterOptions() {}

  public static List<OptionSpec> specs() {
    return List.of(
        file(),
        OptionSpec.value(
            READINGS,
            "FILE",
            "today.csv",
            "The readings of the dough in hand: a file as for doughtide learn, which describes the"
                + " dough itself, so leave the options of the dough out."),
        ReadingsFile.skipOption());
  }

  /** How many doughs a forecast is made from. */
  public static OptionSpec members() {
    return OptionSpec.value(
            MEMBERS, "COUNT", "256", "How many doughs the window is made from, 8 to 65536.")
        .withDefault("512");
  }

  /** The learned starter alone, for commands that take no readings. */
  public static OptionSpec file() {
    return OptionSpec.value(
        STARTER_FILE,
        "FILE",
        "starter.txt",
        "What doughtide learn kept of your starter: the window becomes yours, and narrower.");
  }

  /** The starter, if a file was given. */
  public static Optional<LearnedStarter> starter(Arguments arguments, Environment environment) {
    return arguments
        .text(STARTER_FILE)
        .map(name -> StarterFile.content("--" + STARTER_FILE, name, environment))
        .map(
            content -> {
              content.notice().ifPresent(arguments::note);
              return content.starter();
            });
  }

  /** A forecaster that believes what was learned, or the standard one; it keeps its curves. */
  public static RiseForecaster forecaster(Arguments arguments, Environment environment) {
    return believing(arguments, environment).keepingCurves();
  }

  /** The same, which keeps a summary of each run alone. */
  public static RiseForecaster believing(Arguments arguments, Environment environment) {
    RiseForecaster standard = environment.forecaster();
    RiseForecaster learned =
        starter(arguments, environment)
            .map(LearnedStarter::posterior)
            .map(belief -> standard.with(environment.catalogue().parameters(belief)).with(belief))
            .orElse(standard);
    return arguments.offers(MEMBERS)
        ? arguments.count(MEMBERS, 8, 65_536).map(learned::withMembers).orElse(learned)
        : learned;
  }

  /** How the sample jar misreads: as learned, or as nobody knows. */
  public static JarError jar(Arguments arguments, Environment environment) {
    return starter(arguments, environment).map(LearnedStarter::jar).orElseGet(JarError::standard);
  }
}
