package doughtide.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class CoolingPieceTest {
  private static final Conduction BODY = Bodies.ofBiot(BodyForm.SPHERE, 1, 12);

  private static TemperatureTrace steady(double celsius) {
    return TemperatureTrace.steady(Temperature.ofCelsius(celsius));
  }

  @Test
  void volumeSharesAddUpToOneAndShellsGetThinnerOutward() {
    double sum = Arrays.stream(BODY.volumeFractions()).sum();
    assertThat(sum).isCloseTo(1, within(1e-14));
    double[] faces = BODY.shellFaces();
    for (int i = 2; i < faces.length; i++) {
      assertThat(faces[i] - faces[i - 1]).isLessThan(faces[i - 1] - faces[i - 2]);
    }
  }

  @Test
  void startsWithTheProfileGiven() {
    double[] profile = {20, 21, 22, 23, 24, 25, 24, 23, 22, 21, 20, 19};
    CoolingPiece piece = CoolingPiece.start(BODY, profile, steady(5), HeatSource.none());
    assertThat(piece.shellCelsius(0)).containsExactly(profile, within(1e-11));
    assertThat(piece.shellCelsius(-3)).containsExactly(profile, within(1e-11));
  }

  @Test
  void aChangeOfRoomIsTheSameAsStartingAgainWithTheProfileReached() {
    TemperatureTrace moved = steady(5).then(0.3, steady(25));
    CoolingPiece whole = CoolingPiece.start(BODY, Temperature.ofCelsius(22), moved);
    CoolingPiece first = CoolingPiece.start(BODY, Temperature.ofCelsius(22), steady(5));
    CoolingPiece second =
        CoolingPiece.start(BODY, first.shellCelsius(0.3), steady(25), HeatSource.none());
    assertThat(whole.shellCelsius(1.1)).containsExactly(second.shellCelsius(0.8), within(1e-10));
    assertThat(whole.heatLostJPerKg(1.1))
        .isCloseTo(first.heatLostJPerKg(0.3) + second.heatLostJPerKg(0.8), within(1e-6));
  }

  @Test
  void jumpsFromASequenceOfLoggedAndSteppedRoomsAreMet() {
    TemperatureTrace steps =
        TemperatureTrace.steps(
            List.of(
                new TemperatureTrace.Step(0, Temperature.ofCelsius(20)),
                new TemperatureTrace.Step(0.1, Temperature.ofCelsius(4))));
    CoolingPiece piece =
        CoolingPiece.start(BODY, Temperature.ofCelsius(20), steady(20).then(0.2, steps));
    assertThat(piece.meanCelsius(0.3)).isCloseTo(20, within(1e-9));
    assertThat(piece.meanCelsius(0.4)).isLessThan(19.5);
  }

  /**
   * A body of very small Biot number follows dT/dt = (room − T)/tau; for a ramp that has a closed
   * form.
   */
  @Test
  void followsALoggedRampAsTheClosedFormSays() {
    Conduction body = Bodies.ofBiot(BodyForm.SLAB, 0.01, 12);
    TemperatureTrace ramp = TemperatureTrace.logged(new double[] {0, 100}, new double[] {0, 50});
    CoolingPiece piece = CoolingPiece.start(body, Temperature.ofCelsius(0), ramp);
    double tau = body.timeConstantHours();
    double hours = 60;
    double expected = 0.5 * (hours - tau * (1 - Math.exp(-hours / tau)));
    assertThat(piece.meanCelsius(hours)).isCloseTo(expected, within(0.02));
  }

  /**
   * Steady heat q in a ball: T(0) − T(surface) = q·rho·R²/(6·k), T(surface) − room = q·rho·R/(3·h).
   */
  @Test
  void steadyHeatSourceEndsAtTheClosedForm() {
    double[] start = new double[12];
    CoolingPiece piece = CoolingPiece.start(BODY, start, steady(0), HeatSource.steady(0.5));
    double perVolume = 0.5 * 1000;
    double length = BODY.lengthMetres();
    double surface = perVolume * length / (3 * 1 / length);
    double core = surface + perVolume * length * length / 6;
    assertThat(piece.surfaceCelsius(100)).isCloseTo(surface, within(1e-8));
    assertThat(piece.coreCelsius(100)).isCloseTo(core, within(1e-8));
  }

  @Test
  void shellTraceIsTheShell() {
    CoolingPiece piece =
        CoolingPiece.start(BODY, Temperature.ofCelsius(24), steady(20).then(1, steady(4)));
    TemperatureTrace trace = piece.shellTrace(3);
    assertThat(trace.celsius(1.4)).isEqualTo(piece.shellCelsius(3, 1.4));
    assertThat(trace.breakpoints()).contains(1.0);
  }

  @Test
  void coreThatWarmsAgainIsCaughtOnTheWayDown() {
    CoolingPiece piece =
        CoolingPiece.start(BODY, Temperature.ofCelsius(24), steady(4).then(1.5, steady(24)));
    double hours = piece.hoursUntilCoreReaches(Temperature.ofCelsius(15)).orElseThrow();
    assertThat(hours).isLessThan(1.5);
    assertThat(piece.hoursUntilCoreReaches(Temperature.ofCelsius(24))).hasValue(0);
  }

  @Test
  void refusesWhatCannotBeUsed() {
    assertThatThrownBy(() -> Bodies.ofBiot(BodyForm.SLAB, 1, 3))
        .isInstanceOf(InputException.class)
        .hasMessage("number of shells 3 is outside 4…200");
    assertThatThrownBy(() -> CoolingPiece.start(BODY, new double[3], steady(4), HeatSource.none()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("3 shell temperatures for a body of 12 shells");
    assertThatThrownBy(() -> new DoughHeat(Double.NaN, 2800, 0.3))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(() -> HeatSource.steps(new double[] {0, 1}, new double[] {1}))
        .isInstanceOf(InputException.class);
  }
}
