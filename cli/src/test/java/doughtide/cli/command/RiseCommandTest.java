package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import doughtide.cli.CliRun;
import doughtide.cli.Main;
import doughtide.cli.TestEnvironment;
import doughtide.cli.text.Paragraph;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The main job: what goes in and the page, the object, the table and the chart that come out. */
public class RiseCommandTest {

  private static final String[] USUAL = {
    "rise", "--dough-temp", "25C", "--starter", "20%", "--hydration", "72%", "--members", "64"
  };

  @TempDir Path folder;

  @Test
  void thePageHoldsBothConventionsAndEveryRise() {
    CliRun run = CliRun.of(USUAL);
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .contains("20 % of the flour added = 9.1 % prefermented flour")
        .contains("hydration 72 % (dough yield 172)")
        .contains("25 °C (77 °F)")
        .contains("risen 25 %", "risen 30 %", "risen 50 %", "risen 75 %", "risen 100 %")
        .contains("past its best", "early", "likely", "late")
        .contains("What would narrow the window");
    narrow(run);
  }

  @Test
  void anotherRiseStandsInItsPlace() {
    String out = CliRun.of(with("--rise", "60%", "--rise", "12,5%")).out();
    assertThat(out.lines().filter(line -> line.startsWith("risen")))
        .extracting(line -> line.substring(0, 12).strip())
        .containsExactly(
            "risen 12.5 %",
            "risen 25 %", "risen 30 %", "risen 50 %", "risen 60 %", "risen 75 %", "risen 100 %");
  }

  @Test
  void hoursBecomeClockTimesThroughTheNightTheClocksGoForward() {
    CliRun run = CliRun.of(with("--mixed-at", "2027-03-27T21:00", "--zone", "Europe/Berlin"));
    assertThat(run.out())
        .contains("Sat 27 Mar 2027 21:00, Europe/Berlin")
        .contains("the clocks go forward on Sun 28 Mar from 02:00 to 03:00")
        .contains("Sun 03:")
        .doesNotContain("Sun 02:");
    narrow(run);
  }

  @Test
  void theHourThatComesTwiceIsTold() {
    CliRun run = CliRun.of(with("--mixed-at", "2027-10-30T22:00", "--zone", "Europe/Berlin"));
    assertThat(run.out()).contains("the clocks go back", "A and B: the first and the second");
    assertThat(run.out()).containsPattern("Sun 02:\\d\\d[AB]");
    narrow(run);
  }

