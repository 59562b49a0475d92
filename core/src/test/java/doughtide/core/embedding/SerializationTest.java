package doughtide.core.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.Composition;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.kinetics.RateForm;
import doughtide.core.kinetics.YeastKind;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.PieceShape;
import doughtide.core.thermal.TemperatureTrace;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a distributed engine sends to its workers and takes back survives the journey. */
class SerializationTest {

  static Stream<Serializable> valuesThatAreEqualAfterwards() {
    Flour white = FlourClass.WHITE.flour();
    return Stream.of(
        Temperature.ofCelsius(24.5),
        Share.ofPercent(72),
        Rise.ofPercent(50),
        Mass.ofGrams(850),
        Altitude.ofMetres(1500),
        white.composition(),
        Composition.ofParts(0.12, 0.015, 0.03, 0.006, 0.14),
        white,
        new Flour.Part(white, Share.ofPercent(100)),
        Starter.ripe(),
        Unknowns.typical(),
        RiseParameters.standard(),
        RateForm.CARDINAL.yeast(YeastKind.CEREVISIAE),
        PieceShape.round(),
        TimeWindow.NEVER,
        new TimeWindow(
            OptionalDouble.of(1.5), OptionalDouble.of(2.25), OptionalDouble.empty(), 0.8));
  }

  @ParameterizedTest
  @MethodSource("valuesThatAreEqualAfterwards")
  void aValueIsEqualAfterwards(Serializable value) throws Exception {
    assertThat(there(value)).isEqualTo(value).hasSameHashCodeAs(value);
  }

  static Stream<TemperatureTrace> traces() {
    TemperatureTrace steady = TemperatureTrace.steady(Temperature.ofCelsius(24));
    TemperatureTrace logged =
        TemperatureTrace.logged(new double[] {0, 1, 3, 7}, new double[] {26, 25, 21, 20});
    TemperatureTrace steps =
        TemperatureTrace.steps(
            List.of(
                new TemperatureTrace.Step(0, Temperature.ofCelsius(25)),
                new TemperatureTrace.Step(4, Temperature.ofCelsius(19))));
    return Stream.of(steady, logged, steps, steady.then(2, logged));
  }

  @ParameterizedTest
  @MethodSource("traces")
  void aTraceGivesTheSameTemperatures(TemperatureTrace trace) throws Exception {
    TemperatureTrace copy = there(trace);
    for (double hour = -1; hour < 12; hour += 0.31) {
      assertThat(copy.celsius(hour)).isEqualTo(trace.celsius(hour));
    }
    assertThat(copy.breakpoints()).isEqualTo(trace.breakpoints());
  }

  @Test
  void aModelRunsTheSame() throws Exception {
    DoughTemperature temperature =
        DoughTemperature.inRoom(
            Temperature.ofCelsius(26), TemperatureTrace.steady(Temperature.ofCelsius(20)), 3, 4000);
    RiseModel model =
        RiseModel.of(
            DoughFormula.builder()
                .starterShare(StarterShare.prefermented(Share.ofPercent(9)))
                .build(),
            temperature);
    double before = model.runFast(9).riseAt(7.7).fraction(); // also fills the shared tables
    assertThat(there(model).runFast(9).riseAt(7.7).fraction()).isEqualTo(before);
    assertThat(there(temperature).startCelsius()).isEqualTo(temperature.startCelsius());
  }

  @Test
  void aForecasterForecastsTheSame() throws Exception {
    RiseForecaster forecaster = RiseForecaster.standard().with(Belief.standard()).withMembers(32);
    RiseForecast here = forecast(forecaster);
    assertThat(forecast(there(forecaster)).hoursToRise(Rise.ofPercent(50)))
        .isEqualTo(here.hoursToRise(Rise.ofPercent(50)));
    assertThat(there(here.bandAt(3))).isEqualTo(here.bandAt(3));
    assertThat(there(here.curves().get(0).gasAt(2))).isEqualTo(here.curves().get(0).gasAt(2));
  }

  private static RiseForecast forecast(RiseForecaster forecaster) {
    return forecaster.forecast(
        DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(12)), 24);
  }

  @SuppressWarnings("unchecked")
  private static <T> T there(T value) throws IOException, ClassNotFoundException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
      out.writeObject(value);
    }
    try (ObjectInputStream in =
        new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
      return (T) in.readObject();
    }
  }
}
