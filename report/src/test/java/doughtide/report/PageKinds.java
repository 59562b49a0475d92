package doughtide.report;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.dough.StarterShare;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.flourtrial.BowlPlan;
import doughtide.core.flourtrial.Scale;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.report.handout.BlankForm;
import doughtide.report.handout.ClassDayPages;
import doughtide.report.handout.Comparison;
import doughtide.report.handout.ComparisonPage;
import doughtide.report.handout.Handout;
import doughtide.report.handout.HandoutDough;
import doughtide.report.handout.Handouts;
import doughtide.report.handout.StudentPage;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** Every kind of page, of any dough, and twelve doughs at the ends of what there is. */
final class PageKinds {

  private static final RiseForecaster FORECASTER =
      RiseForecaster.standard().withMembers(16).keepingCurves();
  private static final Rise HALF = Rise.ofPercent(50);
  private static final Optional<ZonedDateTime> MIXED =
      Optional.of(ZonedDateTime.parse("2026-05-01T21:30+02:00[Europe/Berlin]"));
  private static final Optional<Proof> NIGHT =
      Optional.of(Proof.inCold(Temperature.ofCelsius(4), 12));

  private PageKinds() {}

  /** Makes one kind of page. */
  interface Maker {
    Handout of(Handouts handouts, Words words, HandoutDough dough);
  }

  /**
   * A kind of page.
   *
   * @param name as in messages
   */
  record Kind(String name, Maker maker) {
    Handout of(Words words, HandoutDough dough) {
      return maker.of(Handouts.in(words).with(FORECASTER), words, dough);
    }
  }

  static List<Kind> all() {
    return List.of(
        new Kind("bake-sheet", (h, w, d) -> h.bakeSheet(d, MIXED, NIGHT)),
        new Kind(
            "bake-sheet of hours", (h, w, d) -> h.bakeSheet(d, Optional.empty(), Optional.empty())),
        new Kind("comparison", (h, w, d) -> comparison(h, d)),
        new Kind(
            "comparison-student",
            (h, w, d) -> comparison(h, d).exercise(ComparisonPage.Edition.STUDENT)),
        new Kind(
            "comparison-teacher",
            (h, w, d) -> comparison(h, d).exercise(ComparisonPage.Edition.TEACHER)),
        new Kind("hours-table", (h, w, d) -> h.hoursTable(d.formula(), warmths(), shares(), HALF)),
        new Kind(
            "night-table",
            (h, w, d) -> h.nightTable(d.formula(), warmths(), shares(), NIGHT.orElseThrow())),
        new Kind("why-it-rises", (h, w, d) -> h.whyItRises(d, HALF)),
        new Kind("starter-page", (h, w, d) -> starter(h, d)),
        new Kind("readings-log", (h, w, d) -> BlankForm.readingsLog(w, Optional.of(d), 12)),
        new Kind("bowl-worksheet", (h, w, d) -> bowls(w, d)),
        new Kind(
            "first-evening",
            (h, w, d) ->
                h.firstEvening(
                    d.formula().starter(), d.formula().flour(), Temperature.ofCelsius(24), MIXED)),
        new Kind("jar-strip", (h, w, d) -> h.jarStrip(d, MIXED, NIGHT, HALF, 62)),
        new Kind("hand-sheet", (h, w, d) -> h.handSheet(d, MIXED, NIGHT, HALF)),
        new Kind("student", (h, w, d) -> student(h, w, d)),
        new Kind("class-day", (h, w, d) -> classDay()));
  }

  private static ComparisonPage comparison(Handouts handouts, HandoutDough dough) {
    return handouts.comparison(
        Comparison.ofTemperatures(dough, ComputedPages.celsius(20, 23, 26)), HALF);
  }

  private static List<Temperature> warmths() {
    return ComputedPages.celsius(18, 24, 30);
  }

  private static List<StarterShare> shares() {
    return DoubleStream.of(5, 20)
        .mapToObj(percent -> StarterShare.ofAddedFlour(Share.ofPercent(percent)))
        .toList();
  }

