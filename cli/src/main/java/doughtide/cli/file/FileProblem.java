package doughtide.cli.file;

import doughtide.cli.text.OneLine;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Shorten;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.ReadOnlyFileSystemException;

/** Says in one line what is wrong with a file and what to do. */
public final class FileProblem {

  private FileProblem() {}

  /** A failure whose exception names the file. */
  public static InputException of(IOException e) {
    String file = e instanceof FileSystemException f && f.getFile() != null ? f.getFile() : "";
    return of(file.isEmpty() ? "a file" : file, e);
  }

  /**
   * A failure with a file.
   *
   * @param file as the user named it
   * @param e what happened
   */
  public static InputException of(String file, Exception e) {
    return new InputException(quoted(file) + " " + words(e));
  }

  public static String quoted(String file) {
    return "'" + OneLine.harmless(Shorten.to(file, 200)) + "'";
  }

  private static String words(Exception e) {
    String message = String.valueOf(e.getMessage());
    if (e instanceof NoSuchFileException) {
      return "does not exist: check the name and the folder";
    }
    if (e instanceof AccessDeniedException || message.contains("ermission denied")) {
      return "may not be used: check the permissions of the file and its folder";
    }
    if (e instanceof FileAlreadyExistsException) {
      return "exists already: give another name, or --overwrite to replace it";
    }
    if (message.contains("No space left") || message.contains("quota")) {
      return "could not be written, the disk is full: free some space; nothing was left behind";
    }
    if (e instanceof ReadOnlyFileSystemException || message.contains("ead-only file system")) {
      return "could not be written, the disk is read-only: choose another folder";
    }
    if (message.contains("name too long")) {
      return "has too long a name: choose a shorter one";
    }
    if (message.contains("Is a directory")) {
      return "is a folder: give the name of a file";
    }
    return "could not be read or written (" + reason(e) + "): check the disk and the name";
  }

  private static String reason(Exception e) {
    if (e instanceof FileSystemException f && f.getReason() != null) {
      return f.getReason();
    }
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }
}
