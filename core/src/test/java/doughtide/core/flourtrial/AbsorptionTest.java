package doughtide.core.flourtrial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AbsorptionTest {
  @ParameterizedTest
  @CsvSource({"62,12", "55,14", "80,9", "70,20", "60,0"})
  void goesThereAndBack(double absorption, double moisture) {
    Share at14 =
        Absorption.to14PercentBasis(Share.ofPercent(absorption), Share.ofPercent(moisture));
    assertThat(Absorption.from14PercentBasis(at14, Share.ofPercent(moisture)).percent())
        .isCloseTo(absorption, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(doubles = {20.5, 62, 100})
  void refusesMoistureNoFlourHas(double moisture) {
    assertThatThrownBy(
            () -> Absorption.to14PercentBasis(Share.ofPercent(62), Share.ofPercent(moisture)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("flour moisture");
  }
}
