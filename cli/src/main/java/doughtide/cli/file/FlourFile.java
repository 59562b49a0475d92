package doughtide.cli.file;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.FlourMix;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.InputLines.Line;
import doughtide.cli.session.Environment;
import doughtide.cli.text.OneLine;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.flourtrial.FlourRecord.MixPart;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.flourtrial.TrialFile;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * The record of one flour as a plain text file: one {@code key: value} a line, one line for each
 * graded bowl; lines that begin with # are remarks.
 *
 * <pre>{@code
 * name: Harrow strong white
 * flour: strong white:100%
 * protein: 12.4%
 * hydration: 71%
 * bowl: 6 March; Ann; 72%; thin window
 * }</pre>
 */
public final class FlourFile {

  public static final String OPTION = "flour-file";

  private static final String TITLE = "# doughtide flour record";
  private static final int MOST_LINES = 6000;

  /** What a line may begin with. A new key is one line here. */
  private enum Key {
    NAME,
    LOT,
    DATE,
    FLOUR,
    PROTEIN,
    MOISTURE,
    ASH,
    HYDRATION,
    BOWL;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    static String words() {
      return String.join(", ", Arrays.stream(values()).map(Key::word).toList());
    }
  }

  private record Entry(Line line, String value) {}

  private final InputLines lines;
  private final Map<Key, Entry> entries = new LinkedHashMap<>();
  private final List<GradedBowl> bowls = new ArrayList<>();

  private FlourFile(InputLines lines) {
    this.lines = lines;
  }

  /** The option with which other commands take a record. */
  public static OptionSpec option() {
    return option("Instead of --flour: the");
  }

  /** The option of a command that asks for no flour, only for the water it takes. */
  public static OptionSpec optionForHydration() {
    return option("Takes name and hydration from the");
  }

  private static OptionSpec option(String lead) {
    return OptionSpec.value(
        OPTION,
        "FILE",
        "harrow.txt",
        lead + " record of a flour that doughtide flour save has written.");
  }

  /** The record that was named, if one was. */
  public static Optional<FlourRecord> read(Arguments arguments, Environment environment) {
    return arguments.text(OPTION).map(name -> read("--" + OPTION, name, environment));
  }

  /**
   * Reads a record.
   *
   * @param option what the file was named with, for messages
   * @param name the file
   * @throws InputException with file and line if a line cannot be used
   */
  public static FlourRecord read(String option, String name, Environment environment) {
    try (InputLines lines = InputLines.open(option, name, environment)) {
      FlourFile file = new FlourFile(lines);
      Optional<Line> line = lines.next();
      while (line.isPresent()) {
        file.take(line.get());
        line = lines.next();
      }
      return file.record(name);
    }
  }

  private void take(Line line) {
    String text = line.text().strip();
    if (text.isEmpty() || text.startsWith("#")) {
      return;
    }
    if (line.number() > MOST_LINES) {
      throw lines.problem(line, "a record has at most " + MOST_LINES + " lines: is it this file?");
    }
    int colon = text.indexOf(':');
    String word = colon < 0 ? text : text.substring(0, colon).strip();
    Key key = key(line, word);
    String value = colon < 0 ? "" : text.substring(colon + 1).strip();
    if (value.isEmpty()) {
      throw lines.problem(line, "'" + key.word() + "' has no value: write " + key.word() + ": …");
    }
    if (key == Key.BOWL) {
      bowls.add(at(line, () -> TrialFile.parse(List.of(value)).get(0)));
    } else if (entries.put(key, new Entry(line, value)) != null) {
      throw lines.problem(line, "'" + key.word() + "' stands here a second time: remove one");
    }
  }

  private Key key(Line line, String word) {
    return Arrays.stream(Key.values())
        .filter(each -> each.word().equals(word.toLowerCase(Locale.ROOT)))
        .findFirst()
        .orElseThrow(
            () ->
                lines.problem(
                    line,
                    "'"
                        + Shorten.to(word, 40)
                        + "' is not known: begin the line with one of "
                        + Key.words()
                        + " and a colon"));
  }

