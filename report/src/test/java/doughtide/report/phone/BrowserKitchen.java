package doughtide.report.phone;

import doughtide.core.dough.DoughFormula;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.feeding.RefreshmentPlan;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.learning.JarError;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Doughs and starters to open in a real browser.
 *
 * @param mixed when all were mixed or fed
 * @param members of their forecasts
 */
record BrowserKitchen(ZonedDateTime mixed, int members) {

  private static final Rise HALF = Rise.ofPercent(50);

  PhoneDough dough(String name) {
    RiseForecast forecast = at(25);
    return PhoneDough.of(name, mixed, forecast, HALF)
        .with(new PhoneDough.Loaf(night(), ShapeForecaster.of(forecast, night()).forecast()));
  }

  private static Proof night() {
    return Proof.inColdUntil(Temperature.ofCelsius(4), 17);
  }

  private RiseForecast at(double celsius) {
    return RiseForecaster.standard()
        .withMembers(members)
        .keepingCurves()
        .forecast(
            DoughFormula.builder().build(),
            DoughTemperature.steady(Temperature.ofCelsius(celsius)));
  }

  private PhoneLesson lesson() {
    List<RiseForecast> doughs = List.of(at(21), at(25), at(28));
    return new PhoneLesson(
        "Warmth",
        List.of(new PhoneLesson.Axis(PhoneLesson.Thing.DOUGH_TEMP, 1, 3)),
        doughs,
        List.of(HALF, Rise.ofPercent(100)),
        HALF,
        Optional.of(PhoneLesson.Loaf.of(night(), doughs)));
  }

  private PhoneStarter starter(Words words) {
    RefreshmentPlan plan =
        FeedingPlanner.with(RiseForecaster.standard().withMembers(members))
            .refresh(
                Feeding.of(new FeedRatio(1, 5, 5)),
                1,
                TemperatureTrace.steady(Temperature.ofCelsius(22)));
    return PhoneStarter.of(plan, List.of(), mixed, JarError.standard(), words);
  }

  /** So many doughs of a class, named as they come. */
  List<PhoneDough> doughs(List<String> names) {
    RiseForecast forecast = at(25);
    PhoneDough.Plan shape =
        new PhoneDough.Plan(
            forecast.hoursToRise(HALF), List.of(new PhoneDough.Step("mix", 0, "25 °C", false)));
    List<PhoneDough> doughs = new ArrayList<>();
    names.forEach(name -> doughs.add(PhoneDough.of(name, mixed, forecast, HALF).with(shape)));
    return doughs;
  }

  Map<String, PhonePage> pages(Words words) {
    Map<String, PhonePage> pages = new LinkedHashMap<>();
    pages.put("dough", PhonePage.of(dough("Saturday loaf"), words));
    pages.put("class", PhonePage.ofDoughs("Saturday", doughs(List.of("Anna", "Ben")), words));
    pages.put("lesson", PhonePage.of(lesson(), words));
    pages.put("starter", PhonePage.of(starter(words), words));
    return pages;
  }
}
