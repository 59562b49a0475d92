package doughtide.core.rise;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.quantity.Value;
import doughtide.core.thermal.TemperatureTrace;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Where the dough's temperature comes from: stated (steady, steps, a logger's readings), or
 * computed while the dough lies in a room and its own fermentation warms it. Stages follow one
 * another. Immutable.
 */
public final class DoughTemperature extends Value {
  private static final long serialVersionUID = 1;

  /** Coldest dough the model accepts, °C: just above where dough begins to freeze. */
  public static final double LOWEST_CELSIUS = -2;

  /** Warmest dough the model accepts, °C. */
  public static final double HIGHEST_CELSIUS = 45;

  private final List<Stage> stages;
  private transient volatile @Nullable TemperatureSegments lastSegments;

  private DoughTemperature(List<Stage> stages) {
    this.stages = List.copyOf(stages);
  }

  /**
   * One stage.
   *
   * @param fromHours when it begins
   * @param trace the dough's temperature, or the room's if {@code timeConstantHours} is finite; its
   *     hour 0 is {@code fromHours}
   * @param timeConstantHours infinite where the dough's temperature is stated
   * @param heatCapacityJPerK heat capacity of dough and vessel per kg of flour, J/K
   */
  record Stage(
      double fromHours, TemperatureTrace trace, double timeConstantHours, double heatCapacityJPerK)
      implements Serializable {
    Stage {
      trace = trace.ofDough();
    }

    boolean inRoom() {
      return Double.isFinite(timeConstantHours);
    }
  }

  /**
   * {@return the same dough temperature all the time, −2…45 °C}
   *
   * @param temperature −2…45 °C
   */
  public static DoughTemperature steady(Temperature temperature) {
    Checks.inRange(
        "dough temperature", temperature.celsius(), LOWEST_CELSIUS, HIGHEST_CELSIUS, "°C");
    return following(TemperatureTrace.steady(temperature));
  }

  /**
   * {@return a dough temperature that is known over time}
   *
   * @param trace °C over hours since mixing
   */
  public static DoughTemperature following(TemperatureTrace trace) {
    return new DoughTemperature(
        List.of(new Stage(0, trace, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY)));
  }

  /**
   * {@return a dough that drifts towards its surroundings and warms itself: dT/dt = (room − T)/τ +
   * heat of fermentation}
   *
   * @param start dough temperature at the start, −2…45 °C
   * @param room temperature around it over time
   * @param timeConstantHours τ, 0.01…1000 h
   * @param heatCapacityJPerK heat capacity of dough and vessel per kg of flour, 1000…100000 J/K
   */
  public static DoughTemperature inRoom(
      Temperature start,
      TemperatureTrace room,
      double timeConstantHours,
      double heatCapacityJPerK) {
    return steady(start).then(0, room, timeConstantHours, heatCapacityJPerK);
  }

  /**
   * This until an hour, then a room.
   *
   * @param hours when the dough is put there
   * @param room temperature around it; its hour 0 is {@code hours}
   * @param timeConstantHours τ, 0.01…1000 h
   * @param heatCapacityJPerK heat capacity of dough and vessel per kg of flour, 1000…100000 J/K
   * @return this until an hour, then the other
   */
  public DoughTemperature then(
      double hours, TemperatureTrace room, double timeConstantHours, double heatCapacityJPerK) {
    Checks.inRange("time constant", timeConstantHours, 0.01, 1000, "h");
    Checks.inRange("heat capacity per kg of flour", heatCapacityJPerK, 1000, 1e5, "J/K");
    return with(new Stage(hours, room, timeConstantHours, heatCapacityJPerK));
  }

  /**
   * This until an hour, then a stated dough temperature.
   *
   * @param hours when it begins
   * @param dough the dough's temperature from then on; its hour 0 is {@code hours}
   * @return this until an hour, then the other
   */
  public DoughTemperature then(double hours, TemperatureTrace dough) {
    return with(new Stage(hours, dough, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY));
  }

  private DoughTemperature with(Stage stage) {
    double last = stages.get(stages.size() - 1).fromHours();
    if (!(stage.fromHours() >= last)) {
      throw new InputException(
          "dough-temperature.stage-order",
          "a temperature stage begins at hour "
              + Checks.plain(stage.fromHours())
              + ", before the one it follows: give stages in order");
    }
    List<Stage> all = new ArrayList<>(stages);
    all.add(stage);
    return new DoughTemperature(all);
  }

  List<Stage> stages() {
    return stages;
  }

  /** {@return the stated temperature at the start, °C} */
  public double startCelsius() {
    return stages.get(0).trace().celsius(0);
  }

  /**
   * {@return whether the dough keeps one stated temperature for some hours}
   *
   * @param hours how far to look, more than 0
   */
  public boolean isSteady(double hours) {
    List<Segment> segments = Segment.of(this, hours);
    return segments.size() == 1 && segments.get(0).keepsOneTemperature();
  }

  /**
   * {@return lowest stated or surrounding temperature within some hours, the start included, °C}
   *
   * @param hours how far to look
   */
  public double lowestCelsius(double hours) {
    double lowest = startCelsius();
    for (Segment segment : Segment.of(this, hours)) {
      lowest = Math.min(lowest, segment.lowestCelsius());
    }
    return lowest;
  }

  /**
   * {@return the highest reading of a logger in the dough that lasted too short to be the dough's,
   * °C; negative infinity for none}
   */
  public double highestSpikeCelsius() {
    return stages.stream()
        .filter(stage -> !stage.inRoom())
        .mapToDouble(stage -> stage.trace().highestSpikeCelsius())
        .max()
        .orElse(Double.NEGATIVE_INFINITY);
  }

  /**
   * {@return highest stated or surrounding temperature within some hours, the start included, °C}
   *
   * @param hours how far to look
   */
  public double highestCelsius(double hours) {
    double highest = startCelsius();
    for (Segment segment : Segment.of(this, hours)) {
      highest = Math.max(highest, segment.highestCelsius());
    }
    return highest;
  }

  /**
   * {@return the hours inside a run at which the temperature jumps, or its slope does; ascending}
   *
   * @param hours how far to look
   */
  public double[] jumps(double hours) {
    return Segment.of(this, hours).stream().mapToDouble(Segment::fromHours).skip(1).toArray();
  }

  /**
   * The segments of a run; the last ones are kept, because all members of an ensemble ask for them.
   */
  TemperatureSegments segments(double hours) {
    TemperatureSegments segments = lastSegments;
    if (segments == null || segments.hours() != hours) {
      segments = TemperatureSegments.of(this, hours);
      lastSegments = segments;
    }
    return segments;
  }

  @Override
  protected List<?> parts() {
    return stages;
  }

  /** In a line, for logs: each stage's temperature over its own hours. */
  @Override
  public String toString() {
    return stages.stream().map(DoughTemperature::words).collect(Collectors.joining(", then "));
  }

  private static String words(Stage stage) {
    String from = stage.fromHours() == 0 ? "" : "from " + Checks.plain(stage.fromHours()) + " h ";
    String room = stage.inRoom() ? "in a room of " : "";
    String drift =
        stage.inRoom() ? ", time constant " + Checks.plain(stage.timeConstantHours()) + " h" : "";
    return from + room + stage.trace() + drift;
  }
}
