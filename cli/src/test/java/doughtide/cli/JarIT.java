package doughtide.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;

/** The finished, self-contained jar. */
class JarIT {

  private static final Path JAR = Path.of(System.getProperty("doughtide.jar"));

  @Test
  void runsAndNamesItsVersion() throws Exception {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                JAR.toString(),
                "--version")
            .redirectErrorStream(true)
            .start();
    String output = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertThat(process.waitFor()).isZero();
    assertThat(output).matches("doughtide \\d+\\.\\d+\\.\\d+\\R");
  }

  @Test
  void leavesTheTimeZonesOfTheJdkAlone() throws IOException {
    try (JarFile jar = new JarFile(JAR.toFile())) {
      assertThat(jar.getEntry("META-INF/services/java.time.zone.ZoneRulesProvider")).isNull();
    }
  }

  @Test
  void carriesTheLicencesOfWhatItContains() throws IOException {
    try (JarFile jar = new JarFile(JAR.toFile())) {
      assertThat(jar.getEntry("META-INF/LICENSE")).isNotNull();
      assertThat(jar.getEntry("META-INF/NOTICE")).isNotNull();
    }
  }
}
