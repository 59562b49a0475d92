package doughtide.cli.answer;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalDouble;

/**
 * Writes JSON (RFC 8259) in the order it is called, so that the same answer gives the same bytes.
 * Numbers are rounded to the decimals asked for; a value that is not finite becomes null.
 *
 * <pre>{@code
 * new JsonWriter(out).beginObject().field("schema", "doughtide/rise/1").endObject();
 * }</pre>
 */
public final class JsonWriter {

  /** Objects and arrays deeper than this stand on one line. */
  private static final int DEEPEST_INDENTED = 2;

  private enum Layout {
    INDENTED,
    ONE_LINE
  }

  private final Appendable out;
  private final Layout layout;
  private final Deque<Character> open = new ArrayDeque<>();
  private boolean first = true;
  private boolean afterName;

  /** Indented, for an answer people may read as well. */
  public JsonWriter(Appendable out) {
    this(out, Layout.INDENTED);
  }

  private JsonWriter(Appendable out, Layout layout) {
    this.out = out;
    this.layout = layout;
  }

  /** All on one line, for one object a line. */
  public static JsonWriter oneLine(Appendable out) {
    return new JsonWriter(out, Layout.ONE_LINE);
  }

  public JsonWriter beginObject() {
    return begin('{', '}');
  }

  public JsonWriter endObject() {
    return end('}');
  }

  public JsonWriter beginArray() {
    return begin('[', ']');
  }

  public JsonWriter endArray() {
    return end(']');
  }

  /** The name of the next value. */
  public JsonWriter name(String name) {
    separate();
    string(name);
    raw(layout == Layout.ONE_LINE ? ":" : ": ");
    afterName = true;
    return this;
  }

  public JsonWriter value(String text) {
    separate();
    string(text);
    return this;
  }

  /** A number with at most this many decimals; null if it is not finite. */
  public JsonWriter value(double number, int decimals) {
    separate();
    raw(number(number, decimals));
    return this;
  }

  public JsonWriter value(long number) {
    separate();
    raw(Long.toString(number));
    return this;
  }

  public JsonWriter value(boolean truth) {
    separate();
    raw(Boolean.toString(truth));
    return this;
  }

  public JsonWriter nullValue() {
    separate();
    raw("null");
    return this;
  }

  public JsonWriter field(String name, String text) {
    return name(name).value(text);
  }

  public JsonWriter field(String name, double number, int decimals) {
    return name(name).value(number, decimals);
  }

  /** A number that may be missing: null then. */
  public JsonWriter field(String name, OptionalDouble number, int decimals) {
    return number.isPresent() ? field(name, number.getAsDouble(), decimals) : nullField(name);
  }

  public JsonWriter field(String name, long number) {
    return name(name).value(number);
  }

  public JsonWriter field(String name, boolean truth) {
    return name(name).value(truth);
  }

  public JsonWriter nullField(String name) {
    return name(name).nullValue();
  }

  /** A number as JSON takes it, without exponent. */
  public static String number(double number, int decimals) {
    if (!Double.isFinite(number)) {
      return "null";
    }
    BigDecimal rounded = BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private JsonWriter begin(char opening, char closing) {
    separate();
    raw(String.valueOf(opening));
    open.push(closing);
    first = true;
    return this;
  }

  private JsonWriter end(char closing) {
    if (open.isEmpty() || open.peek() != closing || afterName) {
      throw new IllegalStateException("'" + closing + "' closes nothing");
    }
    boolean empty = first;
    boolean ownLine = indented();
    open.pop();
    first = false;
    if (!empty && ownLine) {
      newLine();
    }
    raw(String.valueOf(closing));
    if (open.isEmpty()) {
      raw("\n");
    }
    return this;
  }

  private void separate() {
    if (afterName) {
      afterName = false;
      return;
    }
    if (!first) {
      raw(layout == Layout.ONE_LINE || indented() ? "," : ", ");
    }
    if (!open.isEmpty() && indented()) {
      newLine();
    }
    first = false;
  }

  private boolean indented() {
    return layout == Layout.INDENTED && open.size() <= DEEPEST_INDENTED;
  }

  private void newLine() {
    raw("\n" + "  ".repeat(open.size()));
  }

  private void string(String text) {
    StringBuilder escaped = new StringBuilder(text.length() + 2).append('"');
    for (int i = 0; i < text.length(); i++) {
      escape(escaped, text, i);
    }
    raw(escaped.append('"').toString());
  }

  private static void escape(StringBuilder escaped, String text, int i) {
    char c = text.charAt(i);
    switch (c) {
      case '"' -> escaped.append("\\\"");
      case '\\' -> escaped.append("\\\\");
      case '\n' -> escaped.append("\\n");
      case '\r' -> escaped.append("\\r");
      case '\t' -> escaped.append("\\t");
      default -> {
        boolean asCode = c < 0x20 || c == 0x7f || c == '<' || loneSurrogate(text, i);
        escaped.append(asCode ? String.format("\\u%04x", (int) c) : String.valueOf(c));
      }
    }
  }

  /** Half a character cannot be written as UTF-8. */
  private static boolean loneSurrogate(String text, int i) {
    char c = text.charAt(i);
    if (Character.isHighSurrogate(c)) {
      return i + 1 == text.length() || !Character.isLowSurrogate(text.charAt(i + 1));
    }
    return Character.isLowSurrogate(c)
        && (i == 0 || !Character.isHighSurrogate(text.charAt(i - 1)));
  }

  private void raw(String text) {
    try {
      out.append(text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
