package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.session.Environment;
import doughtide.cli.text.OneLine;
import doughtide.core.quantity.InputException;
import doughtide.report.handout.Handout;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.words.Words;
import java.io.PrintStream;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * The printed pages of a class's day.
 *
 * @param file to write
 * @param format sheet and size of print
 * @param words of the class
 */
public record PagesOptions(OutputFile file, PageFormat format, Words words) {

  public static final String PAGES = "pages";
  private static final String PAPER = "pages-paper";
  private static final String LARGE_PRINT = "large-print";

  /** The options. */
  public static OptionSpec[] specs() {
    return new OptionSpec[] {
      OptionSpec.value(
          PAGES,
          "FILE",
          "class-pages.pdf",
          "Also writes, ready to print, a page a student of the roster in her language and a"
              + " timetable a person in large print."),
      OptionSpec.value(PAPER, "SIZE", "letter", "The sheet of the pages: A4 or letter.")
          .withDefault("A4"),
      OptionSpec.flag(LARGE_PRINT, "Students' pages in 16 pt instead of 12 pt.")
    };
  }

  /** The pages asked for, their file checked before anything is computed. */
  public static Optional<PagesOptions> read(Arguments arguments, Environment environment) {
    if (!arguments.offers(PAGES)) {
      return Optional.empty();
    }
    arguments.needs(PAPER, PAGES, "class.pdf");
    arguments.needs(LARGE_PRINT, PAGES, "class.pdf");
    return OutputOptions.file(PAGES, arguments, environment)
        .map(
            file ->
                new PagesOptions(
                    withEnding(file),
                    HandoutOptions.pageFormat(arguments.text(PAPER), arguments.has(LARGE_PRINT)),
                    WordsOptions.read(arguments)));
  }

  private static OutputFile withEnding(OutputFile file) {
    if (!file.ending().equals("pdf")) {
      throw new InputException(
          "--pages "
              + FileProblem.quoted(file.shown())
              + " must end in .pdf: write for example --pages class.pdf");
    }
    return file;
  }

  /**
   * Writes the file.
   *
   * @param date at the foot
   * @return the last line of an answer in text: where the pages are, and how many
   */
  public String write(Handout handout, LocalDate date) {
    List<Page> sides = handout.pages(format, words, date);
    byte[] bytes = Page.together(sides);
    file.write(out -> out.write(bytes));
    return "Pages: "
        + OneLine.of(file.shown())
        + (sides.size() == 1 ? ", 1 side" : ", " + sides.size() + " sides");
  }

  /** Ends an answer in text with where the pages are. */
  public static void say(Optional<String> written, OutputOptions.Format format, PrintStream out) {
    if (format == OutputOptions.Format.TEXT) {
      written.ifPresent(line -> out.println("\n" + line));
    }
  }
}
