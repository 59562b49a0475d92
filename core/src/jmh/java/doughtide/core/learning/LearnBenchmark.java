package doughtide.core.learning;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What learning from an invented baker's bakes costs. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class LearnBenchmark {
  private final List<Bake> bakes =
      SimulatedBaker.given(new SimulatedBaker(1, SimulatedBaker.Setting.PLAIN).bakes(10, 10));

  /** Ten bakes of ten readings each, under every rate curve. */
  @Benchmark
  public Learned learn10Bakes() {
    return Learner.standard().learn(bakes);
  }
}
