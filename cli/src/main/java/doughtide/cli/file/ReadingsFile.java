package doughtide.cli.file;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Words;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.cli.text.OneLine;
import doughtide.core.document.LineException;
import doughtide.core.document.ReadingsDocument;
import doughtide.core.learning.Bake;
import doughtide.core.quantity.InputException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
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

  /** The option that uses the rest of a folder with bad files. */
  public static final String SKIP_BAD_FILES = "skip-bad-files";

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

  public static OptionSpec skipFilesOption() {
    return OptionSpec.flag(
        SKIP_BAD_FILES,
        "Uses the rest of a folder whose bad files are named, one line each; without it such a"
            + " folder is refused.");
  }

  /**
   * Reads several files to the end of the last; a bad one is named in one line on standard error,
   * with all that is wrong in it.
   *
   * @param names as typed
   * @throws InputException if a file cannot be used and none may be skipped, or none can be used
   */
  public static List<ReadingsFile> readAll(
      String option, List<String> names, Arguments arguments, Session session) {
    List<ReadingsFile> files = new ArrayList<>();
    for (String name : names) {
      try {
        files.add(readWhole(option, name, badLines(arguments), session));
      } catch (InputException e) {
        if (names.size() == 1) {
          throw e;
        }
        session.err().println(OneLine.of(String.valueOf(e.getMessage())));
      }
    }
    int bad = names.size() - files.size();
    if (bad > 0 && (files.isEmpty() || !arguments.has(SKIP_BAD_FILES))) {
      throw new InputException(
          bad
              + " of "
              + names.size()
              + " files cannot be used (named above): correct "
              + (bad == 1 ? "it" : "them")
              + (files.isEmpty() ? "" : ", or add --" + SKIP_BAD_FILES + " to use the others"));
    }
    return files;
  }

  /** A file whose bad lines, if they are refused, are told together. */
  private static ReadingsFile readWhole(
      String option, String name, BadLines badLines, Session session) {
    ReadingsDocument document =
        document(option, name, setting(name, session.environment()), session);
    ReadingsDocument.Refused refused = document.refused();
    if (refused.count() == 0 || badLines == BadLines.SKIP) {
      report(name, document, badLines, session);
      return new ReadingsFile(document);
    }
    long more = refused.count() - refused.first().size();
    throw new InputException(
        FileProblem.quoted(name)
            + ": "
            + byReason(refused.first())
            + (more > 0 ? "; and " + Words.counted(more, "more line") : ""));
  }

  /** Each reason once, behind the lines it is about. */
  private static String byReason(List<LineException> refused) {
    Map<String, List<String>> lines = new LinkedHashMap<>();
    for (LineException each : refused) {
      lines.computeIfAbsent(each.what(), what -> new ArrayList<>()).add(Long.toString(each.line()));
    }
    return lines.entrySet().stream()
        .map(
            each ->
                (each.getValue().size() == 1 ? "line " : "lines ")
                    + String.join(", ", each.getValue())
                    + ": "
                    + each.getKey())
        .collect(Collectors.joining("; "));
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
    return read(option, name, badLines, setting(name, session.environment()), session);
  }

  /** The same for a dough that is in hand now. */
  public static ReadingsFile inHand(
      String option, String name, BadLines badLines, Session session) {
    return read(option, name, badLines, settingInHand(name, session.environment()), session);
  }

  private static ReadingsFile read(
      String option,
      String name,
      BadLines badLines,
      ReadingsDocument.Setting setting,
      Session session) {
    ReadingsDocument document = document(option, name, setting, session);
    report(name, document, badLines, session);
    return new ReadingsFile(document);
  }

  private static ReadingsDocument document(
      String option, String name, ReadingsDocument.Setting setting, Session session) {
    return DocumentFile.read(
        option, name, session.environment(), lines -> ReadingsDocument.read(lines, setting));
  }

  /** What the readings of a dough in hand do not say of themselves. */
  public static ReadingsDocument.Setting settingInHand(String name, Environment environment) {
    return setting(name, environment).inHand(environment.now().atZone(environment.zone()));
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
      session.err().println("… and " + Words.counted(more, "more line"));
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
