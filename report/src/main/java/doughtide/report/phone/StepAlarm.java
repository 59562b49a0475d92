package doughtide.report.phone;

import doughtide.report.words.Words;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.UUID;

/**
 * A step of a dough's day as a calendar entry with an alarm (RFC 5545). Its times stay open,
 * because they move with the readings: the page fills them in.
 */
final class StepAlarm {

  private static final int MOST_OCTETS = 75;

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
                Markup.text(folded("SUMMARY:" + escaped(summary))),
                "description",
                Markup.text(folded("DESCRIPTION:" + escaped(summary)))));
  }

  private static String escaped(String text) {
    return text.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,").replace("\n", "\\n");
  }

  /** A line of at most 75 octets goes on in the next after a space. */
  private static String folded(String line) {
    StringBuilder folded = new StringBuilder();
    int octets = 0;
    for (int point : line.codePoints().toArray()) {
      String each = Character.toString(point);
      int size = each.getBytes(StandardCharsets.UTF_8).length;
      if (octets + size > MOST_OCTETS) {
        folded.append("\n ");
        octets = 1;
      }
      folded.append(each);
      octets += size;
    }
    return folded.toString();
  }
}
