package doughtide.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What happens to files when the disk does not play along; a sample in the build, the rest in the
 * profile "long".
 */
@DisabledOnOs(OS.WINDOWS)
class FaultIT {

  private static final String JAR = System.getProperty("doughtide.jar");
  private static final String JAVA =
      Path.of(System.getProperty("java.home"), "bin", "java").toString();

  @TempDir Path folder;

  private record Ended(int code, String out, String err) {}

  private Process start(String... words) throws IOException {
    List<String> command = new ArrayList<>(List.of(JAVA, "-XX:TieredStopAtLevel=1", "-jar", JAR));
    command.addAll(List.of(words));
    return new ProcessBuilder(command)
        .directory(folder.toFile())
        .redirectOutput(folder.resolve("stdout").toFile())
        .redirectError(folder.resolve("stderr").toFile())
        .start();
  }

  private Ended run(String... words) throws Exception {
    int code = start(words).waitFor();
    return new Ended(
        code,
        Files.readString(folder.resolve("stdout"), UTF_8),
        Files.readString(folder.resolve("stderr"), UTF_8));
  }

  private static void refused(Ended run, String part) {
    assertThat(run.err()).startsWith("doughtide: ").contains(part).doesNotContain("Exception");
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.code()).isEqualTo(Main.BAD_INPUT);
  }

  private String[] chart(String name) {
    return new String[] {
      "rise", "--dough-temp", "25C", "--members", "8", "--chart", name, "--overwrite"
    };
  }

  private void doughs(int rows) throws IOException {
    StringBuilder text = new StringBuilder("id,dough_temp\n");
    for (int i = 0; i < rows; i++) {
      text.append('D').append(i).append(',').append(18 + i % 10).append("C\n");
    }
    Files.writeString(folder.resolve("doughs.csv"), text.toString());
  }

  @Test
  void aFullDiskIsSaidInOneLine() throws Exception {
    Assumptions.assumeTrue(Files.exists(Path.of("/dev/full")));
    Process process =
        new ProcessBuilder(
                "sh", "-c", "\"$0\" -jar \"$1\" rise --dough-temp 25C >/dev/full 2>err", JAVA, JAR)
            .directory(folder.toFile())
            .start();
    assertThat(process.waitFor()).isEqualTo(Main.BAD_INPUT);
    assertThat(Files.readString(folder.resolve("err")).lines())
        .singleElement()
        .satisfies(line -> assertThat(line).contains("could not be written", "check the disk"));
  }

  @Test
  void aFolderWhereAFileShouldBe() throws Exception {
    Files.createDirectory(folder.resolve("x.pdf"));
    refused(run(chart("x.pdf")), "'x.pdf' is a folder");
    refused(run("batch", "x.pdf"), "'x.pdf' is a folder");
  }

  @Test
  void aFileThatIsMissingOrEmpty() throws Exception {
    refused(run("batch", "none.csv"), "'none.csv' does not exist");
    Files.createFile(folder.resolve("zero.csv"));
    refused(run("batch", "zero.csv"), "'zero.csv' is empty");
  }

  @Test
  void aLinkStaysALinkAndADeadLinkIsRefused() throws Exception {
    Files.writeString(folder.resolve("real.svg"), "old");
    Files.createSymbolicLink(folder.resolve("link.svg"), Path.of("real.svg"));
    Files.createSymbolicLink(folder.resolve("dead.svg"), Path.of("nowhere.svg"));
    assertThat(run(chart("link.svg")).code()).isZero();
    assertThat(folder.resolve("link.svg")).isSymbolicLink();
    assertThat(Files.readString(folder.resolve("real.svg"))).contains("</svg");
    refused(run(chart("dead.svg")), "is a link to a file that does not exist");
  }

  @Test
  @Tag("long")
  void hugeFieldsCostOnlyTheirRow() throws Exception {
    Files.writeString(
        folder.resolve("doughs.csv"), "id,dough_temp\n" + "x".repeat(5_000_000) + ",25C\nA,25C\n");
    Ended run = run("batch", "doughs.csv", "--members", "8");
    assertThat(run.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(run.out().lines()).hasSize(3);
    assertThat(run.err()).contains("longer than 65536 bytes");
  }

  @Test
  @Tag("long")
  void aFileThatGrowsWhileItIsRead() throws Exception {
    doughs(2000);
    Process process = start("batch", "doughs.csv", "--members", "8", "--out", "out.csv");
    try (RandomAccessFile file =
        new RandomAccessFile(folder.resolve("doughs.csv").toFile(), "rw")) {
      for (int i = 0; process.isAlive() && i < 100; i++) {
        file.seek(file.length());
        file.writeBytes("E" + i + ",25C\n");
        process.waitFor(5, TimeUnit.MILLISECONDS);
      }
    }
    assertThat(process.waitFor()).isZero();
    List<String> lines = Files.readAllLines(folder.resolve("out.csv"));
    assertThat(lines).hasSizeBetween(2001, 2101);
    assertThat(lines)
        .allSatisfy(line -> assertThat(line).endsWith(line.startsWith("line") ? "error" : ","));
  }

  /** As another user: permissions do not hold for root. */
  private Ended asNobody(String... words) throws Exception {
    Path jar = folder.resolve("doughtide.jar");
    Files.copy(Path.of(JAR), jar, StandardCopyOption.REPLACE_EXISTING);
    for (Path path = folder; path != null && isOurs(path); path = path.getParent()) {
      path.toFile().setExecutable(true, false);
      path.toFile().setReadable(true, false);
    }
    List<String> command =
        new ArrayList<>(
            List.of("setpriv", "--reuid=65534", "--regid=65534", "--clear-groups", JAVA, "-jar"));
    command.add(jar.toString());
    command.addAll(List.of(words));
    int code =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectOutput(folder.resolve("stdout").toFile())
            .redirectError(folder.resolve("stderr").toFile())
            .start()
            .waitFor();
    return new Ended(
        code,
        Files.readString(folder.resolve("stdout"), UTF_8),
        Files.readString(folder.resolve("stderr"), UTF_8));
  }

  private static boolean isOurs(Path path) {
    return path.toString().contains("junit");
  }

  private static boolean root() {
    return System.getProperty("user.name").equals("root");
  }

  private int shell(String command) throws Exception {
    return new ProcessBuilder("sh", "-c", command)
        .directory(folder.toFile())
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("shell").toFile())
        .start()
        .waitFor();
  }

  @Test
  @Tag("long")
  void aClosedFileAndFolderForOneWhoIsNotRoot() throws Exception {
    assumeTrue(
        root() && shell("setpriv --reuid=65534 --regid=65534 --clear-groups true") == 0,
        "needs root and setpriv to become another user");
    Files.createDirectory(folder.resolve("closed"));
    Files.writeString(folder.resolve("closed/old.svg"), "old");
    Files.writeString(folder.resolve("secret.csv"), "id\n");
    assertThat(shell("chmod 755 closed; chmod 600 secret.csv")).isZero();
    refused(asNobody(chart("closed/x.svg")), "check the permissions");
    refused(asNobody(chart("closed/old.svg")), "check the permissions");
    refused(asNobody("batch", "secret.csv"), "check the permissions");
    refused(asNobody("batch", "closed/none.csv"), "does not exist");
    assertThat(Files.readString(folder.resolve("closed/old.svg"))).isEqualTo("old");
    assertThat(closedHolds()).containsExactly("old.svg");
  }

  private List<String> closedHolds() throws IOException {
    try (Stream<Path> all = Files.list(folder.resolve("closed"))) {
      return all.map(each -> each.getFileName().toString()).sorted().toList();
    }
  }

  /** A file system of 128 kB that fills while a chart, a starter and a batch are written. */
  @Test
  void aDiskThatFillsLeavesTheOldFile() throws Exception {
    Path small = Files.createDirectory(folder.resolve("closed"));
    assumeTrue(
        root() && shell("mount -t tmpfs -o size=128k tmpfs closed") == 0,
        "needs root and the right to mount a small file system");
    try {
      DemoReadings.copyTo(folder);
      doughs(2000);
      Files.write(small.resolve("filler"), new byte[98_304]);
      for (String name : List.of("old.svg", "old.pdf", "old.json", "old.csv")) {
        Files.writeString(small.resolve(name), "old");
      }
      refused(run(chart("closed/old.svg")), "the disk is full");
      refused(run(chart("closed/old.pdf")), "the disk is full");
      assertThat(closedHolds())
          .containsExactly("filler", "old.csv", "old.json", "old.pdf", "old.svg");
      Ended batch =
          run("batch", "doughs.csv", "--members", "8", "--out", "closed/old.csv", "--overwrite");
      refused(batch, "the disk is full");
      refused(batch, "stays for --resume");
      for (String name : List.of("old.svg", "old.pdf", "old.json", "old.csv")) {
        assertThat(small.resolve(name)).content().isEqualTo("old");
      }
      Files.delete(small.resolve("filler"));
      Files.delete(small.resolve("old.csv.part"));
      assertThat(run(chart("closed/old.svg")).err()).isEmpty();
    } finally {
      assertThat(shell("umount closed")).isZero();
    }
  }

  @Test
  @Tag("long")
  void aReadOnlyDisk() throws Exception {
    Files.createDirectory(folder.resolve("closed"));
    assumeTrue(
        root() && shell("mount -t tmpfs -o ro,size=64k tmpfs closed") == 0,
        "needs root and the right to mount a file system");
    try {
      Ended run = run(chart("closed/x.svg"));
      assertThat(run.err().lines()).hasSize(1);
      assertThat(run.code()).isEqualTo(Main.BAD_INPUT);
      assertThat(run.err()).containsPattern("read-only|check the permissions");
    } finally {
      assertThat(shell("umount closed")).isZero();
    }
  }

  @Test
  void devicesAndPipesAreNoPlaceForAFile() throws Exception {
    assertThat(shell("mkfifo pipe.svg; ln -s /dev/full full.svg; ln -s loop.svg loop.svg"))
        .isZero();
    refused(run(chart("pipe.svg")), "'pipe.svg' is not an ordinary file");
    refused(run(chart("full.svg")), "'full.svg' is not an ordinary file");
    refused(run(chart("loop.svg")), "'loop.svg'");
    refused(run("batch", "loop.svg"), "'loop.svg'");
  }

  @Test
  @Tag("long")
  void aPipeIsReadLikeAFile() throws Exception {
    doughs(3);
    assertThat(shell("mkfifo pipe.csv")).isZero();
    String command = "cat doughs.csv >pipe.csv & \"" + JAVA + "\" -jar \"" + JAR + "\" batch";
    assertThat(shell(command + " pipe.csv --members 8")).isZero();
    assertThat(Files.readAllLines(folder.resolve("shell"))).hasSize(4);
  }

  /** Java 17 takes the letters of file names from the locale; either it can or it says so. */
  @ParameterizedTest
  @Tag("long")
  @ValueSource(strings = {"C", "POSIX", "C.UTF-8", "de_DE.ISO-8859-1"})
  void namesWithSpacesAndOtherLetters(String locale) throws Exception {
    String java = "LC_ALL=" + locale + " \"" + JAVA + "\" -jar \"" + JAR + "\" ";
    String rise = java + "rise --dough-temp 25C --members 8 --chart ";
    assertThat(shell("mkdir 'a b'; cd 'a b'; " + rise + "'my chart.svg'")).isZero();
    assertThat(folder.resolve("a b/my chart.svg")).content().contains("</svg");
    int code = shell("cd 'a b'; " + rise + "\"$(printf 'r\\303\\266st.svg')\"");
    if (code == Main.BAD_INPUT) {
      assertThat(Files.readAllLines(folder.resolve("shell")))
          .singleElement()
          .satisfies(line -> assertThat(line).contains("LC_ALL=C.UTF-8"));
    } else {
      assertThat(code).isZero();
      assertThat(shell("cd 'a b'; test -s \"$(printf 'r\\303\\266st.svg')\"")).isZero();
    }
    assertThat(code).isEqualTo(locale.equals("C.UTF-8") ? Main.OK : code);
  }

  @Test
  @Tag("long")
  void aLearnedStarterThatShrinksWhileItIsRead() throws Exception {
    DemoReadings.learnedIn(folder);
    byte[] whole = Files.readAllBytes(folder.resolve("starter.json"));
    for (int share = 1; share < 4; share++) {
      Files.write(
          folder.resolve("cut.json"), java.util.Arrays.copyOf(whole, whole.length * share / 4));
      refused(run("rise", "--dough-temp", "25C", "--starter-file", "cut.json"), "'cut.json'");
    }
  }
}
