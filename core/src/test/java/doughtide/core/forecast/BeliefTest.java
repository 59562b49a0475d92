package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.RiseParameters.RateCurves;
import doughtide.core.rise.Unknowns;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BeliefTest {
  private static final RateCurves SLOW = RiseParameters.standard().curves().get(0);
  private static final RateCurves FAST = RiseParameters.standard().curves().get(6);
  private static final double[] STILL = new double[Belief.SIZE];

  private static double[] mean(double first, double fourth) {
    return new double[] {first, 0, 0, fourth, 0, 0, 0};
  }

  private static Belief part(double first, double fourth) {
    return Belief.of(mean(first, fourth), Belief.standard().covariance());
  }

  private static Belief lopsided() {
    return Belief.byCurve(
        Map.of(SLOW.key(), part(0.2, 0.1), FAST.key(), part(-0.4, 0.3)),
        Map.of(SLOW.key(), 3.0, FAST.key(), 1.0));
  }

  private static double[] coordinates(Unknowns u) {
    return new double[] {
      inverse(Unknown.VIGOUR, u.vigour()),
      Math.log(u.lagFactor()),
      u.temperatureErrorCelsius(),
      inverse(Unknown.RATE, u.rateScale()),
      u.retentionShift(),
      Math.log(u.startingAir() / Unknowns.USUAL_STARTING_AIR),
      Math.log(u.strengthLoss())
    };
  }

  private static double inverse(Unknown unknown, double value) {
    return new BrentSolver(1e-14, 1e-14).solve(200, x -> unknown.value(x) - value, -3, 3);
  }

  @ParameterizedTest
  @CsvSource({
    "VIGOUR, 0.45",
    "LAG, 0.5",
    "TEMPERATURE, 1",
    "RATE, 0.18",
    "RETENTION, 0.06",
    "AIR, 0.25",
    "STRENGTH, 0.25"
  })
  void standardBeliefHasItsStatedDeviations(Unknown unknown, double deviation) {
    assertThat(Belief.standard().standardDeviation(unknown)).isCloseTo(deviation, within(1e-12));
  }

  @Test
  void meanAndSpreadOverCurvesFollowTheLawOfTotalVariance() {
    Belief belief = lopsided();

    assertThat(belief.mean()[0]).isCloseTo(0.05, within(1e-12));
    assertThat(belief.mean()[3]).isCloseTo(0.15, within(1e-12));
    // 0.75 · 0.15² + 0.25 · 0.45² and 0.75 · 0.15 · (−0.05) + 0.25 · (−0.45) · 0.15
    assertThat(belief.covariance()[0][0]).isCloseTo(0.45 * 0.45 + 0.0675, within(1e-12));
    assertThat(belief.covariance()[0][3]).isCloseTo(-0.0225, within(1e-12));
    assertThat(belief.covariance()[3][0]).isCloseTo(-0.0225, within(1e-12));
    assertThat(belief.covariance()[1][1]).isCloseTo(0.25, within(1e-12));
  }

  @Test
  void eachCurveHasItsOwnBeliefAndWeight() {
    Belief belief = lopsided();

    assertThat(belief.curves()).containsExactlyInAnyOrder(SLOW.key(), FAST.key());
    assertThat(belief.under(FAST.key()).mean()).containsExactly(mean(-0.4, 0.3));
    assertThat(belief.curveWeights(List.of(SLOW, FAST))).containsExactly(0.75, 0.25);
    assertThat(belief.curveWeights(List.of(FAST, SLOW))).containsExactly(0.25, 0.75);
    Belief alike = Belief.standard();
    assertThat(alike.under(FAST.key())).isSameAs(alike);
    assertThat(alike.curveWeights(List.of(SLOW, FAST))).containsExactly(0.5, 0.5);
  }

  /** A third pair of curves is opt-in: what is believed of the other two stays in proportion. */
  @Test
  void whatABeliefDoesNotKnowKeepsItsPrior() {
    Belief belief = lopsided();
    RateCurves own = new RateCurves("mine", SLOW.yeast(), SLOW.bacteria(), 2);

    assertThat(belief.under("mine")).isSameAs(Belief.standard());
    assertThat(belief.curveWeights(List.of(own, SLOW, FAST))).containsExactly(0.5, 0.375, 0.125);
    assertThat(belief.curveWeights(List.of(own))).containsExactly(1);
    assertThat(belief.curveWeights(List.of(FAST))).containsExactly(1);
  }

  @ParameterizedTest
  @CsvSource({"0, 0.2", "0.74, 0.2", "0.76, -0.4", "0.99, -0.4"})
  void rankPicksTheCurveAndItsBelief(double rank, double vigour) {
    String key = new CurveDraw(lopsided(), List.of(SLOW, FAST)).key(rank, 0.3);
    Unknowns drawn = lopsided().unknowns(STILL, key);

    assertThat(drawn.vigour()).isEqualTo(Unknown.VIGOUR.value(vigour));
    assertThat(drawn.curves()).isEqualTo(vigour > 0 ? SLOW.key() : FAST.key());
  }

  @Test
  void kindIsDrawnFirstAndThenTheFormAmongItsKind() {
    CurveDraw draw = new CurveDraw(Belief.standard(), RiseParameters.standard().curves());

    assertThat(draw.key(0.49, 0)).isEqualTo("humilis/schoolfield");
    assertThat(draw.key(0.49, 0.99)).isEqualTo("humilis/power-exponential");
    assertThat(draw.key(0.51, 0.3)).isEqualTo("cerevisiae/cardinal");
  }

  @Test
  void middleIsThatOfTheLikeliestCurve() {
    Unknowns middle = lopsided().middle(List.of(FAST, SLOW));

    assertThat(middle.vigour()).isEqualTo(Unknown.VIGOUR.value(0.2));
    assertThat(middle.curves()).isEqualTo(SLOW.key());
    assertThat(Belief.standard().middle(List.of(FAST, SLOW)).curves()).isEqualTo(FAST.key());
  }

  @Test
  void drawsHaveTheCovarianceThatIsBelieved() {
    double[][] covariance = Belief.standard().covariance();
    covariance[0][3] = covariance[3][0] = 0.6 * 0.45 * 0.18;
    covariance[1][5] = covariance[5][1] = -0.3 * 0.5 * 0.25;
    double[] middle = {0.1, -0.2, 0.3, 0.05, 0.01, -0.1, 0.2};
    for (double[][] wanted : List.of(covariance, Belief.standard().covariance())) {
      Belief belief = Belief.of(middle, wanted);
      double[][] got = new double[Belief.SIZE][Belief.SIZE];
      for (int j = 0; j < Belief.SIZE; j++) {
        double[] normal = new double[Belief.SIZE];
        normal[j] = 1;
        double[] x = coordinates(belief.unknowns(normal, FAST.key()));
        for (int i = 0; i < Belief.SIZE; i++) {
          for (int k = 0; k < Belief.SIZE; k++) {
            got[i][k] += (x[i] - middle[i]) * (x[k] - middle[k]);
          }
        }
      }
      for (int i = 0; i < Belief.SIZE; i++) {
        assertThat(got[i]).as("row %d", i).containsExactly(wanted[i], within(1e-9));
      }
      assertThat(belief.unknowns(STILL, FAST.key()).curves()).isEqualTo(FAST.key());
    }
  }

  @Test
  void extremesAreHeldInsideTheModel() {
    double[] far = {9, 9, 9, 9, 9, 9, 9};
    double[] near = {-9, -9, -9, -9, -9, -9, -9};

    assertThat(Belief.unknownsAt(far, "a"))
        .isEqualTo(new Unknowns(20, 20, 8, 10, 0.3, 0.25, 10, "a"));
    assertThat(Belief.unknownsAt(near, "b"))
        .isEqualTo(new Unknowns(0.02, 0.02, -8, 0.1, -0.3, 0.005, 0.1, "b"));
  }

  @Test
  void betterThermometerHelpsUnderEveryCurve() {
    Belief belief = lopsided().withStandardDeviation(Unknown.TEMPERATURE, 0.2);

    for (Belief each : List.of(belief.under(SLOW.key()), belief.under(FAST.key()))) {
      assertThat(each.standardDeviation(Unknown.TEMPERATURE)).isCloseTo(0.2, within(1e-12));
      assertThat(each.standardDeviation(Unknown.VIGOUR)).isCloseTo(0.45, within(1e-12));
    }
    assertThat(belief.curveWeights(List.of(SLOW, FAST))).containsExactly(0.75, 0.25);
    assertThat(belief.mean()[0]).isCloseTo(0.05, within(1e-12));
  }

  @Test
  void deviationOfNothingCanBeGivenBack() {
    Belief none = Belief.standard().withStandardDeviation(Unknown.LAG, 0);
    Belief again = none.withStandardDeviation(Unknown.LAG, 0.3);

    assertThat(again.standardDeviation(Unknown.LAG)).isCloseTo(0.3, within(1e-12));
    assertThat(again.covariance()[1][0]).isZero();
  }

  @Test
  void weightsThatAreNoneAreRefused() {
    Belief one = Belief.standard();

    assertThatThrownBy(() -> Belief.byCurve(Map.of(), Map.of()))
        .hasMessage("a belief by curve needs one weight for each of its parts");
    assertThatThrownBy(() -> Belief.byCurve(Map.of("a", one), Map.of("b", 1.0)))
        .hasMessage("a belief by curve needs one weight for each of its parts");
    assertThatThrownBy(() -> Belief.byCurve(Map.of("a", one), Map.of("a", -0.1)))
        .hasMessageStartingWith("weight of rate curve a -0.1 is outside");
    assertThatThrownBy(() -> Belief.byCurve(Map.of("a", one), Map.of("a", 0.0)))
        .hasMessageStartingWith("sum of the weights of rate curves 0 is outside");
  }

  /** Student's t with 5 degrees of freedom, scaled to a variance of 1, in place of the normal. */
  @Test
  void vigourAndRateHaveHeavierTails() {
    TDistribution t = new TDistribution(null, 5);
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    for (double z : new double[] {-2.5, -1, 0.1, 0.7, 1.6, 2.8}) {
      double wanted =
          Math.sqrt(0.6) * t.inverseCumulativeProbability(normal.cumulativeProbability(z));
      double got = Math.log(Unknown.RATE.value(z * 0.18)) / 0.18;
      assertThat(got).isCloseTo(wanted, within(0.01 + 0.01 * Math.abs(wanted)));
    }
  }

  @Test
  void tablesOfAnotherSizeAreRefused() {
    double[][] covariance = Belief.standard().covariance();

    assertThatThrownBy(() -> Belief.of(STILL, new double[5][6]))
        .hasMessage("a belief needs 7 means and as many rows of covariance");
    assertThatThrownBy(() -> Belief.of(mean(3.1, 0), covariance))
        .hasMessageStartingWith("mean of the vigour 3.1 is outside");
    covariance[4] = new double[5];
    assertThatThrownBy(() -> Belief.of(STILL, covariance))
        .hasMessage("a belief's covariance needs 7 columns in each row");
  }
}
