package doughtide.report.handout;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.JarRule;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.Series;
import doughtide.report.page.PlotBlock;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** Computes a sheet to plot on by hand. */
final class HandSheetContent {

  private static final int POINTS = 97;
  private static final double AHEAD_HOURS = 1;
  private static final double LEAST_PT = 300;
  private static final double FINE_PERCENT = 5;
  private static final double MOST_LABELS = 8;

  private final Words words;
  private final JarMoment jar;
  private final HandoutDough dough;
  private final RiseForecast forecast;
  private final Optional<ZonedDateTime> mixedAt;

  HandSheetContent(
      Words words, HandoutDough dough, RiseForecast forecast, Optional<ZonedDateTime> mixedAt) {
    this.words = words;
    this.jar = new JarMoment(words, mixedAt);
    this.dough = dough;
    this.forecast = forecast;
    this.mixedAt = mixedAt;
  }

  HandSheet sheet(Optional<String> title, Optional<Proof> proof, Rise rise) {
    TreeMap<Double, Double> shape = proof.map(this::shapeLine).orElseGet(() -> level(rise));
    double likely = likelyHour(proof, rise);
    double percent = shape.getOrDefault(likely, rise.percent());
    double end = Math.min(forecast.hours(), Math.ceil(Math.max(shape.lastKey(), likely + 2) + 1));
    double highest = shape.values().stream().mapToDouble(v -> v).max().orElse(percent);
    double top = 25 * Math.ceil(Math.min(300, 1.4 * highest) / 25);
    FormulaWords say = new FormulaWords(words);
    List<String> notes = new ArrayList<>(say.notes(dough));
    notes.add(words.say("hand.lines"));
    String how =
        words.say("hand.how", Map.of("time", jar.moment(likely), "rise", jar.rise(percent)));
    return new HandSheet(
        title.orElseGet(() -> words.say("hand.title")),
        how,
        notes,
        plot(shape, end, top, how),
        List.of(words.say("caution.jar") + " " + words.say("caution.rawDough")));
  }

  private double likelyHour(Optional<Proof> proof, Rise rise) {
    return proof.isPresent()
        ? shaped(proof.get()).hours().likely().orElseThrow()
        : forecast.hoursToRise(rise).likely().orElseThrow(() -> jar.never(dough, rise));
  }

  private ShapeForecast shaped(Proof proof) {
    ShapeForecast shape = ShapeForecaster.of(forecast, proof).forecast();
    if (shape.hours().likely().isEmpty() || shape.rise().likely().isEmpty()) {
      throw jar.noHour(shape);
    }
    return shape;
  }

  /**
   * The rise of the jar at which to shape, by the hour at which it is there: at the likely hour, by
   * the jar's rule an hour off it, and on in the same direction as far as one dough in ten comes.
   */
  private TreeMap<Double, Double> shapeLine(Proof proof) {
    ShapeForecast shape = shaped(proof);
    double likely = shape.hours().likely().orElseThrow();
    TreeMap<Double, Double> line = new TreeMap<>();
    line.put(likely, shape.rise().likely().orElseThrow());
    for (JarRule.AtHour look : shape.rule().looks()) {
      if (Math.abs(look.hours() - likely) > AHEAD_HOURS / 2) {
        look.waits().stream()
            .filter(wait -> wait.hours() == 0)
            .forEach(now -> line.put(look.hours(), now.risePercent()));
      }
    }
    List<double[]> points =
        line.entrySet().stream().map(e -> new double[] {e.getKey(), e.getValue()}).toList();
    int last = points.size() - 1;
    if (last > 0) {
      on(points.get(1), points.get(0), shape.hours().early(), line);
      on(points.get(last - 1), points.get(last), shape.hours().late(), line);
    }
    return line;
  }

  /** Goes on from an end of the line to an hour beyond it, straight on. */
  private static void on(
      double[] before, double[] end, OptionalDouble hour, TreeMap<Double, Double> line) {
    if (hour.isPresent() && (hour.getAsDouble() - end[0]) * (end[0] - before[0]) > 0) {
      double slope = (end[1] - before[1]) / (end[0] - before[0]);
      double height = end[1] + slope * (hour.getAsDouble() - end[0]);
      line.put(hour.getAsDouble(), Math.max(FINE_PERCENT, height));
    }
  }

  private TreeMap<Double, Double> level(Rise rise) {
    double likely = forecast.hoursToRise(rise).likely().orElseThrow(() -> jar.never(dough, rise));
    TreeMap<Double, Double> line = new TreeMap<>();
    line.put(Math.max(0, likely - 3), rise.percent());
    line.put(likely + 3, rise.percent());
    return line;
  }

  private PlotBlock plot(TreeMap<Double, Double> shape, double end, double top, String how) {
    double every = Math.max(1, Math.ceil(end / MOST_LABELS));
    List<String> hours = new ArrayList<>();
    for (double hour = 0; hour <= end + 1e-9; hour += every) {
      hours.add(jar.label(hour));
    }
    List<String> percents = new ArrayList<>();
    for (double percent = 0; percent <= top + 1e-9; percent += 25) {
      percents.add(words.percent(percent, 0));
    }
    String across = words.say(mixedAt.isPresent() ? "chart.rowClock" : "chart.hoursAfterMixing");
    return new PlotBlock(
        new PlotBlock.Axis(across, end, 0.5, hours, every),
        new PlotBlock.Axis(words.say("hand.height"), top, FINE_PERCENT, percents, 25),
        List.of(
            expected(0, end, 5, 0), // its edges, which a photocopy keeps
            expected(0, end, 3.6, 0.8),
            expected(-AHEAD_HOURS, end, 1, 0.5),
            expected(AHEAD_HOURS, end, 1, 0.5),
            new PlotBlock.Line(
                shape.keySet().stream().mapToDouble(h -> h).toArray(),
                shape.values().stream().mapToDouble(p -> p).toArray(),
                2.6,
                0)),
        LEAST_PT,
        how);
  }

  /** The likely rise, so many hours later. */
  private PlotBlock.Line expected(double laterHours, double end, double thickness, double grey) {
    double[] hours = Series.evenly(end, POINTS);
    double[] percents = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      double at = hours[i] - laterHours;
      boolean isKnown = at >= 0 && at <= forecast.hours();
      percents[i] = isKnown ? forecast.likelyPercentAt(at) : -1;
    }
    return new PlotBlock.Line(hours, percents, thickness, grey);
  }
}
