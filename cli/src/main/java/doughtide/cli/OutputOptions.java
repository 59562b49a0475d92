package doughtide.cli;

import doughtide.core.quantity.InputException;
import java.util.List;
import java.util.Optional;

/** The options that say in which form the answer comes and where to. */
final class OutputOptions {

  private static final String FORMAT = "format";
  private static final String CHART = "chart";
  private static final String PAPER = "paper";
  static final String OVERWRITE = "overwrite";
  private static final List<String> CHART_ENDINGS = List.of("pdf", "svg", "png");

  /** The form of the answer. */
  enum Format {
    TEXT,
    JSON,
    CSV
  }

  /** The sheet of a chart (ISO 216). */
  enum Paper {
    A4,
    A5
  }

  private OutputOptions() {}

  static OptionSpec format() {
    return OptionSpec.value(
            FORMAT, "FORM", "json", "text for people; json or csv for other programs.")
        .withDefault("text");
  }

  static OptionSpec chart() {
    return OptionSpec.value(
        CHART,
        "FILE",
        "rise.pdf",
        "Also draws the chart into a file ending in .pdf, .svg or .png.");
  }

  static OptionSpec paper() {
    return OptionSpec.value(PAPER, "SIZE", "A5", "The sheet of the chart: A4 or A5, landscape.")
        .withDefault("A4");
  }

  static OptionSpec overwrite() {
    return OptionSpec.flag(OVERWRITE, "Replaces a file that exists already.");
  }

  static Format format(Arguments arguments) {
    return arguments.choice(FORMAT, Format.class).orElse(Format.TEXT);
  }

  static Paper paper(Arguments arguments) {
    if (arguments.has(PAPER) && !arguments.has(CHART)) {
      throw new InputException(
          "--paper says nothing without --chart: add for example --chart rise.pdf");
    }
    return arguments.choice(PAPER, Paper.class).orElse(Paper.A4);
  }

  /** The file of the chart, checked before anything is computed. */
  static Optional<OutputFile> chart(Arguments arguments, Environment environment) {
    return file(CHART, arguments, environment).map(OutputOptions::withChartEnding);
  }

  /** The file an option names. */
  static Optional<OutputFile> file(String option, Arguments arguments, Environment environment) {
    OutputFile.Existing existing =
        arguments.has(OVERWRITE) ? OutputFile.Existing.REPLACE : OutputFile.Existing.KEEP;
    return arguments
        .text(option)
        .map(name -> OutputFile.of("--" + option, name, existing, environment));
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
