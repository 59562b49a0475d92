package doughtide.cli.text;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Text broken into lines of a page. */
public final class Paragraph {

  /** Columns of a page of text. */
  public static final int WIDTH = 80;

  /** A space that does not part a number from its unit. */
  private static final Pattern BREAK =
      Pattern.compile("(?<!\\d h) (?!°|%|(?:h|g|kg|min)(?:\\W|$))");

  private Paragraph() {}

  /**
   * The text in lines of at most {@link #WIDTH} columns; a word longer than that stands alone.
   *
   * @param lead what stands before the first line
   * @param text words separated by spaces
   */
  public static List<String> lines(String lead, String text) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(lead);
    int start = lead.length();
    boolean begun = false;
    for (String word : BREAK.split(text, -1)) {
      if (begun && width(line.toString()) + 1 + width(word) > WIDTH) {
        lines.add(line.toString());
        line = new StringBuilder(" ".repeat(start));
        begun = false;
      }
      line.append(begun ? " " : "").append(word);
      begun = true;
    }
    lines.add(line.toString());
    return lines;
  }

  private static int width(String text) {
    return text.codePointCount(0, text.length());
  }
}
