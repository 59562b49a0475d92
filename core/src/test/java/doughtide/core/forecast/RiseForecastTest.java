package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseParameters;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

class RiseForecastTest {
  private static final DoughFormula FORMULA = DoughFormula.builder().build();
  private static final RiseForecaster FORECASTER = RiseForecaster.standard().withMembers(41);
  private static final RiseForecast WARM = at(25);

  /** A forecast answers from summaries of its runs. */
  private static final double HOURS_ACCURACY = 0.002;

  private static final double PERCENT_ACCURACY = 0.01;

  private static RiseForecast at(double celsius) {
    return FORECASTER.forecast(FORMULA, DoughTemperature.steady(Temperature.ofCelsius(celsius)));
  }

  /** Members' values in order: with 41 of them the tenths are numbers 4, 20 and 36. */
  private static double[] sorted(ToDoubleFunction<RiseCurve> value) {
    return WARM.curves().stream().mapToDouble(value).sorted().toArray();
  }

  private static void hasWindow(TimeWindow window, ToDoubleFunction<RiseCurve> value) {
    double[] hours = sorted(value);
    assertThat(window.early().orElseThrow()).isCloseTo(hours[4], within(HOURS_ACCURACY));
    assertThat(window.likely().orElseThrow()).isCloseTo(hours[20], within(HOURS_ACCURACY));
    assertThat(window.late().orElseThrow()).isCloseTo(hours[36], within(HOURS_ACCURACY));
  }

  private static double or(OptionalDouble hours) {
    return hours.orElse(Double.POSITIVE_INFINITY);
  }

  @Test
  void windowsAreThoseOfTheMembers() {
    hasWindow(WARM.hoursToRise(Rise.ofPercent(60)), c -> or(c.hoursToRise(Rise.ofPercent(60))));
    hasWindow(WARM.hoursToOver(), curve -> or(curve.hoursToOver()));
    hasWindow(WARM.beginsToFall().window(), curve -> or(curve.hoursToPeak()));
  }

  @Test
  void hoursOfEveryRiseAreThoseOfTheRuns() {
    for (double percent = 1; percent <= 120; percent += 7) {
      double[] hours = WARM.hoursOfMembers(Rise.ofPercent(percent));
      for (int m = 0; m < hours.length; m++) {
        double own = or(WARM.curves().get(m).hoursToRise(Rise.ofPercent(percent)));
        assertThat(Double.isInfinite(hours[m])).isEqualTo(Double.isInfinite(own));
        assertThat(Double.isInfinite(own) ? 0 : hours[m] - own)
            .as("member %d, %s %%", m, percent)
            .isCloseTo(0, within(HOURS_ACCURACY));
      }
    }
  }

  @Test
  void everyQuestionHasItsDistribution() {
    Rise half = Rise.ofPercent(50);
    Distribution passes = WARM.passes(half);
    double early = passes.quantile(0.25).orElseThrow();

    assertThat(passes.window()).isEqualTo(WARM.hoursToRise(half));
    assertThat(passes.probabilityBy(early)).isBetween(0.25, 0.29);
    assertThat(WARM.passes(Rise.ofPercent(30)).probabilityBy(early)).isGreaterThan(0.3);
    assertThat(WARM.pastBest().window()).isEqualTo(WARM.hoursToOver());
    assertThat(WARM.ripe().probabilityBy(3)).isLessThan(WARM.ripe().reached());
    assertThat(WARM.passes(Rise.ofPercent(900)).reached()).isZero();
  }

  @Test
  void aWeightedMemberCountsAsMuchAsItsWeight() {
    double[] weights = new double[WARM.ensemble().size()];
    weights[7] = 3;
    Ensemble one = WARM.ensemble().weighted(weights);
    RiseForecast only =
        RiseForecast.of(WARM.typical(), one, WARM.hours(), Threads.CALLING_THREAD, false);
    double own = WARM.hoursOfMembers(Rise.ofPercent(50))[7];

    assertThat(only.hoursToRise(Rise.ofPercent(50)).early()).hasValue(own);
    assertThat(only.hoursToRise(Rise.ofPercent(50)).late()).hasValue(own);
  }

