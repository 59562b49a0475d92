package doughtide.core.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

/** One object used by many threads at once gives each the answer it gives to one alone. */
class ContentionTest {
  private static final int THREADS = 8;
  private static final int ROUNDS = 40;

  private static final DoughFormula DOUGH = DoughFormula.builder().build();
  private static final DoughTemperature IN_ROOM =
      DoughTemperature.inRoom(
          Temperature.ofCelsius(26), TemperatureTrace.steady(Temperature.ofCelsius(19)), 2, 4000);

  /** Asks a question from all threads at once, each many times. */
  private static <T> List<T> together(Callable<T> question) throws Exception {
    ExecutorService pool = Executors.newFixedThreadPool(THREADS);
    CyclicBarrier start = new CyclicBarrier(THREADS);
    try {
      List<Future<List<T>>> running = new ArrayList<>();
      for (int i = 0; i < THREADS; i++) {
        running.add(pool.submit(() -> rounds(start, question)));
      }
      List<T> answers = new ArrayList<>();
      for (Future<List<T>> each : running) {
        answers.addAll(each.get());
      }
      return answers;
    } finally {
      pool.shutdownNow();
    }
  }

  private static <T> List<T> rounds(CyclicBarrier start, Callable<T> question) throws Exception {
    List<T> answers = new ArrayList<>();
    start.await();
    for (int i = 0; i < ROUNDS; i++) {
      answers.add(question.call());
    }
    return answers;
  }

  @Test
  void oneModelRunsInManyThreads() throws Exception {
    Double alone = RiseModel.of(DOUGH, IN_ROOM).runFast(8).riseAt(6.3).fraction();
    RiseModel fresh = RiseModel.of(DOUGH, IN_ROOM); // its tables are made under contention
    assertThat(together(() -> fresh.runFast(8).riseAt(6.3).fraction())).containsOnly(alone);
  }

  @Test
  void oneCurveAnswersManyThreads() throws Exception {
    RiseCurve curve = RiseModel.of(DOUGH, IN_ROOM).runFast(24);
    Callable<List<Object>> question =
        () -> List.of(curve.hoursToRise(Rise.ofPercent(50)), curve.gasAt(5), curve.celsiusAt(1.1));
    List<Object> alone = question.call();
    assertThat(together(question)).containsOnly(alone);
  }

  @Test
  void oneForecasterServesManyThreads() throws Exception {
    RiseForecaster forecaster = RiseForecaster.standard().withMembers(8);
    Callable<TimeWindow> question =
        () -> forecaster.forecast(DOUGH, IN_ROOM, 12).hoursToRise(Rise.ofPercent(30));
    TimeWindow alone = question.call();
    assertThat(together(question)).containsOnly(alone);
  }

  @Test
  void aForecasterThatStaysOnTheCallingThreadGivesTheSameAnswers() throws Exception {
    RiseForecaster spread = RiseForecaster.standard().withMembers(64);
    RiseForecaster alone = spread.onCallingThread();
    Set<Thread> seen = ConcurrentHashMap.newKeySet();
    DoughTemperature watched = DoughTemperature.following(new WatchedTrace(seen));
    TimeWindow answer = alone.forecast(DOUGH, watched).hoursToRise(Rise.ofPercent(40));
    assertThat(seen).containsExactly(Thread.currentThread());
    assertThat(answer).isEqualTo(spread.forecast(DOUGH, watched).hoursToRise(Rise.ofPercent(40)));
  }

  /** Notes who asks; a little warmer every hour. */
  private record WatchedTrace(Set<Thread> seen) implements TemperatureTrace {
    @Override
    public double celsius(double hours) {
      seen.add(Thread.currentThread());
      return 24 + hours / 10;
    }

    @Override
    public double[] breakpoints() {
      return new double[0];
    }
  }
}
