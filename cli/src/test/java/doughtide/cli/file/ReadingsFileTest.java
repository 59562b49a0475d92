package doughtide.cli.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.cli.TestEnvironment;
import doughtide.cli.session.Session;
import doughtide.core.learning.Reading;
import doughtide.core.quantity.InputException;
import java.io.BufferedWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReadingsFileTest {

  private static final String HEAD =
      "dough: loaf\nstarter: 20%\nhydration: 72%\ndough temp: 25C\nmixed at: 09:30\n"
          + "start height: 50 mm\n";

  @TempDir Path folder;
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private ReadingsFile read(String text, ReadingsFile.BadLines badLines) throws IOException {
    Files.writeString(folder.resolve("a.csv"), text);
    PrintStream said = new PrintStream(err, true, StandardCharsets.UTF_8);
    Session session = new Session(said, said, TestEnvironment.in(folder));
    return ReadingsFile.read("FOLDER", "a.csv", badLines, session);
  }

  private ReadingsFile read(String text) throws IOException {
    return read(text, ReadingsFile.BadLines.REFUSE);
  }

  private static double rise(ReadingsFile file, int index) {
    return file.bake().readings().get(index).rise().orElseThrow().percent();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "time;rise %;dough temp C;pH;note | 11:30;12,5;24,8;4,9;domed",
        "time,rise %,dough temp C,pH,note | 11:30,12.5,24.8,4.9,domed",
        "time,rise,dough temp,pH,note | 11:30,\"12,5%\",\"24,8C\",\"4,9\",\"domed, flat\"",
        "Time;Rise in %;Temperature °C;PH;Notes | 11:30;12.5;24.8;4.9;",
        "time;height mm;temp (C);pH | 11:30;56,25;24,8;4,9",
        "time;rise mm;temp C;pH | 2h;6.25;24.8;4.9",
        "time;height;temp F;ph | 120min;56.25 mm;76.64;4.9",
        "time;height cm;temp C;pH | 11:30:00;5.625;24.8;4.9",
      })
  void oneReadingTypedInManyWays(String heading, String line) throws IOException {
    for (String ending : List.of("\n", "\r\n", "\r")) {
      String text = "\uFEFF" + HEAD + "\n" + heading + "\n" + line + "\n";
      Reading reading = read(text.replace("\n", ending)).bake().readings().get(0);
      assertThat(reading.hours()).isCloseTo(2, within(1e-9));
      assertThat(reading.rise().orElseThrow().percent()).isCloseTo(12.5, within(1e-9));
      assertThat(reading.celsius().orElseThrow()).isCloseTo(24.8, within(1e-9));
      assertThat(reading.ph().orElseThrow()).isEqualTo(4.9);
    }
  }

  @Test
  void theHeadMakesTheDough() throws IOException {
    ReadingsFile file =
        read(
            "flour:;\"white:80%,wholemeal wheat:20%\";;\nprefermented: 10%\nsalt: 1.8 %\n"
                + "dough yield: 175\naltitude: 500 m\nstarter condition: past best\n"
                + "dough temp: 77F\nmixed at: 2026-02-21T09:30\nzone: Europe/Berlin\n"
                + ";;;\n# a remark\ntime;rise %\n10:30;2\n");
    var formula = file.bake().formula();
    assertThat(formula.prefermentedFlour()).isCloseTo(0.10, within(1e-9));
    assertThat(formula.hydration().percent()).isCloseTo(75, within(1e-9));
    assertThat(formula.salt().percent()).isCloseTo(1.8, within(1e-9));
    assertThat(file.bake().temperature().startCelsius()).isCloseTo(25, within(1e-9));
    assertThat(file.clock().orElseThrow().startInWords()).contains("Europe/Berlin");
    assertThat(file.assumed()).isEmpty();
  }

  @Test
  void whatHasOneReadingNeedsNoUnit() throws IOException {
    var formula =
        read("hydration: 75\nsalt: 1,8\nstarter-hydration: 60\nstarter: 100g in 500g flour\n"
                + "flour: white 80%, rye 20%\ndough temp: 25C\nmixed at: 9:30\n"
                + "time;rise %\n10:30;2\n")
            .bake()
            .formula();
    assertThat(formula.hydration().percent()).isCloseTo(75, within(1e-9));
    assertThat(formula.salt().percent()).isCloseTo(1.8, within(1e-9));
    assertThat(formula.starter().hydration().percent()).isCloseTo(60, within(1e-9));
    assertThat(formula.starterOfAddedFlour()).isCloseTo(0.2, within(1e-9));
    assertThat(formula.flour().parts()).containsOnlyKeys("white", "rye");
  }

  @Test
  void clockTimesGoOnPastMidnight() throws IOException {
    ReadingsFile file =
        read("dough temp: 20C\nmixed at: 22:00\ntime;rise %\n23:30;1\n0:30;4\n06:00;40\n");
    assertThat(file.bake().readings()).extracting(Reading::hours).containsExactly(1.5, 2.5, 8.0);
  }

  @Test
  void hoursAreRealHoursWhenTheClocksChange() throws IOException {
    ReadingsFile file =
        read(
            "dough temp: 20C\nmixed at: 2027-03-27T22:00\nzone: Europe/Berlin\ntime;rise %\n"
                + "2027-03-28T01:30;5\n2027-03-28T04:00;30\n2027-03-28T03:00Z;40\n");
    assertThat(file.bake().readings()).extracting(Reading::hours).containsExactly(3.5, 5.0, 6.0);
  }

  @Test
  void datedReadingsGiveAClockOfMixingItsDay() throws IOException {
    ReadingsFile file = read("dough temp: 20C\nmixed at: 22:00\ntime;rise %\n2026-02-22 01:00;5\n");
    assertThat(file.bake().lastHours()).isEqualTo(3);
    assertThat(file.clock().orElseThrow().startInWords()).contains("21 Feb 2026 22:00");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "11:30;12;24.8 | rise 12 has no unit",
        "11:30;12%;24.8 | dough temp 24.8 has no unit",
        "11:30;1,250%;25C | can be read two ways",
        "11:30;12%;248C | did you mean 24.8",
        "11:30;abc;25C | rise abc is not",
        "soon;12%;25C | is no time",
        "25:30;12%;25C | is no time on any clock",
        "2026-02-31T10:00;12%;25C | is no time on any clock or calendar",
        "10:00;12%;25C | not later than the reading before it",
        "09:00;12%;25C | earlier than the reading before it",
        "11:30;9000%;25C | outside",
        "11:30;12%;25C;5;x;y | more cells than the heading",
        "11:30;;; | tells neither rise",
        "11:30;12%;25C;9.5 | pH",
        "11:30;78 mm;25C | starting height",
        "11:30;\"12%;25C | quotation mark",
        ";12%;25C | is no time",
      })
  void aBadLineIsNamedWithNumberAndReason(String line, String reason) throws IOException {
    String text =
        "dough temp: 25C\nmixed at: 09:30\ntime;rise;dough temp;pH;note\n10:00;2%;25C\n"
            + line
            + "\n12:30;25%;25C\n";
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("1 of 3 lines cannot be used");
    assertThat(err.toString(StandardCharsets.UTF_8)).contains("'a.csv' line 5: ").contains(reason);
    ReadingsFile rest = read(text, ReadingsFile.BadLines.SKIP);
    assertThat(rest.given()).isEqualTo(2);
    assertThat(rest.leftOut()).isEqualTo(1);
    assertThat(rise(rest, 1)).isEqualTo(25);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "hydraton: 72% | line 1: 'hydraton:' is not known here: did you mean 'hydration:'?",
        "hydration: 0.72 | line 1: hydration: 0.72 has no unit",
        "salt: 12% | line 1: ",
        "salt: | 'salt:' has no value",
        "dough temp: 240C | 240",
        "start height: 52 | needs mm",
        "zone: Nowhere | no zone known",
        "hello | is no line 'key: value', such as 'dough: …'",
      })
  void aBadHeadIsAlwaysRefused(String line, String reason) {
    assertThatThrownBy(
            () ->
                read(
                    line
                        + (line.startsWith("dough temp") ? "" : "\ndough temp: 25C")
                        + "\nmixed at: 09:30\ntime;rise %\n10:00;2\n",
                    ReadingsFile.BadLines.SKIP))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("'a.csv'")
        .hasMessageContaining(reason);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "time;wind | the column 'wind' is not known",
        "time;pH | no column 'rise' or 'height'",
        "time;rise %;height mm | both rise and height",
        "time;rise %;rise mm | two columns for one thing",
      })
  void aBadHeadingIsRefused(String heading, String reason) {
    assertThatThrownBy(() -> read(HEAD + heading + "\n10:00;2\n")).hasMessageContaining(reason);
  }

  @Test
  void whatIsMissingIsSaid() {
    assertThatThrownBy(() -> read("starter: 20%\n")).hasMessageContaining("there is no table");
    assertThatThrownBy(() -> read(HEAD + "time;rise %\n")).hasMessageContaining("no reading");
    assertThatThrownBy(() -> read("mixed at: 09:30\ntime;rise %\n10:00;2\n"))
        .hasMessageContaining("no dough temperature");
    assertThatThrownBy(() -> read("dough temp: 25C\ntime;rise %\n10:00;2\n"))
        .hasMessageContaining("1 of 1 lines");
    assertThat(err.toString(StandardCharsets.UTF_8)).contains("when the dough was mixed");
  }

  @Test
  void manyLinesOfALoggerAreThinned() throws IOException {
    Path file = folder.resolve("long.csv");
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write("dough temp: 25C\nmixed at: 2026-02-21T09:30:00Z\nzone: UTC\n");
      out.write("time,rise %,dough temp C\n");
      for (int i = 1; i <= 50_000; i++) {
        int second = i / 10;
        out.write(
            "2026-02-21T"
                + java.time.LocalTime.of(9, 30).plusNanos(100_000_000L * i)
                + ","
                + second / 200.0
                + ",25.0\n");
      }
    }
    PrintStream said = new PrintStream(err, true, StandardCharsets.UTF_8);
    ReadingsFile read =
        ReadingsFile.read(
            "FOLDER",
            "long.csv",
            ReadingsFile.BadLines.SKIP,
            new Session(said, said, TestEnvironment.in(folder)));
    assertThat(read.given() + read.leftOut()).isEqualTo(50_000);
    assertThat(read.bake().readings()).hasSizeLessThan(30);
    Reading last = read.bake().readings().get(read.bake().readings().size() - 1);
    double expected = last.hours() * 3600 / 200;
    assertThat(last.rise().orElseThrow().percent()).isCloseTo(expected, within(0.1));
  }
}
