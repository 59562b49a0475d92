package doughtide.cli.batch;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.CliRun;
import doughtide.cli.Main;
import doughtide.cli.TestEnvironment;
import doughtide.cli.answer.JsonWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BatchCommandTest {

  private static final String HEADER = "id,dough_temp,starter,hydration,salt,flour,altitude\n";

  @TempDir Path folder;

  private CliRun batch(String... words) {
    String[] all = new String[words.length + 3];
    all[0] = "batch";
    System.arraycopy(words, 0, all, 1, words.length);
    all[words.length + 1] = "--members";
    all[words.length + 2] = "8";
    return CliRun.in(TestEnvironment.in(folder), all);
  }

  private void write(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }

  private String read(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  private static String doughs(int count) {
    StringBuilder text = new StringBuilder(HEADER);
    for (int i = 0; i < count; i++) {
      text.append("D").append(i).append(',').append(18 + i % 12).append("C,");
      text.append(10 + i % 20).append("%,72%,2%,white,\n");
    }
    return text.toString();
  }

  @Test
  void everyRowGetsItsForecastInOrder() throws IOException {
    write("doughs.csv", doughs(40));
    CliRun run = batch("doughs.csv", "--threads", "4");
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    List<String> lines = run.out().lines().toList();
    assertThat(lines.get(0))
        .startsWith(
            "line,id,rise_25_hours_early,rise_25_hours_likely,rise_25_hours_late,rise_25_reached_share,")
        .endsWith("past_best_hours_late,past_best_reached_share,warnings,error");
    assertThat(lines).hasSize(41);
    for (int i = 0; i < 40; i++) {
      assertThat(lines.get(i + 1)).startsWith(i + 2 + ",D" + i + ",");
    }
  }

  @Test
  void oneThreadGivesTheSameBytesAsMany() throws IOException {
    write("doughs.csv", doughs(50));
    assertThat(batch("doughs.csv", "--threads", "7").out())
        .isEqualTo(batch("doughs.csv", "--threads", "1").out());
  }

  @Test
  void theHoursAreThoseOfTheLibrary() throws IOException {
    write("doughs.jsonl", "{\"id\":\"A\",\"dough_temp\":\"25C\",\"Starter\":\"20%\"}\n");
    CliRun run = batch("doughs.jsonl");
    doughtide.core.forecast.TimeWindow half =
        doughtide.core.forecast.RiseForecaster.standard()
            .withMembers(8)
            .forecast(
                doughtide.core.dough.DoughFormula.builder().build(),
                doughtide.core.rise.DoughTemperature.steady(
                    doughtide.core.quantity.Temperature.ofCelsius(25)))
            .hoursToRise(doughtide.core.quantity.Rise.ofPercent(50));
    assertThat(run.out())
        .contains(
            "{\"risePercent\":50,\"hoursEarly\":"
                + JsonWriter.number(half.early().orElseThrow(), 3)
                + ",\"hoursLikely\":"
                + JsonWriter.number(half.likely().orElseThrow(), 3));
  }

  @Test
  void aBadRowIsNamedAndTheRestDone() throws IOException {
    write(
        "doughs.csv",
        HEADER + "A,25C,20%,72%,2%,white,\nB,240C,,,,,\n\nC,25,,,,,\nD,25C\nE,25C,,,,,\n");
    CliRun run = batch("doughs.csv", "--out", "out.csv");
    assertThat(run.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(run.err().lines())
        .satisfiesExactly(
            b -> assertThat(b).contains("line 3: dough_temp 240C: ").contains("-2…45 °C"),
            c -> assertThat(c).contains("line 5: dough_temp 25 has no unit: write dough_temp 25C"),
            d -> assertThat(d).contains("line 6: the row has 2 cells and the header 7"),
            sum ->
                assertThat(sum)
                    .contains(
                        "3 of the 5 rows of 'doughs.csv' could not be used, the first on line 3"));
    List<String> lines = read("out.csv").lines().toList();
    assertThat(lines).hasSize(6);
    assertThat(lines.get(2)).startsWith("3,B,,,").contains("240C");
    assertThat(lines.get(5)).startsWith("7,E,").endsWith(",");
  }

  @Test
  void aLineThatIsNoTextCostsOnlyItself() throws IOException {
    Path file = folder.resolve("doughs.csv");
    write("doughs.csv", "id,dough_temp\nA,25C\n");
    Files.write(
        file,
        new byte[] {'B', 0, 'x', '\n', (byte) 0xff, ',', '2', '\n'},
        StandardOpenOption.APPEND);
    Files.writeString(file, "x".repeat(100_000) + "\nC,25C\n", StandardOpenOption.APPEND);
    CliRun run = batch("doughs.csv");
    assertThat(run.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(run.out().lines().map(line -> line.substring(0, 4)))
        .containsExactly("line", "2,A,", "3,3,", "4,4,", "5,5,", "6,C,");
    assertThat(run.err()).contains("line 3: this is no UTF-8 text", "longer than 65536 bytes");
  }

  @Test
  void aStoppedRunGoesOnWithTheSameBytes() throws IOException {
    write("doughs.csv", doughs(30));
    assertThat(batch("doughs.csv", "--out", "whole.csv").code()).isZero();
    String whole = read("whole.csv");
    byte[] bytes = whole.getBytes(StandardCharsets.UTF_8);
    for (int kept :
        new int[] {0, 3, whole.indexOf('\n') + 1, 600, bytes.length - 1, bytes.length}) {
      String out = "out" + kept + ".csv";
      Files.write(folder.resolve(out + ".part"), java.util.Arrays.copyOf(bytes, kept));
      CliRun run = batch("doughs.csv", "--out", out, "--resume");
      assertThat(run.err()).isEmpty();
      assertThat(run.out()).isEqualTo("30 rows: " + out + "\n");
      assertThat(read(out)).as("after %d bytes", kept).isEqualTo(whole);
      assertThat(folder.resolve(out + ".part")).doesNotExist();
    }
  }

  /** Where a bad row lies in what was done before, the end is that of a run in one piece. */
  @ParameterizedTest
  @ValueSource(strings = {"csv", "jsonl"})
  void aResumedRunKnowsTheBadRowsOfTheOneBefore(String format) throws IOException {
    write(
        "doughs.csv", HEADER + "A,25C\n" + doughs(9).substring(HEADER.length()) + "B,240C,,,,,\n");
    CliRun whole = batch("doughs.csv", "--format", format, "--out", "whole.txt");
    assertThat(whole.code()).isEqualTo(Main.BAD_INPUT);
    String text = read("whole.txt");
    for (double share : new double[] {0, 0.3, 0.6, 1}) {
      String out = "out" + share + ".txt";
      write(out + ".part", text.substring(0, (int) (text.length() * share)));
      CliRun run = batch("doughs.csv", "--format", format, "--out", out, "--resume");
      assertThat(run.code()).as("after %s of it", share).isEqualTo(Main.BAD_INPUT);
      assertThat(lastLine(run.err()))
          .isEqualTo(lastLine(whole.err()))
          .contains("2 of the 11 rows of 'doughs.csv' could not be used, the first on line 2");
      assertThat(read(out)).isEqualTo(text);
    }
  }

  @Test
  void aDamagedUnfinishedFileIsRefused() throws IOException {
    write("doughs.csv", doughs(5));
    batch("doughs.csv", "--out", "whole.csv");
    write("out.csv.part", read("whole.csv").replaceFirst("\n2,D0[^\n]*", "\nxx"));
    assertThat(batch("doughs.csv", "--out", "out.csv", "--resume").refusal())
        .contains("has a line without the number of its row");
  }

  private static String lastLine(String text) {
    return text.lines().reduce("", (before, line) -> line);
  }

  @Test
  void anotherJobsUnfinishedFileIsNotContinued() throws IOException {
    write("doughs.csv", doughs(5));
    batch("doughs.csv", "--out", "whole.csv");
    String other = read("whole.csv").replace("D3", "X3");
    write("out.csv.part", other.substring(0, other.indexOf("\n", other.indexOf("X3")) + 1));
    assertThat(batch("doughs.csv", "--out", "out.csv", "--resume").refusal())
        .contains("'out.csv.part' comes from another input or other options");
    assertThat(batch("doughs.csv", "--out", "out.csv").refusal())
        .contains("is there from a run that was stopped: add --resume");
    assertThat(batch("doughs.csv", "--out", "out.csv", "--overwrite").code()).isZero();
    assertThat(read("out.csv")).isEqualTo(read("whole.csv"));
  }

  @Test
  void textThatASpreadsheetWouldRunIsDefused() throws IOException {
    write(
        "doughs.csv",
        "id,dough_temp\n=1+1,25C\n+A,25C\n-A,25C\n@A,25C\n\"=a\"\"b,c\",25C\nB,=2+2\n");
    CliRun run = batch("doughs.csv");
    assertThat(run.out()).contains(",'=1+1,", ",'+A,", ",'-A,", ",'@A,", ",\"'=a\"\"b,c\",");
    assertThat(run.out().lines())
        .noneSatisfy(line -> assertThat(line).containsPattern("(^|,)\"?[=+@]"));
  }

  @Test
  void semicolonsAndDecimalCommasAreRead() throws IOException {
    write("doughs.csv", "ID;Dough temp;Hydration\nA;24,5 °C;72,5 %\n");
    write("plain.csv", "id,dough_temp,hydration\nA,24.5C,72.5%\n");
    assertThat(batch("doughs.csv").out()).isEqualTo(batch("plain.csv").out());
  }

  @Test
  void headersThatCannotBeUsedAreRefused() throws IOException {
    write("twice.csv", "id,salt,Salt\n");
    assertThat(batch("twice.csv").refusal())
        .contains("'twice.csv' line 1: column salt stands there twice");
    write("wrong.csv", "id,dough_tmp\n");
    assertThat(batch("wrong.csv").refusal())
        .contains("column 'dough_tmp' is not known here: did you mean dough_temp?");
    write("empty.csv", "\n \n");
    assertThat(batch("empty.csv").refusal()).contains("'empty.csv' has no rows to read");
  }

  @Test
  void linesOfJsonThatCannotBeUsedAreNamed() throws IOException {
    write(
        "doughs.jsonl",
        "{\"dough_temp\":\"25C\"}\n"
            + "{\"dough_temp\":[1]}\n"
            + "{\n"
            + "{\"dough_temp\":25}\n"
            + "[1]\n"
            + "{\"dough_temp\":\"25C\",\"dough_temp\":\"25C\"}\n"
            + "{\"id\":null,\"dough_temp\":\"25C\"} x\n");
    CliRun run = batch("doughs.jsonl");
    assertThat(run.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(run.out().lines()).hasSize(7);
    assertThat(run.out().lines().filter(line -> line.contains("\"error\":"))).hasSize(6);
    assertThat(run.err().lines())
        .hasSize(7)
        .allSatisfy(line -> assertThat(line).startsWith("doughtide: "));
  }

  @Test
  void resumeNeedsAFile() throws IOException {
    write("doughs.csv", doughs(1));
    assertThat(batch("doughs.csv", "--resume").refusal()).contains("--out forecasts.csv");
  }
}
