package doughtide.core.day;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;

/** Three invented weeks; hour 0 is midnight before the day of the dough. */
final class Weeks {
  private static final List<Double> SHARES = List.of(5.0, 10.0, 20.0);
  private static final List<Double> TEMPERATURES = List.of(22.0, 25.0);

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
        .room(TemperatureTrace.steady(Temperature.ofCelsius(30)))
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
        .cold(Temperature.ofCelsius(4))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND);
  }

  /** Eight different doughs of an invented class, two loaves each. */
  static List<BakeDay> classOfEight() {
    Flour white = FlourClass.WHITE.flour();
    Flour mixed =
        Flour.mix(
            List.of(
                new Flour.Part(white, Share.ofPercent(80)),
                new Flour.Part(FlourClass.WHOLEMEAL_WHEAT.flour(), Share.ofPercent(20))));
    List<BakeDay> doughs = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      doughs.add(
          day(36, 6, -10, -1, 7, 22, 30, 36)
              .dough(
                  DoughFormula.builder()
                      .flour(i % 2 == 0 ? white : mixed)
                      .hydration(Share.ofPercent(66 + 2 * i))
                      .build())
              .starterPercents(i < 4 ? SHARES : List.of(15.0))
              .loaves(2, Mass.ofGrams(700 + 50 * (i % 4)), PieceForm.ROUND)
              .plans(1)
              .build());
    }
    return doughs;
  }

  /** Forty loaves in five doughs for an invented stall. */
  static List<BakeDay> stall() {
    List<BakeDay> doughs = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      doughs.add(
          day(32, 8, -8, -2, 12, 23, 26, 32)
              .dough(DoughFormula.builder().hydration(Share.ofPercent(66 + 2 * i)).build())
              .loaves(8, Mass.ofGrams(850), PieceForm.ROUND)
              .plans(1)
              .build());
    }
    return doughs;
  }

  private static BakeDay.Builder day(double ready, int capacity, double... edges) {
    List<BenchInterval> bench = new ArrayList<>();
    for (int i = 0; i < edges.length; i += 2) {
      bench.add(new BenchInterval(edges[i], edges[i + 1]));
    }
    return BakeDay.builder()
        .readyAt(ready)
        .bench(new BenchHours(bench))
        .room(TemperatureTrace.steady(Temperature.ofCelsius(21)))
        .cold(Temperature.ofCelsius(4))
        .oven(Oven.usual().withLoaves(capacity))
        .starterPercents(SHARES)
        .doughCelsius(TEMPERATURES);
  }

  /**
   * A day with one way to make a dough, planned in no time: a starter from the cold, 24 °C.
   *
   * @param oven loaves it holds
   * @param edges of the hours at the bench
   */
  static BakeDay.Builder small(int oven, double... edges) {
    return BakeDay.builder()
        .readyAt(46)
        .bench(new BenchHours(BenchHoursTest.intervals(edges)))
        .room(TemperatureTrace.steady(Temperature.ofCelsius(24)))
        .bulkPlace(BakeDay.BulkPlace.HELD)
        .starterPercents(List.of(20.0))
        .doughCelsius(List.of(24.0))
        .starterInCold(24)
        .cold(Temperature.ofCelsius(4))
        .oven(Oven.usual().withLoaves(oven))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND)
        .plans(3);
  }
}
