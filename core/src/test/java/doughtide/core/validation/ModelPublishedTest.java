package doughtide.core.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The model against published figures. Each line of the files names its source, its band and
 * whether the model is known to meet it; a line that changes sides, or whose figure moves, fails
 * until the file says so. Bands are never loosened: what misses is recorded as a miss. All results
 * go to target/validation.md.
 */
class ModelPublishedTest {
  private static final List<String> FILES =
      List.of("microbes.csv", "gas.csv", "dough-times.csv", "starter-times.csv", "acid.csv");
  private static final Map<Integer, String> TABLE = new TreeMap<>();

  static Stream<Check> checks() {
    return FILES.stream().flatMap(file -> Check.read(file).stream());
  }

  @ParameterizedTest
  @MethodSource("checks")
  void comesOutAsRecorded(Check check) {
    Measured measured = Measurements.of(check);
    String outcome = measured.meets(check) ? "pass" : "miss";
    TABLE.put(checks().toList().indexOf(check), row(check, measured, outcome));
    assertThat(outcome + " " + measured.text())
        .as("%s; band %s to %s", check, check.low(), check.high())
        .satisfies(
            text -> {
              assertThat(outcome).isEqualTo(check.expectedOutcome());
              assertThat(measured.isNear(Measured.parse(check.measured())))
                  .as("%s against %s in the file", text, check.measured())
                  .isTrue();
            });
  }

  private static String row(Check check, Measured measured, String outcome) {
    return "| "
        + String.join(
            " | ",
            check.check(),
            check.name(),
            band(check),
            check.unit(),
            measured.text(),
            check.test(),
            outcome,
            check.source())
        + " |";
  }

  private static String band(Check check) {
    if (Double.isInfinite(check.high())) {
      return "more than 1";
    }
    return plain(check.low()) + " to " + plain(check.high());
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }

  @AfterAll
  static void writeTable() throws IOException {
    long misses = TABLE.values().stream().filter(row -> row.contains("| miss |")).count();
    StringBuilder text = new StringBuilder();
    text.append(TABLE.size()).append(" checks, ").append(misses).append(" misses.\n\n");
    text.append("| check | what | band | unit | measured | judged by | outcome | source |\n");
    text.append("|---|---|---|---|---|---|---|---|\n");
    TABLE.values().forEach(row -> text.append(row).append('\n'));
    Path target = Path.of("target");
    Files.createDirectories(target);
    Files.writeString(target.resolve("validation.md"), text);
    System.out.print(text);
  }
}
