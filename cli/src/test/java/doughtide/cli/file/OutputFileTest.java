package doughtide.cli.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.cli.TestEnvironment;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFileTest {

  @TempDir Path temporary;
  private Path folder;

  @BeforeEach
  void makeAFolderWithASpace() throws IOException {
    folder = Files.createDirectory(temporary.resolve("bread class"));
  }

  @Test
  void aNewFileIsWritten() throws IOException {
    keeping("rise.txt").write("72 % – 25 °C\n");
    assertThat(folder.resolve("rise.txt")).hasContent("72 % – 25 °C\n");
    assertThat(names()).containsExactly("rise.txt");
  }

  @Test
  void anExistingFileIsLeftAlone() throws IOException {
    Files.writeString(folder.resolve("rise.txt"), "old");
    refused("rise.txt", "'rise.txt' exists already: give another name, or --overwrite");
    assertThat(folder.resolve("rise.txt")).hasContent("old");
  }

  @Test
  void aFileThatComesUpInTheMeantimeIsLeftAlone() throws IOException {
    OutputFile file = keeping("rise.txt");
    Files.writeString(folder.resolve("rise.txt"), "other");
    assertThatThrownBy(() -> file.write("new")).hasMessageContaining("exists already");
    assertThat(folder.resolve("rise.txt")).hasContent("other");
    assertThat(names()).containsExactly("rise.txt");
  }

  @Test
  void overwritingKeepsThePermissions() throws IOException {
    Path old = Files.writeString(folder.resolve("rise.txt"), "old");
    Files.setPosixFilePermissions(old, PosixFilePermissions.fromString("rw-r-----"));
    replacing("rise.txt").write("new");
    assertThat(old).hasContent("new");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(old)))
        .isEqualTo("rw-r-----");
  }

  @Test
  void aFailureLeavesTheOldFileAndNothingElse() throws IOException {
    Files.writeString(folder.resolve("rise.txt"), "old");
    OutputFile file = replacing("rise.txt");
    OutputFile.Content full =
        out -> {
          out.write(new byte[100_000]);
          throw new FileSystemException("x", null, "No space left on device");
        };
    assertThatThrownBy(() -> file.write(full))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("'rise.txt' could not be written, the disk is full");
    assertThat(folder.resolve("rise.txt")).hasContent("old");
    assertThat(names()).containsExactly("rise.txt");
  }

  @Test
  void aFaultOfTheProgramLeavesNothingEither() {
    OutputFile file = keeping("rise.txt");
    OutputFile.Content faulty =
        out -> {
          throw new IllegalStateException("fault");
        };
    assertThatThrownBy(() -> file.write(faulty)).isInstanceOf(IllegalStateException.class);
    assertThat(names()).isEmpty();
  }

  @Test
  void aLinkIsFollowedAndStays() throws IOException {
    Path target = Files.writeString(folder.resolve("target.txt"), "old");
    Path link = Files.createSymbolicLink(folder.resolve("link.txt"), Path.of("target.txt"));
    refused("link.txt", "exists already");
    replacing("link.txt").write("new");
    assertThat(link).isSymbolicLink();
    assertThat(target).hasContent("new");
  }

  @Test
  void aLinkToNowhereIsRefused() throws IOException {
    Files.createSymbolicLink(folder.resolve("link.txt"), Path.of("nowhere.txt"));
    refused("link.txt", "'link.txt' is a link to a file that does not exist");
  }

  @Test
  void whatIsNoFileIsRefused() throws IOException {
    Files.createDirectory(folder.resolve("sub"));
    Files.writeString(folder.resolve("file"), "x");
    refused("sub", "'sub' is a folder: give the name of a file");
    refused("missing/rise.txt", "the folder of 'missing/rise.txt' does not exist: make it first");
    refused("file/rise.txt", "the folder of 'file/rise.txt' is not a folder");
    refused("", "'' is empty: give the name of a file");
    refused("/", "names no file");
    refused("nul\0.txt", "cannot write as a file name");
    refused("\uFFFD\uFFFD.pdf", "set LC_ALL=C.UTF-8");
    refused("/dev/null", "exists already|is not an ordinary file");
    refused("n".repeat(300), "");
  }

  @Test
  void otherLettersAreFineWhereTheLocaleKnowsThem() throws IOException {
    String name =
        "utf-8".equalsIgnoreCase(System.getProperty("sun.jnu.encoding")) ? "Brötchen" : "x";
    keeping(name + " 1.txt").write("a");
    assertThat(names()).containsExactly(name + " 1.txt");
  }

  private OutputFile keeping(String name) {
    return OutputFile.of("--out", name, OutputFile.Existing.KEEP, TestEnvironment.in(folder));
  }

  private OutputFile replacing(String name) {
    return OutputFile.of("--out", name, OutputFile.Existing.REPLACE, TestEnvironment.in(folder));
  }

  /** Refused when named or, at the latest, when written; never half there. */
  private void refused(String name, String parts) {
    assertThatThrownBy(() -> keeping(name).write("new"))
        .isInstanceOf(InputException.class)
        .message()
        .satisfies(
            message -> assertThat(Stream.of(parts.split("\\|", -1))).anyMatch(message::contains));
  }

  private Stream<String> names() {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> String.valueOf(file.getFileName())).toList().stream();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }
}
