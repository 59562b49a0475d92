package doughtide.cli.file;

import doughtide.cli.session.Environment;
import doughtide.core.quantity.InputException;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Optional;

/**
 * The lines of a text file that a person or a logger wrote, one at a time: strict UTF-8, any line
 * ending, with or without a byte-order mark, lines of at most 65 536 bytes. Memory does not grow
 * with the file.
 */
public final class InputLines implements Closeable {

  private static final int LONGEST_LINE = 65_536;
  private static final int FARTHEST_END = 64 * 1024 * 1024;
  private static final int END = -1;

  /**
   * One line.
   *
   * @param number from 1
   * @param text without its ending
   */
  public record Line(long number, String text) {}

  private final String shown;
  private final InputStream in;
  private final CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream(256);
  private long number;
  private int pushedBack = END;
  private boolean ended = true;

  private InputLines(String shown, InputStream in) {
    this.shown = shown;
    this.in = in;
  }

  /**
   * Opens a file.
   *
   * @param option the option that named it, for messages
   * @param name as typed
   * @throws InputException if there is no such file, or it cannot be read, or it is empty, or this
   *     call is to write it
   */
  public static InputLines open(String option, String name, Environment environment) {
    Path path = FileNames.path(option, name, environment);
    try {
      checkKind(name, path);
      environment.files().reads(path, FileProblem.quoted(name));
      return of(name, Files.newInputStream(path));
    } catch (IOException e) {
      throw FileProblem.of(name, e);
    }
  }

  private static void checkKind(String name, Path path) throws IOException {
    if (!Files.exists(path)) {
      throw new NoSuchFileException(name);
    }
    if (Files.isDirectory(path)) {
      throw new InputException(FileProblem.quoted(name) + " is a folder: give the name of a file");
    }
    if (Files.isRegularFile(path) && Files.size(path) == 0) {
      throw new InputException(FileProblem.quoted(name) + " is empty: there is nothing to read");
    }
  }

  /**
   * Reads from a stream.
   *
   * @param shown the name for messages
   * @param in is closed with this
   */
  public static InputLines of(String shown, InputStream in) {
    return new InputLines(shown, new BufferedInputStream(in));
  }

  /**
   * The next line, or nothing at the end.
   *
   * @throws InputException if the line is too long or not UTF-8; the message carries its number
   */
  public Optional<Line> next() {
    try {
      return readLine() ? Optional.of(new Line(number, decoded())) : Optional.empty();
    } catch (IOException e) {
      throw FileProblem.of(shown, e);
    }
  }

  /** The lines from here on, for a reader of the library. */
  public Iterator<String> iterator() {
    return new Iterator<>() {
      private Optional<Line> following = InputLines.this.next();

      @Override
      public boolean hasNext() {
        return following.isPresent();
      }

      @Override
      public String next() {
        String text = following.orElseThrow().text();
        following = InputLines.this.next();
        return text;
      }
    };
  }

  /** The name for messages, in quotes. */
  public String quotedName() {
    return FileProblem.quoted(shown);
  }

  /** What is wrong with a line, as an exception that names file and line. */
  public InputException problem(Line line, String what) {
    return problem(line.number(), what);
  }

  private BadLine problem(long lineNumber, String what) {
    return new BadLine(shown, lineNumber, what);
  }

  /** A line that cannot be used. */
  public static final class BadLine extends InputException {
    private static final long serialVersionUID = 1;

    private final long line;
    private final String what;

    private BadLine(String shown, long line, String what) {
      super(FileProblem.quoted(shown) + " line " + line + ": " + what);
      this.line = line;
      this.what = what;
    }

    /** Its number, from 1. */
    public long line() {
      return line;
    }

    /** What is wrong with it, without file and number. */
    public String what() {
      return what;
    }
  }

  /**
   * After a {@link BadLine}: passes over what is left of that line.
   *
   * @throws InputException if its end is nowhere near
   */
  public void skipRest() {
    try {
      for (int skipped = 0; !ended; skipped++) {
        if (skipped > FARTHEST_END) {
          throw problem(number, "the line does not end: is this the right file?");
        }
        ended = isEnd(read());
      }
    } catch (IOException e) {
      throw FileProblem.of(shown, e);
    }
  }

  /** Reads up to the next LF, CR LF or CR; false at the end of the file. */
  private boolean readLine() throws IOException {
    bytes.reset();
    int c = read();
    if (c == END) {
      return false;
    }
    number++;
    ended = false;
    while (!isEnd(c)) {
      checkByte(c);
      bytes.write(c);
      c = read();
    }
    ended = true;
    return true;
  }

  /** Whether a byte ends the line; takes the LF after a CR with it. */
  private boolean isEnd(int c) throws IOException {
    if (c == '\r') {
      int following = read();
      pushedBack = following == '\n' ? END : following;
    }
    return c == END || c == '\n' || c == '\r';
  }

  private int read() throws IOException {
    if (pushedBack == END) {
      return in.read();
    }
    int c = pushedBack;
    pushedBack = END;
    return c;
  }

  private void checkByte(int c) {
    if (c == 0) {
      throw problem(number, "this is no UTF-8 text (a zero byte): save the file as text in UTF-8");
    }
    if (bytes.size() >= LONGEST_LINE) {
      throw problem(
          number, "the line is longer than " + LONGEST_LINE + " bytes: is this the right file?");
    }
  }

  private String decoded() {
    try {
      String text = decoder.decode(ByteBuffer.wrap(bytes.toByteArray())).toString();
      return number == 1 && text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw problem(number, "this is no UTF-8 text: save the file as text in UTF-8");
    }
  }

  @Override
  public void close() {
    try {
      in.close();
    } catch (IOException e) {
      throw FileProblem.of(shown, e);
    }
  }
}
