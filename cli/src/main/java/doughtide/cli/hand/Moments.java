package doughtide.cli.hand;

import doughtide.cli.answer.Timeline;
import java.util.OptionalDouble;

/**
 * Hours of a dough in hand for sentences: of today the clock time alone.
 *
 * @param timeline hours since mixing
 * @param nowHours hours since mixing now
 */
record Moments(Timeline timeline, double nowHours) {

  /** An hour. */
  public String of(OptionalDouble hours) {
    String full = timeline.momentSince(hours);
    boolean today =
        hours.isPresent()
            && timeline
                .clock()
                .filter(
                    clock ->
                        clock
                            .after(hours.getAsDouble())
                            .toLocalDate()
                            .equals(clock.after(nowHours).toLocalDate()))
                .isPresent();
    return today ? full.substring(full.indexOf(' ') + 1) : full;
  }

  /** An hour. */
  public String of(double hours) {
    return of(OptionalDouble.of(hours));
  }
}
