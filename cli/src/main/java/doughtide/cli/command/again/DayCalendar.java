package doughtide.cli.command.again;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.file.OutputFile;
import doughtide.report.type.CalendarLine;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
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
import net.fortuna.ical4j.model.property.Sequence;
import net.fortuna.ical4j.model.property.Summary;
import net.fortuna.ical4j.model.property.Uid;
import net.fortuna.ical4j.model.property.immutable.ImmutableAction;
import net.fortuna.ical4j.model.property.immutable.ImmutableStatus;

/**
 * A day as a calendar (RFC 5545): an entry for each hands-on step, and an alarm before it. Times
 * are written in UTC, so that they stay right over a change of the clocks on any device. A step
 * keeps its UID when the day is planned again, and its SEQUENCE grows, so that a calendar moves the
 * entry it has.
 *
 * @param planId of the plan
 * @param sequence how often the day was planned again
 * @param times turns hours into moments
 */
public record DayCalendar(String planId, int sequence, ClockTimes times) {

  private static final String LINE_END = "\r\n";
  private static final Duration BEFORE = Duration.ofMinutes(-10);

  /**
   * A step with hands on.
   *
   * @param key the same for the same step of the day, whenever it is
   * @param summary what is done
   * @param detail what it needs; may be empty
   * @param fromHour when it begins
   * @param toHour when it is over
   * @param cancelled whether it is left out now
   */
  public record Entry(
      String key,
      String summary,
      String detail,
      double fromHour,
      double toHour,
      boolean cancelled) {}

  /**
   * Writes the calendar.
   *
   * @param command for the name of the program that made it
   * @param now when it is made
   */
  public void write(List<Entry> entries, String command, OutputFile file, Instant now) {
    Calendar calendar =
        new Calendar()
            .withProdId("-//doughtide//" + command + " 1//EN")
            .withDefaults()
            .getFluentTarget();
    entries.forEach(entry -> calendar.add(event(entry, now)));
    file.write(out -> out.write(bytes(calendar)));
  }

  /** Its writer would fold by characters, where the standard counts octets. */
  private static byte[] bytes(Calendar calendar) throws IOException {
    StringWriter text = new StringWriter();
    new CalendarOutputter(false, Integer.MAX_VALUE).output(calendar, text);
    StringBuilder folded = new StringBuilder();
    text.toString()
        .lines()
        .forEach(line -> folded.append(CalendarLine.folded(line, LINE_END)).append(LINE_END));
    return folded.toString().getBytes(StandardCharsets.UTF_8);
  }

  private VEvent event(Entry entry, Instant now) {
    VEvent event = new VEvent(new PropertyList());
    event.add(new Uid(id(planId + entry.key()) + "@doughtide"));
    event.add(new Sequence(sequence));
    event.add(new DtStamp(now.truncatedTo(ChronoUnit.SECONDS)));
    event.add(new DtStart<>(instant(entry.fromHour())));
    event.add(new DtEnd<>(instant(Math.max(entry.toHour(), entry.fromHour() + 1.0 / 60))));
    event.add(new Summary(entry.summary()));
    if (!entry.detail().isEmpty()) {
      event.add(new Description(entry.detail()));
    }
    if (entry.cancelled()) {
      event.add(ImmutableStatus.VEVENT_CANCELLED);
    } else {
      event.add(alarm(entry.summary()));
    }
    return event;
  }

  private static VAlarm alarm(String summary) {
    VAlarm alarm = new VAlarm(BEFORE);
    alarm.add(ImmutableAction.DISPLAY);
    alarm.add(new Description(summary));
    return alarm;
  }

  private Instant instant(double hour) {
    return times.after(hour).plusSeconds(30).truncatedTo(ChronoUnit.MINUTES).toInstant();
  }

  /** A name that is the same for the same text. */
  public static String id(String text) {
    return UUID.nameUUIDFromBytes(text.getBytes(StandardCharsets.UTF_8)).toString();
  }
}
