package doughtide.cli.batch;

import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Rise;
import java.util.List;

/**
 * What is said about one row.
 *
 * @param row the row
 * @param rises when each of {@link #RISES} is reached, hours since mixing
 * @param over from when the dough is past its best
 * @param warnings what the user should know
 * @param error why there is no forecast, empty if there is one
 */
record BatchAnswer(
    BatchRow row, List<TimeWindow> rises, TimeWindow over, List<String> warnings, String error) {

  /** The rises whose hours are given. */
  public static final List<Rise> RISES =
      List.of(
          Rise.ofPercent(25),
          Rise.ofPercent(30),
          Rise.ofPercent(50),
          Rise.ofPercent(75),
          Rise.ofPercent(100));

  public static BatchAnswer refused(BatchRow row, String error) {
    List<TimeWindow> never = RISES.stream().map(rise -> TimeWindow.NEVER).toList();
    return new BatchAnswer(row, never, TimeWindow.NEVER, List.of(), error);
  }

  public boolean isBad() {
    return !error.isEmpty();
  }
}
