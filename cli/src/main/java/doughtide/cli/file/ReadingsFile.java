package doughtide.cli.file;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.cli.text.OneLine;
import doughtide.core.document.LineException;
import doughtide.core.document.ReadingsDocument;
import doughtide.core.learning.Bake;
import doughtide.core.quantity.InputException;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A file of readings.
 *
 * @param document what it holds
 */
public record ReadingsFile(ReadingsDocument document) {

  /** The option that uses the rest of a file with bad lines. */
  public static final String SKIP_BAD_LINES = "skip-bad-lines";

  private static final Map<String, String> ASSUMED =
      Map.of(
          "starter", "starter 20 %",
          "hydration", "hydration 70 %",
          "flour", "white flour",
          "salt", "salt 2 %");

  /** What happens when a line cannot be used. */
  public enum BadLines {
    REFUSE,
    SKIP
  }

  public static OptionSpec skipOption() {
    return OptionSpec.flag(
        SKIP_BAD_LINES,
        "Uses the rest of a file of readings whose bad lines are named; without it such a file is"
            + " refused.");
  }

  public static BadLines badLines(Arguments arguments) {
    return arguments.has(SKIP_BAD_LINES) ? BadLines.SKIP : BadLines.REFUSE;
  }

  /**
   * Reads a file; every line that cannot be used is named on standard error.
   *
   * @param option what the name was given for, for messages
   * @param name as typed
   * @throws InputException if the file or its head cannot be used, or a line of the table cannot
   *     and none may be skipped
   */
  public static ReadingsFile read(String option, String name, BadLines badLines, Session session) {
    ReadingsDocument.Setting setting = setting(name, session.environment());
    ReadingsDocument document =
        DocumentFile.read(
            option, name, session.environment(), lines -> ReadingsDocument.read(lines, setting));
    report(name, document, badLines, session);
    return new ReadingsFile(document);
  }

  private static ReadingsDocument.Setting setting(String name, Environment environment) {
    String file = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    String title = file.replaceAll("(?i)\\.(csv|txt)$", "");
    return new ReadingsDocument.Setting(
        title.isBlank() ? file : title,
        environment.zone(),
        environment.catalogue(),
        flour -> FlourFile.read("flour file:", flour, environment));
  }

  private static void report(
      String name, ReadingsDocument document, BadLines badLines, Session session) {
    ReadingsDocument.Refused refused = document.refused();
    if (refused.count() == 0) {
      return;
    }
    for (LineException each : refused.first()) {
      session.err().println(OneLine.of(FileProblem.quoted(name) + " " + each.getMessage()));
    }
    long more = refused.count() - refused.first().size();
    if (more > 0) {
      session.err().println("… and " + more + " more lines");
    }
    if (badLines == BadLines.REFUSE) {
      throw new InputException(
          FileProblem.quoted(name)
              + ": "
              + refused.count()
              + " of "
              + (refused.count() + document.given())
              + " lines cannot be used (named above): correct them, or add --"
              + SKIP_BAD_LINES
              + " to use the rest");
    }
  }

  /** The dough and its readings. */
  public Bake bake() {
    return document.bake();
  }

  /** How many readings the file holds. */
  public long given() {
    return document.given();
  }

  /** How many lines were left out. */
  public long leftOut() {
    return document.refused().count();
  }

  /** How many lines were left out, in words; empty if none was. */
  public String leftOutWords() {
    long count = leftOut();
    return count == 0 ? "" : ", " + count + (count == 1 ? " line" : " lines") + " left out";
  }

  /** The moment of mixing, if a date is known. */
  public Optional<ClockTimes> clock() {
    return document.mixed().map(ClockTimes::from);
  }

  /** What the head does not say and was assumed, in words. */
  public Optional<String> assumed() {
    return document.assumed().isEmpty()
        ? Optional.empty()
        : Optional.of(
            document.assumed().stream()
                .map(key -> ASSUMED.getOrDefault(key, key))
                .collect(Collectors.joining(", ")));
  }
}
