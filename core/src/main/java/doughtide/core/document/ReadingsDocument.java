package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.document.DocumentReader.Entry;
import doughtide.core.document.DocumentReader.Line;
import doughtide.core.document.DocumentReader.Use;
import doughtide.core.dough.DoughFormula;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.learning.Bake;
import doughtide.core.learning.LoafResult;
import doughtide.core.learning.Reading;
import doughtide.core.loaf.ColdFit;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.RoomCooling;
import doughtide.core.thermal.TemperatureTrace;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * The readings of one dough, as a person types them or a logger writes them: lines {@code key:
 * value} about the dough, then a table with a heading. The keys of the dough are the options of the
 * command line without dashes. A line {@code feed: 1:5:5} makes the dough a starter that was fed
 * so, in parts of starter, flour and water; a line {@code occasion: …} with the same words in
 * several files says that these doughs share what differs from bake to bake, such as jars fed from
 * one starter in one evening. A column {@code core temp C} holds what a probe in the middle of the
 * loaf shows in the cold, a line {@code into cold: 21:30} when the loaf went there, a line {@code
 * shaped: 20:50} when it was shaped. Memory does not grow with the table.
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
 * @param head what the head says beside the dough's formula
 */
public record ReadingsDocument(
    Bake bake,
    long given,
    Refused refused,
    Optional<ZonedDateTime> mixed,
    List<String> assumed,
    Head head) {

  private static final String FEED = "feed";
  private static final String OCCASION = "occasion";
  private static final String DOUGH_TEMP = "dough-temp";
  private static final String MIXED_AT = "mixed-at";
  private static final String ZONE = "zone";
  private static final String DOUGH_MASS = "dough-mass";
  private static final String START_HEIGHT = "start-height";
  private static final String RESULT = "result";

  /** When the loaf was shaped. */
  static final String SHAPED = "shaped";

  /** When the loaf went into the cold. */
  static final String INTO_COLD = "into-cold";

  private static final List<String> PLAN =
      List.of(
          "cold",
          "cold-measured",
          "cold-air",
          "cold-file",
          "hold",
          "bake-at",
          "proof-temp",
          "proof",
          "rest",
          "piece",
          "form",
          "shaping",
          "target",
          "starter-file",
          RoomText.MASS);

  private static final int MOST_NAMED = 50;

  /**
   * Copies the list.
   *
   * @param bake the dough and its readings
   * @param given how many readings there are
   * @param refused lines of the table that could not be used
   * @param mixed the moment of mixing, if a date is known
   * @param assumed keys of the dough that the head does not give
   * @param head what the head says beside the dough's formula
   */
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
    /**
     * Copies the list.
     *
     * @param count how many
     * @param first the first of them
     */
    public Refused {
      first = List.copyOf(first);
    }
  }

  /**
   * What a head says beside the formula of the dough.
   *
   * @param planned the dough's temperature as it was expected after mixing, before any reading of
   *     it; empty if the head does not tell it
   * @param startMm height of the sample at the start
   * @param dated whether it tells the date of mixing
   * @param lastHours hours since mixing of the last line of the table; negative if there is none
   * @param plan how the loaf goes on, as typed, by keys that are names of options
   * @param result how the loaf came out, once it is known
   * @param shapedHours from mixing until the loaf was shaped, if the head tells it
   * @param core a probe in the middle of the loaf
   */
  public record Head(
      Optional<DoughTemperature> planned,
      OptionalDouble startMm,
      boolean dated,
      double lastHours,
      Map<String, String> plan,
      Optional<LoafResult> result,
      OptionalDouble shapedHours,
      @Internal Core core) {
    /**
     * Copies the map.
     *
     * @param planned the dough's temperature as it was expected after mixing, before any reading of
     *     it
     * @param startMm height of the sample at the start
     * @param dated whether it tells the date of mixing
     * @param lastHours hours since mixing of the last line of the table; negative if there is none
     * @param plan how the loaf goes on, as typed, by keys that are names of options
     * @param result how the loaf came out, once it is known
     * @param shapedHours from mixing until the loaf was shaped, if the head tells it
     * @param core a probe in the middle of the loaf
     */
    public Head {
      plan = Collections.unmodifiableMap(new LinkedHashMap<>(plan));
    }
  }

  /**
   * A probe in the middle of the loaf.
   *
   * @param intoColdHours from mixing until the loaf went into the cold, if the head tells it
   * @param readings its temperatures, hours since mixing
   * @hidden
   */
  @Internal
  public record Core(OptionalDouble intoColdHours, List<Reading> readings) {
    private static final int MOST_AS_THEY_ARE = 48;
    private static final double SOONEST_HOURS = 0.1;

    /**
     * Copies the list.
     *
     * @param intoColdHours from mixing until the loaf went into the cold, if the head tells it
     * @param readings its temperatures, hours since mixing
     */
    public Core {
      readings = List.copyOf(readings);
    }

    /**
     * {@return the readings, as readings of the cold; of more than 48 the first of each hour}
     *
     * @param inColdHours from mixing until the loaf went into the cold
     * @throws InputException if none was read in the cold
     */
    public List<ColdFit.Reading> since(double inColdHours) {
      Set<Long> hours = new HashSet<>();
      boolean few = readings.size() <= MOST_AS_THEY_ARE;
      List<ColdFit.Reading> found =
          readings.stream()
              .filter(each -> each.hours() - inColdHours >= SOONEST_HOURS)
              .filter(each -> few || hours.add((long) each.hours()))
              .map(each -> reading(each, inColdHours))
              .toList();
      if (found.isEmpty()) {
        throw new InputException(
            "core-readings.before-cold",
            "no reading of the core lies after the loaf went into the cold: add a line such as"
                + " 'into cold: 21:30' at the top");
      }
      return found;
    }

    private static ColdFit.Reading reading(Reading core, double inColdHours) {
      return new ColdFit.Reading(core.hours() - inColdHours, core.celsius().orElseThrow());
    }
  }

  /**
   * What readings do not say of themselves.
   *
   * @param name of the bake, as printed
   * @param zone the place whose clock is meant where the head names none
   * @param catalogue what can be named
   * @param records finds the record of a flour by the name of its file
   * @param now of a dough in hand: its table may be empty, and a clock time of mixing without a
   *     date is the last one before
   */
  public record Setting(
      String name,
      ZoneId zone,
      @Internal Catalogue catalogue,
      @Internal Function<String, FlourRecord> records,
      Optional<ZonedDateTime> now) {

    /**
     * Of a bake that is over.
     *
     * @param name of the bake where the text gives none
     * @param zone of clock times without one
     * @param catalogue flours and forms that names stand for
     * @param records finds the record of a flour by the name it has in the text
     * @hidden
     */
    @Internal
    public Setting(
        String name, ZoneId zone, Catalogue catalogue, Function<String, FlourRecord> records) {
      this(name, zone, catalogue, records, Optional.empty());
    }

    /**
     * {@return the same for a dough that is in hand at a moment}
     *
     * @param moment now, in the dough's own time zone
     */
    public Setting inHand(ZonedDateTime moment) {
      return new Setting(name, zone, catalogue, records, Optional.of(moment));
    }

    /**
     * {@return a setting, with the standard catalogue, in UTC, without records of flours}
     *
     * @param name of the bake where the text gives none
     */
    public static Setting of(String name) {
      return new Setting(
          name,
          ZoneOffset.UTC,
          Catalogue.standard(),
          file -> {
            throw new InputException(
                "flour.no-records", "no record of a flour can be read here: give the flour");
          });
    }
  }

  /**
   * Reads readings.
   *
   * @param lines the text, without line endings
   * @param setting what they do not say of themselves
   * @return the readings with what the text says of the dough
   * @throws InputException if the head or the heading cannot be used, or there is no reading; all
   *     that is wrong is told at once. Where the head is right, a line of the table that cannot be
   *     used is among {@link #refused()} instead
   */
  public static ReadingsDocument read(Iterator<String> lines, Setting setting) {
    return new TextReader(lines, setting).read();
  }

  /** {@return how the loaf goes on, by keys that are names of options} */
  public static List<String> plan() {
    return PLAN;
  }

  /** The keys that a head of readings may have. */
  static Map<String, Use> keys() {
    Map<String, Use> keys = new LinkedHashMap<>();
    keys.put("dough", Use.REMARK);
    keys.put("note", Use.REMARK);
    keys.put(FEED, Use.ONCE);
    keys.put(OCCASION, Use.ONCE);
    keys.put(DOUGH_TEMP, Use.ONCE);
    DoughText.keys().forEach(key -> keys.put(key, Use.ONCE));
    keys.put(MIXED_AT, Use.ONCE);
    keys.put(ZONE, Use.ONCE);
    keys.put(START_HEIGHT, Use.ONCE);
    keys.put(SHAPED, Use.ONCE);
    keys.put(INTO_COLD, Use.ONCE);
    RoomText.keys().forEach(key -> keys.put(key, Use.ONCE));
    PLAN.forEach(key -> keys.put(key, Use.ONCE));
    keys.put(RESULT, Use.ONCE);
    keys.put("crumb", Use.REMARK);
    keys.put("crust", Use.REMARK);
    return keys;
  }

  /** A room in which a dough lies from the last reading of its temperature on. */
  private record Room(Temperature around, RoomCooling cooling) {
    Bake after(Bake bake) {
      double last =
          bake.readings().stream()
              .filter(reading -> reading.celsius().isPresent())
              .mapToDouble(Reading::hours)
              .max()
              .orElse(0);
      return new Bake(
          bake.name(),
          bake.formula(),
          after(bake.temperature(), last),
          bake.readings(),
          bake.occasion());
    }

    DoughTemperature after(DoughTemperature dough, double hours) {
      return dough.then(
          hours,
          TemperatureTrace.steady(around),
          cooling.tauHours(),
          cooling.heatCapacityPerKgFlourJPerK());
    }
  }

  /** What is wrong with a head. */
  private static final class Problems {
    private final List<InputException> found;

    Problems(List<LineException> lines) {
      found = new ArrayList<>(lines);
    }

    /** What is read; nothing where that fails, which is kept. */
    <T> Optional<T> tried(Supplier<Optional<T>> reading) {
      try {
        return reading.get();
      } catch (InputException e) {
        found.add(e);
        return Optional.empty();
      }
    }

    /** Refuses a head that is wrong, with all that is wrong in it and in its table. */
    void refuse(List<LineException> table) {
      if (found.isEmpty()) {
        return;
      }
      found.addAll(table);
      if (found.size() == 1) {
        throw found.get(0);
      }
      String all =
          found.stream()
              .sorted(Comparator.comparingLong(Problems::line))
              .map(each -> String.valueOf(each.getMessage()))
              .collect(Collectors.joining("; "));
      throw new InputException("document.lines", all);
    }

    private static long line(InputException problem) {
      return problem instanceof LineException line ? line.line() : Long.MAX_VALUE;
    }
  }

  /** Reads one text. */
  private static final class TextReader {
    private final DocumentReader reader;
    private final Setting setting;
    private final ReadingGrid grid = new ReadingGrid();
    private final ReadingGrid core = new ReadingGrid();
    private final List<LineException> refused = new ArrayList<>();
    private long refusedCount;

    TextReader(Iterator<String> lines, Setting setting) {
      this.reader =
          new DocumentReader(lines, keys(), setting.catalogue().vocabulary()).collecting();
      this.setting = setting;
    }

    ReadingsDocument read() {
      Vocabulary vocabulary = setting.catalogue().vocabulary();
      Optional<Line> heading = reader.head(line -> ReadingsColumns.isHeading(line, vocabulary));
      Problems problems = new Problems(reader.problems());
      Optional<DoughFormula> described = formula(problems);
      Optional<Temperature> doughTemperature =
          problems.tried(() -> reader.value(DOUGH_TEMP, TextReader::doughTemperature));
      Optional<Room> room =
          described.isEmpty()
              ? Optional.empty()
              : problems.tried(() -> room(described.orElseThrow()));
      Optional<LoafResult> result = problems.tried(() -> reader.value(RESULT, TextReader::result));
      Optional<ReadingsClock> clock = problems.tried(() -> Optional.of(clock()));
      Optional<Double> startMm = problems.tried(this::startMm);
      Optional<Double> shaped = problems.tried(() -> hour(SHAPED));
      Optional<Double> intoCold = problems.tried(() -> hour(INTO_COLD));
      Optional<ReadingsColumns> columns =
          problems.tried(() -> Optional.of(columns(heading, vocabulary)));
      if (clock.isPresent() && columns.isPresent()) {
        readTable(columns.get(), clock.get(), optional(startMm));
      }
      problems.refuse(refused);
      return document(
          described.orElseThrow(),
          doughTemperature,
          room,
          result,
          clock.orElseThrow(),
          optional(startMm),
          optional(shaped),
          new Core(optional(intoCold), core.readings()));
    }

    /** Of a moment in the head, hours since mixing. */
    private Optional<Double> hour(String key) {
      return reader.value(key, text -> clock().hours(text));
    }

    private static OptionalDouble optional(Optional<Double> value) {
      return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
    }

    private static ReadingsColumns columns(Optional<Line> heading, Vocabulary vocabulary) {
      Line line =
          heading.orElseThrow(
              () ->
                  new InputException(
                      "readings.no-table", "there is no table: " + ReadingsColumns.LAYOUT));
      return DocumentReader.at(line.number(), () -> ReadingsColumns.of(line.text(), vocabulary));
    }

    private void readTable(ReadingsColumns columns, ReadingsClock clock, OptionalDouble startMm) {
      for (Optional<Line> line = reader.next(); line.isPresent(); line = reader.next()) {
        take(line.get(), columns, clock, startMm);
      }
    }

    private ReadingsDocument document(
        DoughFormula formula,
        Optional<Temperature> doughTemperature,
        Optional<Room> room,
        Optional<LoafResult> result,
        ReadingsClock clock,
        OptionalDouble startMm,
        OptionalDouble shaped,
        Core probe) {
      long count = grid.count() + core.count();
      if (count == 0 && refusedCount == 0 && setting.now().isEmpty()) {
        throw new InputException(
            "readings.empty", "there is no reading below the heading of the table");
      }
      Bake bake =
          Bake.measured(setting.name(), formula, doughTemperature, grid.readings())
              .of(reader.value(OCCASION, Vocabulary::plain).orElse(""));
      return new ReadingsDocument(
          room.map(around -> around.after(bake)).orElse(bake),
          grid.count(),
          new Refused(refusedCount, refused),
          clock.mixed(),
          ratio().isPresent() ? DoughText.assumedOfFeed(typed()) : DoughText.assumed(typed()),
          new Head(
              doughTemperature.map(start -> planned(start, room)),
              startMm,
              reader.value(MIXED_AT, ClockText::isDated).orElse(false),
              clock.lastHours(),
              plan(),
              result,
              shaped,
              probe));
    }

    private Optional<Quantities.FeedRatio> ratio() {
      return reader.value(FEED, text -> Quantities.feedRatio(DocumentReader.label(FEED), text));
    }

    private static DoughTemperature planned(Temperature start, Optional<Room> room) {
      DoughTemperature steady = DoughTemperature.steady(start);
      return room.map(around -> around.after(steady, 0)).orElse(steady);
    }

    private Optional<Room> room(DoughFormula formula) {
      Optional<Temperature> room =
          reader.value(
              RoomText.ROOM,
              text -> {
                String name = DocumentReader.label(RoomText.ROOM);
                Temperature around = Quantities.temperature(name, text);
                Quantities.named(name, text, () -> DoughTemperature.steady(around));
                return around;
              });
      Optional<String> alone =
          RoomText.keys().stream()
              .filter(key -> !key.equals(RoomText.MASS) && reader.entry(key).isPresent())
              .findFirst();
      if (room.isEmpty() && alone.isPresent()) {
        throw new InputException(
            "readings.no-room",
            "'" + DocumentReader.label(alone.get()) + "' says nothing without a line 'room: 19C'");
      }
      RoomCooling cooling = RoomText.cooling(typed(), setting.catalogue(), formula);
      return room.map(around -> new Room(around, cooling));
    }

    private Map<String, String> plan() {
      Map<String, String> plan = new LinkedHashMap<>();
      for (String key : PLAN) {
        reader.entry(key).ifPresent(entry -> plan.put(key, entry.value()));
      }
      return plan;
    }

    private static LoafResult result(String text) {
      String word = Vocabulary.plain(text);
      for (LoafResult result : LoafResult.values()) {
        if (Vocabulary.plain(result.name()).equals(word)) {
          return result;
        }
      }
      throw new InputException(
          "readings.result-unknown",
          Quantities.shown(DocumentReader.label(RESULT), text)
              + " is not known: use under, right, over");
    }

    /** Each value alone first, so that its line is named; then all together. */
    private Optional<DoughFormula> formula(Problems problems) {
      boolean right = true;
      for (String key : DoughText.keys()) {
        Optional<Entry> entry = reader.entry(key);
        right &=
            entry.isEmpty()
                || problems
                    .tried(() -> entry.map(each -> each.read(text -> alone(key, text))))
                    .isPresent();
      }
      return right ? problems.tried(() -> Optional.of(whole())) : Optional.empty();
    }

    private DoughFormula whole() {
      return ratio()
          .map(each -> DoughText.feed(each, typed(), setting.catalogue(), setting.records()))
          .orElseGet(() -> formula(typed()));
    }

    private DoughFormula alone(String key, String text) {
      return formula(only(key, DoughText.withUnit(key, text)));
    }

    private DoughFormula formula(TypedValues values) {
      return DoughText.formula(values, setting.catalogue(), setting.records());
    }

    private TypedValues typed() {
      return values(key -> reader.entry(key).map(entry -> DoughText.withUnit(key, entry.value())));
    }

    /** A value by itself; a starter in grams is read with the mass of the dough. */
    private TypedValues only(String key, String text) {
      return values(
          other ->
              other.equals(key)
                  ? Optional.of(text)
                  : typed().text(other).filter(mass -> other.equals(DOUGH_MASS)));
    }

    private static TypedValues values(Function<String, Optional<String>> texts) {
      return TypedValues.of(texts, DocumentReader::label);
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
      ReadingsClock clock =
          reader
              .value(
                  MIXED_AT,
                  text -> ReadingsClock.mixedAt(DocumentReader.label(MIXED_AT), text, zone))
              .orElseGet(() -> ReadingsClock.unknownStart(zone));
      return setting.now().map(clock::before).orElse(clock);
    }

    private Optional<Double> startMm() {
      return reader.value(
          START_HEIGHT, text -> Quantities.millimetres(DocumentReader.label(START_HEIGHT), text));
    }

    private void take(
        Line line, ReadingsColumns columns, ReadingsClock clock, OptionalDouble startMm) {
      try {
        ReadingsColumns.Told told = columns.reading(line.text(), clock, startMm);
        told.dough().ifPresent(grid::add);
        told.core().ifPresent(core::add);
      } catch (InputException e) {
        refusedCount++;
        if (refused.size() < MOST_NAMED) {
          refused.add(new LineException(line.number(), e));
        }
      }
    }
  }

  /**
   * {@return readings as text, which {@link #read} reads back: times since mixing, the flour by its
   * classes, the dough temperature after mixing as it was at hour 0}
   *
   * @param bake the dough and its readings
   * @param mixed the moment of mixing, if it is known
   */
  public static String text(Bake bake, Optional<ZonedDateTime> mixed) {
    DocumentText text = new DocumentText("readings");
    text.line("dough", bake.name());
    if (!bake.occasion().isEmpty()) {
      text.line(OCCASION, bake.occasion());
    }
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