  @Test
  void aForecastThatIsKeptHoldsLessThanAMegabyte() {
    RiseForecaster usual = RiseForecaster.standard();
    RiseForecast first = usual.forecast(FORMULA, temperature(), 168);
    long before = usedBytes();
    List<RiseForecast> kept = new ArrayList<>(List.of(first));
    for (int i = 0; i < 10; i++) {
      kept.add(usual.forecast(FORMULA, temperature(), 168));
    }
    double each = (usedBytes() - before) / 10.0;

    assertThat(kept.get(10).hoursToOver()).isEqualTo(first.hoursToOver());
    assertThat(each).isBetween(1e5, 1e6);
  }

  private static long usedBytes() {
    long least = Long.MAX_VALUE;
    for (int i = 0; i < 5; i++) {
      System.gc();
      least =
          Math.min(least, Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory());
    }
    return least;
  }

  @Test
  void starterIsRipeThenHighestThenFallen() {
    RiseForecast fed =
        FORECASTER.forecast(FORMULA, DoughTemperature.steady(Temperature.ofCelsius(26)), 60);
    double ripe = fed.hoursToRipe().likely().orElseThrow();
    double peak = fed.beginsToFall().window().likely().orElseThrow();
    double fallen = fed.hoursToFallen().likely().orElseThrow();

    assertThat(ripe).isLessThan(peak);
    assertThat(fallen).isGreaterThan(peak);
    assertThat(fed.hours()).isEqualTo(60);
  }

  @Test
  void bandIsThatOfTheMembers() {
    RiseForecast.BandPoint point = WARM.bandAt(5);
    double[] rises = sorted(curve -> curve.riseAt(5).percent());
    double[] phs = sorted(curve -> curve.phAt(5));

    assertThat(point.hours()).isEqualTo(5);
    assertThat(point.riseEarlyPercent()).isCloseTo(rises[36], within(PERCENT_ACCURACY));
    assertThat(point.riseLikelyPercent()).isCloseTo(rises[20], within(PERCENT_ACCURACY));
    assertThat(point.riseLatePercent()).isCloseTo(rises[4], within(PERCENT_ACCURACY));
    assertThat(point.ph()).isCloseTo(phs[20], within(0.01));
  }

  @Test
  void bandIsEvenlySpacedFromMixingToTheEnd() {
    List<RiseForecast.BandPoint> band = WARM.band(5);

    assertThat(band.stream().mapToDouble(RiseForecast.BandPoint::hours).toArray())
        .containsExactly(
            new double[] {
              0, WARM.hours() / 4, WARM.hours() / 2, WARM.hours() * 3 / 4, WARM.hours()
            },
            within(1e-9));
    assertThat(band.get(2)).isEqualTo(WARM.bandAt(band.get(2).hours()));
    assertThat(band.get(0).riseLikelyPercent()).isCloseTo(0, within(1e-6));
  }

  @Test
  void forecastGoesTwiceAsFarAsTheTypicalDoughIsGood() {
    double over =
        FORECASTER.typical(FORMULA, temperature()).runFast(168).hoursToOver().orElseThrow();

    assertThat(WARM.hours()).isCloseTo(2 * over, within(1e-9));
    assertThat(at(3).hours()).isEqualTo(168);
  }

  /** The likely member has a thermometer that is off; what is told is what was read. */
  @Test
  void aTemperatureThatWasLoggedIsToldAsItWasLogged() {
    TemperatureTrace logged =
        TemperatureTrace.logged(new double[] {0, 2, 4, 10}, new double[] {24.5, 21, 19.5, 19.5});
    DoughTemperature dough = DoughTemperature.following(logged);

    DoubleUnaryOperator likely = FORECASTER.forecast(FORMULA, dough, 12).likelyCelsius();

    assertThat(dough.isSteady(12)).isFalse();
    assertThat(temperature().isSteady(12)).isTrue();
    for (double hour : new double[] {0, 1, 2, 4, 8}) {
      assertThat(likely.applyAsDouble(hour)).isCloseTo(logged.celsius(hour), within(1e-9));
    }
  }

  @Test
  void theTypicalRunIsTheMemberNearestTheMedian() {
    assertThat(WARM.ensemble().members()).contains(WARM.typical().unknowns());
    RiseCurve typical = WARM.typical().runFast(WARM.hours());
    for (double part : new double[] {0.2, 0.4, 0.7}) {
      double at = part * WARM.hours();
      double median = 1 + WARM.bandAt(at).riseLikelyPercent() / 100;
      assertThat(typical.riseAt(at).heightTimes()).isBetween(median * 0.9, median * 1.1);
    }
  }

  private static DoughTemperature temperature() {
    return DoughTemperature.steady(Temperature.ofCelsius(25));
  }

