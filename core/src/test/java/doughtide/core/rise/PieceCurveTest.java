package doughtide.core.rise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.BodyForm;
import doughtide.core.thermal.Conduction;
import doughtide.core.thermal.CoolingPiece;
import doughtide.core.thermal.DoughHeat;
import doughtide.core.thermal.HeatSource;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import org.junit.jupiter.api.Test;

class PieceCurveTest {
  private static final DoughFormula FORMULA = DoughFormula.builder().build();
  private static final Conduction BALL =
      Conduction.of(BodyForm.SPHERE, 0.06, new DoughHeat(700, 2880, 0.25), 5, 8);

  private static RiseCurve bulk(double celsius) {
    return RiseModel.of(FORMULA, DoughTemperature.steady(Temperature.ofCelsius(celsius))).run(14);
  }

  private static PieceBody around(double celsius) {
    TemperatureTrace air = TemperatureTrace.steady(Temperature.ofCelsius(celsius));
    return new PieceBody(BALL, air, 0, FORMULA.doughPerFlour());
  }

  /** So much dough to a kilogram of flour that its fermentation does not warm it. */
  private static PieceBody unwarmed(double celsius) {
    return new PieceBody(BALL, around(celsius).around(), 0, 1e9);
  }

  @Test
  void pieceInAirOfItsOwnTemperatureRisesAsTheBulkDoes() {
    RiseCurve bulk = bulk(25);
    PieceCurve piece = PieceCurve.of(bulk, 2, unwarmed(25), 0, GasLosses.NONE, 12, 0.1);

    for (double hour : new double[] {2, 3.5, 6, 9, 10}) {
      assertThat(piece.riseAt(hour).percent()).isCloseTo(bulk.riseAt(hour).percent(), within(0.02));
    }
    assertThat(piece.hoursToRise(Rise.ofPercent(75)).orElseThrow())
        .isCloseTo(bulk.hoursToRise(Rise.ofPercent(75)).orElseThrow(), within(0.01));
    assertThat(piece.hoursToOver().orElseThrow())
        .isCloseTo(bulk.hoursToPeak().orElseThrow(), within(0.02));
  }

  @Test
  void longStepsAgreeWithShortOnes() {
    RiseCurve bulk = bulk(26);
    PieceCurve coarse = PieceCurve.of(bulk, 3, around(4), 0, GasLosses.NONE, 12, 0.25);
    PieceCurve fine = PieceCurve.of(bulk, 3, around(4), 0, GasLosses.NONE, 12, 0.02);

    assertThat(coarse.riseAtEnd().percent()).isCloseTo(fine.riseAtEnd().percent(), within(0.05));
  }

  @Test
  void longStepsInTheColdAgreeWithEvenOnes() {
    TemperatureTrace room = TemperatureTrace.steady(Temperature.ofCelsius(22));
    TemperatureTrace night = room.then(1.3, TemperatureTrace.steady(Temperature.ofCelsius(8)));
    PieceBody warmFirst = new PieceBody(BALL, night, 1.3, FORMULA.doughPerFlour());
    RiseCurve bulk = bulk(26);
    for (PieceBody body : List.of(around(2), around(4), around(9), around(21), warmFirst)) {
      PieceCurve even = PieceCurve.of(bulk, 3, evenly(body), 0.5, GasLosses.NONE, 40, 0.25);
      PieceCurve grown = PieceCurve.of(bulk, 3, body, 0.5, GasLosses.NONE, 40, 0.25);
      for (double hours : new double[] {0.4, 2, 3.1, 5, 9, 17, 40}) {
        Rise alone = PieceCurve.riseAtEnd(bulk, 3, body, 0.5, GasLosses.NONE, hours, 0.25);
        double expected = even.riseAt(3 + hours).percent();

        assertThat(alone.percent()).as("%s h", hours).isCloseTo(expected, within(0.05));
        assertThat(grown.riseAt(3 + hours).percent())
            .as("%s h on the way", hours)
            .isCloseTo(expected, within(0.05));
        assertThat(grown.coreCelsiusAt(3 + hours))
            .isCloseTo(even.coreCelsiusAt(3 + hours), within(0.1));
      }
    }
  }

  /** The same air, as a trace that changes once more after all hours that are looked at. */
  private static PieceBody evenly(PieceBody body) {
    TemperatureTrace later =
        body.around().then(1000, TemperatureTrace.steady(Temperature.ofCelsius(30)));
    return new PieceBody(body.conduction(), later, body.changesFromHours(), body.doughPerFlour());
  }

  @Test
  void loafGoesOnRisingWhileItCoolsAndThenRests() {
    PieceCurve piece = PieceCurve.of(bulk(26), 3, around(4), 0, GasLosses.NONE, 12, 0.1);
    double start = piece.riseAt(3).percent();
    double atFour = piece.riseAt(7).percent();

    assertThat(atFour).isGreaterThan(start + 10);
    assertThat(piece.riseAtEnd().percent() - atFour).isLessThan(atFour - start);
    assertThat(piece.coreCelsiusAt(3)).isCloseTo(26, within(1e-6));
    assertThat(piece.hoursUntilCoreIsAt(Temperature.ofCelsius(10)).orElseThrow())
        .isBetween(4.0, 12.0);
    assertThat(piece.hoursUntilCoreIsAt(Temperature.ofCelsius(3))).isEmpty();
  }

