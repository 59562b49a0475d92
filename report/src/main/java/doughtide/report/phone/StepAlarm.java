package doughtide.report.phone;

import doughtide.report.type.CalendarLine;
import doughtide.report.words.Words;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.UUID;

/**
 * A step of a dough's day as a calendar entry with an alarm (RFC 5545). Its times stay open,
 * because they move with the readings: the page fills them in.
 */
final class StepAlarm {

  private static final String LINE_END = "\n";

  private StepAlarm() {}

  /**
   * The entry.
   *
   * @param name of the dough
   * @param step what to do
   */
  static Markup of(String name, String step, Words words) {
    String summary = step + ": " + name;
    String id = summary + words.language().tag();
    return Template.of("step.ics")
        .fill(
            Map.of(
                "uid",
                Markup.text(
                    UUID.nameUUIDFromBytes(id.getBytes(StandardCharsets.UTF_8)) + "@doughtide"),
                "summary",
                Markup.text(CalendarLine.folded("SUMMARY:" + escaped(summary), LINE_END)),
                "description",
                Markup.text(CalendarLine.folded("DESCRIPTION:" + escaped(summary), LINE_END))));
  }

  private static String escaped(String text) {
    return text.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,").replace("\n", "\\n");
  }
}
