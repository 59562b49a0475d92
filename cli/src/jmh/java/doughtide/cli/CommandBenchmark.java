package doughtide.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Whole commands in a warm process. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 4, time = 2)
@Fork(1)
public class CommandBenchmark {
  private static final int ROWS = 200;

  private Path folder;

  /** A file of doughs from 18 to 29 °C. */
  @Setup
  public void makeFiles() throws IOException {
    folder = Files.createTempDirectory("benchmark");
    StringBuilder doughs = new StringBuilder("id,dough_temp,starter\n");
    for (int i = 0; i < ROWS; i++) {
      doughs.append('D').append(i).append(',').append(18 + i % 12).append("C,");
      doughs.append(10 + i % 20).append("%\n");
    }
    Files.writeString(folder.resolve("doughs.csv"), doughs);
  }

  /** The page of one dough, 512 members. */
  @Benchmark
  public int rise() {
    return run("rise", "--dough-temp", "25C");
  }

  /** The same with its chart as SVG. */
  @Benchmark
  public int riseWithChart() {
    return run("rise", "--dough-temp", "25C", "--chart", "rise.svg", "--overwrite");
  }

  /** 200 rows with 128 members each. */
  @Benchmark
  public int batchOf200Rows() {
    return run("batch", "doughs.csv");
  }

  private int run(String... words) {
    PrintStream nowhere =
        new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
    int code = Main.run(words, nowhere, nowhere, TestEnvironment.in(folder).tracing());
    if (code != Main.OK) {
      throw new IllegalStateException("exit code " + code);
    }
    return code;
  }
}
