package doughtide.core.thermal;

import static doughtide.core.thermal.ReferenceTable.number;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.quantity.Share;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Physical properties of white dough, and the warmth of fermentation, against printed figures. */
class DoughHeatPublishedTest {
  private static final Percentage ONE_PERCENT = Percentage.withPercentage(1);

  static List<Map<String, String>> doughs() {
    return ReferenceTable.rows("white-dough-properties.csv");
  }

  private static DoughProperties dough(double hydrationPercent) {
    return DoughProperties.of(
        DoughFormula.builder()
            .hydration(Share.ofPercent(hydrationPercent))
            .salt(Share.ofPercent(2))
            .build());
  }

  /** Source: computed from the equations of Choi and Okos 1986 (white-dough-properties.csv). */
  @ParameterizedTest
  @MethodSource("doughs")
  void gasFreeWhiteDough(Map<String, String> row) {
    DoughProperties dough = dough(number(row, "hydration_percent"));
    assertThat(dough.densityKgPerM3(25)).isCloseTo(number(row, "density_kg_m3"), ONE_PERCENT);
    assertThat(dough.heatCapacityJPerKgK(25))
        .isCloseTo(number(row, "heat_capacity_kJ_kg_K") * 1000, ONE_PERCENT);
    assertThat(dough.parallelConductivityWPerMK(25))
        .isCloseTo(number(row, "parallel_W_m_K"), ONE_PERCENT);
    assertThat(dough.seriesConductivityWPerMK(25))
        .isCloseTo(number(row, "series_W_m_K"), ONE_PERCENT);
  }

  /** Source: Maxwell's equation on the parallel figure above, 70 % hydration, two decimals. */
  @ParameterizedTest
  @CsvSource({"0.3, 0.29", "0.5, 0.20", "0.6, 0.16"})
  void conductivityWithGas(double gasShare, double printed) {
    assertThat(dough(70).conductivityWPerMK(25, gasShare))
        .isCloseTo(printed, Percentage.withPercentage(5));
  }

  /**
   * Source: Colombié et al. 2007 (second hand): 1 L of CO2 per kg of dough warms it by 0.7 K if
   * insulated.
   */
  @Test
  void aLitreOfGasWarmsAKilogramBySevenTenths() {
    double mol = 1 / 24.465;
    double kelvin = mol * HeatSource.FERMENTATION_J_PER_MOL_CO2 / dough(70).heatCapacityJPerKgK(25);
    assertThat(kelvin).isCloseTo(0.7, within(0.05));
  }

  /**
   * Source: ISO 6946: 7.7 sideways, 10 upward, 5.9 downward; refrigerator 1.3…2.8 and 4.3 (Energies
   * 2025, 18:6280).
   */
  @Test
  void surfaceCoefficientsAreThePublishedOnes() {
    assertThat(Air.STILL_ROOM.sideWPerM2K()).isEqualTo(7.7);
    assertThat(Air.STILL_ROOM.topWPerM2K()).isEqualTo(10);
    assertThat(Air.STILL_ROOM.bottomWPerM2K()).isEqualTo(5.9);
    assertThat(Air.STILL_COLD.sideWPerM2K()).isBetween(1.3 + 4.3, 2.8 + 4.3);
  }
}