  @Test
  void coreCoolsAsTheExactSolutionSays() {
    PieceCurve piece = PieceCurve.of(bulk(25), 3, unwarmed(4), 2, GasLosses.NONE, 12, 0.25);
    CoolingPiece exact =
        CoolingPiece.start(
            BALL, Temperature.ofCelsius(25), TemperatureTrace.steady(Temperature.ofCelsius(6)));

    for (double hour : piece.hours()) {
      assertThat(piece.coreCelsiusAt(hour)).isCloseTo(exact.coreCelsius(hour - 3), within(1e-9));
    }
  }

  @Test
  void airThatChangesBetweenStepsIsFollowedExactly() {
    TemperatureTrace room = TemperatureTrace.steady(Temperature.ofCelsius(21));
    TemperatureTrace night = room.then(1.3, TemperatureTrace.steady(Temperature.ofCelsius(4)));
    PieceBody body = new PieceBody(BALL, night, 1.3, 1e9);
    PieceCurve piece = PieceCurve.of(bulk(25), 3, body, 1, GasLosses.NONE, 10, 0.25);
    CoolingPiece exact =
        CoolingPiece.start(
            BALL,
            Temperature.ofCelsius(25),
            room.then(1.3, TemperatureTrace.steady(Temperature.ofCelsius(5))));

    for (double hour : piece.hours()) {
      assertThat(piece.coreCelsiusAt(hour)).isCloseTo(exact.coreCelsius(hour - 3), within(1e-9));
    }
  }

  @Test
  void itsOwnFermentationWarmsItByTheHeatOfTheGasItMakes() {
    double capacity = BALL.heat().heatCapacityJPerKgK() * FORMULA.doughPerFlour();
    Conduction insulated = Conduction.of(BodyForm.SPHERE, 0.06, BALL.heat(), 0.01, 8);
    TemperatureTrace air = TemperatureTrace.steady(Temperature.ofCelsius(25));
    RiseCurve bulk = bulk(25);
    PieceBody body = new PieceBody(insulated, air, 0, FORMULA.doughPerFlour());
    PieceCurve piece = PieceCurve.of(bulk, 3, body, 0, GasLosses.NONE, 1, 0.05);
    double made = bulk.gasAt(4).madeMol() - bulk.gasAt(3).madeMol();

    assertThat(piece.coreCelsiusAt(4) - 25)
        .isCloseTo(made * HeatSource.FERMENTATION_J_PER_MOL_CO2 / capacity, within(0.02));
  }

  @Test
  void quickDynamicsAgreeWithTheExactOnes() {
    TemperatureTrace drift =
        TemperatureTrace.logged(new double[] {0, 4, 10}, new double[] {27, 22, 18});
    RiseModel model = RiseModel.of(FORMULA, DoughTemperature.following(drift));
    RiseCurve exact = model.run(12);
    RiseCurve quick = model.runFast(12);

    for (double hour = 0; hour <= 12; hour += 0.5) {
      assertThat(quick.riseAt(hour).percent())
          .isCloseTo(exact.riseAt(hour).percent(), within(0.01));
    }
  }

  /**
   * Half of what a dough can hold is half of its height, not of its rise; looked at by its loaf.
   */
  @Test
  void aPieceIsFullByItsHeight() {
    RiseCurve bulk = bulk(25);
    PieceCurve piece = PieceCurve.of(bulk, 2, unwarmed(25), 0, GasLosses.NONE, 12, 0.1);
    double half = piece.hoursToFull(0.5).orElseThrow();
    double most = piece.hoursToFull(0.9).orElseThrow();

    assertThat((1 + piece.riseAt(most).fraction()) / (1 + piece.riseAt(half).fraction()))
        .isBetween(1.5, 1.8);
    assertThat(half).isLessThan(most);
    assertThat(piece.hoursToFull(1.5)).isEmpty();
    assertThat(piece.hoursToFull(0.1)).hasValue(2);
    assertThat(piece.endHours()).isEqualTo(piece.hours()[piece.hours().length - 1]);
    assertThat(piece.toString()).startsWith("piece to 14 h");
  }

  /**
   * In the cold its gas is made no faster than lost only late, but its strength goes on falling.
   */
  @Test
  void aPieceIsOverWhenItFallsOrIsWeak() {
    PieceCurve cold = PieceCurve.of(bulk(28), 7, around(12), 0, GasLosses.NONE, 100, 0.25);
    PieceCurve young = PieceCurve.of(bulk(25), 2, unwarmed(25), 0, GasLosses.NONE, 3, 0.1);

    assertThat(cold.hoursToOver()).isPresent();
    assertThat(young.hoursToOver()).isEmpty();
  }
}
