package doughtide.core.document;

import doughtide.core.document.DocumentReader.Line;
import doughtide.core.document.DocumentReader.Use;
import doughtide.core.dough.DoughFormula;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.learning.Bake;
import doughtide.core.learning.Reading;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * The readings of one dough, as a person types them or a logger writes them: lines {@code key:
 * value} about the dough, then a table with a heading. The keys of the dough are the options of the
 * command line without dashes. Memory does not grow with the table.
 *
 * <pre>{@code
 * String text = "starter: 20%\ndough temp: 25C\nmixed at: 09:30\ntime;rise %\n11:30;12";
 * ReadingsDocument readings =
 *     ReadingsDocument.read(text.lines().iterator(), ReadingsDocument.Setting.of("Saturday"));
 * double hours = readings.bake().lastHours(); // 2
 * }</pre>
 *
 * @param bake the dough and its readings
 * @param given how many readings there are
 * @param refused lines of the table that could not be used
 * @param mixed the moment of mixing, if a date is known
 * @param assumed keys of the dough that the head does not give
 */
public record ReadingsDocument(
    Bake bake, long given, Refused refused, Optional<ZonedDateTime> mixed, List<String> assumed) {

  private static final String DOUGH_TEMP = "dough-temp";
  private static final String MIXED_AT = "mixed-at";
  private static final String ZONE = "zone";
  private static final String START_HEIGHT = "start-height";
  private static final int MOST_NAMED = 10;

  /** Copies the list. */
  public ReadingsDocument {
    assumed = List.copyOf(assumed);
  }

  /**
   * Lines that cannot be used.
   *
   * @param count how many
   * @param first the first of them
   */
  public record Refused(long count, List<LineException> first) {
    /** Copies the list. */
    public Refused {
      first = List.copyOf(first);
    }
  }

  /**
   * What readings do not say of themselves.
   *
   * @param name of the bake, as printed
   * @param zone the place whose clock is meant where the head names none
   * @param catalogue what can be named
   * @param records finds the record of a flour by the name of its file
   */
  public record Setting(
      String name, ZoneId zone, Catalogue catalogue, Function<String, FlourRecord> records) {

    /** With the standard catalogue, in UTC, without records of flours. */
    public static Setting of(String name) {
      return new Setting(
          name,
          ZoneOffset.UTC,
          Catalogue.standard(),
          file -> {
            throw new InputException("no record of a flour can be read here: give the flour");
          });
    }
  }

  /**
   * Reads readings.
   *
   * @param lines the text, without line endings
   * @param setting what they do not say of themselves
   * @throws InputException if the head or the heading cannot be used, or there is no reading; a
   *     line of the table that cannot be used is among {@link #refused()} instead
   */
  public static ReadingsDocument read(Iterator<String> lines, Setting setting) {
    return new TextReader(lines, setting).read();
  }

  /** The keys that a head of readings may have. */
  private static Map<String, Use> keys() {
    Map<String, Use> keys = new LinkedHashMap<>();
    keys.put("dough", Use.REMARK);
    keys.put("note", Use.REMARK);
    keys.put(DOUGH_TEMP, Use.ONCE);
    DoughText.keys().forEach(key -> keys.put(key, Use.ONCE));
    keys.put(MIXED_AT, Use.ONCE);
    keys.put(ZONE, Use.ONCE);
    keys.put(START_HEIGHT, Use.ONCE);
    return keys;
  }

  /** Reads one text. */
  private static final class TextReader {
    private final DocumentReader reader;
    private final Setting setting;
    private final ReadingGrid grid = new ReadingGrid();
    private final List<LineException> refused = new ArrayList<>();
    private long refusedCount;

    TextReader(Iterator<String> lines, Setting setting) {
      this.reader = new DocumentReader(lines, keys(), setting.catalogue().vocabulary());
      this.setting = setting;
    }

    ReadingsDocument read() {
      Vocabulary vocabulary = setting.catalogue().vocabulary();
      Line heading =
          reader
              .head(line -> ReadingsColumns.isHeading(line, vocabulary))
              .orElseThrow(
                  () -> new InputException("there is no table: " + ReadingsColumns.LAYOUT));
      DoughFormula formula = formula();
      Optional<Temperature> doughTemperature =
          reader.value(DOUGH_TEMP, TextReader::doughTemperature);
      ReadingsColumns columns =
          DocumentReader.at(heading.number(), () -> ReadingsColumns.of(heading.text(), vocabulary));
      ReadingsClock clock = clock();
      OptionalDouble startMm = startMm();
      for (Optional<Line> line = reader.next(); line.isPresent(); line = reader.next()) {
        take(line.get(), columns, clock, startMm);
      }
      if (grid.count() == 0 && refusedCount == 0) {
        throw new InputException("there is no reading below the heading of the table");
      }
      return new ReadingsDocument(
          Bake.measured(setting.name(), formula, doughTemperature, grid.readings()),
          grid.count(),
          new Refused(refusedCount, refused),
          clock.mixed(),
          DoughText.assumed(typed()));
    }

    /** Each value alone first, so that its line is named; then all together. */
    private DoughFormula formula() {
      for (String key : DoughText.keys()) {
        reader
            .entry(key)
            .ifPresent(
                entry -> entry.read(text -> formula(only(key, DoughText.withUnit(key, text)))));
      }
      return formula(typed());
    }

    private DoughFormula formula(TypedValues values) {
      return DoughText.formula(values, setting.catalogue(), setting.records());
    }

    private TypedValues typed() {
      return values(key -> reader.entry(key).map(entry -> DoughText.withUnit(key, entry.value())));
    }

    private static TypedValues only(String key, String text) {
      return values(other -> other.equals(key) ? Optional.of(text) : Optional.empty());
    }

    private static TypedValues values(Function<String, Optional<String>> texts) {
      return new TypedValues() {
        @Override
        public Optional<String> text(String key) {
          return texts.apply(key);
        }

        @Override
        public String label(String key) {
          return DocumentReader.label(key);
        }
      };
    }

    private static Temperature doughTemperature(String text) {
      String name = DocumentReader.label(DOUGH_TEMP);
      Temperature given = Quantities.temperature(name, text);
      Quantities.named(name, text, () -> DoughTemperature.steady(given));
      return given;
    }

    private ReadingsClock clock() {
      ZoneId zone =
          reader
              .value(ZONE, text -> Quantities.zone(DocumentReader.label(ZONE), text))
              .orElse(setting.zone());
      return reader
          .value(
              MIXED_AT, text -> ReadingsClock.mixedAt(DocumentReader.label(MIXED_AT), text, zone))
          .orElseGet(() -> ReadingsClock.unknownStart(zone));
    }

    private OptionalDouble startMm() {
      Optional<Double> mm =
          reader.value(
              START_HEIGHT,
              text -> Quantities.millimetres(DocumentReader.label(START_HEIGHT), text));
      return mm.isPresent() ? OptionalDouble.of(mm.get()) : OptionalDouble.empty();
    }

    private void take(
        Line line, ReadingsColumns columns, ReadingsClock clock, OptionalDouble startMm) {
      try {
        grid.add(columns.reading(line.text(), clock, startMm));
      } catch (InputException e) {
        refusedCount++;
        if (refused.size() < MOST_NAMED) {
          refused.add(new LineException(line.number(), e));
        }
      }
    }
  }

  /**
   * Readings as text, which {@link #read} reads back: times since mixing, the flour by its classes,
   * the dough temperature after mixing as it was at hour 0.
   *
   * @param bake the dough and its readings
   * @param mixed the moment of mixing, if it is known
   */
  public static String text(Bake bake, Optional<ZonedDateTime> mixed) {
    DocumentText text = new DocumentText("readings");
    text.line("dough", bake.name());
    DoughText.values(bake.formula()).forEach(text::line);
    text.line(DOUGH_TEMP, Checks.plain(bake.temperature().startCelsius()) + "C");
    mixed.ifPresent(
        moment ->
            text.line(MIXED_AT, moment.toLocalDateTime().toString())
                .line(ZONE, moment.getZone().getId()));
    StringBuilder table = new StringBuilder("time;rise %;dough temp C;pH\n");
    bake.readings().forEach(reading -> table.append(line(reading)).append('\n'));
    return text.toString() + table;
  }

  private static String line(Reading reading) {
    return Checks.plain(reading.hours())
        + "h;"
        + reading.rise().map(Rise::percent).map(Checks::plain).orElse("")
        + ";"
        + cell(reading.celsius())
        + ";"
        + cell(reading.ph());
  }

  private static String cell(OptionalDouble value) {
    return value.isPresent() ? Checks.plain(value.getAsDouble()) : "";
  }
}
