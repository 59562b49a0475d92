package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.forecast.Warning;
import doughtide.core.quantity.InputException;
import doughtide.core.thermal.TemperatureTrace;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A logger's tables as loggers write them. */
class LoggerDocumentTest {

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
  void everyUsualFormIsRead(String header, String first, String second) {
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
        .hasMessageContaining(part);
  }

  @Test
  void aNightOnTheClockGoesThroughMidnight() {
    LoggerDocument content =
        read("clock,temp C\n22:30,25\n23:30,24\n00:30,23\n", mixed("2027-03-06T22:00"));
    assertThat(content.readings().lastHours()).isCloseTo(2.5, within(1e-9));
    LoggerDocument after = read("clock,temp C\n00:30,25\n01:30,24\n", mixed("2027-03-06T23:30"));
    assertThat(after.readings().lastHours()).isCloseTo(2, within(1e-9));
  }

  @Test
  void theHourThatComesTwiceIsReadTwice() {
    ZonedDateTime mixed = ZonedDateTime.parse("2027-10-31T01:30:00+02:00[Europe/Berlin]");
    LoggerDocument content =
        read(
            "time;temp C\n2027-10-31T01:30;25\n2027-10-31T02:30;24\n2027-10-31T02:30;23\n"
                + "2027-10-31T03:30;22\n",
            Optional.of(mixed));
    assertThat(content.readings().lastHours()).isCloseTo(3, within(1e-9));
  }

  @Test
  void gapsAreToldAndNotRefused() {
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

  /** Hours before mixing are negative; a dough was measured before its last flour went in. */
  @Test
  void withoutAMomentOfMixingTheFirstTimeIsHourZero() {
    LoggerDocument dated =
        read("date,temp C\n2027-03-06T22:00,25\n2027-03-07T00:30,24\n", Optional.empty());
    assertThat(dated.readings().lastHours()).isCloseTo(2.5, within(1e-9));
    LoggerDocument clock = read("clock,temp C\n22:00:36,25\n1:00,24\n", Optional.empty());
    assertThat(clock.readings().lastHours()).isCloseTo(2.99, within(1e-9));
    assertThat(clock.readings().trace().celsius(0)).isCloseTo(25, within(1e-9));
    LoggerDocument before = read("clock,temp C\n23:30,25\n00:30,24\n", mixed("2027-03-07T00:15"));
    assertThat(before.readings().lastHours()).isCloseTo(0.25, within(1e-9));
    LoggerDocument hours = read("elapsed hours,temp C\n-0.5,25\n1,24\n", Optional.empty());
    assertThat(hours.readings().trace().celsius(0.25)).isCloseTo(24.5, within(1e-9));
  }

  /** An hour that is not there in the night the clocks go forward is no time. */
  @Test
  void anHourThatIsSkippedIsRefused() {
    Optional<ZonedDateTime> spring =
        Optional.of(LocalDateTime.parse("2027-03-28T01:00").atZone(ZoneId.of("Europe/Berlin")));
    assertThatThrownBy(() -> read("time,temp C\n2027-03-28T02:30,25\n", spring))
        .hasMessageContaining("line 2")
        .hasMessageContaining("does not exist");
    String across = "time,temp C\n2027-03-28T01:30,25\n2027-03-28T03:30,24\n";
    assertThat(read(across, spring).readings().lastHours()).isCloseTo(1.5, within(1e-9));
  }

  @Test
  void columnsMayBeNamedInAnotherLanguage() {
    Vocabulary german =
        (kind, word) ->
            kind != Vocabulary.Kind.COLUMN
                ? Optional.empty()
                : word.equals("stunden")
                    ? Optional.of("hours")
                    : word.equals("teigtemperatur") ? Optional.of("temperature") : Optional.empty();
    String text = "Stunden;Teigtemperatur (°F)\n0;77\n2;73,4\n";
    LoggerDocument read = LoggerDocument.read(text.lines().iterator(), Optional.empty(), german);

    assertThat(read.readings().trace().celsius(2)).isCloseTo(23, within(1e-9));
    assertThatThrownBy(() -> LoggerDocument.read(text.lines().iterator(), Optional.empty()))
        .hasMessageContaining("line 1: the first line must name");
  }

  @Test
  void anEmptyTextHasNoReading() {
    assertThatThrownBy(() -> read("# nothing yet\n", Optional.empty()))
        .hasMessageContaining("there is no reading");
  }

  private static LoggerDocument read(String text, Optional<ZonedDateTime> mixed) {
    return LoggerDocument.read(text.lines().iterator(), mixed);
  }

  private static Optional<ZonedDateTime> mixed(String at) {
    return Optional.of(LocalDateTime.parse(at).atZone(ZoneId.of("UTC")));
  }
}