  private FlourRecord record(String name) {
    if (!entries.containsKey(Key.NAME) || !entries.containsKey(Key.FLOUR)) {
      throw new InputException(
          FileProblem.quoted(name)
              + " is no flour record: it needs a line 'name: …' and a line 'flour: white' (one of "
              + FlourClass.names()
              + ")");
    }
    OptionalDouble hydration = percent(Key.HYDRATION);
    try {
      return new FlourRecord(
          entries.get(Key.NAME).value(),
          Optional.ofNullable(entries.get(Key.LOT)).map(Entry::value),
          date(),
          value(Key.FLOUR, text -> mix("flour", text)).orElseThrow(),
          percent(Key.PROTEIN),
          percent(Key.MOISTURE),
          percent(Key.ASH),
          bowls,
          hydration);
    } catch (InputException e) {
      String message = String.valueOf(e.getMessage());
      String file = FileProblem.quoted(name);
      throw message.startsWith(file) ? e : e.inWords(file + ": " + message);
    }
  }

  private Optional<LocalDate> date() {
    return value(Key.DATE, text -> date("date", text));
  }

  /** A day as ISO 8601 writes it. */
  public static LocalDate date(String name, String text) {
    try {
      return LocalDate.parse(Quantities.clean(text));
    } catch (DateTimeException e) {
      throw new InputException(
          Quantities.shown(name, text) + " is not a date: write for example 2027-03-06");
    }
  }

  private OptionalDouble percent(Key key) {
    return value(key, text -> Quantities.share(key.word(), text).percent())
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }

  private <T> Optional<T> value(Key key, Function<String, T> reader) {
    return Optional.ofNullable(entries.get(key))
        .map(entry -> at(entry.line(), () -> reader.apply(entry.value())));
  }

  private <T> T at(Line line, java.util.function.Supplier<T> reader) {
    try {
      return reader.get();
    } catch (InputException e) {
      String message = String.valueOf(e.getMessage()).replaceFirst("^line 1: ", "");
      throw lines.problem(line, message);
    }
  }

  /** A flour as typed, as the classes it is made of. */
  public static List<MixPart> mix(String name, String text) {
    Flour known = FlourMix.parse(name, text);
    String clean = Quantities.clean(text);
    if (clean.indexOf(':') < 0) {
      return List.of(new MixPart(FlourClass.named(known.name()), 100));
    }
    return Arrays.stream(clean.split("(?<=%) ?[,;] ?"))
        .map(
            piece -> {
              int colon = piece.indexOf(':');
              return new MixPart(
                  FlourClass.named(piece.substring(0, colon)),
                  Quantities.share(name, piece.substring(colon + 1)).percent());
            })
        .toList();
  }

  /** The record as text, which {@link #read} reads back. */
  public static String text(FlourRecord record) {
    StringBuilder text = new StringBuilder(TITLE).append('\n');
    line(text, Key.NAME, record.name());
    record.lot().ifPresent(lot -> line(text, Key.LOT, lot));
    record.date().ifPresent(date -> line(text, Key.DATE, date.toString()));
    List<String> parts =
        record.mix().stream()
            .map(part -> part.flourClass().flour().name() + ":" + percent(part.sharePercent()))
            .toList();
    line(text, Key.FLOUR, String.join(",", parts));
    record.proteinPercent().ifPresent(value -> line(text, Key.PROTEIN, percent(value)));
    record.moisturePercent().ifPresent(value -> line(text, Key.MOISTURE, percent(value)));
    record.ashPercent().ifPresent(value -> line(text, Key.ASH, percent(value)));
    record.hydrationPercent().ifPresent(value -> line(text, Key.HYDRATION, percent(value)));
    for (GradedBowl bowl : record.bowls()) {
      line(text, Key.BOWL, bowl(bowl));
    }
    return text.toString();
  }

  private static void line(StringBuilder text, Key key, String value) {
    text.append(key.word()).append(": ").append(OneLine.of(value)).append('\n');
  }

  private static String percent(double value) {
    return Checks.plain(value) + "%";
  }

  private static String bowl(GradedBowl bowl) {
    return quoted(bowl.trial())
        + "; "
        + quoted(bowl.person())
        + "; "
        + percent(bowl.hydrationPercent())
        + "; "
        + bowl.grade().words();
  }

  /** A name that holds the separator is put in quotes. */
  private static String quoted(String name) {
    return name.indexOf(';') < 0 ? name : '"' + name + '"';
  }
}
