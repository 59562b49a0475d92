package doughtide.cli;

import java.io.IOException;
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
    CliRun run =
        CliRun.in(
            TestEnvironment.in(folder),
            "learn",
            "quayside-bakes",
            "--save",
            "starter.json",
            "--overwrite");
    Files.copy(
        folder.resolve("starter.json"),
        folder.resolve("starter.txt"),
        StandardCopyOption.REPLACE_EXISTING);
    if (run.code() != 0) {
      throw new IllegalStateException(run.err());
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.sorted().toList();
    }
  }
}
