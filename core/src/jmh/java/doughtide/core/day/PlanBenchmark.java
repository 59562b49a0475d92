package doughtide.core.day;

import doughtide.core.day.question.InverseQuestions;
import doughtide.core.day.question.LeaveOption;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.Mass;
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

/** What planning costs, in a warm process on all cores. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class PlanBenchmark {
  private final BakeDay day = Weeks.dayWorker().build();
  private final RiseForecast bulk =
      RiseForecaster.standard()
          .forecast(
              DoughFormula.builder().build(),
              DoughTemperature.steady(Temperature.ofCelsius(25)),
              24);
  private final Proof night = Proof.inCold(Temperature.ofCelsius(4), 12);

  /** A day over everything that is searched unless the baker narrows it. */
  @Benchmark
  public DayAnswer bakeDay() {
    return DayPlanner.plan(List.of(day), 1, SearchControl.none());
  }

  /** The ways out of a running bulk of which a forecast is there. */
  @Benchmark
  public List<LeaveOption> leave() {
    return InverseQuestions.leaveAt(bulk, 3, 5.5, 12, night, Mass.ofGrams(850));
  }
}
