package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.TemperatureSteps;
import doughtide.cli.session.Environment;
import doughtide.core.day.question.BulkEnd;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Ingredients;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.RoomCooling;
import doughtide.core.thermal.Vessel;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is wanted of a dough, and what is asked.
 *
 * @param question what is not known
 * @param dough the dough, without what is not known
 * @param stated the dough's temperature as typed; empty where it is asked for
 * @param room where the dough drifts, as typed
 * @param bulkHours wanted; empty where the time of mixing is asked for
 * @param clock clock times counted from mixing, or from the hour of shaping where mixing is asked
 * @param end what ends bulk fermentation
 * @param amount flour or dough to weigh for
 * @param vessel what the dough drifts in
 * @param now the time now, at the place whose clock is meant
 */
public record WantedOptions(
    Question question,
    DoughOptions dough,
    Optional<TemperatureSteps> stated,
    Optional<TemperatureSteps> room,
    OptionalDouble bulkHours,
    Optional<ClockTimes> clock,
    BulkEnd end,
    Optional<Amount> amount,
    Vessel vessel,
    ZonedDateTime now) {

  private static final String BULK = "bulk";
  private static final String SHAPE_AT = "shape-at";
  private static final String MIXED_AT = "mixed-at";
  private static final String ZONE = "zone";
  private static final String RISE = "rise";
  private static final String ROOM = "room";
  private static final String DOUGH_MASS = "dough-mass";
  private static final String ALL_FLOUR = "all-flour";
  private static final String STARTER = "starter";
  private static final String PREFERMENTED = "prefermented";
  private static final Rise USUAL_RISE = Rise.ofPercent(50);
  private static final Mass USUAL_MASS = Mass.ofKilograms(1);
  private static final double LEAST_HOLD_HOURS = 0.5;

  /** What is not known. */
  public enum Question {
    /** The share of starter. */
    STARTER("starter"),
    /** The dough temperature after mixing. */
    DOUGH_TEMP("dough temp"),
    /** When to mix. */
    MIX_AT("mix at");

    private final String column;

    Question(String column) {
      this.column = column;
    }

    /** The heading of its column. */
    public String column() {
      return column;
    }
  }

  /**
   * What is weighed.
   *
   * @param mass of it
   * @param what whether all flour or the dough
   */
  public record Amount(Mass mass, Of what) {
    /** Which mass was given. */
    enum Of {
      ALL_FLOUR,
      DOUGH
    }

    public Ingredients ingredients(DoughFormula formula) {
      return what == Of.ALL_FLOUR ? formula.forFlour(mass) : formula.forDough(mass);
    }
  }

  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
            BULK, "TIME", "6h", "How long bulk fermentation shall take, 1 to 48 hours."),
        OptionSpec.value(
            SHAPE_AT,
            "TIME",
            "2027-03-06T19:00",
            "When you want to shape: with --mixed-at instead of --bulk; alone it asks when to"
                + " mix for the next such time."),
        OptionSpec.value(
                RISE, "RISE", "60%", "The rise of the sample jar that ends bulk fermentation.")
            .withDefault("50%, or what suits the loaf where --cold or --proof-temp describes one"),
        OptionSpec.value(
            ROOM,
            "TEMP",
            "19C",
            "The dough starts at its temperature and drifts in a room of this one, in a covered"
                + " --vessel; 19C,8h:16C changes it eight hours after mixing."),
        OptionSpec.value(DOUGH_MASS, "MASS", "1.7kg", "All the dough: says what to weigh."),
        OptionSpec.value(
            ALL_FLOUR,
            "MASS",
            "1000g",
            "Instead of --dough-mass: all flour, the starter's included."));
  }

  public static WantedOptions read(Arguments arguments, Environment environment) {
    arguments.exclusive(DOUGH_MASS, ALL_FLOUR);
    Question question = question(arguments);
    DoughOptions dough = DoughOptions.read(arguments, environment);
    Optional<ClockTimes> mixed = time(arguments, MIXED_AT, environment);
    Optional<ClockTimes> shape =
        question == Question.MIX_AT
            ? toCome(arguments, environment)
            : time(arguments, SHAPE_AT, environment);
    OptionalDouble bulk = bulk(arguments, question, mixed, shape);
    Optional<ClockTimes> clock = question == Question.MIX_AT ? shape : mixed;
    if (clock.isEmpty() && shape.isPresent()) {
      clock = shape.map(at -> ClockTimes.from(at.after(-bulk.orElseThrow())));
    }
    if (clock.isEmpty() && arguments.has(ZONE)) {
      throw new InputException(
          "--zone says nothing without a clock time: add for example --mixed-at 09:30");
    }
    BulkEnd end = end(arguments, clock, bulk, environment);
    Optional<TemperatureSteps> room = arguments.temperatureSteps(ROOM);
    checkTemperatures(dough, room);
    return new WantedOptions(
        question,
        dough,
        dough.temperature(),
        room,
        bulk,
        clock,
        end,
        amount(arguments),
        TemperatureOptions.vesselInRoom(arguments).orElse(Vessel.tub(Material.POLYPROPYLENE)),
        environment.now().atZone(zone(arguments, environment)));
  }

  /** What is left open of starter, temperature and time. */
  private static Question question(Arguments arguments) {
    boolean starter = arguments.has(STARTER) || arguments.has(PREFERMENTED);
    boolean temperature = arguments.has(DoughOptions.DOUGH_TEMP);
    boolean time = arguments.has(BULK) || (arguments.has(MIXED_AT) && arguments.has(SHAPE_AT));
    if (!time) {
      return withoutTime(arguments, temperature);
    }
    if (starter && temperature) {
      throw new InputException(
          "time, starter and --dough-temp are all given: leave out the one you ask for");
    }
    if (!starter && !temperature) {
      throw new InputException(
          "one thing can be asked for at a time: add --dough-temp 24C to ask for the starter, or"
              + " --starter 20% to ask for the temperature");
    }
    return starter ? Question.DOUGH_TEMP : Question.STARTER;
  }

  private static Question withoutTime(Arguments arguments, boolean temperature) {
    if (!arguments.has(SHAPE_AT)) {
      throw arguments.missing(BULK);
    }
    if (!temperature) {
      throw new InputException(
          "--shape-at alone asks when to mix, for which --dough-temp is missing: write for example"
              + " --dough-temp 24C, or add --bulk 6h");
    }
    return Question.MIX_AT;
  }

  private static ZoneId zone(Arguments arguments, Environment environment) {
    return arguments
        .text(ZONE)
        .map(name -> Quantities.zone("--" + ZONE, name))
        .orElseGet(environment::zone);
  }

  /** The hour of shaping for which the hour of mixing is asked: the next such time. */
  private static Optional<ClockTimes> toCome(Arguments arguments, Environment environment) {
    String text = arguments.text(SHAPE_AT).orElse("");
    if (ClockText.isDated(text)) {
      return time(arguments, SHAPE_AT, environment);
    }
    ClockTimes now = ClockTimes.from(environment.now().atZone(zone(arguments, environment)));
    double hours = now.hoursUntil("--" + SHAPE_AT, text, 0).get(0);
    return Optional.of(ClockTimes.from(now.after(hours)));
  }

  private static Optional<ClockTimes> time(
      Arguments arguments, String option, Environment environment) {
    ZoneId zone = zone(arguments, environment);
    return arguments
        .text(option)
        .map(text -> ClockTimes.parse("--" + option, text, zone, environment.now()));
  }

  private static OptionalDouble bulk(
      Arguments arguments,
      Question question,
      Optional<ClockTimes> mixed,
      Optional<ClockTimes> shape) {
    if (question == Question.MIX_AT) {
      return OptionalDouble.empty();
    }
    OptionalDouble said = arguments.hours(BULK);
    if (said.isPresent() && mixed.isPresent() && shape.isPresent()) {
      throw new InputException(
          "--bulk, --mixed-at and --shape-at say one thing twice: leave one of them out");
    }
    if (said.isPresent()) {
      return OptionalDouble.of(Checks.inRange("--" + BULK, said.getAsDouble(), 1, 48, "h"));
    }
    Duration between = Duration.between(mixed.orElseThrow().start(), shape.orElseThrow().start());
    double hours = between.toSeconds() / 3600.0;
    if (hours < 1 || hours > 48) {
      throw new InputException(
          "--shape-at must come 1 to 48 hours after --mixed-at: give the dates too, for example"
              + " --mixed-at 2027-03-06T13:00 --shape-at 2027-03-06T19:00");
    }
    return OptionalDouble.of(hours);
  }

  private static BulkEnd end(
      Arguments arguments,
      Optional<ClockTimes> clock,
      OptionalDouble bulk,
      Environment environment) {
    Optional<ProofOptions> proof = ProofOptions.read(arguments, clock);
    if (proof.isEmpty()) {
      Rise rise = arguments.rise(RISE).orElse(USUAL_RISE);
      Checks.inRange("--" + RISE, rise.percent(), 5, 400, "%");
      return BulkEnd.atRise(rise);
    }
    if (arguments.has(RISE)) {
      throw new InputException(
          "--rise and a loaf's proof both end bulk fermentation: leave out --rise, or --cold and"
              + " --proof-temp");
    }
    return BulkEnd.before(
        proof.get().ways().stream()
            .flatMap(way -> fitting(way, bulk).stream())
            .findFirst()
            .map(way -> ColdOptions.kept(arguments, environment, way))
            .orElseThrow(
                () ->
                    new InputException(
                        "--bake-at comes before the loaf can be shaped: bake later, or give the"
                            + " date too")));
  }

  /** The proof if its oven hour lies after shaping; where mixing is asked for, from shaping on. */
  private static Optional<Proof> fitting(Proof way, OptionalDouble bulk) {
    if (way.ovenHour().isEmpty()) {
      return Optional.of(way);
    }
    double before = bulk.orElse(0) + way.restHours() + way.roomHours();
    double hold = way.ovenHour().getAsDouble() - before;
    if (hold < LEAST_HOLD_HOURS) {
      return Optional.empty();
    }
    return Optional.of(bulk.isPresent() ? way : way.held(hold));
  }

  private static void checkTemperatures(DoughOptions dough, Optional<TemperatureSteps> room) {
    dough.temperature().ifPresent(steps -> steps.dough("--" + DoughOptions.DOUGH_TEMP));
    room.ifPresent(steps -> steps.dough("--" + ROOM));
    boolean changes = dough.temperature().filter(steps -> steps.steps().size() > 1).isPresent();
    if (room.isPresent() && changes) {
      throw new InputException(
          "--dough-temp with --room is the dough's temperature at mixing only: write for example"
              + " --dough-temp 25C --room 19C");
    }
  }

  private static Optional<Amount> amount(Arguments arguments) {
    Optional<Amount> flour =
        arguments.mass(ALL_FLOUR).map(mass -> new Amount(mass, Amount.Of.ALL_FLOUR));
    Optional<Amount> amount =
        flour.or(() -> arguments.mass(DOUGH_MASS).map(m -> new Amount(m, Amount.Of.DOUGH)));
    String typed = "--" + (flour.isPresent() ? ALL_FLOUR : DOUGH_MASS);
    amount.ifPresent(each -> Checks.inRange(typed, each.mass().grams(), 10, 1e6, "g"));
    return amount;
  }

  /** The dough's temperature where it is known. */
  public DoughTemperature temperature() {
    TemperatureSteps steps = stated.orElseThrow();
    return room.isPresent() ? kept(steps.first()) : steps.dough("--" + DoughOptions.DOUGH_TEMP);
  }

  /** What becomes of a dough mixed at a temperature. */
  public DoughTemperature kept(Temperature start) {
    if (room.isEmpty()) {
      return DoughTemperature.steady(start);
    }
    RoomCooling cooling = RoomCooling.of(dough.formula(), doughMass(), vessel, Air.STILL_ROOM);
    return DoughTemperature.inRoom(
        start, room.get().trace(), cooling.tauHours(), cooling.heatCapacityPerKgFlourJPerK());
  }

  private Mass doughMass() {
    return amount
        .map(each -> Mass.ofGrams(each.ingredients(dough.formula()).doughGrams()))
        .orElse(USUAL_MASS);
  }
}
