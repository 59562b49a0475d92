package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.file.OutputFile;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.UUID;
import net.fortuna.ical4j.data.CalendarOutputter;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.PropertyList;
import net.fortuna.ical4j.model.component.VAlarm;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.Description;
import net.fortuna.ical4j.model.property.DtEnd;
import net.fortuna.ical4j.model.property.DtStamp;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.Summary;
import net.fortuna.ical4j.model.property.Uid;
import net.fortuna.ical4j.model.property.immutable.ImmutableAction;

/**
 * A plan as a calendar (RFC 5545): an entry and an alarm for each hands-on step. Times are written
 * in UTC, so that they stay right over a change of the clocks on any device.
 */
public final class BakeDayCalendar {

  private static final Duration BEFORE = Duration.ofMinutes(-10);

  private BakeDayCalendar() {}

  public static void write(BakePlan plan, BakeDayOptions options, OutputFile file, Instant now) {
    Calendar calendar = of(plan, options, now);
    file.write(out -> out.write(bytes(calendar)));
  }

  /** Its writer closes what it writes to. */
  public static byte[] bytes(Calendar calendar) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    new CalendarOutputter(false).output(calendar, bytes);
    return bytes.toByteArray();
  }

  public static Calendar of(BakePlan plan, BakeDayOptions options, Instant now) {
    Calendar calendar =
        new Calendar().withProdId("-//doughtide//bake day 1//EN").withDefaults().getFluentTarget();
    for (BakeStep step : plan.steps()) {
      if (step.kind().handsOn()) {
        calendar.add(event(plan, step, options.clock().times(), now));
      }
    }
    return calendar;
  }

  private static VEvent event(BakePlan plan, BakeStep step, ClockTimes times, Instant now) {
    return event(step, step.words(), BakeDayWords.detail(plan, step), times, now);
  }

  /** An entry with an alarm. */
  public static VEvent event(
      BakeStep step, String summary, String detail, ClockTimes times, Instant now) {
    Instant from = instant(times, step.fromHour());
    Instant to = instant(times, Math.max(step.toHour(), step.fromHour() + 1.0 / 60));
    VEvent event = new VEvent(new PropertyList());
    event.add(new Uid(id(summary, from)));
    event.add(new DtStamp(now.truncatedTo(ChronoUnit.SECONDS)));
    event.add(new DtStart<>(from));
    event.add(new DtEnd<>(to));
    event.add(new Summary(summary));
    if (!detail.isEmpty()) {
      event.add(new Description(detail));
    }
    event.add(alarm(summary));
    return event;
  }

  private static VAlarm alarm(String summary) {
    VAlarm alarm = new VAlarm(BEFORE);
    alarm.add(ImmutableAction.DISPLAY);
    alarm.add(new Description(summary));
    return alarm;
  }

  private static Instant instant(ClockTimes times, double hour) {
    return times.after(hour).plusSeconds(30).truncatedTo(ChronoUnit.MINUTES).toInstant();
  }

  private static String id(String summary, Instant from) {
    byte[] name = (summary + from).getBytes(StandardCharsets.UTF_8);
    return UUID.nameUUIDFromBytes(name) + "@doughtide";
  }
}
