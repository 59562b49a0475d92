package doughtide.examples;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.forecast.RiseForecaster;
import doughtide.examples.ManyDoughs.Dough;
import doughtide.examples.ManyDoughs.Forecast;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.beam.runners.direct.DirectRunner;
import org.apache.beam.sdk.Pipeline;
import org.apache.beam.sdk.PipelineResult;
import org.apache.beam.sdk.options.PipelineOptions;
import org.apache.beam.sdk.options.PipelineOptionsFactory;
import org.apache.beam.sdk.util.SerializableUtils;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The example runs in the engine's local mode, which sends every function and every dough through
 * serialization as a cluster would.
 */
class ManyDoughsTest {
  private static final int DOUGHS = 300;

  /** A sample without the engine: the function itself, sent once. */
  @Test
  void theFunctionAnswersAfterItsJourney() {
    Forecast here = new Forecast(RiseForecaster.standard().withMembers(8).onCallingThread());
    Forecast there = SerializableUtils.clone(here);

    Dough dough = SerializableUtils.clone(Dough.parse("A,24,20,70"));

    assertThat(there.apply(dough).line()).isEqualTo(here.apply(dough).line()).startsWith("A,");
  }

  @Test
  @Tag("long")
  void aDistributedEngineGivesTheAnswersOfTheLibrary(@TempDir Path folder) throws IOException {
    List<String> doughs = doughs();
    Path input = Files.write(folder.resolve("doughs.csv"), doughs);
    RiseForecaster forecaster = RiseForecaster.standard().withMembers(16).onCallingThread();

    PipelineOptions options = PipelineOptionsFactory.create();
    options.setRunner(DirectRunner.class);
    Pipeline pipeline = Pipeline.create(options);
    ManyDoughs.addTo(pipeline, input.toString(), folder.resolve("answers").toString(), forecaster);
    assertThat(pipeline.run().waitUntilFinish()).isEqualTo(PipelineResult.State.DONE);

    Forecast direct = new Forecast(forecaster);
    assertThat(answers(folder))
        .containsExactlyInAnyOrderElementsOf(
            doughs.stream().map(line -> direct.apply(Dough.parse(line)).line()).toList());
  }

  private static List<String> doughs() {
    return IntStream.range(0, DOUGHS)
        .mapToObj(i -> "D" + i + "," + (18 + i % 13) + "," + (10 + i % 17) + "," + (62 + i % 19))
        .toList();
  }

  /** The lines of all files of answers, which come in no order. */
  private static List<String> answers(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.getFileName().toString().startsWith("answers"))
          .flatMap(ManyDoughsTest::lines)
          .toList();
    }
  }

  private static Stream<String> lines(Path file) {
    try {
      return Files.readAllLines(file).stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
