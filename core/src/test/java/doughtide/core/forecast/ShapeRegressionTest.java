package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Whole nights as they came out when recorded: says that something moved, not that it was right.
 */
class ShapeRegressionTest {
  private static final Temperature COLD = Temperature.ofCelsius(4);
  private static final double SMALL = 0.005;

  private static RiseForecast bulk(double celsius) {
    DoughFormula formula = DoughFormula.builder().hydration(Share.ofPercent(72)).build();
    return RiseForecaster.standard()
        .withMembers(64)
        .forecast(formula, DoughTemperature.steady(Temperature.ofCelsius(celsius)), 20);
  }

  static Stream<Arguments> nights() {
    return Stream.of(
        Arguments.of("cold", Proof.inCold(COLD, 12), FIGURES_COLD),
        Arguments.of(
            "room, then cold",
            Proof.inCold(COLD, 10).afterRoom(Temperature.ofCelsius(20), 1).withRest(0.75),
            FIGURES_BOTH),
        Arguments.of("room", Proof.inRoom(Temperature.ofCelsius(22), 2), FIGURES_ROOM));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("nights")
  void nightIsAsRecorded(String name, Proof proof, double[] figures) {
    ShapeForecast shape = ShapeForecaster.of(bulk(24), proof).forecast();
    ShapeForecast.Night night = shape.likely().orElseThrow();
    double[] now = {
      shape.hours().early().orElseThrow(),
      shape.hours().likely().orElseThrow(),
      shape.hours().late().orElseThrow(),
      shape.rise().low().orElseThrow(),
      shape.rise().high().orElseThrow(),
      night.riseAtBake().low().orElseThrow(),
      night.riseAtBake().high().orElseThrow(),
      night.bakeFrom().window().likely().orElseThrow(),
      night.bakeUntil().window().early().orElseThrow(),
      night.piece().riseAt(night.ovenHours()).percent(),
      night.piece().coreCelsiusAt(night.proofFromHours() + 3),
      night.warmer().map(ShapeForecast.WarmerCold::riseAtBakePercent).orElse(0.0)
    };

    assertThat(now).as(name).containsExactly(figures, within(SMALL));
  }

  @Test
  void nightFromAGivenHourIsAsRecorded() {
    ShapeForecast.Night night =
        ShapeForecaster.of(bulk(24), Proof.inCold(COLD, 12)).nightIfShapedAt(4).orElseThrow();
    double[] now = {
      night.piece().riseAt(night.ovenHours()).percent(),
      night.riseAtBake().low().orElseThrow(),
      night.riseAtBake().high().orElseThrow()
    };

    assertThat(now).containsExactly(FIGURES_GIVEN, within(SMALL));
  }

  private static List<Warning.Kind> kinds(double celsius, Proof proof) {
    return ShapeForecaster.of(bulk(celsius), proof).forecast().warnings().stream()
        .map(Warning::kind)
        .toList();
  }

  @Test
  void edgesOfTheColdAreWhereTheyAreSaidToBe() {
    assertThat(kinds(24, Proof.inCold(Temperature.ofCelsius(10), 2)))
        .doesNotContain(Warning.Kind.BARELY_COOLING);
    assertThat(kinds(24, Proof.inCold(Temperature.ofCelsius(10.1), 2)))
        .contains(Warning.Kind.BARELY_COOLING);
    assertThat(kinds(24, Proof.inCold(Temperature.ofCelsius(0), 2)))
        .contains(Warning.Kind.FREEZING);
    assertThat(kinds(24, Proof.inCold(Temperature.ofCelsius(24), 2)))
        .contains(Warning.Kind.NOT_COOLING);
    assertThat(kinds(24, Proof.inRoom(Temperature.ofCelsius(36), 1)))
        .contains(Warning.Kind.OUTSIDE_GROWTH);
    assertThat(kinds(24, Proof.inRoom(Temperature.ofCelsius(35.9), 1)))
        .doesNotContain(Warning.Kind.OUTSIDE_GROWTH);
  }

  @Test
  void warningFitsTheProof() {
    assertThat(kinds(28, Proof.inCold(Temperature.ofCelsius(12), 40)))
        .contains(Warning.Kind.PAST_TARGET_IN_COLD);
    assertThat(kinds(26, Proof.inRoom(Temperature.ofCelsius(26), 9)).get(0))
        .isEqualTo(Warning.Kind.PAST_TARGET_IN_ROOM);
  }

  @Test
  void saysSoWhereOneLoafInTenHasGoneTooFar() {
    Proof high = Proof.inRoom(Temperature.ofCelsius(26), 3).withTarget(Rise.ofPercent(135));
    Proof low = Proof.inCold(COLD, 8);

    assertThat(kinds(24, high)).contains(Warning.Kind.SOME_TOO_FAR_IN_ROOM);
    assertThat(kinds(24, low)).doesNotContain(Warning.Kind.SOME_TOO_FAR_IN_COLD);
  }

  private static final double[] FIGURES_COLD = {
    3.5026, 4.9231, 6.7385, 13.3770, 84.0502, 51.0729, 127.8667, 10.7983, 18.7149, 84.2655, 15.6501,
    105.6940
  };
  private static final double[] FIGURES_BOTH = {
    2.6366, 3.7911, 5.1481, 5.1559, 54.8374, 48.8483, 127.1961, 9.5302, 19.7172, 83.3099, 18.4675,
    99.3064
  };
  private static final double[] FIGURES_ROOM = {
    3.3106, 4.6847, 6.3770, 26.0824, 56.9479, 67.5275, 101.9402, 6.6658, 8.0783, 85.5491, 23.3006,
    0.0000
  };
  private static final double[] FIGURES_GIVEN = {62.9201, 32.1365, 106.7755};
}
