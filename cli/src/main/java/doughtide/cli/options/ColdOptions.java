package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.DocumentFile;
import doughtide.cli.file.OutputFile;
import doughtide.cli.session.Environment;
import doughtide.core.document.ColdDocument;
import doughtide.core.document.ReadingsDocument;
import doughtide.core.document.Vocabulary;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.Cold;
import doughtide.core.loaf.ColdFit;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.ShellWord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The cold that a baker has, kept in a file and taught by a probe in the middle of one loaf. */
public final class ColdOptions {

  private static final String FILE = "cold-file";
  private static final String CORE = "core";
  private static final String SAVE = "save";
  private static final int MOST_READINGS = 48;
  private static final double DECIMALS = 1e4;

  private ColdOptions() {}

  /** For every command that has a cold. */
  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
            FILE,
            "FILE",
            "cold.txt",
            "With --cold: what a probe taught about this cold, kept by rise --save."));
  }

  /** For the command that learns from a probe without a file of readings. */
  public static OptionSpec core() {
    return OptionSpec.value(
        CORE,
        "READINGS",
        "3h:12C,7h:6C",
        "With --cold: a probe in the middle of such a loaf, hours since it went into the cold and"
            + " temperature; narrows the cold. A file of --readings has a column for it.");
  }

  /** For the command that keeps what a probe taught. */
  public static List<OptionSpec> keeping() {
    return List.of(
        OptionSpec.value(
            SAVE,
            "FILE",
            "cold.txt",
            "With --core, or readings of the core: keeps what the probe taught, for --cold-file."),
        KeepOptions.spec());
  }

  /** The cold that stands in the file, put into a proof. */
  public static Proof kept(Arguments arguments, Environment environment, Proof proof) {
    if (!arguments.has(FILE)) {
      return proof;
    }
    Cold cold = proof.coldPlace().orElseThrow(() -> alone(FILE));
    return proof.withCold(kept(arguments, environment, cold));
  }

  /** The cold that the options tell, with what the file knows of it. */
  public static Optional<Cold> read(Arguments arguments, Environment environment) {
    Optional<Cold> cold = ProofOptions.cold(arguments);
    if (cold.isEmpty() && arguments.has(FILE)) {
      throw alone(FILE);
    }
    return cold.map(place -> kept(arguments, environment, place));
  }

  private static Cold kept(Arguments arguments, Environment environment, Cold cold) {
    if (!arguments.has(FILE)) {
      return cold;
    }
    ColdDocument kept =
        DocumentFile.read(
            "--" + FILE,
            arguments.text(FILE).orElseThrow(),
            environment,
            lines -> ColdDocument.read(lines, Vocabulary.KEYS_ONLY));
    return cold.known(
        kept.airOffsetCelsius(),
        kept.airOffsetDeviationCelsius(),
        kept.filmLogFactor(),
        kept.filmLogDeviation());
  }

  private static InputException alone(String option) {
    return Arguments.alone(option, "cold", "4C --hold 12h");
  }

  /**
   * The proof with what a probe taught of its cold; the loaf is taken to have been shaped as the
   * answer before says.
   */
  public static Proof taught(Arguments arguments, RiseForecast bulk, Proof proof) {
    if (!arguments.has(CORE)) {
      refuseKeeping(arguments, "--core 3h:12C");
      return proof;
    }
    if (proof.coldPlace().isEmpty()) {
      throw alone(CORE);
    }
    String text = arguments.text(CORE).orElseThrow();
    List<ColdFit.Reading> readings = readings(text);
    return Quantities.named(
        "--" + CORE,
        text,
        () -> ColdFit.taught(bulk, proof, OptionalDouble.empty(), inCold -> readings));
  }

  /** The same by the column of a file of readings. */
  public static Proof taught(ReadingsDocument.Core core, RiseForecast bulk, Proof proof) {
    return core.readings().isEmpty()
        ? proof
        : ColdFit.taught(bulk, proof, core.intoColdHours(), core::since);
  }

  /** Refuses a probe, and to keep what it taught, where no loaf goes into the cold. */
  public static void refuseProbe(Arguments arguments) {
    if (arguments.has(CORE)) {
      throw alone(CORE);
    }
    refuseKeeping(arguments, "--cold 4C --hold 12h --core 3h:12C");
  }

  /** Refuses to keep what no probe taught. */
  private static void refuseKeeping(Arguments arguments, String probe) {
    boolean keeps = KeepOptions.asked(arguments);
    if (keeps || arguments.has(SAVE)) {
      throw new InputException(
          "--"
              + (keeps ? KeepOptions.NAME : SAVE)
              + " keeps what a probe taught: add for example "
              + probe);
    }
  }

  /** Keeps what a probe of a dough in hand taught, where that is asked for. */
  public static void keep(
      Arguments arguments,
      Environment environment,
      ReadingsDocument.Core core,
      Optional<Proof> proof) {
    if (core.readings().isEmpty()) {
      refuseKeeping(arguments, "a column 'core temp C' to the table of readings");
    }
    proof.ifPresent(each -> keep(arguments, environment, each));
  }

  private static List<ColdFit.Reading> readings(String text) {
    String name = "--" + CORE;
    List<ColdFit.Reading> readings = new ArrayList<>();
    for (String piece : Quantities.clean(text).split(" ?[,;] ?", MOST_READINGS)) {
      int colon = piece.indexOf(':');
      if (colon < 0) {
        throw new InputException(
            Quantities.shown(name, text)
                + ": "
                + ShellWord.of(piece)
                + " has no hour: write hours and temperature, for example 3h:12C,7h:6C");
      }
      double hours = Quantities.hours(name, piece.substring(0, colon));
      double celsius = Quantities.temperature(name, piece.substring(colon + 1)).celsius();
      readings.add(Quantities.named(name, piece, () -> new ColdFit.Reading(hours, celsius)));
    }
    return readings;
  }

  /** Keeps the cold of a proof where that is asked for. */
  public static void keep(Arguments arguments, Environment environment, Proof proof) {
    boolean keeps = KeepOptions.asked(arguments);
    Optional<OutputFile> named = OutputOptions.file(SAVE, arguments, environment);
    proof.coldPlace().ifPresent(cold -> write(arguments, environment, cold, named, keeps));
  }

  /**
   * Writes what is known of a cold.
   *
   * @param named the file asked for, if one is
   * @param keeps whether it is kept in the kitchen, too
   */
  public static void write(
      Arguments arguments,
      Environment environment,
      Cold cold,
      Optional<OutputFile> named,
      boolean keeps) {
    if (named.isEmpty() && !keeps) {
      return;
    }
    OutputFile file =
        named.orElseGet(() -> KeepOptions.besideKitchen(arguments, environment, "cold.txt"));
    file.write(
        new ColdDocument(
                rounded(cold.offsetCelsius()),
                rounded(cold.deviationCelsius()),
                rounded(cold.filmLogFactor()),
                rounded(cold.filmLogDeviation()))
            .text());
    if (keeps) {
      KeepOptions.keepFile(arguments, environment, FILE, file);
    }
  }

  private static double rounded(double number) {
    return Math.rint(number * DECIMALS) / DECIMALS;
  }
}
