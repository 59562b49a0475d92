package doughtide.cli.session;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * A stream whose failure ends the program instead of being swallowed by {@link PrintStream}, so
 * that a long job stops when nobody reads any more.
 */
public final class StandardOutput extends OutputStream {

  private final OutputStream target;

  public StandardOutput(OutputStream target) {
    this.target = target;
  }

  /** The answer, always UTF-8 whatever the locale says. */
  public static PrintStream out() {
    OutputStream plain = new StandardOutput(new FileOutputStream(FileDescriptor.out));
    return new PrintStream(new BufferedOutputStream(plain), false, StandardCharsets.UTF_8);
  }

  /** Messages; a failure here is nobody's business. */
  public static PrintStream err() {
    return new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
  }

  @Override
  public void write(int b) {
    try {
      target.write(b);
    } catch (IOException e) {
      throw new OutputClosedException(e);
    }
  }

  @Override
  public void write(byte[] bytes, int offset, int length) {
    try {
      target.write(bytes, offset, length);
    } catch (IOException e) {
      throw new OutputClosedException(e);
    }
  }

  @Override
  public void flush() {
    try {
      target.flush();
    } catch (IOException e) {
      throw new OutputClosedException(e);
    }
  }
}
