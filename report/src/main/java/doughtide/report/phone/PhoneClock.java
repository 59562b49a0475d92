package doughtide.report.phone;

import doughtide.core.forecast.TimeWindow;
import doughtide.report.chart.RiseChart;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Clock times of the zone in which a dough was mixed, for people and, in numbers, for the page.
 *
 * @param mixedAt hour 0
 * @param hours how far times are needed
 * @param words of the language
 */
record PhoneClock(ZonedDateTime mixedAt, double hours, Words words) {

  private static final String NONE = "–";

  /** Seconds since 1970 in UTC. */
  long epoch() {
    return mixedAt.toEpochSecond();
  }

  /** From which hour on the zone is how many minutes ahead of UTC. */
  String offsets() {
    List<String> offsets = new ArrayList<>();
    offsets.add("0:" + mixedAt.getOffset().getTotalSeconds() / 60.0);
    ZoneOffsetTransition change = mixedAt.getZone().getRules().nextTransition(mixedAt.toInstant());
    double from =
        change == null
            ? Double.POSITIVE_INFINITY
            : (change.getInstant().getEpochSecond() - epoch()) / 3600.0;
    if (change != null && from <= hours) {
      offsets.add(from + ":" + change.getOffsetAfter().getTotalSeconds() / 60.0);
    }
    return String.join(" ", offsets);
  }

  /** Short names of the days from that of mixing on. */
  String days() {
    List<String> days = new ArrayList<>();
    LocalDate last = after(hours).toLocalDate();
    for (ZonedDateTime day = mixedAt.withHour(12);
        !day.toLocalDate().isAfter(last.plusDays(1));
        day = day.plusDays(1)) {
      days.add(words.day(day));
    }
    return String.join(" ", days);
  }

  private ZonedDateTime after(double hour) {
    return mixedAt.plusSeconds(Math.round(hour * 3600));
  }

  /** An hour to five minutes, with its day if that is not the day of mixing. */
  String at(OptionalDouble hour) {
    return hour.isEmpty()
        ? NONE
        : RiseChart.clockSpan(TimeSpan.at(hour.getAsDouble()), mixedAt, words);
  }

  /** Likely, then early to late in brackets. */
  String of(TimeSpan span) {
    return RiseChart.clockTimes(span, mixedAt, words);
  }

  /** What the page says of a window after its answer. */
  String eightOfTen(TimeWindow window) {
    return window.late().isPresent()
        ? words.say(
            "phone.window",
            java.util.Map.of("early", at(window.early()), "late", at(window.late())))
        : words.say("phone.open", java.util.Map.of("early", at(window.early())));
  }
}
