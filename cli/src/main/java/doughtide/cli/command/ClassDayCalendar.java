package doughtide.cli.command;

import doughtide.cli.file.OutputFile;
import doughtide.core.day.SharedAnswer;
import doughtide.core.day.SharedStep;
import java.time.Instant;
import net.fortuna.ical4j.model.Calendar;

/** A day of several doughs as a calendar: an entry and an alarm for each hands-on step. */
public final class ClassDayCalendar {

  private ClassDayCalendar() {}

  public static void write(
      SharedAnswer answer, ClassDayOptions options, OutputFile file, Instant now) {
    Calendar calendar = of(answer, options, now);
    file.write(out -> out.write(BakeDayCalendar.bytes(calendar)));
  }

  private static Calendar of(SharedAnswer answer, ClassDayOptions options, Instant now) {
    Calendar calendar =
        new Calendar().withProdId("-//doughtide//class day 1//EN").withDefaults().getFluentTarget();
    for (SharedStep step : answer.steps()) {
      if (step.step().kind().handsOn()) {
        String who = options.hands() == 1 ? "" : ClassDayWords.person(step);
        String summary =
            ClassDayWords.words(step)
                + ": "
                + ClassDayWords.doughs(step.doughs(), options)
                + (who.isEmpty() ? "" : " (" + who + ")");
        calendar.add(
            BakeDayCalendar.event(
                step.step(),
                summary,
                ClassDayWords.detail(answer, step),
                options.clock().times(),
                now));
      }
    }
    return calendar;
  }
}
