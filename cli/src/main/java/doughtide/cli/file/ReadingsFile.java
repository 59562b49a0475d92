package doughtide.cli.file;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.session.Session;
import doughtide.cli.text.OneLine;
import doughtide.core.document.CsvCells;
import doughtide.core.learning.Bake;
import doughtide.core.learning.Reading;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Shorten;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;

/**
 * A file of readings as a person types it or a logger writes it: lines {@code key: value} about the
 * dough, then a table with a heading.
 *
 * @param bake the dough and its readings
 * @param given how many readings the file holds
 * @param refused lines that could not be used
 * @param clock the moment of mixing, if a date is known
 * @param assumed what the head does not say and was assumed
 */
public record ReadingsFile(
    Bake bake, long given, Refused refused, Optional<ClockTimes> clock, Optional<String> assumed) {

  /** The option that uses the rest of a file with bad lines. */
  public static final String SKIP_BAD_LINES = "skip-bad-lines";

  /**
   * Lines that cannot be used.
   *
   * @param count how many
   * @param first the first of them, each with file, number and reason
   */
  public record Refused(long count, List<String> first) {
    public String words() {
      return count == 0 ? "" : ", " + count + (count == 1 ? " line" : " lines") + " left out";
    }
  }

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
    try (InputLines lines = InputLines.open(option, name, session.environment())) {
      ReadingsFile file = new Reader(name, lines, session).read();
      report(name, file, badLines, session);
      return file;
    }
  }

  private static void report(String name, ReadingsFile file, BadLines badLines, Session session) {
    Refused refused = file.refused();
    if (refused.count() == 0) {
      return;
    }
    refused.first().forEach(session.err()::println);
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
              + (refused.count() + file.given())
              + " lines cannot be used (named above): correct them, or add --"
              + SKIP_BAD_LINES
              + " to use the rest");
    }
  }

  /** Reads one file. */
  private static final class Reader {
    private static final int MOST_NAMED = 10;

    private final String name;
    private final InputLines lines;
    private final Session session;
    private final ReadingsHead head;
    private final ReadingGrid grid = new ReadingGrid();
    private final List<String> refused = new ArrayList<>();
    private long refusedCount;

    Reader(String name, InputLines lines, Session session) {
      this.name = name;
      this.lines = lines;
      this.session = session;
      this.head = new ReadingsHead(session.environment());
    }

    public ReadingsFile read() {
      InputLines.Line heading = readHead();
      char separator = ReadingsColumns.separator(heading.text());
      ReadingsColumns columns =
          at(heading, () -> ReadingsColumns.of(CsvCells.of(heading.text(), separator)));
      ReadingsClock clock = at(heading, () -> ReadingsClock.of(head, session.environment().zone()));
      OptionalDouble startMm = head.startHeightMm();
      Optional<InputLines.Line> next = lines.next();
      while (next.isPresent()) {
        readLine(next.get(), separator, columns, clock, startMm);
        next = lines.next();
      }
      if (grid.count() == 0 && refusedCount == 0) {
        throw new InputException(FileProblem.quoted(name) + " holds no reading below its heading");
      }
      return new ReadingsFile(
          bake(),
          grid.count(),
          new Refused(refusedCount, refused),
          clock.clockTimes(),
          head.assumed());
    }

    private Bake bake() {
      String file = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
      String title = file.replaceAll("(?i)\\.csv$", "");
      try {
        return Bake.measured(
            title.isBlank() ? file : title,
            head.formula(),
            head.doughTemperature(),
            grid.readings());
      } catch (InputException e) {
        throw e.inWords(FileProblem.quoted(name) + ": " + e.getMessage());
      }
    }

    private InputLines.Line readHead() {
      Optional<InputLines.Line> next = lines.next();
      while (next.isPresent()) {
        InputLines.Line line = next.get();
        if (ReadingsColumns.isHeading(line.text())) {
          return line;
        }
        if (!skipped(line.text())) {
          at(line, () -> addToHead(line.text()));
        }
        next = lines.next();
      }
      throw new InputException(
          FileProblem.quoted(name)
              + " has no table: its heading is a line such as 'time;rise %;dough temp C;pH;note'");
    }

    private boolean addToHead(String text) {
      String bare = text.strip().replaceFirst("^\"", "");
      if (!ReadingsHead.isHeadLine(bare)) {
        throw new InputException(
            "'"
                + Shorten.to(text, 40)
                + "' is neither 'key: value' nor the heading of the table (time;rise %;…)");
      }
      head.add(bare.equals(text.strip()) ? bare : bare.replace("\"", ""));
      return true;
    }

    private <T> T at(InputLines.Line line, Supplier<T> work) {
      try {
        return work.get();
      } catch (InputException e) {
        throw lines.problem(line, String.valueOf(e.getMessage()));
      }
    }

    /** An empty line, a line of empty cells, or a remark. */
    private static boolean skipped(String text) {
      String bare = text.strip();
      return bare.startsWith("#") || bare.chars().allMatch(c -> ";,\t ".indexOf(c) >= 0);
    }

    private void readLine(
        InputLines.Line line,
        char separator,
        ReadingsColumns columns,
        ReadingsClock clock,
        OptionalDouble startMm) {
      if (skipped(line.text())) {
        return;
      }
      try {
        grid.add(reading(CsvCells.of(line.text(), separator), columns, clock, startMm));
      } catch (InputException e) {
        refusedCount++;
        if (refused.size() < MOST_NAMED) {
          refused.add(
              OneLine.of(
                  String.valueOf(
                      lines.problem(line, String.valueOf(e.getMessage())).getMessage())));
        }
      }
    }

    private static Reading reading(
        List<String> cells, ReadingsColumns columns, ReadingsClock clock, OptionalDouble startMm) {
      for (int i = columns.size(); i < cells.size(); i++) {
        if (!cells.get(i).isBlank()) {
          throw new InputException(
              "the line has more cells than the heading: with commas between the cells, write"
                  + " decimals with a point");
        }
      }
      Optional<Rise> rise = columns.rise(cells, startMm);
      OptionalDouble celsius = columns.celsius(cells);
      OptionalDouble ph = columns.ph(cells);
      if (rise.isEmpty() && celsius.isEmpty() && ph.isEmpty()) {
        throw new InputException("the line tells neither rise nor temperature nor pH");
      }
      new Reading(0, rise, celsius, ph);
      return new Reading(
          clock.hours(columns.cell(cells, ReadingsColumns.Kind.TIME)), rise, celsius, ph);
    }
  }
}