  @Test
  void livelyDoughIsStillFollowedForEightHours() {
    double[] mean = new double[Belief.SIZE];
    mean[Unknown.RATE.ordinal()] = 2;
    Belief lively = Belief.of(mean, Belief.standard().covariance());

    assertThat(FORECASTER.with(lively).forecast(FORMULA, temperature()).hours()).isEqualTo(8);
    assertThat(FORECASTER.with(lively).belief()).isSameAs(lively);
  }

  @Test
  void forecasterKeepsWhatItWasGiven() {
    RiseParameters parameters = RiseParameters.standard();

    assertThat(FORECASTER.with(parameters).parameters()).isSameAs(parameters);
    assertThat(FORECASTER.ensemble()).isSameAs(FORECASTER.ensemble());
    assertThat(FORECASTER.ensemble().size()).isEqualTo(41);
    assertThat(FORECASTER.with(Belief.standard()).ensemble().size()).isEqualTo(41);
    assertThat(WARM.ensemble().members()).hasSameSizeAs(WARM.curves());
  }

  @Test
  void sharesOfTheWidthAreThoseOfTheMembers() {
    RiseForecast many =
        RiseForecaster.standard().withMembers(256).forecast(FORMULA, temperature(), 30);
    Map<Unknown, Double> shares = many.whatWidens(Rise.ofPercent(50));
    double[] hours = many.hoursOfMembers(Rise.ofPercent(50));

    assertThat(hours).doesNotContain(Double.POSITIVE_INFINITY);
    assertThat(shares.values())
        .containsExactly(
            Arrays.stream(many.ensemble().varianceShares(hours)).boxed().toArray(Double[]::new));
    assertThat(shares.values()).allSatisfy(share -> assertThat(share).isBetween(0.0, 1.0));
    assertThat(shares.values().stream().mapToDouble(Double::doubleValue).sum()).isBetween(0.7, 1.2);
  }

  @Test
  void sharesNeedNineInTenMembers() {
    double[] peaks = sorted(curve -> curve.riseAt(or(curve.hoursToPeak())).percent());

    assertThat(WARM.whatWidens(Rise.ofPercent(peaks[3] + 1e-3))).hasSize(Unknown.values().length);
    assertThat(WARM.whatWidens(Rise.ofPercent(peaks[4] + 1e-3))).isEmpty();
  }

  @Test
  void aForecastSaysItselfInALine() {
    DoughFormula formula =
        DoughFormula.builder().hydration(Share.ofPercent(72)).salt(Share.ofPercent(2)).build();
    DoughTemperature warm = DoughTemperature.steady(Temperature.ofCelsius(25));
    RiseForecast few = RiseForecaster.standard().withMembers(16).forecast(formula, warm);
    assertThat(formula.toString())
        .isEqualTo(
            "white; hydration 72 %, prefermented flour 9.0909 % (starter hydration 100 %, white,"
                + " RIPE), salt 2 %, 0 m");
    assertThat(few.toString())
        .startsWith(formula + "; 25 °C: 50 % rise after ")
        .endsWith(" h")
        .doesNotContain("–");
    TemperatureTrace cool = TemperatureTrace.steady(Temperature.ofCelsius(19));
    assertThat(warm.then(3, cool, 2, 4000).toString())
        .isEqualTo("25 °C, then from 3 h in a room of 19 °C, time constant 2 h");
    DoughTemperature hot = DoughTemperature.steady(Temperature.ofCelsius(41));
    assertThat(RiseForecaster.standard().forecast(formula, hot).toString()).endsWith("no hours");
  }

  @Test
  void theSameDoughsAtAnotherTemperatureKeepTheirDraws() {
    DoughTemperature cool = DoughTemperature.steady(Temperature.ofCelsius(20));
    RiseForecast cooler = WARM.at(cool);

    assertThat(cooler.ensemble()).isSameAs(WARM.ensemble());
    assertThat(cooler.hours()).isEqualTo(WARM.hours());
    Rise rise = Rise.ofPercent(50);
    for (int i = 0; i < WARM.curves().size(); i++) {
      assertThat(or(cooler.curves().get(i).hoursToRise(rise)))
          .as("member %d", i)
          .isEqualTo(or(at(20).at(cool).curves().get(i).hoursToRise(rise)))
          .isGreaterThan(or(WARM.curves().get(i).hoursToRise(rise)));
    }
    assertThat(WARM.at(DoughTemperature.steady(Temperature.ofCelsius(41))).isPossible()).isFalse();
  }
}
