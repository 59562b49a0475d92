package doughtide.core.rise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.kinetics.RateCurve;
import doughtide.core.kinetics.RateForm;
import doughtide.core.kinetics.YeastKind;
import doughtide.core.quantity.InputException;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** A developer's own rate curve is checked before anything is computed with it. */
class RateCurvesTest {

  private record Own(DoubleUnaryOperator form) implements RateCurve {
    @Override
    public double rate(double celsius) {
      return form.applyAsDouble(celsius);
    }

    @Override
    public double lowestCelsius() {
      return 5;
    }

    @Override
    public double highestCelsius() {
      return 35;
    }
  }

  private static RiseParameters.RateCurves pair(DoubleUnaryOperator form) {
    return new RiseParameters.RateCurves("own", new Own(form), new Own(form));
  }

  @Test
  void aStraightLineWillDo() {
    RiseParameters.RateCurves line = pair(celsius -> Math.max(0, (celsius - 2) / 23));
    assertThat(RiseParameters.standard().with(line).curves()).containsExactly(line);
  }

  @Test
  void whatIsNoRateIsRefused() {
    assertThatThrownBy(() -> pair(celsius -> celsius > 40 ? Double.NaN : 1))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("rate curve of the yeast at 40.25 °C");
    assertThatThrownBy(() -> pair(celsius -> (celsius - 2) / 23))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("at -15 °C");
    assertThatThrownBy(() -> pair(celsius -> 3))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("rate curve of the yeast is 3 at 25 °C and must be 1 there");
  }

  /** At run time they are taken on trust. */
  @Test
  void thePublishedOnesAreRates() {
    assertThat(RiseParameters.standard().curves())
        .hasSize(RateForm.values().length * YeastKind.values().length)
        .allSatisfy(
            form -> {
              assertThat(RateForm.isPublished(form.yeast())).isTrue();
              assertThat(RateForm.isPublished(form.bacteria())).isTrue();
              RiseParameters.RateCurves.check("yeast", form.yeast());
              RiseParameters.RateCurves.check("bacteria", form.bacteria());
            });
    assertThat(RateForm.isPublished(RateCurve.schoolfield(83, 524, 30, 8, 35))).isFalse();
  }

  @Test
  void theKindIsWhatStandsBeforeTheStroke() {
    assertThat(pair(celsius -> Math.max(0, celsius / 25)).kind()).isEqualTo("own");
    assertThat(RiseParameters.standard().curves())
        .extracting(RiseParameters.RateCurves::kind)
        .containsOnly("humilis", "cerevisiae");
  }
}
