package doughtide.cli.hand;

import doughtide.cli.file.FileNames;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.session.Environment;
import doughtide.core.document.DoughNotes;
import doughtide.core.document.ReadingsDocument;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The files of the doughs in hand: those of the current folder, one a dough. */
public final class DoughFiles {

  private static final String ENDING = ".txt";
  private static final List<String> ENDINGS = List.of(ENDING, ".csv");
  private static final Pattern NAME =
      Pattern.compile("[\\p{L}\\p{N}](?:[\\p{L}\\p{M}\\p{N} ._-]{0,58}[\\p{L}\\p{M}\\p{N}_-])?");
  private static final Pattern TAKEN =
      Pattern.compile("(?i)(con|prn|aux|nul|com[0-9]|lpt[0-9])(\\..*)?");
  private static final Duration IN_HAND = Duration.ofHours(72);
  private static final long LARGEST_BYTES = 1 << 20;
  private static final int MOST_NAMED = 5;

  private DoughFiles() {}

  /**
   * The file of a new dough.
   *
   * @param typed its name
   * @throws InputException if that cannot be the name of a dough, or there is such a file
   */
  public static String fresh(String typed, Environment environment) {
    String file = fresh(typed);
    if (Files.exists(FileNames.path("NAME", file, environment), LinkOption.NOFOLLOW_LINKS)) {
      throw new InputException(
          FileProblem.quoted(file)
              + " exists already, and no dough is begun over another: give another name");
    }
    return file;
  }

  private static String fresh(String typed) {
    String name = typed.strip().replaceFirst("(?i)\\.txt$", "");
    if (!NAME.matcher(name).matches() || TAKEN.matcher(name).matches()) {
      throw new InputException(
          "NAME "
              + FileProblem.quoted(typed)
              + " cannot name a dough: use 1 to 60 letters, digits, spaces, dots or dashes,"
              + " beginning with a letter or digit, for example saturday");
    }
    NoteWords.understood(name)
        .ifPresent(
            meant -> {
              throw new InputException(
                  "NAME "
                      + FileProblem.quoted(typed)
                      + " cannot name a dough: doughtide note takes it for what is noted of one"
                      + (meant.equalsIgnoreCase(name) ? "" : " (" + meant + ")")
                      + ", not for its name: choose another, for example saturday");
            });
    return name + ENDING;
  }

  /**
   * The file of a dough, by its name or the name of its file.
   *
   * @throws InputException if there is none
   */
  public static String named(String typed, Environment environment) {
    return Stream.concat(ENDINGS.stream().map(ending -> typed + ending), Stream.of(typed))
        .filter(file -> Files.isRegularFile(FileNames.path("NAME", file, environment)))
        .findFirst()
        .orElseThrow(
            () ->
                new InputException(
                    "there is no dough "
                        + FileProblem.quoted(typed)
                        + " in this folder: "
                        + others(environment)));
  }

  /**
   * The file of the newest dough of the folder that is in hand: mixed in the last three days, and
   * without a result.
   *
   * @throws InputException if there is none
   */
  public static String newest(Environment environment) {
    return inHand(environment)
        .map(Dough::file)
        .findFirst()
        .orElseThrow(
            () -> new InputException("no dough of this folder is in hand: " + others(environment)));
  }

  private static String others(Environment environment) {
    String names =
        inHand(environment)
            .limit(MOST_NAMED)
            .map(each -> FileProblem.quoted(each.file()))
            .collect(Collectors.joining(", "));
    return names.isEmpty()
        ? "begin one, for example doughtide start saturday --dough-temp 25C, or name its file"
        : "name one of " + names;
  }

  private record Dough(String file, Instant mixed) {}

  /** The newest first. */
  private static Stream<Dough> inHand(Environment environment) {
    List<Path> paths;
    try (Stream<Path> all = Files.list(environment.directory())) {
      paths = all.sorted().toList();
    } catch (IOException e) {
      throw FileProblem.of("the folder", e);
    }
    Instant since = environment.now().minus(IN_HAND);
    return paths.stream()
        .filter(DoughFiles::mayBe)
        .flatMap(path -> dough(path, environment).stream())
        .filter(dough -> dough.mixed().isAfter(since))
        .sorted(Comparator.comparing(Dough::mixed).reversed());
  }

  private static boolean mayBe(Path path) {
    String name = String.valueOf(path.getFileName()).toLowerCase(Locale.ROOT);
    return !name.startsWith(".")
        && ENDINGS.stream().anyMatch(name::endsWith)
        && Files.isRegularFile(path);
  }

  /** A file whose dough cannot be read counts, so that what is wrong with it is told. */
  private static Optional<Dough> dough(Path path, Environment environment) {
    String file = String.valueOf(path.getFileName());
    try {
      if (Files.size(path) > LARGEST_BYTES) {
        return Optional.empty();
      }
      String text = Files.readString(path, StandardCharsets.UTF_8);
      Instant changed = Files.getLastModifiedTime(path).toInstant();
      return DoughNotes.hasTable(text, environment.catalogue().vocabulary())
          ? dough(file, text, changed, environment)
          : Optional.empty();
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }

  private static Optional<Dough> dough(
      String file, String text, Instant changed, Environment environment) {
    try {
      ReadingsDocument document =
          ReadingsDocument.read(
              text.lines().iterator(), ReadingsFile.settingInHand(file, environment));
      Optional<Instant> mixed =
          document.head().dated()
              ? document.mixed().map(moment -> moment.toInstant())
              : Optional.empty();
      return document.head().result().isPresent()
          ? Optional.empty()
          : Optional.of(new Dough(file, mixed.orElse(changed)));
    } catch (InputException refused) {
      return Optional.of(new Dough(file, changed));
    }
  }
}
