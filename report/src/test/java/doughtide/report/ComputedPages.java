package doughtide.report;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterShare;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.flourtrial.BowlPlan;
import doughtide.core.flourtrial.Scale;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.report.handout.BakeSheet;
import doughtide.report.handout.BlankForm;
import doughtide.report.handout.Comparison;
import doughtide.report.handout.ComparisonPage;
import doughtide.report.handout.Handout;
import doughtide.report.handout.HandoutDough;
import doughtide.report.handout.Handouts;
import doughtide.report.handout.HoursTable;
import doughtide.report.handout.JarStrip;
import doughtide.report.handout.NightTable;
import doughtide.report.handout.StarterPage;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** Pages computed by the model. */
public final class ComputedPages {

  private ComputedPages() {}

  private static final RiseForecaster FORECASTER = RiseForecaster.standard().withMembers(64);

  public static Handouts handouts(Words words) {
    return Handouts.in(words).with(FORECASTER);
  }

  public static DoughFormula formula() {
    return DoughFormula.builder()
        .flour(
            Flour.mix(
                List.of(
                    new Flour.Part(FlourClass.STRONG_WHITE.flour(), Share.ofPercent(80)),
                    new Flour.Part(FlourClass.WHOLEMEAL_RYE.flour(), Share.ofPercent(20)))))
        .hydration(Share.ofPercent(72))
        .build();
  }

  public static HandoutDough dough() {
    return HandoutDough.steady(formula(), Temperature.ofCelsius(24.5));
  }

  public static BakeSheet bakeSheet(Words words) {
    return handouts(words)
        .bakeSheet(
            dough(),
            Optional.of(ZonedDateTime.parse("2026-05-01T09:30+02:00[Europe/Berlin]")),
            Optional.of(Proof.inCold(Temperature.ofCelsius(4), 12)));
  }

  static HoursTable hoursTable(Words words) {
    return handouts(words)
        .hoursTable(
            formula(),
            celsius(18, 20, 22, 24, 26, 28, 30),
            DoubleStream.of(5, 10, 20, 30)
                .mapToObj(percent -> StarterShare.ofAddedFlour(Share.ofPercent(percent)))
                .toList(),
            Rise.ofPercent(50));
  }

  public static ComparisonPage comparison(Words words, double... celsius) {
    return handouts(words)
        .comparison(Comparison.ofTemperatures(dough(), celsius(celsius)), Rise.ofPercent(50));
  }

  public static List<Temperature> celsius(double... values) {
    return DoubleStream.of(values).mapToObj(Temperature::ofCelsius).toList();
  }

  static StarterPage starterPage(Words words) {
    return handouts(words)
        .starterPage(
            Feeding.of(new FeedRatio(1, 1, 1)),
            celsius(18, 20, 22, 24, 26, 28),
            List.of(new FeedRatio(1, 1, 1), new FeedRatio(1, 2, 2), new FeedRatio(1, 5, 5)));
  }

  static BlankForm bowls(Words words) {
    BowlPlan plan =
        BowlPlan.of(
            Mass.ofGrams(40),
            Share.ofPercent(60),
            Share.ofPercent(85),
            Share.ofPercent(5),
            Scale.ONE_GRAM);
    return BlankForm.bowls(words, FlourClass.WHITE.flour().withName("Millrace wholemeal"), plan);
  }

  /** Every kind of page. */
  public static Map<String, Handout> handoutsByName(Words words) {
    ComparisonPage comparison = comparison(words, 20, 23, 26);
    Map<String, Handout> pages = new LinkedHashMap<>();
    pages.put("bake-sheet", bakeSheet(words));
    pages.put("hours-table", hoursTable(words));
    pages.put("comparison", comparison);
    pages.put("comparison-student", comparison.exercise(ComparisonPage.Edition.STUDENT));
    pages.put("comparison-teacher", comparison.exercise(ComparisonPage.Edition.TEACHER));
    pages.put("why", handouts(words).whyItRises(dough(), Rise.ofPercent(50)));
    pages.put("readings-log", BlankForm.readingsLog(words, Optional.of(dough()), 12));
    pages.put("bowls", bowls(words));
    pages.put("starter", starterPage(words));
    pages.put("first-evening", firstEvening(words));
    pages.put("jar-strip", jarStrip(words));
    pages.put("night-table", nightTable(words));
    return pages;
  }

  public static NightTable nightTable(Words words) {
    return handouts(words)
        .nightTable(
            formula(),
            celsius(20, 24.5, 28),
            DoubleStream.of(5, 20, 30)
                .mapToObj(percent -> StarterShare.ofAddedFlour(Share.ofPercent(percent)))
                .toList(),
            Proof.inCold(Temperature.ofCelsius(4), 12));
  }

  public static JarStrip jarStrip(Words words) {
    return handouts(words)
        .jarStrip(
            dough(),
            Optional.of(ZonedDateTime.parse("2026-05-01T14:00+02:00[Europe/Berlin]")),
            Optional.of(Proof.inCold(Temperature.ofCelsius(4), 12)),
            Rise.ofPercent(50),
            62);
  }

  static BlankForm firstEvening(Words words) {
    return handouts(words)
        .firstEvening(
            Starter.ripe(),
            FlourClass.WHITE.flour(),
            Temperature.ofCelsius(24),
            Optional.of(ZonedDateTime.parse("2026-05-01T16:00+02:00[Europe/Berlin]")));
  }
}
