package doughtide.core.document;

import java.util.Optional;

/** Builds the text of a document, which {@link DocumentReader} reads back. */
final class DocumentText {

  private final StringBuilder text = new StringBuilder();

  /**
   * @param kind what it is, for the remark in its first line
   */
  DocumentText(String kind) {
    text.append("# doughtide ").append(kind).append('\n');
  }

  /** Adds a line. */
  DocumentText line(String key, String value) {
    text.append(line(key, value, "\n"));
    return this;
  }

  /** One line without its ending. */
  static String line(String key, String value, String ending) {
    return key + ": " + quoted(oneLine(value)) + ending;
  }

  /** Adds a line if there is a value. */
  DocumentText line(String key, Optional<String> value) {
    value.ifPresent(each -> line(key, each));
    return this;
  }

  /** Without line ends and other control characters. */
  private static String oneLine(String value) {
    StringBuilder line = new StringBuilder(value.length());
    value
        .codePoints()
        .forEach(
            c ->
                line.appendCodePoint(
                    Character.isISOControl(c) || c == '\u2028' || c == '\u2029' ? ' ' : c));
    return line.toString();
  }

  /** A value that would lose its ends is put into quotation marks. */
  private static String quoted(String value) {
    return DocumentReader.value(value).equals(value)
        ? value
        : '"' + value.replace("\"", "\"\"") + '"';
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
