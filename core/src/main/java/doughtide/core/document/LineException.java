package doughtide.core.document;

import doughtide.core.quantity.InputException;

/** A line of a document that cannot be used. The message begins with its number. */
public final class LineException extends InputException {
  private static final long serialVersionUID = 1L;

  private final long line;
  private final String what;

  /**
   * @param line its number, from 1
   * @param what what is wrong and what to do, in one line
   */
  public LineException(long line, String what) {
    super("document.line", "line " + line + ": " + what);
    this.line = line;
    this.what = what;
  }

  /**
   * @param line its number, from 1
   * @param cause what is wrong with a value in it
   */
  public LineException(long line, InputException cause) {
    super(cause, "line " + line + ": " + cause.getMessage());
    this.line = line;
    this.what = String.valueOf(cause.getMessage());
  }

  /** {@return its number, from 1} */
  public long line() {
    return line;
  }

  /** {@return what is wrong with it, without its number} */
  public String what() {
    return what;
  }
}
