package doughtide.core.day;

import doughtide.core.forecast.Belief;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;

/** Three invented weeks; hour 0 is midnight before the day of the dough. */
final class Weeks {
  private Weeks() {}

  /** At the bench before and after a day's work; bread at noon. */
  static BakeDay.Builder dayWorker() {
    return builder(36, 6.5, 8.5, 17, 22.5);
  }

  /** At the bench after a night's work and before the next; bread in the afternoon. */
  static BakeDay.Builder nightWorker() {
    return builder(41, 7.5, 9.5, 16, 20.5);
  }

  /** Forty loaves for nine in the morning, by a baker whose readings have been learned from. */
  static BakeDay.Builder marketBaker() {
    return builder(33, 3, 12, 18, 20)
        .loaves(40, Mass.ofGrams(850), PieceForm.ROUND)
        .oven(new Oven(1, 0.75, 1, 20))
        .forecaster(RiseForecaster.standard().with(learned()));
  }

  /** At home all day, without a refrigerator; bread in the evening. */
  static BakeDay.Builder atHome() {
    BakeDay worker = dayWorker().build();
    return BakeDay.builder()
        .readyAt(42)
        .bench(new BenchHours(List.of(new BenchInterval(7, 22), new BenchInterval(31, 46))))
        .loaves(1, worker.piece(), worker.form());
  }

  /** At the bench for half an hour twice a day: nothing fits. */
  static BakeDay.Builder hardlyEver() {
    return builder(36, 7, 7.5, 19, 19.5);
  }

  /** A quarter of an hour twice a day, in the heat and without a refrigerator. */
  static BakeDay.Builder neverInTheHeat() {
    List<BenchInterval> bench = new ArrayList<>();
    for (int day = -2; day <= 1; day++) {
      bench.add(new BenchInterval(24 * day + 7, 24 * day + 7.25));
      bench.add(new BenchInterval(24 * day + 19, 24 * day + 19.2));
    }
    return BakeDay.builder()
        .readyAt(36)
        .bench(new BenchHours(bench))
        .kitchen(TemperatureTrace.steady(Temperature.ofCelsius(30)))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND);
  }

  /** What some weeks of readings leave uncertain; invented. */
  static Belief learned() {
    double[] deviations = {0.10, 0.15, 0.4, 0.05, 0.015, 0.15, 0.1};
    double[][] covariance = new double[Belief.SIZE][Belief.SIZE];
    for (int i = 0; i < Belief.SIZE; i++) {
      covariance[i][i] = deviations[i] * deviations[i];
    }
    return Belief.of(new double[Belief.SIZE], covariance);
  }

  private static BakeDay.Builder builder(double ready, double... edges) {
    List<BenchInterval> bench = new ArrayList<>();
    for (int day = -2; day <= 1; day++) {
      for (int i = 0; i < edges.length; i += 2) {
        bench.add(new BenchInterval(24 * day + edges[i], 24 * day + edges[i + 1]));
      }
    }
    return BakeDay.builder()
        .readyAt(ready)
        .bench(new BenchHours(bench))
        .fridge(Temperature.ofCelsius(4))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND);
  }
}
