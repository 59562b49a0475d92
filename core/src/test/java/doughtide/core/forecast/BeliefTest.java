package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import doughtide.core.rise.Unknowns;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BeliefTest {
  private static final double[] STILL = new double[Belief.SIZE];

  private static double[] mean(double first, double fourth) {
    return new double[] {first, 0, 0, fourth, 0, 0};
  }

  private static Belief part(double first, double fourth) {
    return Belief.of(mean(first, fourth), Belief.standard().covariance());
  }

  private static Belief lopsided() {
    return Belief.byCurve(List.of(part(0.2, 0.1), part(-0.4, 0.3)), new double[] {3, 1});
  }

  private static double[] coordinates(Unknowns u) {
    return new double[] {
      Math.log(u.vigour()),
      Math.log(u.lagFactor()),
      u.temperatureErrorCelsius(),
      Math.log(u.rateScale()),
      u.retentionShift(),
      Math.log(u.startingAir() / Unknowns.USUAL_STARTING_AIR)
    };
  }

  @ParameterizedTest
  @CsvSource({
    "VIGOUR, 0.25",
    "LAG, 0.35",
    "TEMPERATURE, 0.7",
    "RATE, 0.10",
    "RETENTION, 0.025",
    "AIR, 0.25"
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
    assertThat(belief.covariance()[0][0]).isCloseTo(0.0625 + 0.0675, within(1e-12));
    assertThat(belief.covariance()[0][3]).isCloseTo(-0.0225, within(1e-12));
    assertThat(belief.covariance()[3][0]).isCloseTo(-0.0225, within(1e-12));
    assertThat(belief.covariance()[1][1]).isCloseTo(0.35 * 0.35, within(1e-12));
  }

  @Test
  void eachCurveHasItsOwnBeliefAndWeight() {
    Belief belief = lopsided();

    assertThat(belief.underEachCurve(2)).hasSize(2);
    assertThat(belief.underEachCurve(2).get(1).mean()).containsExactly(mean(-0.4, 0.3));
    assertThat(belief.curveWeights(2)).containsExactly(0.75, 0.25);
    belief.curveWeights(2)[0] = 9;
    assertThat(belief.curveWeights(2)).containsExactly(0.75, 0.25);
    assertThatThrownBy(() -> belief.curveWeights(4))
        .isInstanceOf(InputException.class)
        .hasMessage("this belief knows 2 rate curves, the model has 4");
    Belief alike = Belief.standard();
    assertThat(alike.underEachCurve(3)).containsExactly(alike, alike, alike);
    assertThat(alike.curveWeights(4)).containsExactly(0.25, 0.25, 0.25, 0.25);
  }

  @ParameterizedTest
  @CsvSource({"0, 0.2, 0.25", "0.74, 0.2, 0.25", "0.75, -0.4, 0.75", "1, -0.4, 0.75"})
  void rankPicksTheCurveAndItsBelief(double rank, double logVigour, double formQuantile) {
    Unknowns drawn = lopsided().unknowns(STILL, rank);

    assertThat(Math.log(drawn.vigour())).isCloseTo(logVigour, within(1e-12));
    assertThat(drawn.formQuantile()).isEqualTo(formQuantile);
  }

  @Test
  void middleIsThatOfTheLikeliestCurve() {
    Belief belief =
        Belief.byCurve(
            List.of(part(0.1, 0), part(0.2, 0), part(0.3, 0), part(0.4, 0)),
            new double[] {2, 2, 5, 1});

    assertThat(Math.log(belief.middle().vigour())).isCloseTo(0.3, within(1e-12));
    assertThat(belief.middle().formQuantile()).isEqualTo(0.625);
    Unknowns first =
        Belief.byCurve(List.of(part(0.1, 0), part(0.2, 0)), new double[] {1, 1}).middle();
    assertThat(Math.log(first.vigour())).isCloseTo(0.1, within(1e-12));
  }

  @Test
  void drawsHaveTheCovarianceThatIsBelieved() {
    double[][] covariance = Belief.standard().covariance();
    covariance[0][3] = covariance[3][0] = 0.6 * 0.25 * 0.1;
    covariance[1][5] = covariance[5][1] = -0.3 * 0.35 * 0.25;
    double[] middle = {0.1, -0.2, 0.3, 0.05, 0.01, -0.1};
    for (double[][] wanted : List.of(covariance, Belief.standard().covariance())) {
      Belief belief = Belief.of(middle, wanted);
      double[][] got = new double[Belief.SIZE][Belief.SIZE];
      for (int j = 0; j < Belief.SIZE; j++) {
        double[] normal = new double[Belief.SIZE];
        normal[j] = 1;
        double[] x = coordinates(belief.unknowns(normal, 0.3));
        for (int i = 0; i < Belief.SIZE; i++) {
          for (int k = 0; k < Belief.SIZE; k++) {
            got[i][k] += (x[i] - middle[i]) * (x[k] - middle[k]);
          }
        }
      }
      for (int i = 0; i < Belief.SIZE; i++) {
        assertThat(got[i]).as("row %d", i).containsExactly(wanted[i], within(1e-9));
      }
      assertThat(belief.unknowns(STILL, 0.3).formQuantile()).isEqualTo(0.3);
    }
  }

  @Test
  void extremesAreHeldInsideTheModel() {
    double[] far = {9, 9, 9, 9, 9, 9};
    double[] near = {-9, -9, -9, -9, -9, -9};

    assertThat(Belief.unknownsAt(far, 1)).isEqualTo(new Unknowns(20, 20, 8, 10, 0.2, 0.25, 1));
    assertThat(Belief.unknownsAt(near, 0))
        .isEqualTo(new Unknowns(0.02, 0.02, -8, 0.1, -0.2, 0.005, 0));
  }

  @Test
  void betterThermometerHelpsUnderEveryCurve() {
    Belief belief = lopsided().withStandardDeviation(Unknown.TEMPERATURE, 0.2);

    for (Belief each : belief.underEachCurve(2)) {
      assertThat(each.standardDeviation(Unknown.TEMPERATURE)).isCloseTo(0.2, within(1e-12));
      assertThat(each.standardDeviation(Unknown.VIGOUR)).isCloseTo(0.25, within(1e-12));
    }
    assertThat(belief.curveWeights(2)).containsExactly(0.75, 0.25);
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

    assertThatThrownBy(() -> Belief.byCurve(List.of(), new double[0]))
        .hasMessage("a belief by curve needs one weight for each of its parts");
    assertThatThrownBy(() -> Belief.byCurve(List.of(one), new double[] {1, 1}))
        .hasMessage("a belief by curve needs one weight for each of its parts");
    assertThatThrownBy(() -> Belief.byCurve(List.of(one, one), new double[] {1, -0.1}))
        .hasMessageStartingWith("weight of a rate curve -0.1 is outside");
    assertThatThrownBy(() -> Belief.byCurve(List.of(one, one), new double[2]))
        .hasMessageStartingWith("sum of the weights of rate curves 0 is outside");
  }

  @Test
  void tablesOfAnotherSizeAreRefused() {
    double[][] covariance = Belief.standard().covariance();

    assertThatThrownBy(() -> Belief.of(STILL, new double[5][6]))
        .hasMessage("a belief needs 6 means and as many rows of covariance");
    assertThatThrownBy(() -> Belief.of(mean(3.1, 0), covariance))
        .hasMessageStartingWith("mean of the vigour 3.1 is outside");
    covariance[4] = new double[5];
    assertThatThrownBy(() -> Belief.of(STILL, covariance))
        .hasMessage("a belief's covariance needs 6 columns in each row");
  }
}
