package doughtide.cli.file;

import doughtide.cli.session.CallFiles;
import doughtide.cli.session.Environment;
import doughtide.core.quantity.InputException;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.Locale;

/**
 * A file to be written whole or not at all: the content goes into a new file beside it, which is
 * then moved into place. A reader sees the old content or the new, whenever the program ends.
 */
public final class OutputFile {

  /** What happens to a file that is there already. */
  public enum Existing {
    /** Refuse, and leave it alone. */
    KEEP,
    /** Replace it. */
    REPLACE,
    /** Replace it, although this call has read it: a file that the program keeps for somebody. */
    RENEW
  }

  /** Writes the content. */
  @FunctionalInterface
  public interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  private final String shown;
  private final Path target;
  private final Existing existing;
  private final CallFiles files;

  private OutputFile(String shown, Path target, Existing existing, CallFiles files) {
    this.shown = shown;
    this.target = target;
    this.existing = existing;
    this.files = files;
  }

  /**
   * A file to write; what can be known beforehand is checked now, so that a long job does not fail
   * at its end.
   *
   * @param option the option that named it, for messages
   * @param name as typed
   * @param existing what happens to a file that is there already
   * @throws InputException if the file cannot be written, or this call has read it
   */
  public static OutputFile of(
      String option, String name, Existing existing, Environment environment) {
    Path path = FileNames.path(option, name, environment);
    if (path.getFileName() == null) {
      throw new InputException(option + " " + FileProblem.quoted(name) + " names no file");
    }
    if (name.endsWith("/")) {
      throw new InputException(FileProblem.quoted(name) + " is a folder: give the name of a file");
    }
    try {
      OutputFile file = new OutputFile(name, resolved(name, path), existing, environment.files());
      file.check();
      if (existing != Existing.RENEW) {
        file.files.writes(file.target, FileProblem.quoted(name));
      }
      return file;
    } catch (IOException e) {
      throw FileProblem.of(name, e);
    }
  }

  /** A link is followed, so that it goes on being a link. */
  private static Path resolved(String name, Path path) throws IOException {
    if (!Files.isSymbolicLink(path)) {
      return path;
    }
    try {
      return path.toRealPath();
    } catch (NoSuchFileException e) {
      throw new InputException(
          FileProblem.quoted(name) + " is a link to a file that does not exist: name the file");
    }
  }

  private void check() throws IOException {
    Path folder = folder();
    if (!Files.isDirectory(folder)) {
      boolean other = Files.exists(folder);
      throw new InputException(
          "the folder of "
              + FileProblem.quoted(shown)
              + (other
                  ? " is not a folder: choose another name"
                  : " does not exist: make it first"));
    }
    if (Files.isDirectory(target)) {
      throw new InputException(FileProblem.quoted(shown) + " is a folder: give the name of a file");
    }
    if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      checkExisting();
    }
    if (!Files.isWritable(folder)) {
      throw new AccessDeniedException(shown);
    }
  }

  private void checkExisting() throws IOException {
    if (!Files.isRegularFile(target)) {
      throw new InputException(
          FileProblem.quoted(shown) + " is not an ordinary file: give another name");
    }
    if (existing == Existing.KEEP) {
      throw new FileAlreadyExistsException(shown);
    }
    if (!Files.isWritable(target)) {
      throw new AccessDeniedException(shown);
    }
  }

  private Path folder() {
    Path parent = target.toAbsolutePath().getParent();
    return parent == null ? target.toAbsolutePath() : parent;
  }

  /** The file as the user named it. */
  public String shown() {
    return shown;
  }

  /** Where it is. */
  public Path path() {
    return target;
  }

  /** The ending of the name in small letters, without the dot; empty if there is none. */
  public String ending() {
    String name = String.valueOf(target.getFileName());
    int dot = name.lastIndexOf('.');
    return dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
  }

  /** Writes text as UTF-8. */
  public void write(String text) {
    write(out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
  }

  /**
   * Writes the file. If anything fails, nothing is left behind and an older file stays as it was.
   *
   * @throws InputException with one line that names the file, if it cannot be written
   */
  public void write(Content content) {
    try {
      writeBeside(content);
    } catch (IOException e) {
      throw FileProblem.of(shown, e);
    }
  }

  private void writeBeside(Content content) throws IOException {
    Path part = newPart();
    part.toFile().deleteOnExit();
    try {
      fill(part, content);
      keepPermissions(part);
      moveIntoPlace(part);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /** A fresh name beside the target; the process number keeps two runs apart. */
  private Path newPart() throws IOException {
    long process = ProcessHandle.current().pid();
    for (int i = 0; i < 1000; i++) {
      Path part = folder().resolve(".doughtide-" + process + "-" + i + ".part");
      try {
        return Files.createFile(part);
      } catch (FileAlreadyExistsException left) {
        // Left by a run that was killed, or another thread's: take the next number.
      }
    }
    throw new FileSystemException(shown, null, "too many unfinished files in its folder");
  }

  private static void fill(Path part, Content content) throws IOException {
    try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
      OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel));
      content.writeTo(out);
      out.flush();
      channel.force(true);
    }
  }

  private void keepPermissions(Path part) throws IOException {
    PosixFileAttributeView old = Files.getFileAttributeView(target, PosixFileAttributeView.class);
    if (old != null && Files.exists(target)) {
      Files.setPosixFilePermissions(part, old.readAttributes().permissions());
    }
  }

  /**
   * A path beside the target, to be written.
   *
   * @param ending what its name has more
   * @throws InputException if this call has read that file
   */
  public Path beside(String ending) {
    Path path = folder().resolve(target.getFileName() + ending);
    try {
      files.writes(path, FileProblem.quoted(shown + ending));
    } catch (IOException e) {
      throw FileProblem.of(shown + ending, e);
    }
    return path;
  }

  /**
   * Moves a complete file into place.
   *
   * @throws IOException if that fails; the complete file is still there then
   */
  public void finish(Path complete) throws IOException {
    keepPermissions(complete);
    moveIntoPlace(complete);
    Files.deleteIfExists(complete);
  }

  private void moveIntoPlace(Path part) throws IOException {
    if (existing != Existing.KEEP) {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
      return;
    }
    try {
      // A hard link never replaces a file that came up in the meantime; a move would.
      Files.createLink(target, part);
    } catch (FileAlreadyExistsException e) {
      throw e;
    } catch (UnsupportedOperationException | FileSystemException noLinksHere) {
      Files.move(part, target);
    }
  }
}
