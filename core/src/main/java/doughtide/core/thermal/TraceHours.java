package doughtide.core.thermal;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;

/** Rules for the hours of a trace: finite, inside a year, strictly ascending. */
final class TraceHours {
  private static final double YEAR = 8760;

  private TraceHours() {}

  static double check(double hours) {
    return Checks.inRange("hour of the temperature trace", hours, -YEAR, YEAR, "h");
  }

  /** Returns a checked copy. */
  static double[] ascending(double[] hours) {
    for (int i = 0; i < hours.length; i++) {
      check(hours[i]);
      if (i > 0 && hours[i] <= hours[i - 1]) {
        throw new InputException(
            "temperature-trace.order",
            "hours of the temperature trace must ascend: "
                + Checks.plain(hours[i])
                + " h follows "
                + Checks.plain(hours[i - 1])
                + " h, sort them and give each hour once");
      }
    }
    return hours.clone();
  }
}
