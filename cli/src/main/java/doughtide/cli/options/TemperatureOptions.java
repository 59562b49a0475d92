package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.TemperatureSteps;
import doughtide.cli.args.Words;
import doughtide.cli.file.DocumentFile;
import doughtide.cli.session.Environment;
import doughtide.cli.text.OneLine;
import doughtide.core.document.LoggerDocument;
import doughtide.core.document.RoomText;
import doughtide.core.document.StarterText;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.LoggedReadings;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.RoomCooling;
import doughtide.core.thermal.Vessel;
import java.util.List;
import java.util.Optional;

/**
 * Where the dough's temperature comes from: stated, read by a logger, or drifting in a room; and
 * the sample jar that drifts beside it.
 *
 * @param dough temperature of the dough
 * @param words the same in words
 * @param vessel what it stands in, in words, if it drifts in a room
 * @param jar the sample jar, if one was asked for
 * @param warnings what the readings give rise to
 */
public record TemperatureOptions(
    DoughTemperature dough,
    String words,
    Optional<String> vessel,
    Optional<Jar> jar,
    List<Warning> warnings) {

  public static final String TEMPS = "temps";
  private static final String ROOM = RoomText.ROOM;
  public static final String VESSEL = RoomText.VESSEL;
  public static final String VESSEL_MATERIAL = RoomText.MATERIAL;
  private static final String COVER = RoomText.COVER;
  public static final String DOUGH_MASS = RoomText.MASS;
  private static final String JAR = "jar";
  private static final String STARTER = "starter";

  /**
   * A sample jar beside the dough.
   *
   * @param mass dough in it
   * @param temperature of that dough
   */
  public record Jar(Mass mass, DoughTemperature temperature) {}

  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
            TEMPS,
            "FILE",
            "night.csv",
            "Instead of --dough-temp: a logger's readings of the dough, a CSV file with a column"
                + " time or hours and a column temperature with its unit."),
        OptionSpec.value(
            ROOM,
            "TEMP",
            "19C",
            "The dough starts at --dough-temp (or where --temps ends) and drifts in a room of this"
                + " temperature; 19C,8h:16C changes it eight hours after mixing."),
        OptionSpec.value(VESSEL, "WORD", "bowl", "With --room: bowl, tub or jar.")
            .withDefault("tub"),
        OptionSpec.value(
                VESSEL_MATERIAL,
                "WORD",
                "wood",
                "With --room: plastic, metal, wood, glass or stoneware.")
            .withDefault("plastic"),
        OptionSpec.value(COVER, "WORD", "open", "With --room: covered or open.")
            .withDefault("covered"),
        OptionSpec.value(
                DOUGH_MASS,
                "MASS",
                "1.7kg",
                "All the dough in the vessel, by which it cools or warms.")
            .withDefault("1kg"),
        OptionSpec.value(
            JAR,
            "MASS",
            "50g",
            "With --room: dough in a covered glass sample jar beside it; says what the jar reads"
                + " when the dough is at its point."));
  }

  /** The options about the vessel alone. */
  public static List<OptionSpec> vesselSpecs() {
    return specs().stream()
        .filter(option -> List.of(VESSEL, VESSEL_MATERIAL).contains(option.name()))
        .toList();
  }

  /** The options of a command that shows no sample jar. */
  public static List<OptionSpec> withoutJar() {
    return specs().stream().filter(option -> !option.name().equals(JAR)).toList();
  }

  private static Optional<Mass> jarMass(Arguments arguments) {
    return arguments.offers(JAR) ? arguments.mass(JAR) : Optional.empty();
  }

  /** All the dough in the vessel. */
  public static Mass doughMass(Arguments arguments) {
    return RoomText.mass(arguments);
  }

  public static TemperatureOptions read(
      Arguments arguments,
      DoughOptions dough,
      Optional<ClockTimes> clock,
      Environment environment) {
    boolean ofStarter = arguments.text(STARTER).filter(StarterText::isMass).isPresent();
    if (!arguments.has(ROOM) && !ofStarter) {
      refuseWithoutRoom(arguments, DOUGH_MASS);
    }
    return readWithMass(arguments, dough, clock, environment);
  }

  /** For a command that uses the mass of the dough where it does not drift in a room, too. */
  public static TemperatureOptions readWithMass(
      Arguments arguments,
      DoughOptions dough,
      Optional<ClockTimes> clock,
      Environment environment) {
    arguments.exclusive(DoughOptions.DOUGH_TEMP, TEMPS);
    refuseVesselWithoutRoom(arguments);
    if (!arguments.has(ROOM) && jarMass(arguments).isPresent()) {
      refuseWithoutRoom(arguments, JAR);
    }
    if (arguments.has(TEMPS)) {
      return logged(arguments, dough, clock, environment);
    }
    DoughTemperature stated = dough.doughTemperature(arguments);
    TemperatureSteps steps = dough.temperature().orElseThrow();
    if (!arguments.has(ROOM)) {
      return new TemperatureOptions(
          stated, steps.words(), Optional.empty(), Optional.empty(), List.of());
    }
    if (steps.steps().size() > 1) {
      throw new InputException(
          "--dough-temp with --room is the dough's temperature at mixing only: write for example"
              + " --dough-temp 25C --room 19C");
    }
    return drifting(arguments, dough.formula(), steps.first());
  }

  /** Refuses what is said of the vessel where no room is given. */
  public static void refuseVesselWithoutRoom(Arguments arguments) {
    for (String option : List.of(VESSEL, VESSEL_MATERIAL, COVER)) {
      refuseWithoutRoom(arguments, option);
    }
  }

  private static void refuseWithoutRoom(Arguments arguments, String option) {
    arguments.needs(option, ROOM, "19C");
  }

  private static TemperatureOptions drifting(
      Arguments arguments, DoughFormula formula, Temperature start) {
    TemperatureSteps room = arguments.temperatureSteps(ROOM).orElseThrow();
    room.dough("--" + ROOM);
    RoomCooling cooling = cooling(arguments, formula);
    Optional<Jar> jar =
        jarMass(arguments)
            .map(mass -> new Jar(mass, inRoom(start, room, jarCooling(formula, mass))));
    return new TemperatureOptions(
        inRoom(start, room, cooling),
        Words.temperature(start) + " at mixing, then drifting in a room of " + room.words(),
        Optional.of(vesselWords(arguments, cooling)),
        jar,
        List.of());
  }

  private static DoughTemperature inRoom(
      Temperature start, TemperatureSteps room, RoomCooling cooling) {
    return DoughTemperature.inRoom(
        start, room.trace(), cooling.tauHours(), cooling.heatCapacityPerKgFlourJPerK());
  }

  private static RoomCooling jarCooling(DoughFormula formula, Mass mass) {
    return Quantities.named(
        "--" + JAR,
        Words.grams(mass.grams()),
        () -> RoomCooling.of(formula, mass, Vessel.jar(Material.GLASS), Air.STILL_ROOM));
  }

  private static RoomCooling cooling(Arguments arguments, DoughFormula formula) {
    return RoomText.cooling(arguments, arguments.catalogue(), formula);
  }

  /** A covered vessel in a room, if one was named or its material was. */
  public static Optional<Vessel> vesselInRoom(Arguments arguments) {
    if (!arguments.has(ROOM)) {
      refuseWithoutRoom(arguments, VESSEL);
      refuseWithoutRoom(arguments, VESSEL_MATERIAL);
    }
    return vessel(arguments);
  }

  /** A covered vessel, if one was named or its material was. */
  public static Optional<Vessel> vessel(Arguments arguments) {
    boolean named = arguments.has(VESSEL) || arguments.has(VESSEL_MATERIAL);
    return named
        ? Optional.of(RoomText.covered(arguments, arguments.catalogue()))
        : Optional.empty();
  }

  private static String vesselWords(Arguments arguments, RoomCooling cooling) {
    Mass mass = doughMass(arguments);
    return RoomText.cover(arguments, arguments.catalogue())
        + " "
        + RoomText.material(arguments, arguments.catalogue())
        + " "
        + RoomText.form(arguments, arguments.catalogue()).key()
        + ", "
        + Words.grams(mass.grams())
        + " of dough"
        + (arguments.has(DOUGH_MASS) ? "" : " (assumed, say --dough-mass)")
        + ": half of the difference to the room is gone after "
        + Words.about(cooling.halfwayHours());
  }

  private static TemperatureOptions logged(
      Arguments arguments,
      DoughOptions dough,
      Optional<ClockTimes> clock,
      Environment environment) {
    if (jarMass(arguments).isPresent()) {
      throw new InputException(
          "--jar needs the dough in one room from mixing on: write --dough-temp 25C --room 19C"
              + " instead of --temps");
    }
    String name = arguments.text(TEMPS).orElseThrow();
    LoggerDocument content =
        DocumentFile.read(
            "--" + TEMPS,
            name,
            environment,
            lines ->
                LoggerDocument.read(
                    lines, clock.map(ClockTimes::start), environment.catalogue().vocabulary()));
    LoggedReadings readings = content.readings();
    DoughTemperature measured = DoughTemperature.following(readings.trace());
    String words =
        readings.count()
            + " readings of "
            + OneLine.of(Shorten.to(name, 40))
            + ", "
            + Words.temperature(Temperature.ofCelsius(readings.lowestCelsius()))
            + " to "
            + Words.temperature(Temperature.ofCelsius(readings.highestCelsius()))
            + ", the last at "
            + Words.duration(readings.lastHours());
    if (!arguments.has(ROOM)) {
      return new TemperatureOptions(
          measured,
          words + "; it holds from then on",
          Optional.empty(),
          Optional.empty(),
          content.warnings());
    }
    return loggedThenRoom(arguments, dough.formula(), measured, words, content);
  }

  private static TemperatureOptions loggedThenRoom(
      Arguments arguments,
      DoughFormula formula,
      DoughTemperature measured,
      String words,
      LoggerDocument content) {
    TemperatureSteps room = arguments.temperatureSteps(ROOM).orElseThrow();
    room.dough("--" + ROOM);
    if (room.steps().size() > 1 || content.readings().lastHours() < 0) {
      throw new InputException(
          "--room after --temps is one temperature from the last reading on, which must come after"
              + " mixing: write for example --room 19C");
    }
    RoomCooling cooling = cooling(arguments, formula);
    return new TemperatureOptions(
        measured.then(
            content.readings().lastHours(),
            room.trace(),
            cooling.tauHours(),
            cooling.heatCapacityPerKgFlourJPerK()),
        words + "; then drifting in a room of " + room.words(),
        Optional.of(vesselWords(arguments, cooling)),
        Optional.empty(),
        content.warnings());
  }
}
