package doughtide.report.type;

/** A chart that cannot be drawn on this machine. The message is one line that says what to do. */
final class ChartException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public ChartException(String message, Throwable cause) {
    super(message, cause);
  }
}
