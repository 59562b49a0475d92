package doughtide.core.rise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class DoughTemperatureTest {
  private static final double CAPACITY = 5000;

  private static Temperature celsius(double value) {
    return Temperature.ofCelsius(value);
  }

  private static TemperatureTrace room(double value) {
    return TemperatureTrace.steady(celsius(value));
  }

  private static RiseModel model(DoughTemperature temperature) {
    return RiseModel.of(DoughFormula.builder().build(), temperature);
  }

  /** Above 35.1 °C the cardinal curve grows nothing, so without resting gas nothing warms. */
  private static RiseModel lifeless(DoughTemperature temperature) {
    RiseParameters s = RiseParameters.standard();
    RiseParameters.Gas gas = s.gas();
    RiseParameters noGas =
        s.with(new RiseParameters.Gas(gas.growthMol(), 0, -4, 0, gas.ceilingMol()))
            .with(
                s.curves().stream()
                    .filter(curves -> curves.key().equals("humilis/cardinal"))
                    .toList());
    return model(temperature).with(noGas);
  }

  @Test
  void withoutFermentationARoomCoolsByNewtonsLaw() {
    RiseModel model = lifeless(DoughTemperature.inRoom(celsius(45), room(37), 2.5, CAPACITY));
    for (RiseCurve curve : List.of(model.run(12), model.runFast(12))) {
      for (double at : new double[] {0, 0.5, 2.5, 6, 12}) {
        assertThat(curve.celsiusAt(at)).isCloseTo(37 + 8 * Math.exp(-at / 2.5), within(2e-5));
      }
      assertThat(curve.gasAt(12).madeMol()).isEqualTo(curve.gasAt(0).madeMol());
    }
  }

  @Test
  void aRoomThatStepsIsFollowedPieceByPiece() {
    TemperatureTrace rooms =
        TemperatureTrace.steps(
            List.of(
                new TemperatureTrace.Step(0, celsius(37)),
                new TemperatureTrace.Step(3, celsius(44))));
    RiseCurve curve = lifeless(DoughTemperature.inRoom(celsius(45), rooms, 2, CAPACITY)).run(8);
    double atStep = 37 + 8 * Math.exp(-1.5);
    assertThat(curve.celsiusAt(3)).isCloseTo(atStep, within(1e-7));
    assertThat(curve.celsiusAt(8)).isCloseTo(44 + (atStep - 44) * Math.exp(-2.5), within(1e-7));
  }

  @Test
  void fermentationWarmsAnInsulatedDoughByItsHeat() {
    RiseCurve curve = model(DoughTemperature.inRoom(celsius(24), room(24), 1000, CAPACITY)).run(8);
    double insulated = 50_200 * (curve.gasAt(8).madeMol() - curve.gasAt(0).madeMol()) / CAPACITY;
    assertThat(curve.celsiusAt(8) - 24).isBetween(0.98 * insulated, insulated);
    assertThat(insulated).isGreaterThan(0.5);
  }

  @Test
  void aRoomAfterAStatedTemperatureStartsFromTheLastStatedOne() {
    TemperatureTrace stated = TemperatureTrace.logged(new double[] {0, 4}, new double[] {44, 40});
    DoughTemperature both = DoughTemperature.following(stated).then(4, room(37), 2, CAPACITY);
    for (RiseCurve curve : List.of(lifeless(both).run(8), lifeless(both).runFast(8))) {
      assertThat(curve.celsiusAt(4)).isCloseTo(40, within(1e-5));
      assertThat(curve.celsiusAt(6)).isCloseTo(37 + 3 * Math.exp(-1), within(2e-5));
    }
  }

  @Test
  void aStatedTemperatureAfterARoomAndARoomAfterThatStartFromIt() {
    DoughTemperature three =
        DoughTemperature.inRoom(celsius(44), room(37), 2, CAPACITY)
            .then(2, room(43))
            .then(3, room(38), 1, CAPACITY);
    RiseCurve curve = lifeless(three).run(5);
    assertThat(curve.celsiusAt(1)).isCloseTo(37 + 7 * Math.exp(-0.5), within(1e-7));
    assertThat(curve.celsiusAt(2.5)).isEqualTo(43);
    assertThat(curve.celsiusAt(4)).isCloseTo(38 + 5 * Math.exp(-1), within(1e-7));
  }

  @Test
  void stepsChangeAtTheirHourAndTheIntegratorRestartsThere() {
    DoughTemperature steps =
        DoughTemperature.following(
            TemperatureTrace.steps(
                List.of(
                    new TemperatureTrace.Step(0, celsius(26)),
                    new TemperatureTrace.Step(2, celsius(20)),
                    new TemperatureTrace.Step(5, celsius(10)))));
    List<Segment> segments = Segment.of(steps, 6);
    assertThat(segments).extracting(Segment::fromHours).containsExactly(0.0, 2.0, 5.0);
    assertThat(segments).extracting(Segment::toHours).containsExactly(2.0, 5.0, 6.0);
    RiseCurve curve = model(steps).run(6);
    double[] hours = {0, 1.999999, 2, 4.9999, 5, 6};
    assertThat(Arrays.stream(hours).map(curve::celsiusAt).toArray())
        .containsExactly(26, 26, 20, 20, 10, 10);
  }

  @Test
  void breakpointsBeyondTheRunAndStagesThatNeverComeAreLeftOut() {
    DoughTemperature temperature =
        DoughTemperature.steady(celsius(24)).then(10, room(5)).then(20, room(24));
    assertThat(Segment.of(temperature, 8)).hasSize(1);
    assertThat(Segment.of(temperature, 10)).hasSize(1);
    assertThat(Segment.of(temperature, 30)).hasSize(3);
  }

  @Test
  void temperatureErrorShiftsTheDoughOrTheRoom() {
    Unknowns off = new Unknowns(1, 1, 1.5, 1, 0, 0.06, 1, "humilis/schoolfield");
    assertThat(model(DoughTemperature.steady(celsius(24))).with(off).run(1).celsiusAt(0.5))
        .isEqualTo(25.5);
    RiseModel cooling = lifeless(DoughTemperature.inRoom(celsius(42), room(38), 1, CAPACITY));
    assertThat(cooling.with(off).run(2).celsiusAt(1))
        .isCloseTo(39.5 + 4 * Math.exp(-1), within(1e-7));
  }

  @Test
  void lowestAndHighestLookAtTheStartAndTheSurroundings() {
    DoughTemperature temperature = DoughTemperature.inRoom(celsius(41), room(20), 2, CAPACITY);
    assertThat(temperature.startCelsius()).isEqualTo(41);
    assertThat(temperature.highestCelsius(5)).isEqualTo(41);
    assertThat(temperature.lowestCelsius(5)).isEqualTo(20);
  }

  @Test
  void refusesWhatIsOutside() {
    assertThatThrownBy(() -> DoughTemperature.steady(celsius(240)))
        .isInstanceOf(InputException.class)
        .hasMessage("dough temperature 240 °C is outside -2…45 °C (did you mean 24 °C?)");
    assertThatThrownBy(() -> DoughTemperature.steady(celsius(-2.1)))
        .hasMessage("dough temperature -2.1 °C is outside -2…45 °C");
    assertThatThrownBy(() -> DoughTemperature.inRoom(celsius(24), room(20), 0, CAPACITY))
        .hasMessage("time constant 0 h is outside 0.01…1000 h");
    assertThatThrownBy(() -> DoughTemperature.inRoom(celsius(24), room(20), 1, Double.NaN))
        .hasMessage("heat capacity per kg of flour NaN J/K is outside 1000…100000 J/K");
    assertThatThrownBy(() -> DoughTemperature.steady(celsius(24)).then(3, room(5)).then(2, room(9)))
        .isInstanceOf(InputException.class)
        .hasMessage(
            "a temperature stage begins at hour 2, before the one it follows: give stages in order");
    assertThatThrownBy(() -> DoughTemperature.steady(celsius(24)).then(Double.NaN, room(5)))
        .isInstanceOf(InputException.class);
  }

  @Test
  void aStatedTemperatureOutsideTheModelIsRefusedByTheRun() {
    RiseModel hot = model(DoughTemperature.following(room(120)));
    assertThatThrownBy(() -> hot.run(4))
        .isInstanceOf(InputException.class)
        .hasMessage("dough temperature 120 °C is outside -2…45 °C (did you mean 12 °C?)");
    RiseModel coldLater = model(DoughTemperature.steady(celsius(24)).then(3, room(-18)));
    assertThatThrownBy(() -> coldLater.runFast(4))
        .hasMessage("dough temperature -18 °C is outside -2…45 °C");
    assertThat(coldLater.runFast(2).endHours()).isEqualTo(2);
    RiseModel oven = model(DoughTemperature.inRoom(celsius(24), room(230), 2, CAPACITY));
    assertThatThrownBy(() -> oven.run(4))
        .hasMessage(
            "temperature around the dough 230 °C is outside -40…60 °C (did you mean 23 °C?)");
  }

  @Test
  void theTextNamesEveryTemperature() {
    TemperatureTrace cooler =
        TemperatureTrace.steps(
            List.of(
                new TemperatureTrace.Step(0, Temperature.ofCelsius(25)),
                new TemperatureTrace.Step(3, Temperature.ofCelsius(22))));
    TemperatureTrace logged =
        TemperatureTrace.logged(new double[] {0, 1, 4}, new double[] {25, 24, 22});

    assertThat(DoughTemperature.following(cooler)).hasToString("25 °C, from 3 h 22 °C");
    assertThat(DoughTemperature.following(logged))
        .hasToString("3 readings, 25 °C at 0 h to 22 °C at 4 h");
    assertThat(DoughTemperature.inRoom(Temperature.ofCelsius(26), cooler, 2, 4000))
        .hasToString("26 °C, then in a room of 25 °C, from 3 h 22 °C, time constant 2 h");
    assertThat(DoughTemperature.following(cooler.then(5, logged)))
        .hasToString(
            "25 °C, from 3 h 22 °C, then from 5 h (3 readings, 25 °C at 0 h to 22 °C at 4 h)");
  }
}
