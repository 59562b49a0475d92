package doughtide.report;

import doughtide.report.chart.LineSeries;
import doughtide.report.chart.PassingPoint;
import doughtide.report.chart.RiseChartData;
import doughtide.report.chart.Series;
import doughtide.report.handout.BakeSheet;
import doughtide.report.handout.BlankForm;
import doughtide.report.handout.ComparisonPage;
import doughtide.report.handout.Handout;
import doughtide.report.handout.HoursTable;
import doughtide.report.handout.StarterPage;
import doughtide.report.handout.WhyItRisesPage;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Invented doughs for trying charts and pages; the curves are plain logistic curves. */
public final class Samples {

  private Samples() {}

  public static RiseChartData plain() {
    return rise(6.2, 12, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  static RiseChartData withClock() {
    return rise(
        6.2,
        12,
        Optional.of(ZonedDateTime.parse("2026-03-28T20:30+01:00[Europe/Berlin]")),
        Optional.empty(),
        Optional.of(shapePoint(5.0, 5.8, 6.9, 6.2)),
        Optional.empty());
  }

  public static RiseChartData cold() {
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
        Optional.of(shapePoint(6.8, 7.6, 8.7, 10)),
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
    RiseChartData.Builder chart =
        RiseChartData.of(hours, curves[0], curves[1], curves[2])
            .title("Tidemill kitchen country dough")
            .subtitle(
                List.of(
                    "Harrow strong white 80 %, Millrace wholemeal 20 %; hydration 72 %, starter 20"
                        + " %, salt 2 %",
                    "dough temperature 24.5 °C (76 °F); invented demo"))
            .passing(passing)
            .mixedAt(mixedAt)
            .temperature(temperature)
            .cold(cold);
    shape.ifPresent(point -> addShape(chart, point, cold));
    return chart.build();
  }

  /** Right for half an hour around the point, twenty doughs evenly from early to late. */
  private static void addShape(
      RiseChartData.Builder chart,
      RiseChartData.ShapePoint point,
      Optional<RiseChartData.ColdStretch> cold) {
    double likely = point.likelyHours();
    double[] twenty = new double[RiseChartData.Twenty.DOTS];
    for (int i = 0; i < twenty.length; i++) {
      double away = (i - 9.5) / 9.5;
      twenty[i] = likely + 1.4 * away * Math.abs(away) + 0.3 * away;
    }
    chart
        .shape(point)
        .twenty(new RiseChartData.Twenty(twenty, 0))
        .stages(
            Optional.of(
                new RiseChartData.Stages(
                    likely - 0.5,
                    OptionalDouble.of(likely + 0.5),
                    OptionalDouble.of(likely + 3),
                    true,
                    50)))
        .loaf(cold.map(night -> loaf(night, point.risePercent())));
  }

  private static RiseChartData.LoafSeries loaf(RiseChartData.ColdStretch night, double from) {
    double[] parts = Series.evenly(1, 40);
    double[] hours = new double[parts.length];
    double[][] rises = new double[3][parts.length];
    for (int i = 0; i < parts.length; i++) {
      hours[i] = night.fromHours() + parts[i] * (night.toHours() - night.fromHours());
      double way = 1 - Math.exp(-5 * parts[i]);
      rises[0][i] = from + 75 * way;
      rises[1][i] = from + 45 * way;
      rises[2][i] = from + 25 * way;
    }
    return new RiseChartData.LoafSeries(hours, rises[0], rises[1], rises[2], from + 50);
  }

  /** On the likely line of a dough whose middle lies at an hour. */
  private static RiseChartData.ShapePoint shapePoint(
      double early, double likely, double late, double middle) {
    return new RiseChartData.ShapePoint(early, likely, late, logistic(likely, middle));
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

  public static final LocalDate DATE = LocalDate.of(2026, 5, 1);

  public static BakeSheet bakeSheet(Words words) {
    return new BakeSheet(
        Optional.of("Shape about 17:05, when the jar shows 30%."),
        cold(),
        List.of(
            new BakeSheet.Step("mix", new TimeSpan(0, 0), ""),
            new BakeSheet.Step("fold", new TimeSpan(0.5, 2.5), ""),
            new BakeSheet.Step(
                "shape", new TimeSpan(6.8, OptionalDouble.of(7.6), 8.7), "rise 30% (26–34%)"),
            new BakeSheet.Step("into the cold", new TimeSpan(9, 9), ""),
            new BakeSheet.Step("score and bake with steam", new TimeSpan(24, 28), "")),
        List.of(words.say("caution.rawDough"), words.say("caution.steam")));
  }

  static HoursTable hoursTable(Words words) {
    List<Double> celsius = List.of(18.0, 20.0, 22.0, 24.0, 26.0, 28.0);
    List<List<Optional<TimeSpan>>> cells = new ArrayList<>();
    for (double temperature : celsius) {
      List<Optional<TimeSpan>> row = new ArrayList<>();
      for (double share : new double[] {0.05, 0.1, 0.2, 0.3}) {
        double likely = 8 * Math.pow(0.89, temperature - 24) * Math.pow(0.2 / share, 0.35);
        row.add(
            likely > 20
                ? Optional.empty()
                : Optional.of(
                    new TimeSpan(likely * 0.85, OptionalDouble.of(likely), likely * 1.2)));
      }
      cells.add(row);
    }
    return new HoursTable(
        "50 % rise: Tidemill kitchen country dough",
        List.of("Harrow strong white 80 %, Millrace wholemeal 20 %; hydration 72 %, salt 2 %"),
        "starter per flour (prefermented flour)",
        List.of("5% (2.4%)", "10% (4.8%)", "20% (9.1%)", "30% (13%)"),
        celsius,
        cells,
        List.of(words.say("caution.rawDough")));
  }

  static ComparisonPage comparison(Words words) {
    List<ComparisonPage.Case> cases = new ArrayList<>();
    double middle = 10;
    for (String name : List.of("20 °C (68 °F)", "24 °C (75 °F)", "28 °C (82 °F)")) {
      RiseChartData rise =
          rise(middle, 24, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
      PassingPoint half = rise.passing().get(2);
      cases.add(
          new ComparisonPage.Case(
              name,
              rise,
              Optional.of(
                  new TimeSpan(
                      half.earlyHours().orElseThrow(),
                      half.likelyHours(),
                      half.lateHours().orElseThrow()))));
      middle *= 0.68;
    }
    return new ComparisonPage(
        "What does a warmer dough change?",
        List.of("Harrow strong white 80 %, Millrace wholemeal 20 %; hydration 72 %, starter 20 %"),
        50,
        cases,
        "From 20 °C to 28 °C the time to half as much again shrinks from 8–11 to 3¾–5¼ hours.",
        List.of(
            new ComparisonPage.Question("Which dough is ready first?", "The one at 28 °C (82 °F)."),
            new ComparisonPage.Question("Why is that so?", "Yeast works faster in the warm.")),
        List.of(words.say("caution.rawDough")));
  }

  static WhyItRisesPage why(Words words) {
    double[] hours = Series.evenly(12, 100);
    double[] rise = new double[100];
    double[] dissolved = new double[100];
    double[] cells = new double[100];
    double[] lost = new double[100];
    double[] yeast = new double[100];
    double[] bacteria = new double[100];
    double[] acid = new double[100];
    double[] strength = new double[100];
    for (int i = 0; i < 100; i++) {
      double h = hours[i];
      rise[i] = 130 / (1 + Math.exp(-(h - 7)));
      dissolved[i] = 0.4 * (1 - Math.exp(-h / 2));
      cells[i] = 1.0 / (1 + Math.exp(-(h - 7)));
      lost[i] = 0.7 / (1 + Math.exp(-(h - 10)));
      yeast[i] = 10 + 85 / (1 + Math.exp(-(h - 5)));
      bacteria[i] = 10 + 70 / (1 + Math.exp(-(h - 4)));
      acid[i] = 5.9 - 1.8 / (1 + Math.exp(-(h - 7) / 1.5));
      strength[i] = 100 - 45 / (1 + Math.exp(-(h - 10)));
    }
    return new WhyItRisesPage(
        List.of("Tidemill kitchen country dough, 24.5 °C (76 °F); invented demo"),
        new LineSeries("rise", hours, rise),
        List.of(
            new LineSeries("in the gas cells", hours, cells),
            new LineSeries("dissolved in the water", hours, dissolved),
            new LineSeries("lost", hours, lost)),
        List.of(
            new LineSeries("yeast", hours, yeast),
            new LineSeries("lactic bacteria", hours, bacteria)),
        new LineSeries("pH", hours, acid),
        new LineSeries("strength", hours, strength),
        "At 50% rise (6–8 h) 55–60% of the gas made is in the cells, 40–45% dissolved, 0% lost.",
        List.of(words.say("caution.rawDough")));
  }

  static StarterPage starter(Words words) {
    List<Double> celsius = List.of(20.0, 24.0, 28.0);
    List<List<StarterPage.Cell>> cells = new ArrayList<>();
    for (double temperature : celsius) {
      List<StarterPage.Cell> row = new ArrayList<>();
      for (double parts : new double[] {1, 2, 5}) {
        double ripe = 4 * Math.pow(0.9, temperature - 24) * Math.pow(parts, 0.3);
        row.add(
            new StarterPage.Cell(
                Optional.of(new TimeSpan(ripe, OptionalDouble.of(1.2 * ripe), 1.4 * ripe)),
                Optional.of(new TimeSpan(1.3 * ripe, OptionalDouble.of(1.5 * ripe), 1.8 * ripe))));
      }
      cells.add(row);
    }
    return new StarterPage(
        words.say("starter.title"),
        List.of("Invented demo", words.say("starter.explain")),
        List.of("1:1:1", "1:2:2", "1:5:5"),
        celsius,
        cells,
        List.of(words.say("caution.jar")));
  }

  /** Every kind of page. */
  static Map<String, List<Page>> pages(PageFormat format, Words words) {
    Map<String, Handout> handouts = new LinkedHashMap<>();
    handouts.put("bake-sheet", bakeSheet(words));
    handouts.put("hours-table", hoursTable(words));
    handouts.put("comparison", comparison(words));
    handouts.put("comparison-student", comparison(words).exercise(ComparisonPage.Edition.STUDENT));
    handouts.put("why", why(words));
    handouts.put("readings-log", BlankForm.readingsLog(words, Optional.empty(), 12));
    handouts.put("bowls", ComputedPages.bowls(words));
    handouts.put("starter", starter(words));
    Map<String, List<Page>> pages = new LinkedHashMap<>();
    handouts.forEach((name, handout) -> pages.put(name, handout.pages(format, words, DATE)));
    return pages;
  }
}
