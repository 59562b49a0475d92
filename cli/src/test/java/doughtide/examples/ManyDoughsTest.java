package doughtide.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.cli.CliRun;
import doughtide.cli.TestEnvironment;
import doughtide.cli.batch.BatchRows;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.beam.sdk.Pipeline;
import org.apache.beam.sdk.PipelineResult;
import org.apache.beam.sdk.options.PipelineOptionsFactory;
import org.apache.beam.sdk.transforms.SerializableFunction;
import org.apache.beam.sdk.util.SerializableUtils;
import org.apache.beam.sdk.values.KV;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/**
 * The row of a batch as a function: alone, in {@code batch}, and in a distributed engine's local
 * mode, which sends every function and every row through serialization as a cluster would.
 */
class ManyDoughsTest {
  /** Beam's own local engine, or that of the profile. */
  private static final String[] ENGINE =
      System.getProperty("doughtide.engine", "--runner=DirectRunner").split(";");

  private static final int ROWS_OF_A_PART = 2;
  private static final Pattern PART = Pattern.compile("answers-\\d{12}\\.csv$");

  private static final String HEADER = "id,dough_temp,starter,hydration";

  /** How often the row was asked that loses its worker; the engine of a test is in its process. */
  private static final AtomicInteger FAILURES = new AtomicInteger();

  /** How many rows were asked. */
  private static final AtomicInteger ASKED = new AtomicInteger();

  @TempDir Path folder;

  private static BatchRows rows() {
    RiseForecaster forecaster = RiseForecaster.standard().withMembers(8).onCallingThread();
    return BatchRows.of(HEADER, forecaster);
  }

  @Test
  void aRowIsAFunction() {
    RiseForecaster forecaster = RiseForecaster.standard().withMembers(8).onCallingThread();
    BatchRows rows = BatchRows.of("id,dough_temp,starter,hydration", forecaster);
    String forecast = rows.answer(2, "A,24C,20%,70%");

    assertThat(forecast).matches("2,A,[0-9.,]+1,,");
  }

  @Test
  void theFunctionAnswersAfterItsJourneyAndRefusesABadRow() {
    BatchRows there = SerializableUtils.clone(rows());

    assertThat(there.header()).isEqualTo(rows().header()).startsWith("line,id,rise_25_hours_early");
    assertThat(there.answer(2, "A,24C,20%,70%"))
        .isEqualTo(rows().answer(2, "A,24C,20%,70%"))
        .startsWith("2,A,");
    assertThat(there.answer(3, "B,240C,20%,70%"))
        .contains("dough_temp 240C: dough temperature 240 °C is outside");
  }

  @Test
  void theFunctionSaysItselfAndTakesOnlyLinesFromOne() {
    assertThat(rows().toString()).startsWith("rows of " + HEADER + " by 8 members, CALLING_THREAD");
    assertThatThrownBy(() -> rows().answer(0, "A,24C,20%,70%"))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("line 0 is outside 1…");
  }

  @Test
  void jsonLinesComeBackAsJsonLines() {
    String row = "{\"id\":\"A\",\"dough_temp\":\"24C\"}";
    BatchRows rows = BatchRows.of(row, RiseForecaster.standard().withMembers(8));

    assertThat(rows.header()).isEmpty();
    assertThat(rows.answer(1, row))
        .startsWith("{\"line\":1,\"id\":\"A\",\"rises\":[{")
        .endsWith("}");
  }

  @Test
  void anEngineABatchAndAResumedBatchGiveTheSameBytes() throws IOException {
    compare(24);
  }

  @Test
  @Tag("long")
  void anEngineGivesTheBytesOfABatchOfManyRows() throws IOException {
    compare(3000);
  }

  @Test
  void aPipelineThatStoppedIsResumedToTheBytesOfABatch() throws IOException {
    Files.writeString(folder.resolve("doughs.csv"), HEADER + "\n" + text(24));
    assertThat(batch().code()).isEqualTo(2); // for the bad row
    BatchRows rows = rows();
    ASKED.set(0);

    assertThatThrownBy(
            () ->
                pipeline(
                    row -> {
                      if (ASKED.incrementAndGet() > 16) {
                        throw new IllegalStateException("no worker is left");
                      }
                      return rows.answer(row.getKey(), row.getValue());
                    }))
        .hasStackTraceContaining("no worker is left");
    assertThat(parts()).isNotEmpty().hasSizeLessThan(12);
    ASKED.set(0);
    String whole =
        pipeline(
            row -> {
              ASKED.incrementAndGet();
              return rows.answer(row.getKey(), row.getValue());
            });

    assertThat(whole).isEqualTo(Files.readString(folder.resolve("forecasts.csv")));
    assertThat(ASKED).hasValueLessThan(24);
  }

