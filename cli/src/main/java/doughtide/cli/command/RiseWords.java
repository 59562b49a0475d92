package doughtide.cli.command;

import doughtide.cli.args.Words;
import doughtide.core.forecast.TimeWindow;
import java.util.OptionalDouble;

/** Windows of time in words. */
public final class RiseWords {

  private RiseWords() {}

  /** Early, likely and late: {@code early 4 h 5 min, likely 4 h 40 min, late 5 h 20 min}. */
  public static String window(TimeWindow window) {
    return "early "
        + hours(window.early())
        + ", likely "
        + hours(window.likely())
        + ", late "
        + hours(window.late());
  }

  private static String hours(OptionalDouble hours) {
    return hours.isPresent() ? Words.about(hours.getAsDouble()) : "not reached";
  }
}
