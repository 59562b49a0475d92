package doughtide.core.quantity;

/**
 * A value that cannot be used. The message is one line: what was given, what is allowed, what to
 * do.
 */
public class InputException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  /**
   * @param message one line, without the name of a class or a stack
   */
  public InputException(String message) {
    super(message);
  }
}
