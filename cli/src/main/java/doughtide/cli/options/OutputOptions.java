package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.session.Environment;
import doughtide.cli.text.OneLine;
import doughtide.core.quantity.InputException;
import java.io.PrintStream;
import java.util.List;
import java.util.Optional;

/** The options that say in which form the answer comes and where to. */
public final class OutputOptions {

  private static final String FORMAT = "format";
  private static final String CHART = "chart";
  private static final String PAPER = "paper";
  public static final String OVERWRITE = "overwrite";
  private static final List<String> CHART_ENDINGS = List.of("pdf", "svg", "png");

  /** The form of the answer. */
  public enum Format {
    TEXT,
    JSON,
    CSV
  }

  /** The sheet of a chart (ISO 216). */
  public enum Paper {
    A4,
    A5
  }

  private OutputOptions() {}

  public static OptionSpec format() {
    return OptionSpec.value(
            FORMAT, "FORM", "json", "text for people; json or csv for other programs.")
        .withDefault("text");
  }

  /** For a command that makes no table. */
  public static OptionSpec formatWithoutCsv() {
    return OptionSpec.value(FORMAT, "FORM", "json", "text for people; json for other programs.")
        .withDefault("text");
  }

  /**
   * The refusal of csv by such a command.
   *
   * @param command its name
   */
  public static InputException noCsv(String command) {
    return new InputException(command + " has no csv form: use --format text or --format json");
  }

  /**
   * The option of a chart.
   *
   * @param example a name for its file
   */
  public static OptionSpec chart(String example) {
    return OptionSpec.value(
        CHART, "FILE", example, "Also draws the chart into a file ending in .pdf, .svg or .png.");
  }

  public static OptionSpec paper() {
    return OptionSpec.value(PAPER, "SIZE", "A5", "The sheet of the chart: A4 or A5, landscape.")
        .withDefault("A4");
  }

  public static OptionSpec overwrite() {
    return OptionSpec.flag(OVERWRITE, "Replaces a file that exists already.");
  }

  public static Format format(Arguments arguments) {
    return arguments.choice(FORMAT, Format.class).orElse(Format.TEXT);
  }

  public static Paper paper(Arguments arguments) {
    onlyWithChart(PAPER, arguments);
    return arguments.choice(PAPER, Paper.class).orElse(Paper.A4);
  }

  /** Refuses an option that shapes a chart where none is drawn. */
  public static void onlyWithChart(String option, Arguments arguments) {
    arguments.needs(option, CHART, "rise.pdf");
  }

  /** Refuses an option that shapes a chart or a page where there is neither. */
  public static void onlyWithPicture(String option, Arguments arguments) {
    boolean page = has(PageOptions.PAGE, arguments) || has(PagesOptions.PAGES, arguments);
    if (arguments.offers(CHART) && !page) {
      onlyWithChart(option, arguments);
    } else if (arguments.has(option) && !page) {
      throw Arguments.alone(option, PageOptions.PAGE, "dough.html");
    }
  }

  private static boolean has(String option, Arguments arguments) {
    return arguments.offers(option) && arguments.has(option);
  }

  /** The file of the chart, checked before anything is computed. */
  public static Optional<OutputFile> chart(Arguments arguments, Environment environment) {
    return file(CHART, arguments, environment).map(OutputOptions::withChartEnding);
  }

  /** The file an option names. */
  public static Optional<OutputFile> file(
      String option, Arguments arguments, Environment environment) {
    OutputFile.Existing existing =
        arguments.has(OVERWRITE) ? OutputFile.Existing.REPLACE : OutputFile.Existing.KEEP;
    return arguments
        .text(option)
        .map(name -> OutputFile.of("--" + option, name, existing, environment));
  }

  /** The last line of a page: where the chart is. */
  public static void sayChart(Optional<OutputFile> chart, PrintStream out) {
    chart.ifPresent(
        file -> {
          out.println();
          out.println("Chart: " + OneLine.of(file.shown()));
        });
  }

  private static OutputFile withChartEnding(OutputFile file) {
    if (!CHART_ENDINGS.contains(file.ending())) {
      throw new InputException(
          "--chart "
              + FileProblem.quoted(file.shown())
              + " must end in .pdf, .svg or .png: write for example --chart rise.pdf");
    }
    return file;
  }
}
