package doughtide.core.learning;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
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

/** What a dough in hand costs: its start with a loaf for the cold, a reading, a larger ensemble. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class LiveDoughBenchmark {
  private static final Proof NIGHT = Proof.inCold(Temperature.ofCelsius(4), 12);

  private final LiveDough dough = fresh().shapedFor(NIGHT).with(read(2, 14));
  private final LiveDough odd = fresh().shapedFor(NIGHT).with(read(1.5, 25)).with(read(2, 45));

  private static LiveDough fresh() {
    return LiveDough.of(
        RiseForecaster.standard().onCallingThread(),
        JarError.standard(),
        DoughFormula.builder().build(),
        DoughTemperature.steady(Temperature.ofCelsius(25)));
  }

  private static Reading read(double hours, double percent) {
    return Reading.ofRise(hours, Rise.ofPercent(percent));
  }

  /** Forecast and table of loaves, on one core. */
  @Benchmark
  public ShapeForecaster.Point start() {
    return fresh().shapedFor(NIGHT).shape();
  }

  /** A reading, and when to shape by it. */
  @Benchmark
  public ShapeForecaster.Point reading() {
    return dough.with(read(3, 27)).shape();
  }

  /** The same where a larger ensemble has been run before. */
  @Benchmark
  public ShapeForecaster.Point readingOfARefittedDough() {
    return odd.with(read(2.5, 70)).shape();
  }
}
