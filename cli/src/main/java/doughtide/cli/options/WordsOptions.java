package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import doughtide.report.words.Words.ClockStyle;
import doughtide.report.words.Words.Degrees;
import java.util.List;

/** The options that say in which words pages and charts are written. */
public final class WordsOptions {

  private static final String LANGUAGE = "language";
  private static final String DEGREES = "degrees";
  private static final String CLOCK_12H = "clock-12h";

  private WordsOptions() {}

  /** The options. */
  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
                LANGUAGE, "CODE", "de", "Language of pages and charts: en, de, fr, es or pt.")
            .withDefault("en"),
        OptionSpec.value(
                DEGREES,
                "SCALE",
                "fahrenheit",
                "The scale that comes first there: celsius or fahrenheit.")
            .withDefault("celsius"),
        OptionSpec.flag(CLOCK_12H, "Clock times there as 1:05 pm instead of 13:05."));
  }

  /** What was chosen. */
  public static Words read(Arguments arguments) {
    return Words.in(arguments.text(LANGUAGE).map(Language::of).orElse(Language.ENGLISH))
        .with(arguments.choice(DEGREES, Degrees.class).orElse(Degrees.CELSIUS))
        .with(arguments.has(CLOCK_12H) ? ClockStyle.HOURS_12 : ClockStyle.HOURS_24);
  }

  /** What was chosen for a chart or a page; refused where there is neither. */
  public static Words ofChart(Arguments arguments) {
    onlyWithPicture(arguments);
    return read(arguments);
  }

  /** Refuses these options where nothing is drawn. */
  public static void onlyWithPicture(Arguments arguments) {
    specs().forEach(option -> OutputOptions.onlyWithPicture(option.name(), arguments));
  }
}
