package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.RiseParameters.RateCurves;
import doughtide.core.rise.Unknowns;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ForecastTest {
  private static final List<RateCurves> CURVES = RiseParameters.standard().curves();

  private static final double INF = Double.POSITIVE_INFINITY;

  private static RiseForecast forecast(double celsius) {
    return RiseForecaster.standard()
        .withMembers(64)
        .forecast(
            DoughFormula.builder().build(),
            DoughTemperature.steady(Temperature.ofCelsius(celsius)));
  }

  @Test
  void windowTakesTenFiftyAndNinetyPercent() {
    double[] hours = IntStream.rangeClosed(0, 10).mapToDouble(i -> 10 - i).toArray();
    TimeWindow window = TimeWindow.of(hours);
    assertThat(window.early()).hasValue(1);
    assertThat(window.likely()).hasValue(5);
    assertThat(window.late()).hasValue(9);
    assertThat(window.widthHours()).hasValue(8);
    assertThat(window.plus(2).likely()).hasValue(7);
    assertThat(hours[0]).isEqualTo(10);
  }

  @Test
  void windowIsOpenWhereMembersNeverGetThere() {
    TimeWindow half = TimeWindow.of(new double[] {1, 2, 3, 4, 5, 6, INF, INF, INF, INF, INF});
    assertThat(half.early()).hasValue(2);
    assertThat(half.likely()).hasValue(6);
    assertThat(half.late()).isEqualTo(OptionalDouble.empty());
    assertThat(half.widthHours()).isEmpty();
    assertThat(half.plus(1).late()).isEmpty();
    assertThat(TimeWindow.of(new double[] {INF, INF, INF})).isEqualTo(TimeWindow.NEVER);
    assertThat(TimeWindow.of(new double[] {4})).isEqualTo(TimeWindow.of(new double[] {4, 4}));
  }

  @Test
  void beliefRefusesWhatIsNoDistribution() {
    double[][] covariance = Belief.standard().covariance();
    assertThatThrownBy(() -> Belief.of(new double[5], covariance))
        .isInstanceOf(InputException.class)
        .hasMessage("a belief needs 7 means and as many rows of covariance");
    covariance[0][1] = 0.01;
    assertThatThrownBy(() -> Belief.of(new double[Belief.SIZE], covariance))
        .hasMessage("a belief's covariance must be symmetric");
    covariance[0][1] = Double.NaN;
    assertThatThrownBy(() -> Belief.of(new double[Belief.SIZE], covariance))
        .isInstanceOf(InputException.class);
    double[][] negative = Belief.standard().covariance();
    negative[2][2] = -1;
    assertThatThrownBy(() -> Belief.of(new double[Belief.SIZE], negative))
        .isInstanceOf(InputException.class)
        .hasMessage("a belief's covariance must not be negative in any direction");
  }

  @Test
  void anotherDeviationKeepsTheCorrelations() {
    double[][] covariance = Belief.standard().covariance();
    covariance[0][3] = 0.5 * 0.45 * 0.18;
    covariance[3][0] = covariance[0][3];
    Belief changed =
        Belief.of(new double[Belief.SIZE], covariance).withStandardDeviation(Unknown.VIGOUR, 0.5);
    assertThat(changed.standardDeviation(Unknown.VIGOUR)).isCloseTo(0.5, within(1e-12));
    assertThat(changed.standardDeviation(Unknown.RATE)).isCloseTo(0.18, within(1e-12));
    assertThat(changed.covariance()[0][3]).isCloseTo(0.5 * 0.5 * 0.18, within(1e-12));
    assertThat(changed.covariance()[3][0]).isCloseTo(0.5 * 0.5 * 0.18, within(1e-12));
    Belief none = changed.withStandardDeviation(Unknown.VIGOUR, 0);
    assertThat(none.covariance()[0]).containsOnly(0);
    assertThatThrownBy(() -> changed.withStandardDeviation(Unknown.CURVE, 0.1))
        .isInstanceOf(InputException.class)
        .hasMessage("the curve has no standard deviation");
  }

  @Test
  void beliefGivesAwayCopiesOnly() {
    Belief belief = Belief.standard();
    belief.mean()[0] = 9;
    belief.covariance()[0][0] = 9;
    assertThat(belief.mean()[0]).isZero();
    assertThat(belief.standardDeviation(Unknown.VIGOUR)).isCloseTo(0.45, within(1e-12));
    assertThat(belief.middle(CURVES)).isEqualTo(Unknowns.typical());
  }

  @Test
  void ensembleIsTheSameEveryTimeAndFillsEverySlice() {
    Ensemble one = Ensemble.of(Belief.standard(), CURVES, 256);
    assertThat(Ensemble.of(Belief.standard(), CURVES, 256).members()).isEqualTo(one.members());
    for (RateCurves curves : CURVES) {
      assertThat(one.members()).filteredOn(u -> u.curves().equals(curves.key())).hasSize(32);
    }
    double[] logs = one.members().stream().mapToDouble(u -> Math.log(u.vigour())).toArray();
    double mean = Arrays.stream(logs).average().orElseThrow();
    double variance = Arrays.stream(logs).map(x -> (x - mean) * (x - mean)).sum() / 256;
    assertThat(mean).isCloseTo(0, within(0.015));
    assertThat(Math.sqrt(variance)).isCloseTo(0.45, within(0.02));
    assertThatThrownBy(() -> Ensemble.of(Belief.standard(), CURVES, 7))
        .hasMessage("ensemble size 7 members is outside 8…65536 members");
  }

  @Test
  void varianceSharesOfAKnownFunction() {
    Ensemble ensemble = Ensemble.of(Belief.standard(), CURVES, 4096);
    double[] result =
        ensemble.members().stream()
            .mapToDouble(u -> 3 * Math.log(u.lagFactor()) / 0.5 + 4 * u.temperatureErrorCelsius())
            .toArray();
    double[] shares = ensemble.varianceShares(result);
    assertThat(shares[Unknown.LAG.ordinal()]).isCloseTo(0.36, within(0.02));
    assertThat(shares[Unknown.TEMPERATURE.ordinal()]).isCloseTo(0.64, within(0.02));
    assertThat(shares[Unknown.AIR.ordinal()]).isLessThan(0.02);
    assertThat(ensemble.varianceShares(new double[4096])).containsOnly(0);
  }

  @Test
  void forecastIsOrderedAndTheSameEveryTime() {
    RiseForecast one = forecast(24);
    TimeWindow window = one.hoursToRise(Rise.ofPercent(50));
    assertThat(window.early().orElseThrow()).isLessThan(window.likely().orElseThrow());
    assertThat(window.likely().orElseThrow()).isLessThan(window.late().orElseThrow());
    assertThat(forecast(24).hoursToRise(Rise.ofPercent(50))).isEqualTo(window);
    assertThat(one.band(5)).hasSize(5);
    assertThat(one.bandAt(4).riseEarlyPercent()).isGreaterThan(one.bandAt(4).riseLatePercent());
    assertThat(one.whatWidens(Rise.ofPercent(50))).hasSize(Unknown.values().length);
    assertThat(one.whatWidens(Rise.ofPercent(1900))).isEmpty();
  }

  @Test
  void noHoursOutsideGrowth() {
    for (double celsius : new double[] {-1, 0, 36, 41}) {
      RiseForecast none = forecast(celsius);
      assertThat(none.isPossible()).isFalse();
      assertThat(none.hoursToRise(Rise.ofPercent(25))).isEqualTo(TimeWindow.NEVER);
      assertThat(none.band(10)).isEmpty();
      assertThat(none.warnings()).isNotEmpty();
      assertThat(none.whatWidens(Rise.ofPercent(25))).isEmpty();
    }
  }

  @Test
  void oneForecasterServesManyThreads() {
    RiseForecaster forecaster = RiseForecaster.standard().withMembers(16);
    RiseForecast shared = forecast(25);
    TimeWindow alone = shared.hoursToRise(Rise.ofPercent(40));
    assertThat(
            IntStream.range(0, 64)
                .parallel()
                .mapToObj(i -> shared.hoursToRise(Rise.ofPercent(40)))
                .distinct())
        .containsExactly(alone);
    assertThat(
            IntStream.range(0, 32)
                .parallel()
                .mapToObj(
                    i ->
                        forecaster
                            .forecast(
                                DoughFormula.builder().build(),
                                DoughTemperature.steady(Temperature.ofCelsius(25)))
                            .hoursToRise(Rise.ofPercent(40)))
                .distinct())
        .hasSize(1);
  }
}
