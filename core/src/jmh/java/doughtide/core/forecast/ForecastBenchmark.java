package doughtide.core.forecast;

import doughtide.core.dough.DoughFormula;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
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

/** What a question about one dough costs, on one core. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ForecastBenchmark {
  private final DoughFormula formula = DoughFormula.builder().build();
  private final DoughTemperature temperature = DoughTemperature.steady(Temperature.ofCelsius(25));
  private final Proof night = Proof.inCold(Temperature.ofCelsius(4), 12);
  private final RiseForecast forecast = window();

  private RiseForecast window() {
    return RiseForecaster.standard().forecast(formula, temperature, 24);
  }

  /** 512 runs of 24 h and the window of one rise. */
  @Benchmark
  public TimeWindow windowOf512() {
    return window().hoursToRise(Rise.ofPercent(50));
  }

  /** The band of a chart, 200 points, of a forecast that is there. */
  @Benchmark
  public List<RiseForecast.BandPoint> band200() {
    return forecast.band(200);
  }

  /** The shape point before a night in the cold: 8 shells, across the ensemble. */
  @Benchmark
  public ShapeForecast coldNight() {
    return ShapeForecaster.of(forecast, night).forecast();
  }
}
