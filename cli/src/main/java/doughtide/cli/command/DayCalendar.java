package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.file.OutputFile;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayStep;
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
 * A day as a calendar (RFC 5545): an entry for each hands-on step, and an alarm before it. Times
 * are written in UTC, so that they stay right over a change of the clocks on any device.
 */
final class DayCalendar {

  private static final Duration BEFORE = Duration.ofMinutes(-10);

  private DayCalendar() {}

  static void write(DayText text, String command, OutputFile file, Instant now) {
    Calendar calendar =
        new Calendar()
            .withProdId("-//doughtide//" + command + " 1//EN")
            .withDefaults()
            .getFluentTarget();
    for (DayStep step : text.day().steps()) {
      if (step.step().kind().handsOn()) {
        calendar.add(event(step, text, now));
      }
    }
    file.write(out -> out.write(bytes(calendar)));
  }

  /** Its writer closes what it writes to. */
  private static byte[] bytes(Calendar calendar) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    new CalendarOutputter(false).output(calendar, bytes);
    return bytes.toByteArray();
  }

  private static VEvent event(DayStep each, DayText text, Instant now) {
    BakeStep step = each.step();
    ClockTimes times = text.options().clock().times();
    Instant from = instant(times, step.fromHour());
    String summary = text.summary(each);
    VEvent event = new VEvent(new PropertyList());
    event.add(new Uid(id(summary, from)));
    event.add(new DtStamp(now.truncatedTo(ChronoUnit.SECONDS)));
    event.add(new DtStart<>(from));
    event.add(new DtEnd<>(instant(times, Math.max(step.toHour(), step.fromHour() + 1.0 / 60))));
    event.add(new Summary(summary));
    String detail = text.detail(each);
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
