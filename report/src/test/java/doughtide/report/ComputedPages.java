package doughtide.report;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.StarterShare;
import doughtide.core.flourtrial.BowlPlan;
import doughtide.core.flourtrial.Scale;
import doughtide.core.forecast.RiseForecast;
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
import doughtide.report.handout.HandoutDough;
import doughtide.report.handout.Handouts;
import doughtide.report.handout.JarStrip;
import doughtide.report.handout.NightTable;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.List;
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

  public static RiseForecast forecast() {
    return FORECASTER.forecast(formula(), dough().doughTemperature());
  }

  public static BakeSheet bakeSheet(Words words) {
    return handouts(words)
        .bakeSheet(
            dough(),
            Optional.of(ZonedDateTime.parse("2026-05-01T09:30+02:00[Europe/Berlin]")),
            Optional.of(Proof.inCold(Temperature.ofCelsius(4), 12)));
  }

  public static ComparisonPage comparison(Words words, double... celsius) {
    return handouts(words)
        .comparison(Comparison.ofTemperatures(dough(), celsius(celsius)), Rise.ofPercent(50));
  }

  public static List<Temperature> celsius(double... values) {
    return DoubleStream.of(values).mapToObj(Temperature::ofCelsius).toList();
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

  public static NightTable nightTable(Words words) {
    return (NightTable)
        handouts(words)
            .nightTable(
                formula(),
                celsius(20, 24.5, 28),
                DoubleStream.of(5, 20, 30)
                    .mapToObj(percent -> StarterShare.ofAddedFlour(Share.ofPercent(percent)))
                    .toList(),
                Proof.inCold(Temperature.ofCelsius(4), 12));
  }

  public static JarStrip jarStrip(Words words) {
    return (JarStrip)
        handouts(words)
            .jarStrip(
                dough(),
                Optional.of(ZonedDateTime.parse("2026-05-01T14:00+02:00[Europe/Berlin]")),
                Optional.of(Proof.inCold(Temperature.ofCelsius(4), 12)),
                Rise.ofPercent(50),
                62);
  }
}
