package doughtide.cli.answer;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Speech;
import doughtide.cli.args.Words;
import doughtide.core.forecast.TimeWindow;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the hours of an answer count from.
 *
 * @param clock clock times of those hours, where a clock is known
 * @param since for the head of a table: {@code after mixing}
 * @param shownFromHours on a page, hours count from this hour on; in data and clock times they
 *     count from 0
 * @param speech the language of the answer, in which {@code since} and the clock are, too
 */
public record Timeline(
    Optional<ClockTimes> clock, String since, double shownFromHours, Speech speech) {

  /** Of an English answer. */
  public Timeline(Optional<ClockTimes> clock, String since, double shownFromHours) {
    this(clock, since, shownFromHours, Speech.ENGLISH);
  }

  /** Hours since mixing. */
  public static Timeline sinceMixing(Optional<ClockTimes> clock) {
    return new Timeline(clock, "after mixing", 0);
  }

  /** Hours since mixing, in the language of the reader. */
  public static Timeline sinceMixing(Optional<ClockTimes> clock, Speech speech) {
    return new Timeline(clock.map(each -> each.in(speech)), speech.say("text.hours"), 0, speech);
  }

  /** An hour for a sentence: a clock time if there is a clock, else hours. */
  public String moment(OptionalDouble hours) {
    if (hours.isEmpty()) {
      return Value.NONE;
    }
    return clock.isPresent()
        ? clock.get().about(hours.getAsDouble())
        : Words.about(hours.getAsDouble() - shownFromHours);
  }

  /** A window for a sentence. */
  public String words(TimeWindow window) {
    return new Value.Window(window, this).text(speech);
  }

  /**
   * The same, with what the hours count from where there is no clock: {@code 35 min after mixing}.
   */
  public String momentSince(OptionalDouble hours) {
    return clock.isPresent() || hours.isEmpty() ? moment(hours) : moment(hours) + " " + since;
  }
}
