package doughtide.cli.session;

import java.io.IOException;

/** Standard output no longer takes anything; there is nothing left to do but end. */
public final class OutputClosedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public OutputClosedException(IOException cause) {
    super(cause);
  }

  /** Whether the reader simply left, as the next program in a pipe may. */
  public boolean readerLeft() {
    String message = String.valueOf(getCause() == null ? "" : getCause().getMessage());
    return message.contains("roken pipe") || message.contains("pipe is being closed");
  }

  public String reason() {
    return getCause() == null ? "unknown reason" : String.valueOf(getCause().getMessage());
  }
}
