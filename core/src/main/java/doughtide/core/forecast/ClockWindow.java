package doughtide.core.forecast;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.SentRecord;
import java.io.Serializable;
import java.time.ZonedDateTime;
import java.util.Optional;

/**
 * A {@link TimeWindow} on a clock. A moment is empty where that many doughs never get there.
 *
 * @param early one dough in ten is there before it
 * @param likely half are there before it
 * @param late nine in ten are there before it
 * @param reachedShare of the doughs that get there within the time looked at, 0…1
 */
public record ClockWindow(
    Optional<ZonedDateTime> early,
    Optional<ZonedDateTime> likely,
    Optional<ZonedDateTime> late,
    double reachedShare)
    implements Serializable {
  /**
   * Refuses nothing where something is needed.
   *
   * @param early one dough in ten is there before it
   * @param likely half are there before it
   * @param late nine in ten are there before it
   * @param reachedShare of the doughs that get there within the time looked at, 0…1
   */
  public ClockWindow {
    Checks.given("early", early);
    Checks.given("late", late);
    Checks.given("likely", likely);
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
