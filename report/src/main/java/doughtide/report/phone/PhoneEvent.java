package doughtide.report.phone;

import doughtide.core.forecast.TimeWindow;
import java.util.Arrays;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Something that happens to each member of a dough's forecast.
 *
 * @param key for the page
 * @param name for people
 * @param percent the rise it is, if it is one
 * @param window early, likely and late, as the program says it
 * @param hours of the members
 */
@SuppressWarnings("ArrayRecordComponent") // only read, inside this package
record PhoneEvent(
    String key, String name, OptionalDouble percent, TimeWindow window, double[] hours) {

  Markup row(Template template, PhoneClock clock) {
    return template.fill(
        Map.ofEntries(
            Map.entry("key", Markup.text(key)),
            Map.entry("name", Markup.text(name)),
            Map.entry("percent", number(percent)),
            Map.entry("earlyHours", number(window.early())),
            Map.entry("likelyHours", number(window.likely())),
            Map.entry("lateHours", number(window.late())),
            Map.entry("early", Markup.text(clock.at(window.early()))),
            Map.entry("likely", Markup.text(clock.at(window.likely()))),
            Map.entry("late", Markup.text(clock.at(window.late()))),
            Map.entry(
                "members", Markup.text(MemberNumbers.between(0, clock.hours(), hours).text()))));
  }

  /** Of the first members alone. */
  PhoneEvent withMembers(int members) {
    return new PhoneEvent(key, name, percent, window, Arrays.copyOf(hours, members));
  }

  static Markup number(OptionalDouble value) {
    return Markup.text(value.isPresent() ? Double.toString(value.getAsDouble()) : "");
  }

  /** Whether a step of the likely hour is this one. */
  boolean isAt(double likely) {
    return window.likely().isPresent() && Math.abs(window.likely().getAsDouble() - likely) < 1e-9;
  }
}
