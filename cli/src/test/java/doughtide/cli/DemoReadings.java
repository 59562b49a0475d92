package doughtide.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.stream.Stream;

/** Puts the invented readings of the bread class into a folder, as a newcomer would have them. */
public final class DemoReadings {
  private static final Path TESTDATA = Path.of(System.getProperty("doughtide.testdata"));

  private DemoReadings() {}

  public static void copyTo(Path folder) throws IOException {
    Path bakes = Files.createDirectories(folder.resolve("quayside-bakes"));
    for (Path file : files(TESTDATA.resolve("quayside-bakes"))) {
      Files.copy(
          file, bakes.resolve(file.getFileName().toString()), StandardCopyOption.REPLACE_EXISTING);
    }
    Files.copy(
        TESTDATA.resolve("quayside-today.csv"),
        folder.resolve("quayside-today.csv"),
        StandardCopyOption.REPLACE_EXISTING);
  }

  /** The same, and what was learned from them as {@code starter.json} and {@code starter.txt}. */
  public static void learnedIn(Path folder) throws IOException {
    copyTo(folder);
    Files.writeString(folder.resolve("starter.json"), Learned.STARTER);
    Files.writeString(folder.resolve("starter.txt"), Learned.STARTER);
  }

  /** Learned once for all tests. */
  private static final class Learned {
    private static final String STARTER = learn();

    private static String learn() {
      try {
        Path folder = Files.createTempDirectory("learned");
        copyTo(folder);
        String[] call = {"learn", "quayside-bakes", "--save", "starter.txt"};
        CliRun run = CliRun.in(TestEnvironment.in(folder), call);
        if (run.code() != 0) {
          throw new IllegalStateException(run.err());
        }
        return Files.readString(folder.resolve("starter.txt"));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.sorted().toList();
    }
  }
}
