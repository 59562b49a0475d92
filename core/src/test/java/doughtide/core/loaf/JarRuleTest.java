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

  private static double[] onTheLine(double slope) {
    return IntStream.range(0, CURVES.size())
        .mapToDouble(i -> LOOK + BEFORE_POINT + slope * CURVES.get(i).riseAt(LOOK).percent())
        .toArray();
  }

  private static JarRule.AtHour look(JarRule rule) {
    return rule.looks().stream().filter(each -> each.hours() == LOOK).findFirst().orElseThrow();
  }

  @Test
  void theLineIsFoundAgain() {
    JarRule.AtHour look = look(JarRule.of(CURVES, onTheLine(HOURS_PER_PERCENT), LOOK + 0.2));

    assertThat(look.waits()).hasSizeGreaterThan(2);
    for (JarRule.Wait wait : look.waits()) {
      assertThat(wait.risePercent())
          .as("%s h", wait.hours())
          .isPositive()
          .isCloseTo((wait.hours() - BEFORE_POINT) / HOURS_PER_PERCENT, within(1e-6));
    }
    assertThat(look.waits()).extracting(JarRule.Wait::hours).contains(0.0);
  }

  /** An hour before, at, and after the likely hour, to the half hour; none in the first half. */
  @Test
  void looksStandAroundTheLikelyHour() {
    double[] point = onTheLine(HOURS_PER_PERCENT);

    assertThat(JarRule.of(CURVES, point, LOOK + 0.2).looks())
        .extracting(JarRule.AtHour::hours)
        .containsExactly(4.0, 5.0, 6.0);
    double[] soon = Arrays.stream(point).map(hours -> hours - LOOK).toArray();
    assertThat(JarRule.of(CURVES, soon, 0.4).looks())
        .extracting(JarRule.AtHour::hours)
        .isSubsetOf(0.5, 1.5);
    assertThat(JarRule.of(CURVES, point, 40).looks()).isEmpty();
  }

  /** Doughs that are shaped more than three hours from a look, or never, say nothing of it. */
  @Test
  void farDoughsDoNotCount() {
    double[] point = onTheLine(HOURS_PER_PERCENT);
    JarRule.AtHour before = look(JarRule.of(CURVES, point, LOOK));
    double[] some = point.clone();
    Arrays.fill(some, 16, 24, LOOK + 3.1);
    Arrays.fill(some, 24, 32, Double.POSITIVE_INFINITY);

    for (int i = 0; i < before.waits().size(); i++) {
      assertThat(look(JarRule.of(CURVES, some, LOOK)).waits().get(i).risePercent())
          .isCloseTo(before.waits().get(i).risePercent(), within(1e-6));
    }
    Arrays.fill(some, 7, 32, Double.POSITIVE_INFINITY);
    assertThat(JarRule.of(CURVES, some, LOOK).looks()).isEmpty();
  }

  @Test
  void whereHigherJarsAreNotSoonerThereIsNoRule() {
    assertThat(JarRule.of(CURVES, onTheLine(0.01), LOOK).looks()).isEmpty();
  }
}
