package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.dough.StarterShare;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.Unknowns;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What must hold for a baker nobody knows, whichever yeast rules the starter. */
class TwoYeastsPropertyTest {
  private static final RiseForecaster FEW = RiseForecaster.standard().withMembers(128);

  private static DoughTemperature steady(double celsius) {
    return DoughTemperature.steady(Temperature.ofCelsius(celsius));
  }

  private static RiseForecast dough(double starterPercent, double celsius) {
    DoughFormula formula =
        DoughFormula.builder()
            .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(starterPercent)))
            .build();
    return FEW.forecast(formula, steady(celsius));
  }

  private static DoughFormula fed(FlourClass flour, double parts) {
    Flour own = flour.flour();
    Starter starter = new Starter(Share.ofPercent(100), own, StarterCondition.RIPE);
    return DoughFormula.feed(starter, 1, parts, parts, own);
  }

  private static double likely(TimeWindow window) {
    return window.likely().orElseThrow();
  }

  /** The opposite stuck to hands: a dough is never good for longer because it is hotter. */
  @ParameterizedTest
  @ValueSource(doubles = {3, 10, 20, 40, 80})
  void pastItsBestIsNeverLaterInTheWarm(double starterPercent) {
    double before = Double.POSITIVE_INFINITY;
    for (double celsius = 15; celsius <= 35; celsius += 2) {
      double now = likely(dough(starterPercent, celsius).hoursToOver());
      assertThat(now).as("%s °C", celsius).isLessThan(before + 0.1);
      before = now;
    }
  }

  /** Above 28 °C one kind slows down, so there is no such rule for the likely hour. */
  @ParameterizedTest
  @ValueSource(doubles = {5, 20, 60})
  void halfRisenIsNeverLaterInTheWarmUpTo28(double starterPercent) {
    double before = Double.POSITIVE_INFINITY;
    for (double celsius = 14; celsius <= 28; celsius += 2) {
      double now = likely(dough(starterPercent, celsius).hoursToRise(Rise.ofPercent(50)));
      assertThat(now).as("%s °C", celsius).isLessThan(before);
      before = now;
    }
  }

  /** N4, which nothing was fitted to: common practice, no source. */
  @ParameterizedTest
  @CsvSource({
    "WHITE, 1, 2.5, 4",
    "WHITE, 2, 2.5, 4",
    "WHITE, 5, 2.5, 4",
    "STRONG_WHITE, 2, 2.5, 4",
    "WHOLEMEAL_WHEAT, 1, 2, 3",
    "WHOLEMEAL_WHEAT, 2, 2, 3",
    "WHOLEMEAL_WHEAT, 5, 2, 3"
  })
  void aFedStarterRisesAsHighAsBakersSay(FlourClass flour, double parts, double low, double high) {
    RiseForecast forecast = RiseForecaster.standard().forecast(fed(flour, parts), steady(25), 60);

    assertThat(1 + forecast.greatestPercent().quantile(0.5).orElseThrow() / 100)
        .isBetween(low, high);
  }

  /** N4, too: it doubles long before it peaks. Wholemeal hardly doubles at all. */
  @ParameterizedTest
  @CsvSource({"1, 22", "2, 22", "5, 22", "1, 25", "2, 25", "5, 25", "1, 28", "2, 28", "5, 28"})
  void aWhiteStarterDoublesLongBeforeItPeaks(double parts, double celsius) {
    RiseForecast forecast =
        RiseForecaster.standard().forecast(fed(FlourClass.WHITE, parts), steady(celsius), 80);

    assertThat(likely(forecast.beginsToFall().window()))
        .isGreaterThan(1.3 * likely(forecast.hoursToRise(Rise.ofPercent(100))));
  }

  /**
   * Seeds shrink by feeding: each step delays ripe by about the hours in which yeast multiplies by
   * as much, less where the jar begins crowded.
   */
  @Test
  void eachLargerFeedDelaysRipeByAboutItsDoublings() {
    double[] parts = {0.5, 1, 2, 4, 8, 16};
    double perHour =
        RiseParameters.standard().growth().yeastPerHour() * 1.146; // free water at 100 % hydration
    double before = 0;
    for (int i = 0; i < parts.length; i++) {
      RiseForecast forecast =
          RiseForecaster.standard().forecast(fed(FlourClass.WHITE, parts[i]), steady(25), 48);
      double ripe = likely(forecast.hoursToRipe());
      if (i > 0) {
        double expected = Math.log((0.5 + parts[i]) / (0.5 + parts[i - 1])) / perHour;
        assertThat((ripe - before) / expected).as("1:%s", parts[i]).isBetween(0.5, 1.2);
      }
      before = ripe;
    }
  }

  /** A white jar 1:2:2 after four hours: the remedy that settles which yeast it is. */
  @Test
  void oneJarAt33BesideOneAt25TellsTheKind() {
    for (RiseParameters.RateCurves curves : RiseParameters.standard().curves()) {
      Unknowns kind = Unknowns.typical().withCurves(curves.key());
      double warm = height(kind, 33);
      double cool = height(kind, 25);
      if (curves.kind().equals("humilis")) {
        assertThat(warm).as(curves.key()).isLessThan(1.15 * cool);
      } else {
        assertThat(warm).as(curves.key()).isGreaterThan(1.2 * cool);
      }
    }
  }

  private static double height(Unknowns kind, double celsius) {
    return RiseModel.of(fed(FlourClass.WHITE, 2), steady(celsius))
        .with(kind)
        .run(4)
        .riseAt(4)
        .heightTimes();
  }

  @Test
  void whereTheKindsPartWaysTheKindIsWhatWidens() {
    assertThat(whatWidens(33)).startsWith(Unknown.KIND);
    assertThat(whatWidens(25)).doesNotContain(Unknown.KIND);
  }

  /** Those that explain more than a tenth, the largest first. */
  private static List<Unknown> whatWidens(double celsius) {
    return RiseForecaster.standard()
        .forecast(fed(FlourClass.WHITE, 2), steady(celsius), 48)
        .whatWidens(Rise.ofPercent(50))
        .entrySet()
        .stream()
        .filter(entry -> entry.getValue() > 0.1)
        .sorted((a, b) -> Double.compare(b.getValue(), a.getValue()))
        .map(java.util.Map.Entry::getKey)
        .toList();
  }

  /** Below 36 °C hours are given, and doughs that never arrive count as never. */
  @Test
  void from36NoHoursAndBelowSomeNeverArrive() {
    assertThat(dough(10, 36).isPossible()).isFalse();
    RiseForecast hot = dough(10, 35.9);
    assertThat(hot.hoursToRise(Rise.ofPercent(100)).early()).isPresent();
    assertThat(hot.hoursToRise(Rise.ofPercent(100)).late()).isEmpty();
    assertThat(hot.passes(Rise.ofPercent(100)).reached()).isBetween(0.3, 0.9);
  }

  /** N3 and N6: hours scatter by about 0.29 in their logarithm. */
  @ParameterizedTest
  @CsvSource({"20, 24", "10, 24", "20, 21"})
  void hoursScatterAsBakersDiffer(double starterPercent, double celsius) {
    double[] logs =
        java.util.Arrays.stream(dough(starterPercent, celsius).hoursOfMembers(Rise.ofPercent(50)))
            .map(Math::log)
            .toArray();
    double mean = java.util.Arrays.stream(logs).average().orElseThrow();
    double variance =
        java.util.Arrays.stream(logs).map(x -> (x - mean) * (x - mean)).average().orElseThrow();
    assertThat(Math.sqrt(variance)).isCloseTo(0.29, within(0.03));
  }
}