  @Test
  void theLocaleChangesNothing() {
    Locale before = Locale.getDefault();
    String here = CliRun.of(with("--format", "json")).out();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(CliRun.of(with("--format", "json")).out()).isEqualTo(here);
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void jsonHoldsTheSchemaInOrder() throws IOException {
    String json = CliRun.of(with("--format", "json")).out();
    assertThat(names(json, 1))
        .containsExactly(
            "schema",
            "answer",
            "rises",
            "pastBest",
            "curve",
            "strength",
            "warnings",
            "widens",
            "understood",
            "cautions");
    assertThat(json).contains("\"schema\": \"doughtide/rise/2\"");
    assertThat(rows(json, "rises").get(0))
        .containsExactly("risePercent", "hoursEarly", "hoursLikely", "hoursLate", "reachedShare");
    assertThat(rows(json, "rises")).hasSize(5);
    assertThat(rows(json, "curve"))
        .hasSizeGreaterThanOrEqualTo(97)
        .allSatisfy(
            row ->
                assertThat(row)
                    .containsExactly(
                        "hours", "riseLowPercent", "riseLikelyPercent", "riseHighPercent", "pH"));
    assertThat(rows(json, "widens").get(0))
        .containsExactly("unknown", "share", "risePercent", "text", "remedy");
  }

  @Test
  void jsonGainsClockTimesWhenTheTimeOfMixingIsGiven() throws IOException {
    String json = CliRun.of(with("--format", "json", "--mixed-at", "09:30")).out();
    assertThat(rows(json, "rises").get(0))
        .containsExactly(
            "risePercent",
            "hoursEarly",
            "hoursLikely",
            "hoursLate",
            "reachedShare",
            "clockEarly",
            "clockLikely",
            "clockLate");
    assertThat(json).contains("\"mixedAt\": \"2027-03-06T09:30Z\"", "\"zone\": \"Europe/London\"");
  }

  @Test
  void aRiseNeverReachedIsNullAndThePageSaysSo() {
    assertThat(CliRun.of(with("--rise", "1000%")).out()).contains("–: not reached in the");
    assertThat(CliRun.of(with("--rise", "1000%", "--format", "json")).out())
        .contains(
            "{\"risePercent\": 1000, \"hoursEarly\": null, \"hoursLikely\": null, \"hoursLate\":"
                + " null, \"reachedShare\": 0}");
  }

  @ParameterizedTest
  @ValueSource(strings = {"41C", "0C", "-1C", "25C,3h:36C"})
  void outsideGrowthThereAreWordsAndNoHours(String temperature) {
    Path chart = folder.resolve("none.pdf");
    CliRun page =
        CliRun.in(
            TestEnvironment.in(folder), "rise", "--dough-temp", temperature, "--chart", "none.pdf");
    assertThat(page.code()).isZero();
    assertThat(page.out()).contains("no hours are given").doesNotContain("risen", "narrow");
    assertThat(page.onlyLine()).contains("no chart is drawn");
    assertThat(chart).doesNotExist();
    String json = CliRun.of("rise", "--dough-temp", temperature, "--format", "json").out();
    assertThat(json)
        .contains("\"risePercent\": 50, \"hoursEarly\": null, \"hoursLikely\": null")
        .contains("\"curve\": []")
        .contains("\"widens\": []");
    assertThat(CliRun.of("rise", "--dough-temp", temperature, "--format", "csv").out())
        .isEqualTo("hours,rise_low_percent,rise_likely_percent,rise_high_percent,ph\n");
  }

  @Test
  void csvIsTheCurve() {
    List<String> lines = CliRun.of(with("--format", "csv")).out().lines().toList();
    assertThat(lines.get(0))
        .isEqualTo("hours,rise_low_percent,rise_likely_percent,rise_high_percent,ph");
    assertThat(lines).hasSizeGreaterThan(97).allMatch(line -> line.split(",").length == 5);
    double half =
        lines.stream()
            .skip(1)
            .map(line -> line.split(","))
            .filter(cells -> Double.parseDouble(cells[2]) >= 50)
            .mapToDouble(cells -> Double.parseDouble(cells[0]))
            .findFirst()
            .orElseThrow();
    String json = CliRun.of(with("--format", "json")).out();
    String likely =
        json.replaceAll("(?s).*\"risePercent\": 50,.*?\"hoursLikely\": ([0-9.]+).*", "$1");
    assertThat(half).isCloseTo(Double.parseDouble(likely), within(0.2));
  }

  @ParameterizedTest
  @ValueSource(strings = {"rise.pdf", "rise.svg", "rise.png", "Früh stück ß.PDF"})
  void theChartComesInThreeForms(String name) throws IOException {
    CliRun run = CliRun.in(TestEnvironment.in(folder), with("--chart", name, "--paper", "A5"));
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("Chart: " + name);
    byte[] bytes = Files.readAllBytes(folder.resolve(name));
    assertThat(bytes).hasSizeGreaterThan(5000);
    CliRun again = CliRun.in(TestEnvironment.in(folder), with("--chart", name));
    assertThat(again.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(again.onlyLine()).contains("--overwrite");
    CliRun.in(TestEnvironment.in(folder), with("--chart", name, "--paper", "a5", "--overwrite"));
    assertThat(Files.readAllBytes(folder.resolve(name))).isEqualTo(bytes);
  }

  @Test
  void theChartHoldsItsTitle() throws IOException {
    CliRun.in(
        TestEnvironment.in(folder), with("--chart", "c.svg", "--title", "Quayside <bread> class"));
    assertThat(Files.readString(folder.resolve("c.svg")))
        .contains("Quayside &lt;bread&gt; class", "prefermented flour");
  }

  private static String[] with(String... more) {
    return Stream.concat(Stream.of(USUAL), Stream.of(more)).toArray(String[]::new);
  }

  private static void narrow(CliRun run) {
    assertThat(run.out().lines())
        .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(Paragraph.WIDTH));
  }

  /** Names of the fields at a depth, in order. */
  public static List<String> names(String json, int depth) throws IOException {
    List<String> names = new ArrayList<>();
    try (JsonParser parser = new JsonFactory().createParser(json)) {
      int at = 0;
      for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
        if (token.isStructStart()) {
          at++;
        } else if (token.isStructEnd()) {
          at--;
        } else if (token == JsonToken.FIELD_NAME && at == depth) {
          names.add(parser.currentName());
        }
      }
    }
    return names;
  }

  /** Names of the fields of each object of an array, in order. */
  public static List<List<String>> rows(String json, String array) throws IOException {
    List<List<String>> rows = new ArrayList<>();
    try (JsonParser parser = new JsonFactory().createParser(json)) {
      while (!array.equals(parser.nextFieldName()) && parser.currentToken() != null) {
        // Look on.
      }
      parser.nextToken();
      while (parser.nextToken() == JsonToken.START_OBJECT) {
        List<String> names = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
          names.add(parser.currentName());
          parser.nextToken();
        }
        rows.add(names);
      }
    }
    return rows;
  }
}
