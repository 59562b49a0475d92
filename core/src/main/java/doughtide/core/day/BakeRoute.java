package doughtide.core.day;

import doughtide.core.Internal;
import doughtide.core.quantity.SentRecord;
import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * What is decided about a dough before it is shaped; hours on the plan's axis.
 *
 * @param starterPercent starter in per cent of the flour added
 * @param doughCelsius dough temperature after mixing, °C
 * @param mixHour when starter and salt come in
 * @param coldFrom when the tub goes into the cold, if it does
 * @param coldTo when it comes out again
 */
public record BakeRoute(
    double starterPercent,
    double doughCelsius,
    double mixHour,
    OptionalDouble coldFrom,
    OptionalDouble coldTo)
    implements Serializable {

  /**
   * {@return a route, in the room from mixing to the basket}
   *
   * @param starterPercent starter in per cent of the flour added
   * @param doughCelsius dough temperature after mixing, °C
   * @param mixHour hour of mixing on the axis of the day
   */
  public static BakeRoute inRoom(double starterPercent, double doughCelsius, double mixHour) {
    return new BakeRoute(
        starterPercent, doughCelsius, mixHour, OptionalDouble.empty(), OptionalDouble.empty());
  }

  /**
   * {@return whether a tub that is put into the cold at an hour may come out again at another: 5 to
   * 20 hours later (starting values)}
   *
   * @hidden
   */
  @Internal
  public static boolean mayStayInCold(double from, double to) {
    return to - from > 5 && to - from < 20;
  }

  BakeRoute partlyCold(double from, double to) {
    return new BakeRoute(
        starterPercent, doughCelsius, mixHour, OptionalDouble.of(from), OptionalDouble.of(to));
  }

  BakeRoute withStarter(double percent) {
    return new BakeRoute(percent, doughCelsius, mixHour, coldFrom, coldTo);
  }

  BakeRoute withDough(double celsius) {
    return new BakeRoute(starterPercent, celsius, mixHour, coldFrom, coldTo);
  }

  /** The same, all of it moved so that the dough is mixed at hour 0. */
  BakeRoute mixedAtZero() {
    return new BakeRoute(starterPercent, doughCelsius, 0, fromMixing(coldFrom), fromMixing(coldTo));
  }

  /** To the second, so that equal routes are equal whenever they begin. */
  private OptionalDouble fromMixing(OptionalDouble hour) {
    return hour.isEmpty()
        ? hour
        : OptionalDouble.of(Math.rint((hour.getAsDouble() - mixHour) * 3600) / 3600);
  }

  /** Mixed at another hour; what happens in the cold keeps its clock. */
  BakeRoute withMixHour(double hour) {
    return new BakeRoute(starterPercent, doughCelsius, hour, coldFrom, coldTo);
  }

  /** From mixing to when shaping is possible at the earliest. */
  double earliestShapeHours() {
    return coldTo.isPresent() ? coldTo.getAsDouble() - mixHour + 0.25 : 1;
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
