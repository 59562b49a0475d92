package doughtide.report.type;

import doughtide.core.Internal;
import java.nio.charset.StandardCharsets;

/** A line of a calendar (RFC 5545). */
@Internal
public final class CalendarLine {
  private static final int MOST_OCTETS = 75;

  private CalendarLine() {}

  /**
   * A line folded after at most 75 octets, never inside a letter; what goes on begins with a space
   * (RFC 5545, 3.1).
   *
   * @param line without its end
   * @param lineEnd between the folded lines
   */
  public static String folded(String line, String lineEnd) {
    StringBuilder folded = new StringBuilder();
    int octets = 0;
    for (int point : line.codePoints().toArray()) {
      String letter = Character.toString(point);
      int size = letter.getBytes(StandardCharsets.UTF_8).length;
      if (octets + size > MOST_OCTETS) {
        folded.append(lineEnd).append(' ');
        octets = 1;
      }
      folded.append(letter);
      octets += size;
    }
    return folded.toString();
  }
}
