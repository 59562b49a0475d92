package doughtide.report.phone;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A piece of a page. What comes from outside goes in as {@link #text} and stays text, in an element
 * and in a quoted attribute alike.
 *
 * @param html as it stands in the page
 */
record Markup(String html) {

  /** Nothing. */
  static final Markup NONE = new Markup("");

  /** Text of anybody. */
  static Markup text(String text) {
    StringBuilder html = new StringBuilder();
    text.codePoints().forEach(point -> append(html, point));
    return new Markup(html.toString());
  }

  private static void append(StringBuilder html, int point) {
    switch (point) {
      case '&' -> html.append("&amp;");
      case '<' -> html.append("&lt;");
      case '>' -> html.append("&gt;");
      case '"' -> html.append("&quot;");
      case '\'' -> html.append("&#39;");
      default -> html.appendCodePoint(isAllowed(point) ? point : ' ');
    }
  }

  /** What HTML may hold; a control character is no text. */
  private static boolean isAllowed(int point) {
    boolean isSurrogate = point >= Character.MIN_SURROGATE && point <= Character.MAX_SURROGATE;
    return point == '\n' || !Character.isISOControl(point) && !isSurrogate;
  }

  /** One after the other. */
  static Markup all(List<Markup> parts) {
    return new Markup(parts.stream().map(Markup::html).collect(Collectors.joining("\n")));
  }
}
