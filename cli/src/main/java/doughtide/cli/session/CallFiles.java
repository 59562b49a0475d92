package doughtide.cli.session;

import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;

/**
 * The files that one call reads and those that it is to write. A file that would be both is
 * refused, whichever comes first, so that nothing is lost of what somebody typed; links are
 * followed.
 */
public final class CallFiles {

  private final Set<Path> read = new HashSet<>();
  private final Set<Path> written = new HashSet<>();

  /**
   * Tells of a file that is read.
   *
   * @param path where it is
   * @param shown its name for messages, in quotes
   * @throws InputException if it is to be written, too
   */
  public void reads(Path path, String shown) throws IOException {
    both(read, written, path, shown);
  }

  /**
   * Tells of a file that is to be written.
   *
   * @param path where it is or will be
   * @param shown its name for messages, in quotes
   * @throws InputException if it has been read
   */
  public void writes(Path path, String shown) throws IOException {
    both(written, read, path, shown);
  }

  private static void both(Set<Path> these, Set<Path> others, Path path, String shown)
      throws IOException {
    Path real = Files.exists(path) ? path.toRealPath() : path.toAbsolutePath().normalize();
    if (others.contains(real)) {
      throw new InputException(
          "file.read-and-written",
          shown + " is read by this call and would be lost by writing it: give another name");
    }
    these.add(real);
  }
}
