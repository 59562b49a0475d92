package doughtide.cli.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.cli.CliRun;
import doughtide.cli.TestEnvironment;
import doughtide.cli.args.ClockTimes;
import doughtide.core.document.LoggerDocument;
import doughtide.core.document.Vocabulary;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.thermal.TemperatureTrace;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LoggerFileTest {

  @TempDir Path folder;

  /** Two readings, 25 °C at hour 0 and 23 °C at hour 2, in every way loggers write them. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "hours,temperature C|0,25|2,23",
        "Hours;Temperature (°C)|0,0;25,0|2,0;23,0",
        "hours\\ttemp F|0\\t77|2\\t73.4",
        "hours,temperature|0,25C|2,73.4 °F",
        "minutes,celsius|0,25|120,23",
        "time,temperature_C|2027-03-06T09:30,25|2027-03-06T11:30,23",
        "time,humidity,temperature [C]|2027-03-06 09:30:00,55,25|2027-03-06 11:30:00,60,23",
        "timestamp;dough temp °F|2027-03-06T09:30Z;77|2027-03-06T12:30+01:00;73,4",
        "clock,fahrenheit|9:30,77|11:30,73.4",
        "~time~,~temperature C~|~2027-03-06T09:30~,~25~|~2027-03-06T11:30~,~23~",
        "\uFEFFtime,temperature C|2027-03-06T09:30,25.00|2027-03-06T11:30,23.00",
      })
  void everyUsualFormIsRead(String header, String first, String second) throws IOException {
    String text = String.join("\r\n", header, first, second).replace("\\t", "\t");
    LoggerDocument content = read(text.replace('~', '"'), mixed("2027-03-06T09:30"));
    TemperatureTrace trace = content.readings().trace();
    assertThat(trace.celsius(0)).isCloseTo(25, within(1e-9));
    assertThat(trace.celsius(2)).isCloseTo(23, within(1e-9));
    assertThat(trace.celsius(1.999)).isNotEqualTo(trace.celsius(2));
    assertThat(content.warnings()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "hours,temperature C/0,25/2,24/1,23 | line 4: this time lies before that of line 3",
        "hours,temperature C/0,25/2,24/2,23 | line 4: the same time as line 3: keep one",
        "hours,temperature/0,25/1,24 | line 2: temperature 25 has no unit: write",
        "hours,temperature C/0,25 | it has 1 reading: a temperature over time needs at least two",
        "hours,temperature C | it has 0 readings",
        "hours,temperature C/0,25/1,24,5 | line 3: 3 columns, but the first line names 2",
        "hours,temperature C/0/1 | line 2: only 1 column: a time",
        "hours,temperature C/0,240/1,25 | line 2: dough temperature 240 °C is outside -2…45 °C",
        "hours,temperature C/0,/1,25 | line 2: temperature is empty",
        "hours,temperature C/x,25/1,25 | line 2: hours x is not a number",
        "hours,temperature C/NaN,25/1,25 | line 2: hours NaN is not a number",
        "time,temperature C/6.3.2027 12:00,25 | write the year first",
        "time,temperature C/yesterday,25 | is not a time: write 2027-03-06T12:00",
        "time,temperature C/25:00,25 | is no time on any clock",
        "when,what/1,2 | line 1: the first line must name a column time or hours",
        "hours,temp C,temp F/1,2,3 | line 1: two columns for the temperature",
        "hours,temperature C/0,\"25/1,24 | line 2: a quotation mark is not closed",
        "hours,temperature C/0,25/\"1\"x,24\" | line 3: a quotation mark is not closed",
      })
  void whatCannotBeReadIsToldByLine(String text, String part) {
    assertThatThrownBy(() -> read(text.replace("/", "\n"), Optional.empty()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("log of día 1.csv")
        .hasMessageContaining(part);
  }

  @Test
  void aNightOnTheClockGoesThroughMidnight() throws IOException {
    LoggerDocument content =
        read("clock,temp C\n22:30,25\n23:30,24\n00:30,23\n", mixed("2027-03-06T22:00"));
    assertThat(content.readings().lastHours()).isCloseTo(2.5, within(1e-9));
    LoggerDocument after = read("clock,temp C\n00:30,25\n01:30,24\n", mixed("2027-03-06T23:30"));
    assertThat(after.readings().lastHours()).isCloseTo(2, within(1e-9));
  }

  @Test
  void theHourThatComesTwiceIsReadTwice() throws IOException {
    ClockTimes mixed =
        ClockTimes.parse(
            "--mixed-at", "2027-10-31T01:30", ZoneId.of("Europe/Berlin"), TestEnvironment.NOW);
    LoggerDocument content =
        read(
            "time;temp C\n2027-10-31T01:30;25\n2027-10-31T02:30;24\n2027-10-31T02:30;23\n"
                + "2027-10-31T03:30;22\n",
            Optional.of(mixed));
    assertThat(content.readings().lastHours()).isCloseTo(3, within(1e-9));
  }

  @Test
  void gapsAreToldAndNotRefused() throws IOException {
    LoggerDocument content =
        read("# from the kitchen\nhours,temp C\n0,25\n\n4,23\n5,22\n", Optional.empty());
    assertThat(content.warnings())
        .singleElement()
        .satisfies(warning -> assertThat(warning).isEqualTo(Warning.Kind.LOGGER_GAP.with(4, 3, 5)));
    StringBuilder many = new StringBuilder("hours,temp C\n");
    for (int i = 0; i < 40; i += 4) {
      many.append(i).append(",20\n");
    }
    assertThat(read(many.toString(), Optional.empty()).warnings())
        .hasSize(4)
        .last()
        .satisfies(warning -> assertThat(warning).isEqualTo(Warning.Kind.LOGGER_GAPS.with(6)));
  }

  @Test
  void aLongFileIsThinned() throws IOException {
    Path file = folder.resolve("long.csv");
    try (PrintWriter out = new PrintWriter(file.toFile(), StandardCharsets.UTF_8)) {
      out.println("hours,temperature C");
      for (int i = 0; i < 100_000; i++) {
        out.println(Checks.plain(i / 5000.0) + "," + Checks.plain(25 - i / 50_000.0));
      }
    }
    LoggerDocument content = read("long.csv");
    assertThat(content.readings().count()).isEqualTo(100_000);
    assertThat(content.readings().trace().celsius(10)).isCloseTo(24, within(0.001));
    CliRun run =
        CliRun.in(TestEnvironment.in(folder), "rise", "--temps", "long.csv", "--members", "16");
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("100000 readings of long.csv", "it holds from then on");
  }

  private LoggerDocument read(String text, Optional<ClockTimes> clock) throws IOException {
    String name = "log of día 1.csv";
    Files.writeString(folder.resolve(name), text);
    return DocumentFile.read(
        "--temps",
        name,
        TestEnvironment.in(folder),
        lines -> LoggerDocument.read(lines, clock.map(ClockTimes::start), Vocabulary.KEYS_ONLY));
  }

  private LoggerDocument read(String name) {
    return DocumentFile.read(
        "--temps",
        name,
        TestEnvironment.in(folder),
        lines -> LoggerDocument.read(lines, Optional.empty(), Vocabulary.KEYS_ONLY));
  }

  private static Optional<ClockTimes> mixed(String at) {
    return Optional.of(ClockTimes.parse("--mixed-at", at, ZoneId.of("UTC"), TestEnvironment.NOW));
  }
}
