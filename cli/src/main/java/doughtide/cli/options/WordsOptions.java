package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Speech;
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
    return specs(language("Language of pages and charts"));
  }

  /** The options of a command whose text is in the language of its reader, too. */
  public static List<OptionSpec> ofAnswerAndPage() {
    return specs(language("Language of the answer in text, and of the page"));
  }

  /** The language of a command that writes text alone. */
  public static OptionSpec ofAnswer() {
    return language("Language of the answer in text");
  }

  private static OptionSpec language(String of) {
    return OptionSpec.value(LANGUAGE, "CODE", "de", of + ": en, de, fr, es or pt.")
        .withDefault("en");
  }

  private static List<OptionSpec> specs(OptionSpec language) {
    return List.of(
        language,
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
    return Words.in(language(arguments))
        .with(arguments.choice(DEGREES, Degrees.class).orElse(Degrees.CELSIUS))
        .with(arguments.has(CLOCK_12H) ? ClockStyle.HOURS_12 : ClockStyle.HOURS_24);
  }

  private static Language language(Arguments arguments) {
    return arguments.text(LANGUAGE).map(Language::of).orElse(Language.ENGLISH);
  }

  /** How an answer is written; data are the same in every language. */
  public static Speech speech(Arguments arguments, OutputOptions.Format format) {
    boolean isText = format == OutputOptions.Format.TEXT;
    Language chosen = isText || arguments.given(LANGUAGE) ? language(arguments) : Language.ENGLISH;
    return isText ? new Speech(chosen) : Speech.ENGLISH;
  }

  /** What was chosen for a chart or a page; refused where there is neither. */
  public static Words ofChart(Arguments arguments) {
    onlyWithPicture(arguments);
    return read(arguments);
  }

  /** Refuses the scale and the clock of a page where there is none. */
  public static void scaleAndClockOnlyWithPicture(Arguments arguments) {
    OutputOptions.onlyWithPicture(DEGREES, arguments);
    OutputOptions.onlyWithPicture(CLOCK_12H, arguments);
  }

  /** Refuses these options where nothing is drawn. */
  public static void onlyWithPicture(Arguments arguments) {
    specs().forEach(option -> OutputOptions.onlyWithPicture(option.name(), arguments));
  }
}