  private static Handout starter(Handouts handouts, HandoutDough dough) {
    Feeding feeding =
        Feeding.of(new FeedRatio(1, 1, 1))
            .withStarter(dough.formula().starter())
            .withFlour(dough.formula().flour());
    return handouts.starterPage(
        feeding, warmths(), List.of(new FeedRatio(1, 1, 1), new FeedRatio(1, 5, 5)));
  }

  private static Handout bowls(Words words, HandoutDough dough) {
    BowlPlan plan =
        BowlPlan.of(
            Mass.ofGrams(50),
            Share.ofPercent(60),
            Share.ofPercent(80),
            Share.ofPercent(4),
            Scale.ONE_GRAM);
    return BlankForm.bowls(words, dough.formula().flour(), plan);
  }

  private static Handout student(Handouts handouts, Words words, HandoutDough dough) {
    return new StudentPage(
        "Wilhelmina-Constantia von der Tidemillbrücke",
        12,
        dough.formula().forDough(Mass.ofGrams(10_200)),
        handouts.bakeSheet(dough, MIXED, NIGHT),
        words);
  }

  private static Handout classDay() {
    return new ClassDayPages(
        "Quayside bread class",
        SampleDays.two(),
        SampleDays.TWO_NAMES,
        SampleDays.ZERO,
        List.of(
            new ClassDayPages.Student("Ann", 0, 1, Optional.empty()),
            new ClassDayPages.Student(
                "Wilhelmina-Constantia", 1, 2, Optional.of(Language.FRENCH))));
  }

  static List<HandoutDough> extremeDoughs() {
    List<HandoutDough> doughs = new ArrayList<>();
    doughs.add(at(24.5, DoughFormula.builder().build()));
    doughs.add(at(8, DoughFormula.builder().build()));
    doughs.add(at(33, DoughFormula.builder().build()));
    doughs.add(at(28, of(FlourClass.RYE.flour(), 85)));
    doughs.add(at(22, of(FlourClass.STRONG_WHITE.flour(), 45)));
    doughs.add(at(24, of(FlourClass.WHOLEMEAL_WHEAT.flour(), 110)));
    doughs.add(at(26, share(100)));
    doughs.add(at(26, share(1)));
    Starter cold = Starter.ripe().in(StarterCondition.FROM_COLD);
    doughs.add(at(20, DoughFormula.builder().starter(cold).build()));
    doughs.add(at(24, DoughFormula.builder().salt(Share.ofPercent(4)).build()));
    doughs.add(at(24, DoughFormula.builder().altitude(Altitude.ofMetres(3000)).build()));
    doughs.add(
        new HandoutDough(
            of(mix(), 76),
            List.of(
                new TemperatureTrace.Step(0, Temperature.ofCelsius(27)),
                new TemperatureTrace.Step(3, Temperature.ofCelsius(18)),
                new TemperatureTrace.Step(9.5, Temperature.ofCelsius(12.5)))));
    return doughs;
  }

  private static HandoutDough at(double celsius, DoughFormula formula) {
    return HandoutDough.steady(formula, Temperature.ofCelsius(celsius));
  }

  private static DoughFormula of(Flour flour, double hydration) {
    return DoughFormula.builder().flour(flour).hydration(Share.ofPercent(hydration)).build();
  }

  private static DoughFormula share(double percent) {
    return DoughFormula.builder()
        .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(percent)))
        .build();
  }

  /** All classes at once, the longest formula to print. */
  private static Flour mix() {
    List<Flour.Part> parts = new ArrayList<>();
    FlourClass[] classes = FlourClass.values();
    for (int i = 0; i < classes.length; i++) {
      double percent = i == 0 ? 100 - 10.5 * (classes.length - 1) : 10.5;
      parts.add(new Flour.Part(classes[i].flour(), Share.ofPercent(percent)));
    }
    return Flour.mix(parts);
  }
}
