package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.session.Environment;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Nearest;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import doughtide.report.chart.ChartFormat;
import doughtide.report.page.PageFormat;
import doughtide.report.page.PaperSize;
import doughtide.report.words.Words;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How a handout is printed.
 *
 * @param kind what it is
 * @param out its file
 * @param format sheet and size of print
 * @param words language
 * @param date at the foot
 * @param chartFormat in which the charts are written beside it, if they are
 */
public record HandoutOptions(
    HandoutKind kind,
    OutputFile out,
    PageFormat format,
    Words words,
    LocalDate date,
    Optional<ChartFormat> chartFormat) {

  public static final String STUDENTS = "students";
  private static final String OUT = "out";
  private static final String PAPER = "paper";
  private static final String LARGE_PRINT = "large-print";
  private static final String CHARTS_AS = "charts-as";
  private static final String DATE = "date";

  /** In which form charts are written beside the page. */
  enum ChartsAs {
    PNG,
    SVG
  }

  public static List<OptionSpec> specs() {
    List<OptionSpec> specs = new ArrayList<>(WordsOptions.specs());
    specs.addAll(ownSpecs());
    return specs;
  }

  private static List<OptionSpec> ownSpecs() {
    return List.of(
        OptionSpec.value(OUT, "FILE", "sheet.pdf", "The file to write, ending in .pdf.").required(),
        OptionSpec.value(PAPER, "SIZE", "letter", "A4 or letter.").withDefault("A4"),
        OptionSpec.flag(LARGE_PRINT, "Text of 16 pt instead of 12 pt; may take two sides."),
        OptionSpec.flag(
            STUDENTS,
            "With comparison: the questions alone, and FILE-answers.pdf for the teacher. The"
                + " answers are left blank, to be written in."),
        OptionSpec.value(
            CHARTS_AS, "FORM", "svg", "Also writes each chart beside the page, as png or svg."),
        OptionSpec.value(DATE, "DATE", "2027-03-06", "The date at the foot of the page.")
            .withDefault("today"),
        OutputOptions.overwrite());
  }

  public static HandoutOptions read(Arguments arguments, Environment environment) {
    HandoutKind kind = kind(arguments.operands().get(0));
    OutputFile out = OutputOptions.file(OUT, arguments, environment).orElseThrow();
    if (!out.ending().equals("pdf")) {
      throw new InputException(
          "--out "
              + FileProblem.quoted(out.shown())
              + " must end in .pdf: write for example --out "
              + kind.typed()
              + ".pdf");
    }
    return new HandoutOptions(
        kind,
        out,
        pageFormat(arguments.text(PAPER), arguments.has(LARGE_PRINT)),
        WordsOptions.read(arguments),
        date(arguments, environment),
        arguments.choice(CHARTS_AS, ChartsAs.class).map(HandoutOptions::chartFormat));
  }

  private static HandoutKind kind(String typed) {
    String wanted = typed.strip().toLowerCase(java.util.Locale.ROOT).replaceAll("[\\s_]+", "-");
    List<String> words =
        java.util.Arrays.stream(HandoutKind.values()).map(HandoutKind::typed).toList();
    int index = words.indexOf(wanted);
    if (index < 0) {
      String hint = Nearest.to(wanted, words).map(n -> "did you mean " + n + "? ").orElse("");
      throw new InputException(
          "there is no handout '"
              + Shorten.to(typed, 40)
              + "': "
              + hint
              + "The kinds are "
              + String.join(", ", words));
    }
    return HandoutKind.values()[index];
  }

  /** An upright sheet, A4 unless another is named. */
  static PageFormat pageFormat(Optional<String> paper, boolean large) {
    return new PageFormat(
        paper.map(PaperSize::of).orElse(PaperSize.A4),
        PageFormat.Orientation.UPRIGHT,
        large ? PageFormat.TextSize.LARGE : PageFormat.TextSize.STANDARD);
  }

  private static ChartFormat chartFormat(ChartsAs form) {
    return form == ChartsAs.PNG ? ChartFormat.PNG : ChartFormat.SVG;
  }

  private static LocalDate date(Arguments arguments, Environment environment) {
    return arguments
        .text(DATE)
        .map(HandoutOptions::date)
        .orElseGet(() -> environment.now().atZone(environment.zone()).toLocalDate());
  }

  private static LocalDate date(String text) {
    try {
      LocalDate date = LocalDate.parse(Quantities.clean(text));
      if (date.getYear() >= 1900 && date.getYear() <= 2200) {
        return date;
      }
    } catch (DateTimeException e) {
      throw notADate(text);
    }
    throw notADate(text);
  }

  private static InputException notADate(String text) {
    return new InputException(
        Quantities.shown("--" + DATE, text)
            + " is no date from 1900 to 2200: write for example --date 2027-03-06");
  }

  /** The file of a companion, for example {@code sheet-answers.pdf} beside {@code sheet.pdf}. */
  public String beside(String suffix, String ending) {
    String shown = out.shown();
    return shown.substring(0, shown.length() - ".pdf".length()) + "-" + suffix + "." + ending;
  }
}
