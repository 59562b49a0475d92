package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Speech;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.session.Environment;
import doughtide.cli.text.OneLine;
import doughtide.core.quantity.InputException;
import doughtide.report.words.Words;
import java.io.PrintStream;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * The answer as one file for the telephone.
 *
 * @param file to write
 * @param words of its language
 */
public record PageOptions(OutputFile file, Words words) {

  public static final String PAGE = "page";

  /**
   * The option.
   *
   * @param example a name for its file
   */
  public static OptionSpec spec(String example) {
    return OptionSpec.value(
        PAGE,
        "FILE",
        example,
        "Also writes one page for the telephone, which works without a network and takes readings;"
            + " it shows clock times.");
  }

  /** The page asked for, its file checked before anything is computed. */
  public static Optional<PageOptions> read(Arguments arguments, Environment environment) {
    return OutputOptions.file(PAGE, arguments, environment)
        .map(file -> new PageOptions(withEnding(file), WordsOptions.read(arguments)));
  }

  private static OutputFile withEnding(OutputFile file) {
    if (!file.ending().equals("html")) {
      throw new InputException(
          "--page "
              + FileProblem.quoted(file.shown())
              + " must end in .html: write for example --page dough.html");
    }
    return file;
  }

  /** Writes the file. */
  public void write(Function<Words, String> html) {
    file.write(html.apply(words));
  }

  /** The last line of an answer in text: where the page is, and how to send it. */
  public void say(OutputOptions.Format format, PrintStream out) {
    say(format, Speech.ENGLISH, out);
  }

  /** The same in a language. */
  public void say(OutputOptions.Format format, Speech speech, PrintStream out) {
    if (format == OutputOptions.Format.TEXT) {
      out.println();
      out.println(Speech.plain(speech.say("text.page", Map.of("file", OneLine.of(file.shown())))));
    }
  }
}
