package doughtide.report.chart;

import doughtide.core.Internal;
import doughtide.core.flourtrial.AbsorptionFit;
import doughtide.core.flourtrial.BowlTest;
import doughtide.core.flourtrial.Experience;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.flourtrial.HydrationEstimate;
import doughtide.core.quantity.Share;
import doughtide.report.words.TrialWords;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The chart of a flour's trial: the grades of its bowls against their water, and where comfortable,
 * demanding and too wet begin.
 *
 * <pre>{@code
 * Words words = Words.in(Language.ENGLISH);
 * PrintedChart chart =
 *     FlourTrialChart.of("Harrow white", fit, BowlTest.WINDOW, Experience.BEGINNER, words);
 * }</pre>
 */
@Internal
public final class FlourTrialChart {
  private static final int POINTS = 161;
  private static final double MARGIN_POINTS = 2;

  private FlourTrialChart() {}

  /**
   * The chart, ready to be written or put on a page.
   *
   * @param title which flour
   * @param fit the fitted grades
   * @param test by which the bowls were graded
   * @param baker how far below the limit to work
   * @param words the language
   */
  public static PrintedChart of(
      String title, AbsorptionFit fit, BowlTest test, Experience baker, Words words) {
    double[] x = hydrations(fit);
    double[] y = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      y[i] = expectedGrade(fit, x[i]);
    }
    double step = ChartAxis.step(x[x.length - 1] - x[0], 10, 1, 2, 4, 5, 10);
    ChartAxis across =
        ChartAxis.every(
            step, x[0], x[x.length - 1], words.say("chart.hydration"), v -> words.number(v, 0));
    return ChartPicture.on(across, gradeAxis(test, words))
        .title(title)
        .answer(List.of(answer(fit, baker, words)))
        .curves(List.of(new ChartPicture.Curve("expected", x, y, ChartPicture.Pen.BOLD, false)))
        .spans(bowls(fit))
        .lanes(lanes(fit, words))
        .notes(List.of(words.say("chart.trialKey")))
        .chart();
  }

  /** At how much water to work, and where the flour is comfortable and too wet. */
  private static String answer(AbsorptionFit fit, Experience baker, Words words) {
    return words.say(
        "chart.trialAnswer",
        Map.of(
            "working", words.percent(fit.workingHydration(baker).percent(), 1),
            "from", words.percent(fit.comfortable().fromPercent(), 1),
            "to", words.percent(fit.comfortable().toPercent(), 1),
            "limit", words.percent(fit.limit().likelyPercent(), 1)));
  }

  /** Title and a description in sentences. */
  public static ChartCaption caption(
      String title, AbsorptionFit fit, Experience baker, Words words) {
    StringBuilder description = new StringBuilder(answer(fit, baker, words));
    description.append(' ').append(words.say("chart.trialKey"));
    List<ChartPicture.Lane> lanes = new ArrayList<>(lanes(fit, words));
    Collections.reverse(lanes);
    lanes.forEach(
        lane -> description.append(' ').append(words.capitalized(lane.label())).append('.'));
    return new ChartCaption(title, description.toString(), words.language());
  }

  private static double[] hydrations(AbsorptionFit fit) {
    double low = fit.beginning(Grade.THIN_WINDOW).lowPercent();
    double high = fit.limit().highPercent();
    for (GradedBowl bowl : fit.bowls()) {
      low = Math.min(low, bowl.hydrationPercent());
      high = Math.max(high, bowl.hydrationPercent());
    }
    double from = Math.max(0, Math.floor(low - MARGIN_POINTS));
    double to = Math.ceil(high + MARGIN_POINTS);
    double[] places = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      places[i] = from + (to - from) * i / (POINTS - 1);
    }
    return places;
  }

  /** Mean of the grades' places, 0 for the driest, weighted by how probable each grade is. */
  private static double expectedGrade(AbsorptionFit fit, double hydrationPercent) {
    double mean = 0;
    for (Grade grade : Grade.values()) {
      mean += grade.ordinal() * fit.probability(grade, Share.ofPercent(hydrationPercent));
    }
    return mean;
  }

  private static ChartAxis gradeAxis(BowlTest test, Words words) {
    List<ChartTick> ticks = new ArrayList<>();
    for (Grade grade : Grade.values()) {
      ticks.add(new ChartTick(grade.ordinal(), TrialWords.grade(words, test, grade)));
    }
    return new ChartAxis(-0.4, Grade.values().length - 0.6, ticks, "", List.of());
  }

  /** One ring for each hydration and grade that occurs. */
  private static List<ChartPicture.Span> bowls(AbsorptionFit fit) {
    Map<Grade, Map<Double, Integer>> counts = new TreeMap<>();
    for (GradedBowl bowl : fit.bowls()) {
      counts
          .computeIfAbsent(bowl.grade(), grade -> new TreeMap<>())
          .merge(bowl.hydrationPercent(), 1, Integer::sum);
    }
    List<ChartPicture.Span> rings = new ArrayList<>();
    counts.forEach(
        (grade, places) ->
            places.forEach(
                (at, count) ->
                    rings.add(
                        new ChartPicture.Span(
                            at, at, at, grade.ordinal(), count > 1 ? count.toString() : ""))));
    return rings;
  }

  private static List<ChartPicture.Lane> lanes(AbsorptionFit fit, Words words) {
    return List.of(
        lane("chart.limit", fit.limit(), words),
        lane("chart.demanding", fit.beginning(Grade.TEARS_FAR), words),
        lane("chart.comfortable", fit.beginning(Grade.THIN_WINDOW), words));
  }

  private static ChartPicture.Lane lane(String key, HydrationEstimate at, Words words) {
    return new ChartPicture.Lane(
        at.lowPercent(),
        at.likelyPercent(),
        at.highPercent(),
        words.say(key) + " " + words.percent(at.likelyPercent(), 1));
  }
}
