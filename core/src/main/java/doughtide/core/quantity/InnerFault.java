package doughtide.core.quantity;

/**
 * A number that the program itself worked out, or asked a result for, lies where it never may: a
 * fault of the program, not of what was given to it. Bad input is an {@link InputException}.
 */
public final class InnerFault extends IllegalStateException {
  private static final long serialVersionUID = 1L;

  /**
   * @param message one line: what lies where it may not
   */
  public InnerFault(String message) {
    super(message);
  }
}
