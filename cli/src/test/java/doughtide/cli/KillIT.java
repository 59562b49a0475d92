package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * A process killed (SIGKILL) while it writes leaves the old file or the new one, never half of one,
 * and nothing that stops the next run. Most kills come within a few milliseconds of the moment its
 * unfinished file appears, the others anywhere.
 */
@DisabledOnOs(OS.WINDOWS)
class KillIT {

  private static final String JAR = System.getProperty("doughtide.jar");
  private static final String JAVA =
      Path.of(System.getProperty("java.home"), "bin", "java").toString();
  private static final byte[] OLD = "old\n".getBytes(StandardCharsets.UTF_8);

  /** Exit code of a process that SIGKILL (9) ended. */
  private static final int KILLED = 128 + 9;

  /** In the profile "long": 25 for each of eight writers, 200 in all. */
  private static final int MANY = 25;

  /** Kills spread over this long after the unfinished file is first seen. */
  private static final int WRITING_MICROS = 5_000;

  @TempDir Path folder;

  /** Everything that writes files, each in its own way. */
  enum Writer {
    SVG("rise chart.svg", "rise --dough-temp 25C --members 8 --chart FILE"),
    PDF("rise chart.pdf", "rise --dough-temp 25C --members 8 --chart FILE"),
    PNG("rise chart.png", "rise --dough-temp 25C --members 8 --chart FILE"),
    STARTER("my starter.json", "learn quayside-bakes --save FILE"),
    FLOUR("harrow white.txt", "flour save FILE --flour-name Harrow --flour white --hydration 70%"),
    CALENDAR(
        "bake day.ics",
        "bake-day --ready-at 2027-03-14T12:00 --at-the-bench 06:30-08:30,17:00-22:30 --room 21C --cold 4C --calendar FILE"),
    HANDOUT("hours table.pdf", "handout hours-table --out FILE"),
    BATCH("forecasts.csv", "batch doughs.csv --members 64 --resume --out FILE");

    private final String file;
    private final String words;

    Writer(String file, String words) {
      this.file = file;
      this.words = words;
    }

    /** The words of a call that writes the file. */
    List<String> call() {
      return Arrays.stream((words + " --overwrite").split(" "))
          .map(word -> word.equals("FILE") ? file : word)
          .toList();
    }
  }

  /** A sample: a file written in one go, and one that grows. */
  @ParameterizedTest
  @EnumSource(names = {"SVG", "BATCH"})
  void killedOnceAFileIsOldOrNew(Writer writer) throws Exception {
    killedAFileIsOldOrNew(writer, 1);
  }

  @ParameterizedTest
  @Tag("long")
  @EnumSource
  void killedManyTimesAFileIsOldOrNew(Writer writer) throws Exception {
    killedAFileIsOldOrNew(writer, MANY);
  }

  private void killedAFileIsOldOrNew(Writer writer, int times) throws Exception {
    DemoReadings.copyTo(folder);
    doughs(300);
    Path file = folder.resolve(writer.file);
    Files.write(file, OLD);
    long begin = System.nanoTime();
    assertThat(start(writer).waitFor()).as(said()).isZero();
    long whole = System.nanoTime() - begin;
    byte[] complete = steady(Files.readAllBytes(file));
    Random random = new Random(writer.ordinal());
    int[] ends = new int[4];
    for (int i = 0; ends[0] < times && i < 3 * times + 10; i++) {
      Files.write(file, OLD);
      int unfinishedBefore = unfinished();
      Process process = start(writer);
      long seen = waitToKill(writer, process, random, i, whole);
      boolean killed = process.destroyForcibly().waitFor() == KILLED;
      byte[] found = steady(Files.readAllBytes(file));
      boolean old = Arrays.equals(found, OLD);
      assertThat((old && killed) || Arrays.equals(found, complete))
          .as("%s, kill %d, %d ms after the start of writing", writer, i, seen / 1_000_000)
          .isTrue();
      ends[0] += killed ? 1 : 0;
      ends[1] += old ? 1 : 0;
      ends[2] += unfinished() > unfinishedBefore ? 1 : 0;
      ends[3] += killed && seen >= 0 ? 1 : 0;
    }
    assertThat(ends[0]).as("processes killed before they had ended").isEqualTo(times);
    assertThat(start(writer).waitFor()).as(said()).isZero();
    assertThat(steady(Files.readAllBytes(file))).isEqualTo(complete);
    System.out.printf(
        "%s: %d killed, %d of them while or after the file was written; old file found %d times,"
            + " unfinished file left %d times%n",
        writer, ends[0], ends[3], ends[1], ends[2]);
  }

  /**
   * Waits for a moment to kill at.
   *
   * @return how long after the unfinished file was first seen, ns; -1 if it never was
   */
  private long waitToKill(Writer writer, Process process, Random random, int turn, long whole)
      throws IOException, InterruptedException {
    if (turn % 5 == 4) {
      process.waitFor((long) (whole * random.nextDouble()), TimeUnit.NANOSECONDS);
      return -1;
    }
    List<String> before = unfinishedFiles();
    while (process.isAlive() && before.containsAll(unfinishedFiles())) {
      LockSupport.parkNanos(50_000);
    }
    long begin = System.nanoTime();
    // More often early than late: a chart is written in a millisecond or two.
    double share = Math.pow(random.nextDouble(), 3);
    long micros = (long) (share * (writer == Writer.BATCH ? whole / 2_000 : WRITING_MICROS));
    LockSupport.parkNanos(micros * 1_000);
    return System.nanoTime() - begin;
  }

  private int unfinished() throws IOException {
    return unfinishedFiles().size();
  }

  private List<String> unfinishedFiles() throws IOException {
    List<String> names = new ArrayList<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*.part")) {
      for (Path each : files) {
        names.add(each.getFileName() + signOf(each));
      }
    }
    return names;
  }

  /** The unfinished file of a batch stays the same one and grows. */
  private static String signOf(Path file) throws IOException {
    try {
      return file.toString().contains("forecasts") ? " " + Files.size(file) : "";
    } catch (NoSuchFileException e) {
      return " moved";
    }
  }

  /** A calendar carries the second it was made at. */
  private static byte[] steady(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    return text.startsWith("BEGIN:VCALENDAR")
        ? text.replaceAll("DTSTAMP:[0-9TZ]+", "").getBytes(StandardCharsets.ISO_8859_1)
        : bytes;
  }

  private Process start(Writer writer) throws IOException {
    Stream<String> java = Stream.of(JAVA, "-XX:TieredStopAtLevel=1", "-jar", JAR);
    return new ProcessBuilder(Stream.concat(java, writer.call().stream()).toList())
        .directory(folder.toFile())
        .redirectOutput(folder.resolve("stdout").toFile())
        .redirectError(folder.resolve("stderr").toFile())
        .start();
  }

  private String said() throws IOException {
    return Files.readString(folder.resolve("stderr"));
  }

  private void doughs(int rows) throws IOException {
    StringBuilder text = new StringBuilder("id,dough_temp\n");
    for (int i = 0; i < rows; i++) {
      text.append('D').append(i).append(',').append(18 + i % 10).append("C\n");
    }
    Files.writeString(folder.resolve("doughs.csv"), text.toString());
  }
}
