package doughtide.report;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Invented doughs for trying charts and pages; the curves are plain logistic curves. */
final class Samples {

  private Samples() {}

  static RiseChartData plain() {
    return rise(6.2, 12, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  static RiseChartData withClock() {
    return rise(
        6.2,
        12,
        Optional.of(ZonedDateTime.parse("2026-03-28T20:30+01:00[Europe/Berlin]")),
        Optional.empty(),
        Optional.of(new RiseChartData.ShapePoint(5.0, 5.8, 6.9, 42)),
        Optional.empty());
  }

  static RiseChartData cold() {
    double[] hours = Series.evenly(30, 121);
    double[] celsius = new double[hours.length];
    for (int i = 0; i < hours.length; i++) {
      celsius[i] = hours[i] < 8 ? 24.5 : 4 + 20.5 * Math.exp(-(hours[i] - 8) / 2.5);
    }
    return rise(
        10,
        30,
        Optional.of(ZonedDateTime.parse("2026-05-01T09:30+02:00[Europe/Berlin]")),
        Optional.of(new RiseChartData.TemperatureSeries(hours, celsius)),
        Optional.of(new RiseChartData.ShapePoint(6.8, 7.6, 8.7, 24)),
        Optional.of(new RiseChartData.ColdStretch(9, 26)));
  }

  /** A logistic rise to 120 % whose middle lies at the given hour. */
  static RiseChartData rise(
      double middle,
      double end,
      Optional<ZonedDateTime> mixedAt,
      Optional<RiseChartData.TemperatureSeries> temperature,
      Optional<RiseChartData.ShapePoint> shape,
      Optional<RiseChartData.ColdStretch> cold) {
    double[] hours = Series.evenly(end, 200);
    double[][] curves = new double[3][hours.length];
    double[] factors = {0.84, 1, 1.19};
    for (int c = 0; c < 3; c++) {
      for (int i = 0; i < hours.length; i++) {
        curves[c][i] = logistic(hours[i], middle * factors[c]);
      }
    }
    List<PassingPoint> passing = new ArrayList<>();
    for (double percent : new double[] {25, 30, 50, 75, 100}) {
      double likely = inverse(percent, middle);
      passing.add(PassingPoint.of(percent, likely * 0.84, likely, likely * 1.19));
    }
    return new RiseChartData(
        "Tidemill kitchen country dough",
        List.of(
            "Harrow strong white 80 %, Millrace wholemeal 20 %; hydration 72 %, starter 20 %, salt 2 %",
            "dough temperature 24.5 °C (76 °F); invented demo"),
        hours,
        curves[0],
        curves[1],
        curves[2],
        passing,
        mixedAt,
        temperature,
        shape,
        cold,
        List.of());
  }

  private static double logistic(double hour, double middle) {
    double s = 4.2 / middle;
    return 120 / (1 + Math.exp(-s * (hour - middle))) - 120 / (1 + Math.exp(s * middle));
  }

  private static double inverse(double percent, double middle) {
    double s = 4.2 / middle;
    double raised = percent + 120 / (1 + Math.exp(s * middle));
    return middle - Math.log(120 / raised - 1) / s;
  }
}
