package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** A curve through points whose slopes can be reckoned by hand. */
class CurveThroughTest {
  private static final double EXACT = 1e-12;

  private static CurveThrough through(double... xy) {
    double[] x = new double[xy.length / 2];
    double[] y = new double[xy.length / 2];
    for (int i = 0; i < x.length; i++) {
      x[i] = xy[2 * i];
      y[i] = xy[2 * i + 1];
    }
    return new CurveThrough(x, y);
  }

  /** Of a cubic piece one wide, at a half: the mean of the ends and an eighth of the slopes. */
  private static double halfway(double left, double right, double slopeLeft, double slopeRight) {
    return (left + right) / 2 + (slopeLeft - slopeRight) / 8;
  }

  @Test
  void onePointIsAConstant() {
    assertThat(through(3, 7).at(2)).isEqualTo(7);
    assertThat(through(3, 7).at(3)).isEqualTo(7);
    assertThat(through(3, 7).at(4)).isEqualTo(7);
  }

  @Test
  void pointsOnALineGiveTheLineAndItsEndsBeyond() {
    CurveThrough line = through(-1, 5, 0, 3, 3, -3, 5, -7);

    for (double x : new double[] {-1, -0.6, 0, 0.5, 2.9, 3, 4.2, 5}) {
      assertThat(line.at(x)).isCloseTo(3 - 2 * x, within(EXACT));
    }
    assertThat(line.at(-4)).isEqualTo(5);
    assertThat(line.at(6)).isEqualTo(-7);
  }

  /** Secants 1 and 3, equally far: the slope between is their harmonic mean, 1.5. */
  @Test
  void aBendHasTheHarmonicMeanOfBothSlopes() {
    CurveThrough bend = through(0, 0, 1, 1, 2, 4);

    assertThat(bend.at(1)).isEqualTo(1);
    assertThat(bend.at(0.5)).isCloseTo(halfway(0, 1, 1, 1.5), within(EXACT));
    assertThat(bend.at(1.5)).isCloseTo(halfway(1, 4, 1.5, 3), within(EXACT));
    assertThat(bend.at(0.25)).isCloseTo(0.25 + 0.25 * 0.25 * 0.75 * -0.5, within(EXACT));
  }

  /** Secants 1 over one hour and 3 over two: 9 / (5 / 1 + 4 / 3), nearer to the near one. */
  @Test
  void theNearerSideCountsForMore() {
    double slope = 27.0 / 19;

    assertThat(through(0, 0, 1, 1, 3, 7).at(0.5)).isCloseTo(halfway(0, 1, 1, slope), within(EXACT));
    assertThat(through(0, 0, 2, 6, 3, 7).at(2.5)).isCloseTo(halfway(6, 7, slope, 1), within(EXACT));
  }

  @Test
  void itTurnsOnlyAtAPoint() {
    CurveThrough peak = through(0, 0, 1, 2, 2, 1, 3, 1);

    assertThat(peak.at(0.5)).isCloseTo(halfway(0, 2, 2, 0), within(EXACT));
    assertThat(peak.at(1.5)).isCloseTo(halfway(2, 1, 0, 0), within(EXACT));
    assertThat(peak.at(2.5)).isCloseTo(1, within(EXACT));
    for (double x = 0; x <= 3; x += 0.01) {
      assertThat(peak.at(x)).isBetween(0.0, 2.0);
    }
  }
}
