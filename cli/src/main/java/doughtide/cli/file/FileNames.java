package doughtide.cli.file;

import doughtide.cli.session.Environment;
import doughtide.core.quantity.InputException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;

/** Turns the name of a file, as typed, into a path. */
public final class FileNames {

  private FileNames() {}

  /**
   * The path of a file.
   *
   * @param option what the name was given for, for messages
   * @param name as typed, relative to the folder of the environment
   * @throws InputException if the name is empty or cannot be a file name here
   */
  public static Path path(String option, String name, Environment environment) {
    if (name.isBlank()) {
      throw new InputException(option + " '' is empty: give the name of a file");
    }
    if (name.indexOf('\uFFFD') >= 0) {
      throw unreadable(option, name);
    }
    try {
      return environment.directory().resolve(name);
    } catch (InvalidPathException e) {
      throw unreadable(option, name);
    }
  }

  /** In the plain C locale, Java before 18 cannot read or write other letters in file names. */
  private static InputException unreadable(String option, String name) {
    return new InputException(
        option
            + " "
            + FileProblem.quoted(name)
            + " holds letters that this locale cannot write as a file name: use plain letters, or"
            + " set LC_ALL=C.UTF-8");
  }
}
