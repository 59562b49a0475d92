package doughtide.cli.file;

import doughtide.cli.session.Environment;
import doughtide.core.document.Kitchen;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The file of the baker's kitchen: the one that was named, else the one that an environment
 * variable names, else {@code kitchen.txt} in the user's folder of settings.
 *
 * @param path where it is, whether there is one or not
 * @param source what named it, for messages
 * @param mustExist whether somebody has named it, so that it must be there
 */
public record KitchenFile(Path path, String source, boolean mustExist) {

  public static final String OPTION = "kitchen";
  static final String VARIABLE = "DOUGHTIDE_KITCHEN";
  private static final String FILE = "kitchen.txt";

  /**
   * The kitchen that holds here.
   *
   * @param named as typed, if one was named
   * @return nothing where the platform has no place for it
   */
  public static Optional<KitchenFile> of(Optional<String> named, Environment environment) {
    if (named.isPresent()) {
      return Optional.of(of("--" + OPTION, named.get(), environment));
    }
    Optional<String> variable = environment.variable(VARIABLE);
    if (variable.isPresent()) {
      return Optional.of(of(VARIABLE, variable.get(), environment));
    }
    return environment
        .configuration()
        .map(folder -> new KitchenFile(folder.resolve(FILE), "--" + OPTION, false));
  }

  private static KitchenFile of(String source, String name, Environment environment) {
    return new KitchenFile(FileNames.path(source, name, environment), source, true);
  }

  /** The name for messages. */
  public String shown() {
    return path.toString();
  }

  /** Whether there is such a file. */
  public boolean exists() {
    return Files.exists(path);
  }

  /** Whether nobody has named it and it is not there: an empty kitchen. */
  public boolean isAbsent() {
    return !mustExist && !exists();
  }

  /**
   * The kitchen; an empty one if nobody has named a file and there is none.
   *
   * @throws InputException with file and line if it cannot be read
   */
  public Kitchen read(Environment environment) {
    if (isAbsent()) {
      return Kitchen.empty();
    }
    if (!exists()) {
      throw new InputException(
          FileProblem.quoted(shown())
              + " does not exist, which "
              + source
              + " names as your kitchen: make it with kitchen set room 19C, or leave it out with"
              + " --no-kitchen");
    }
    return DocumentFile.read(
        source, shown(), environment, lines -> Kitchen.read(lines, environment.catalogue()));
  }

  /** A file that the kitchen names, seen from where the kitchen is. */
  public String beside(String name) {
    Path folder = path.getParent();
    return folder == null ? name : folder.resolve(name).toString();
  }

  /**
   * Sets values, or takes them out, all or none; the file is made if there is none.
   *
   * @param changes key and value as typed; an empty value takes the line out
   */
  public void set(Map<String, Optional<String>> changes, Environment environment)
      throws IOException {
    List<String> lines = exists() ? lines(environment) : List.of("# my kitchen");
    for (Map.Entry<String, Optional<String>> change : changes.entrySet()) {
      lines =
          Kitchen.changed(lines, change.getKey(), change.getValue(), environment.catalogue())
              .lines()
              .toList();
    }
    makeFolder();
    OutputFile.of(source, shown(), OutputFile.Existing.RENEW, environment)
        .write(String.join("\n", lines) + "\n");
  }

  /** Makes the folder of the kitchen if there is none. */
  public void makeFolder() throws IOException {
    Path folder = path.getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
  }

  /** The name of a file as the kitchen names it: from its own folder, if it lies there. */
  public String nameOf(Path file) {
    Path whole = file.toAbsolutePath().normalize();
    Path own = path.toAbsolutePath().normalize().getParent();
    return own != null && whole.startsWith(own)
        ? own.relativize(whole).toString()
        : whole.toString();
  }

  private List<String> lines(Environment environment) {
    return DocumentFile.read(
        source,
        shown(),
        environment,
        lines -> {
          List<String> all = new ArrayList<>();
          lines.forEachRemaining(all::add);
          return all;
        });
  }
}
