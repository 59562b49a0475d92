package doughtide.core.quantity;

import doughtide.core.Internal;

/** A word as a person types it at a prompt: quoted where a space asks for it. */
@Internal
public final class ShellWord {

  private ShellWord() {}

  public static String of(String text) {
    boolean plain = !text.isEmpty() && text.chars().allMatch(ShellWord::needsNoQuote);
    return plain ? text : '"' + text.replace("\"", "\\\"") + '"';
  }

  private static boolean needsNoQuote(int c) {
    return Character.isLetterOrDigit(c) || "%:,.+-_/@°=".indexOf(c) >= 0;
  }
}
