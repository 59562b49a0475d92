package doughtide.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What happens to files when a process is killed and when the disk does not play along. */
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
  void killedAtAFewMomentsAChartIsOldOrNew() throws Exception {
    killedAChartIsOldOrNew(3, 5);
  }

  @Test
  @Tag("long")
  void killedAtManyMomentsAChartIsOldOrNew() throws Exception {
    killedAChartIsOldOrNew(4, 100);
  }

  private void killedAChartIsOldOrNew(long seed, int times) throws Exception {
    Path chart = folder.resolve("rise chart.svg");
    long begin = System.nanoTime();
    run(chart("rise chart.svg"));
    long took = (System.nanoTime() - begin) / 1_000_000;
    String whole = Files.readString(chart);
    assertThat(whole).contains("</svg");
    Files.writeString(chart, "old");
    Random random = new Random(seed);
    for (int i = 0; i < times; i++) {
      Process process = start(chart("rise chart.svg"));
      if (!process.waitFor(
          (long) (took * (0.5 + 0.6 * random.nextDouble())), TimeUnit.MILLISECONDS)) {
        process.destroyForcibly().waitFor();
      }
      assertThat(Files.readString(chart)).as("kill %d", i).isIn("old", whole);
    }
  }

  @Test
  void killedAtAFewMomentsABatchGoesOnToTheSameBytes() throws Exception {
    killedABatchGoesOn(5, 5);
  }

  @Test
  @Tag("long")
  void killedAtManyMomentsABatchGoesOnToTheSameBytes() throws Exception {
    killedABatchGoesOn(6, 100);
  }

  private void killedABatchGoesOn(long seed, int times) throws Exception {
    doughs(400);
    long begin = System.nanoTime();
    run("batch", "doughs.csv", "--members", "64", "--out", "whole.csv");
    long took = (System.nanoTime() - begin) / 1_000_000;
    String whole = Files.readString(folder.resolve("whole.csv"));
    assertThat(whole.lines()).hasSize(401);
    Random random = new Random(seed);
    Path out = folder.resolve("out.csv");
    Files.writeString(out, "old");
    for (int i = 0; i < times; i++) {
      String[] words = {
        "batch", "doughs.csv", "--members", "64", "--out", "out.csv", "--resume", "--overwrite"
      };
      Process process = start(words);
      if (!process.waitFor((long) (took * random.nextDouble()), TimeUnit.MILLISECONDS)) {
        process.destroyForcibly().waitFor();
      }
      assertThat(Files.readString(out)).as("kill %d", i).isIn("old", whole);
    }
    Ended last =
        run(
            "batch",
            "doughs.csv",
            "--members",
            "64",
            "--out",
            "out.csv",
            "--resume",
            "--overwrite");
    assertThat(last.err()).isEmpty();
    assertThat(Files.readString(out)).isEqualTo(whole);
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
  void anUnreadableFileAndAReadOnlyFolder() throws Exception {
    Path closed = folder.resolve("closed");
    Files.createDirectory(closed);
    Files.writeString(folder.resolve("secret.csv"), "id\n");
    assertThat(closed.toFile().setWritable(false)).isTrue();
    assertThat(folder.resolve("secret.csv").toFile().setReadable(false)).isTrue();
    Assumptions.assumeFalse(Files.isWritable(closed), "permissions do not hold for root");
    refused(run(chart("closed/x.svg")), "check the permissions");
    refused(run("batch", "secret.csv"), "check the permissions");
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
  void hugeFieldsCostOnlyTheirRow() throws Exception {
    Files.writeString(
        folder.resolve("doughs.csv"), "id,dough_temp\n" + "x".repeat(5_000_000) + ",25C\nA,25C\n");
    Ended run = run("batch", "doughs.csv", "--members", "8");
    assertThat(run.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(run.out().lines()).hasSize(3);
    assertThat(run.err()).contains("longer than 65536 bytes");
  }

  @Test
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

  @Test
  void textNeverBecomesMarkup() throws Exception {
    Ended run =
        run(
            "rise",
            "--dough-temp",
            "25C",
            "--members",
            "8",
            "--chart",
            "x.svg",
            "--title",
            "<script>alert(1)</script>&\"");
    assertThat(run.code()).isZero();
    assertThat(Files.readString(folder.resolve("x.svg"))).doesNotContain("<script");
  }
}
