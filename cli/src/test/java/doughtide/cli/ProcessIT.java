package doughtide.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The finished jar as a process of its own, called through a shell. */
@DisabledOnOs(OS.WINDOWS)
class ProcessIT {

  /** The degree sign in UTF-8, written so that the locale of this test does not matter. */
  private static final String DEGREE = "$(printf '\\302\\260')";

  @TempDir Path folder;

  private record Ended(int code, String out, String err) {}

  @Test
  void thePlainLocaleReadsAndPrintsDegrees() throws Exception {
    Ended run = shell("LC_ALL=C $DOUGHTIDE rise --dough-temp \"25" + DEGREE + "C\"");
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("25 °C (77 °F)");
  }

  @Test
  void anotherLocaleAndZoneChangeNothing() throws Exception {
    String command = " $DOUGHTIDE rise --dough-temp 24.5C --altitude 1500m";
    Ended german = shell("LC_ALL=de_DE.UTF-8 LANG=de_DE.UTF-8 TZ=Asia/Tokyo" + command);
    assertThat(german.out())
        .isEqualTo(shell("LC_ALL=C TZ=UTC" + command).out())
        .contains("24.5 °C");
  }

  @Test
  void aClosedPipeIsQuiet() throws Exception {
    Ended run = shell("$DOUGHTIDE rise --help | head -1");
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).startsWith("doughtide rise");
  }

  @Test
  void refusalsGoToStandardError() throws Exception {
    Ended run = shell("$DOUGHTIDE rise --dough-temp 25");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .isEqualTo("doughtide: --dough-temp 25 has no unit: write --dough-temp 25C (or 77F)\n");
  }

  @Test
  void onlyTheCommandNamedIsLoaded() throws Exception {
    Ended run = shell("$JAVA -Xlog:class+load:file=classes.txt -jar \"$JAR\" rise --help");
    assertThat(run.code()).isZero();
    String loaded = Files.readString(folder.resolve("a b").resolve("classes.txt"));
    assertThat(loaded.lines().filter(line -> line.contains("doughtide.cli.")))
        .filteredOn(line -> line.matches(".* doughtide\\.cli\\.[a-z.]+\\.\\w+Command .*"))
        .hasSize(1)
        .allSatisfy(line -> assertThat(line).contains("RiseCommand"));
    assertThat(loaded).doesNotContain("java.awt.", "org.knowm.xchart", "org.apache.pdfbox");
  }

  /** The start script, its jar and the archive of classes, moved into a folder with a space. */
  @Test
  void theStartScriptAnswersFromWhereverItLies() throws Exception {
    Path built = Path.of(System.getProperty("doughtide.jar")).getParent();
    Path moved = Files.createDirectories(folder.resolve("some where"));
    for (String name : List.of("doughtide", "doughtide.jar", "doughtide.jsa", "doughtide.made")) {
      if (Files.exists(built.resolve(name))) {
        Files.copy(built.resolve(name), moved.resolve(name), StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
    Ended run = shell("'" + moved.resolve("doughtide") + "' rise --dough-temp 25C --members 8");

    assertThat(run.err()).isEmpty();
    assertThat(run.out()).isEqualTo(shell("$DOUGHTIDE rise --dough-temp 25C --members 8").out());
  }

  /** A day with a reading a minute, in the memory that a small machine has to spare. */
  @Test
  void aLoggerOfEveryMinuteNeedsLittleMemory() throws Exception {
    StringBuilder readings = new StringBuilder("hours,temperature C\n");
    for (int minute = 0; minute <= 24 * 60; minute++) {
      double celsius = 24 + 1.5 * Math.sin(minute / 180.0) + 0.05 * Math.sin(minute * 7.0);
      readings.append(String.format(Locale.ROOT, "%.4f,%.2f%n", minute / 60.0, celsius));
    }
    Path work = Files.createDirectories(folder.resolve("a b"));
    Files.writeString(work.resolve("minutes.csv"), readings);

    Ended run = shell("$JAVA -Xmx64m -jar \"$JAR\" rise --temps minutes.csv");

    assertThat(run.err()).isEmpty();
    assertThat(run.out()).startsWith("Risen 50 % about");
  }

  /** Runs a line of shell in a folder whose name has a space. */
  private Ended shell(String line) throws IOException, InterruptedException {
    Path work = Files.createDirectories(folder.resolve("a b"));
    Path out = folder.resolve("out.txt");
    Path err = folder.resolve("err.txt");
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String setUp =
        "JAVA='"
            + java
            + "'; JAR='"
            + System.getProperty("doughtide.jar")
            + "'\n"
            + "doughtide() { \"$JAVA\" -jar \"$JAR\" \"$@\"; }\n";
    Process process =
        new ProcessBuilder("sh", "-c", setUp + line.replace("$DOUGHTIDE", "doughtide"))
            .directory(work.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();
    int code = process.waitFor();
    return new Ended(code, Files.readString(out, UTF_8), Files.readString(err, UTF_8));
  }
}
