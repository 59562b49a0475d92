package doughtide.report.type;

import doughtide.core.Internal;
import java.awt.Font;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Breaks text into lines; a word longer than a line is broken inside, behind a dash if it has one,
 * never left to stick out.
 */
@Internal
public final class TextWrap {

  private TextWrap() {}

  public static List<String> lines(String text, double widthPt, Font font) {
    return lines(text, widthPt, line -> Fonts.width(line, font));
  }

  /**
   * At least one line, which is empty for an empty text; a line break in the text begins a new one.
   */
  public static List<String> lines(String text, double widthPt, ToDoubleFunction<String> measure) {
    List<String> lines = new ArrayList<>();
    for (String piece : text.split("\n", -1)) {
      lines.addAll(wrapped(piece, widthPt, measure));
    }
    return lines;
  }

  private static List<String> wrapped(
      String text, double widthPt, ToDoubleFunction<String> measure) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : Fonts.printable(text).strip().split(" +", -1)) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (measure.applyAsDouble(longer) <= widthPt) {
        line.setLength(0);
        line.append(longer);
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(breakWord(word, widthPt, measure, lines));
    }
    lines.add(line.toString());
    return lines;
  }

  /** Adds full pieces of an overlong word to the lines and gives back the rest. */
  private static String breakWord(
      String word, double widthPt, ToDoubleFunction<String> measure, List<String> lines) {
    String rest = word;
    while (measure.applyAsDouble(rest) > widthPt && rest.length() > 1) {
      int cut = rest.length() - 1;
      while (cut > 1 && measure.applyAsDouble(rest.substring(0, cut)) > widthPt) {
        cut--;
      }
      cut = betterCut(rest, cut);
      lines.add(rest.substring(0, cut));
      rest = rest.substring(cut);
    }
    return rest;
  }

  /** Behind a dash if there is one, else not inside a character. */
  private static int betterCut(String text, int cut) {
    int dash = text.lastIndexOf('–', cut - 1);
    if (dash > 0) {
      return dash + 1;
    }
    return Character.isHighSurrogate(text.charAt(cut - 1)) && cut > 1 ? cut - 1 : cut;
  }
}
