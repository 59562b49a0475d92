package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** How long to wait at a height, from jars whose shape points lie on a line by construction. */
class JarRuleTest {
  private static final double LOOK = 5;
  private static final double BEFORE_POINT = 1.8; // h at a rise of 0
  private static final double HOURS_PER_PERCENT = -0.04;

  private static final List<RiseCurve> CURVES =
      RiseForecaster.standard()
          .withMembers(32)
          .keepingCurves()
          .forecast(
              DoughFormula.builder().build(),
              DoughTemperature.steady(Temperature.ofCelsius(24)),
              12)
          .curves();

  private static final double[] EQUAL = new double[CURVES.size()];

  static {
    Arrays.fill(EQUAL, 1);
  }

  private static double[] onTheLine(double slope) {
    return IntStream.range(0, CURVES.size())
        .mapToDouble(i -> LOOK + BEFORE_POINT + slope * CURVES.get(i).riseAt(LOOK).percent())
        .toArray();
  }

  private static JarRule.AtHour look(JarRule rule) {
    return rule.looks().stream().filter(each -> each.hours() == LOOK).findFirst().orElseThrow();
  }

  private static JarRule rule(double[] point, double likely) {
    return JarRule.of(CURVES, EQUAL, point, likely);
  }

  private static double shapeNowAt(double beforePoint) {
    double[] point = onTheLine(HOURS_PER_PERCENT);
    Arrays.setAll(point, i -> point[i] + beforePoint - BEFORE_POINT);
    JarRule.Wait now = look(rule(point, LOOK)).waits().get(0);
    assertThat(now.hours()).isZero();
    return now.risePercent();
  }

  @Test
  void theLowerTheJarTheLongerTheWait() {
    List<JarRule.Wait> waits = look(rule(onTheLine(HOURS_PER_PERCENT), LOOK + 0.2)).waits();

    assertThat(waits).hasSizeGreaterThan(2);
    for (int i = 1; i < waits.size(); i++) {
      assertThat(waits.get(i).hours()).isGreaterThan(waits.get(i - 1).hours());
      assertThat(waits.get(i).risePercent()).isLessThan(waits.get(i - 1).risePercent());
    }
  }

  /**
   * A reading misleads by some points: one above what is expected is believed in part, so that the
   * jar must show more than an exact one, one below what is expected less.
   */
  @Test
  void aHeightIsBelievedInPart() {
    double[] sorted =
        CURVES.stream().mapToDouble(curve -> curve.riseAt(LOOK).percent()).sorted().toArray();
    double expected = (sorted[15] + sorted[16]) / 2;
    double higher = expected + 12;
    double lower = expected - 12;

    assertThat(shapeNowAt(-HOURS_PER_PERCENT * expected)).isCloseTo(expected, within(3.0));
    assertThat(shapeNowAt(-HOURS_PER_PERCENT * higher)).isBetween(higher + 0.2, higher + 12);
    assertThat(shapeNowAt(-HOURS_PER_PERCENT * lower)).isBetween(lower - 12, lower - 0.2);
  }

  /** An hour before, at, and after the likely hour, to the half hour; none in the first half. */
  @Test
  void looksStandAroundTheLikelyHour() {
    double[] point = onTheLine(HOURS_PER_PERCENT);

    assertThat(rule(point, LOOK + 0.2).looks())
        .extracting(JarRule.AtHour::hours)
        .containsExactly(4.0, 5.0, 6.0);
    double[] soon = Arrays.stream(point).map(hours -> hours - LOOK).toArray();
    assertThat(rule(soon, 0.4).looks()).extracting(JarRule.AtHour::hours).isSubsetOf(0.5, 1.5);
    assertThat(rule(point, 40).looks()).isEmpty();
  }

  @Test
  void doughsWithoutWeightDoNotCount() {
    double[] point = onTheLine(HOURS_PER_PERCENT);
    double[] some = point.clone();
    Arrays.fill(some, 16, 32, Double.POSITIVE_INFINITY);
    double[] half = EQUAL.clone();
    Arrays.fill(half, 16, 32, 0);

    assertThat(JarRule.of(CURVES, half, some, LOOK))
        .isEqualTo(JarRule.of(CURVES, half, point, LOOK));
    assertThat(JarRule.of(CURVES, half, some, LOOK).looks()).isNotEmpty();
    Arrays.fill(some, Double.POSITIVE_INFINITY);
    assertThat(rule(some, LOOK).looks()).isEmpty();
  }

  @Test
  void whereHigherJarsAreNotSoonerThereIsNoRule() {
    assertThat(rule(onTheLine(0.01), LOOK).looks()).isEmpty();
  }
}
