package doughtide.cli.text;

import doughtide.core.quantity.Shorten;
import java.util.OptionalInt;

/** Makes a message fit for one line of a terminal. */
public final class OneLine {

  private static final int LONGEST = 600;

  private OneLine() {}

  /**
   * The message without line breaks, control characters (a file name could carry terminal commands)
   * and marks that turn the writing direction.
   */
  public static String of(String message) {
    return Shorten.to(harmless(message).strip(), LONGEST);
  }

  /**
   * The same, however long.
   *
   * @param text one line, of which a part may come from outside
   */
  public static String harmless(String text) {
    StringBuilder line = new StringBuilder(text.length());
    text.codePoints().forEach(c -> line.appendCodePoint(harmless(c)));
    return line.toString();
  }

  /** The first character that a line of a terminal or a page must not hold. */
  public static OptionalInt firstUnseen(String text) {
    return text.codePoints().filter(OneLine::isUnseen).findFirst();
  }

  private static int harmless(int c) {
    if (c >= ' ' && c <= '~') {
      return c;
    }
    if (c == '\n' || c == '\r' || c == '\t') {
      return ' ';
    }
    return isUnseen(c) ? '\uFFFD' : c;
  }

  private static boolean isUnseen(int c) {
    int type = Character.getType(c);
    return type == Character.CONTROL
        || type == Character.FORMAT
        || type == Character.LINE_SEPARATOR
        || type == Character.PARAGRAPH_SEPARATOR
        || type == Character.SURROGATE;
  }
}
