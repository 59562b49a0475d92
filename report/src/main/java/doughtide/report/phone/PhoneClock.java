package doughtide.report.phone;

import doughtide.core.forecast.TimeWindow;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Clock times of the zone in which a dough was mixed, for people and, in numbers, for the page.
 *
 * @param mixedAt hour 0
 * @param hours how far times are needed
 * @param namesEveryDay whether the day of mixing is named, too, as for a plan of days to come
 * @param words of the language
 */
record PhoneClock(ZonedDateTime mixedAt, double hours, boolean namesEveryDay, Words words) {

  private static final String NONE = "–";
  private static final int DAYS_BEFORE = 2;

  /** Seconds since 1970 in UTC. */
  long epoch() {
    return mixedAt.toEpochSecond();
  }

  /** From which hour on the zone is how many minutes ahead of UTC, from two days before on. */
  String offsets() {
    List<String> offsets = new ArrayList<>();
    ZonedDateTime from = mixedAt.minusDays(DAYS_BEFORE);
    offsets.add(offset(from));
    ZoneOffsetTransition change = mixedAt.getZone().getRules().nextTransition(from.toInstant());
    while (change != null && !change.getInstant().isAfter(after(hours).toInstant())) {
      ZonedDateTime then = change.getInstant().atZone(mixedAt.getZone());
      offsets.add(offset(then));
      change = mixedAt.getZone().getRules().nextTransition(then.toInstant());
    }
    return String.join(" ", offsets);
  }

  private String offset(ZonedDateTime from) {
    return (from.toEpochSecond() - epoch()) / 3600.0
        + ":"
        + from.getOffset().getTotalSeconds() / 60.0;
  }

  /** Short names of the days from two days before that of mixing on. */
  String days() {
    List<String> days = new ArrayList<>();
    LocalDate last = after(hours).toLocalDate().plusDays(1);
    for (ZonedDateTime day = mixedAt.withHour(12).minusDays(DAYS_BEFORE);
        !day.toLocalDate().isAfter(last);
        day = day.plusDays(1)) {
      days.add(words.day(day));
    }
    return String.join(" ", days);
  }

  private ZonedDateTime after(double hour) {
    return mixedAt.plusSeconds(Math.round(hour * 3600));
  }

  /** An hour to five minutes; its day before it, but the day of mixing only where it is named. */
  String at(OptionalDouble hour) {
    return hour.isEmpty() ? NONE : at(hour.getAsDouble());
  }

  /** The same; negative before mixing. */
  String at(double hour) {
    ZonedDateTime time = after(hour);
    return !namesEveryDay && Words.rounded(time).toLocalDate().equals(mixedAt.toLocalDate())
        ? words.clock(time)
        : words.dayAndClock(time);
  }

  /** Likely, then early to late in brackets; one time where they are the same. */
  String of(TimeSpan span) {
    String early = at(span.earlyHours());
    String late = span.isClosed() ? at(span.lateHours()) : "";
    String range = early.equals(late) ? early : early + "–" + late;
    return span.likelyHours().isPresent() && !early.equals(late)
        ? at(span.likelyHours().getAsDouble()) + " (" + range + ")"
        : range;
  }

  /** What the page says of a window after its answer. */
  String eightOfTen(TimeWindow window, PhoneWords say) {
    return window.late().isPresent()
        ? say.say("window", Map.of("early", at(window.early()), "late", at(window.late())))
        : say.say("open", Map.of("early", at(window.early())));
  }
}
