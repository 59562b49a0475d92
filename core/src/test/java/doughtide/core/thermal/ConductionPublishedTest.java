package doughtide.core.thermal;

import static doughtide.core.thermal.ReferenceTable.number;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Conduction against the exact series and against the published one-term coefficients. */
class ConductionPublishedTest {
  static List<Map<String, String>> series() {
    return ReferenceTable.rows("conduction-series.csv");
  }

  static List<Map<String, String>> oneTerm() {
    return ReferenceTable.rows("conduction-one-term.csv");
  }

  /**
   * Source: exact series, 60 terms (conduction-series.csv); 0.1 % of the initial difference from Fo
   * 0.1 on.
   */
  @ParameterizedTest
  @MethodSource("series")
  void meetsTheExactSeriesWithTheStandardShells(Map<String, String> row) {
    double fourier = number(row, "Fo");
    double worst = worst(row, Conduction.STANDARD_SHELLS);
    // Below Fo 0.1 the heat has not reached the centre; the first vectors are held to 0.4 %.
    assertThat(worst).as(row.toString()).isLessThan(fourier >= 0.1 ? 0.001 : 0.004);
  }

  /**
   * Source: as above. What a number of shells costs, as the class comment of Conduction states it.
   */
  @ParameterizedTest
  @CsvSource({"8, 0.0019", "12, 0.00082", "32, 0.00013"})
  void errorFallsWithTheSquareOfTheShells(int shells, double stated) {
    double worst =
        series().stream()
            .filter(row -> number(row, "Fo") >= 0.1)
            .mapToDouble(row -> worst(row, shells))
            .max()
            .orElseThrow();
    assertThat(worst).isBetween(0.8 * stated, stated);
  }

  @Test
  void readsAllSixtyVectors() {
    assertThat(series()).hasSize(60);
    assertThat(oneTerm()).hasSize(24);
  }

  private static double worst(Map<String, String> row, int shells) {
    double hours = number(row, "Fo");
    CoolingPiece piece = Bodies.unitStep(form(row.get("shape")), number(row, "Bi"), shells);
    double centre = Math.abs(piece.coreCelsius(hours) - number(row, "theta_centre"));
    double surface = Math.abs(piece.surfaceCelsius(hours) - number(row, "theta_surface"));
    double mean = Math.abs(piece.meanCelsius(hours) - number(row, "theta_mean"));
    return Math.max(centre, Math.max(surface, mean));
  }

  private static BodyForm form(String name) {
    return BodyForm.valueOf(name.toUpperCase(Locale.ROOT));
  }

  /**
   * Source: Çengel, Heat and Mass Transfer, table 4-2 (conduction-one-term.csv), printed to four
   * decimals.
   */
  @ParameterizedTest
  @MethodSource("oneTerm")
  void meetsTheOneTermCoefficients(Map<String, String> row) {
    for (BodyForm form : BodyForm.values()) {
      String name = form.name().toLowerCase(Locale.ROOT);
      CoolingPiece piece = Bodies.unitStep(form, number(row, "Bi"), 150);
      double rate = 1 / piece.conduction().timeConstantHours();
      double late = 0.8;
      double coefficient = piece.coreCelsius(late) * Math.exp(rate * late);
      assertThat(Math.sqrt(rate))
          .as(name + row)
          .isCloseTo(number(row, name + "_zeta"), within(2e-4));
      assertThat(coefficient).as(name + row).isCloseTo(number(row, name + "_C"), within(4e-4));
    }
  }
}