  /** In a process of its own, which is killed as soon as a third of the parts is there. */
  @Test
  @Tag("long")
  void aPipelineThatWasKilledIsResumedToTheBytesOfABatch() throws Exception {
    Files.writeString(folder.resolve("doughs.csv"), HEADER + "\n" + text(3000));
    assertThat(batch().code()).isEqualTo(2); // for the bad row
    Process engine = engine();
    while (engine.isAlive() && parts().size() < 10) {
      Thread.sleep(2);
    }
    engine.destroyForcibly().waitFor();
    List<Path> before = parts();
    Map<Path, FileTime> written = new HashMap<>();
    for (Path each : before) {
      written.put(each, Files.getLastModifiedTime(each));
    }

    assertThat(before).hasSizeBetween(10, 29);
    int end = engine().waitFor();
    assertThat(end).as(Files.readString(folder.resolve("engine.log"))).isZero();
    assertThat(answers()).isEqualTo(Files.readString(folder.resolve("forecasts.csv")));
    for (Path each : before) {
      assertThat(Files.getLastModifiedTime(each)).as(each.toString()).isEqualTo(written.get(each));
    }
  }

  private Process engine() throws IOException {
    List<String> words = new ArrayList<>();
    words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    words.addAll(List.of("--add-opens=java.base/java.lang=ALL-UNNAMED"));
    words.addAll(List.of("--add-opens=java.base/java.util=ALL-UNNAMED"));
    words.addAll(List.of("-cp", System.getProperty("java.class.path")));
    words.addAll(List.of(ManyDoughs.class.getName(), file("doughs.csv"), file("answers"), "100"));
    words.addAll(List.of(ENGINE));
    return new ProcessBuilder(words)
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("engine.log").toFile())
        .start();
  }

  /** Beam's own local engine starts nothing again; Flink does, when it is told so. */
  @Test
  @EnabledIfSystemProperty(named = "doughtide.engine", matches = ".*flinkConfDir.*")
  void aTaskThatFailsIsDoneAgainAndGivesTheSameBytes() throws IOException {
    Files.writeString(folder.resolve("doughs.csv"), HEADER + "\n" + text(24));
    assertThat(batch().code()).isEqualTo(2); // for the bad row
    BatchRows rows = rows();
    FAILURES.set(0);

    String answers =
        pipeline(
            row -> {
              if (row.getKey() == 13 && FAILURES.getAndIncrement() == 0) {
                throw new IllegalStateException("a worker is lost");
              }
              return rows.answer(row.getKey(), row.getValue());
            });

    assertThat(FAILURES).hasValueGreaterThan(1);
    assertThat(answers).isEqualTo(Files.readString(folder.resolve("forecasts.csv")));
  }

  private void compare(int doughs) throws IOException {
    Files.writeString(folder.resolve("doughs.csv"), HEADER + "\n" + text(doughs));
    assertThat(batch().code()).isEqualTo(2); // for the bad row
    String whole = Files.readString(folder.resolve("forecasts.csv"));
    assertThat(whole).contains("240C").contains("is outside");

    BatchRows rows = rows();
    assertThat(pipeline(row -> rows.answer(row.getKey(), row.getValue()))).isEqualTo(whole);

    Files.delete(folder.resolve("forecasts.csv"));
    Files.writeString(folder.resolve("forecasts.csv.part"), whole.substring(0, whole.length() / 2));
    assertThat(batch("--resume").code()).isEqualTo(2);
    assertThat(Files.readString(folder.resolve("forecasts.csv"))).isEqualTo(whole);
  }

  private CliRun batch(String... more) {
    Stream<String> words =
        Stream.of("batch", "doughs.csv", "--members", "8", "--out", "forecasts.csv");
    return CliRun.in(
        TestEnvironment.in(folder), Stream.concat(words, Stream.of(more)).toArray(String[]::new));
  }

  /** The answers of the engine in the order of their files, under the header of the function. */
  private String pipeline(SerializableFunction<KV<Long, String>, String> forecast)
      throws IOException {
    Pipeline pipeline = Pipeline.create(PipelineOptionsFactory.fromArgs(ENGINE).create());
    ManyDoughs.addTo(pipeline, file("doughs.csv"), file("answers"), ROWS_OF_A_PART, forecast);
    assertThat(pipeline.run().waitUntilFinish()).isEqualTo(PipelineResult.State.DONE);
    return answers();
  }

  private String file(String name) {
    return folder.resolve(name).toString();
  }

  private String answers() throws IOException {
    String answers = rows().header() + "\n";
    for (Path part : parts()) {
      answers += Files.readString(part);
    }
    return answers;
  }

  private List<Path> parts() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(each -> PART.matcher(each.toString()).find()).sorted().toList();
    }
  }

  private static String text(int doughs) {
    return IntStream.range(0, doughs)
        .mapToObj(
            i ->
                (i == doughs - 2 ? "D,240" : "D" + i + "," + (18 + i % 13))
                    + ("C," + (10 + i % 17) + "%," + (62 + i % 19) + "%\n"))
        .reduce("", String::concat);
  }
}
