package doughtide.cli.file;

import doughtide.cli.session.Environment;
import doughtide.core.document.LineException;
import doughtide.core.quantity.InputException;
import java.util.Iterator;
import java.util.function.Function;
import java.util.function.Supplier;

/** Has the library read a file; what is wrong with it is told with the name of the file. */
public final class DocumentFile {

  private DocumentFile() {}

  /**
   * Reads a file.
   *
   * @param option what it was named with, for messages
   * @param name as typed
   * @param reader takes the lines, without their endings
   * @throws InputException with file and line if a line cannot be used
   */
  public static <T> T read(
      String option, String name, Environment environment, Function<Iterator<String>, T> reader) {
    try (InputLines lines = InputLines.open(option, name, environment)) {
      return read(name, lines.iterator(), reader);
    }
  }

  private static <T> T read(
      String name, Iterator<String> lines, Function<Iterator<String>, T> reader) {
    return named(name, () -> reader.apply(lines));
  }

  /** Does what may refuse a part of a file, and names the file. */
  public static <T> T named(String name, Supplier<T> work) {
    try {
      return work.get();
    } catch (InputLines.BadLine e) {
      throw e;
    } catch (LineException e) {
      throw e.inWords(FileProblem.quoted(name) + " line " + e.line() + ": " + e.what());
    } catch (InputException e) {
      throw e.inWords(FileProblem.quoted(name) + ": " + e.getMessage());
    }
  }
}
