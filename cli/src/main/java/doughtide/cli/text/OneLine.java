package doughtide.cli.text;

import doughtide.core.quantity.Shorten;

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

  private static int harmless(int c) {
    if (c == '\n' || c == '\r' || c == '\t') {
      return ' ';
    }
    int type = Character.getType(c);
    boolean hidden =
        type == Character.CONTROL
            || type == Character.FORMAT
            || type == Character.LINE_SEPARATOR
            || type == Character.PARAGRAPH_SEPARATOR
            || type == Character.SURROGATE;
    return hidden ? '\uFFFD' : c;
  }
}
