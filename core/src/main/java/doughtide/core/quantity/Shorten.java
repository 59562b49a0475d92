package doughtide.core.quantity;

import doughtide.core.Internal;

/** Cuts what a person typed to a length that fits in a message. */
@Internal
public final class Shorten {

  private Shorten() {}

  /**
   * The text, or its beginning and an ellipsis.
   *
   * @param text any text
   * @param most the greatest length kept, at least 1
   */
  public static String to(String text, int most) {
    if (text.length() <= most) {
      return text;
    }
    int end = Character.isHighSurrogate(text.charAt(most - 1)) ? most - 1 : most;
    return text.substring(0, end) + "…";
  }
}
