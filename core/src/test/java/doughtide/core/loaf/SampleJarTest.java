package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.RoomCooling;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.core.thermal.Vessel;
import org.junit.jupiter.api.Test;

class SampleJarTest {
  private static final DoughFormula FORMULA = DoughFormula.builder().build();
  private static final RiseForecaster FORECASTER = RiseForecaster.standard().withMembers(16);
  private static final Rise HALF = Rise.ofPercent(50);

  private static DoughTemperature in(double room, double kilograms, Vessel vessel) {
    RoomCooling cooling =
        RoomCooling.of(FORMULA, Mass.ofKilograms(kilograms), vessel, Air.STILL_ROOM);
    return DoughTemperature.inRoom(
        Temperature.ofCelsius(25),
        TemperatureTrace.steady(Temperature.ofCelsius(room)),
        cooling.tauHours(),
        cooling.heatCapacityPerKgFlourJPerK());
  }

  private static SampleJar jar(double room) {
    RiseForecast tub =
        FORECASTER.forecast(FORMULA, in(room, 2, Vessel.tub(Material.POLYPROPYLENE)));
    return SampleJar.when(tub, in(room, 0.05, Vessel.jar(Material.GLASS)), HALF).orElseThrow();
  }

  @Test
  void aCoolRoomHoldsTheJarBackAndAWarmOneDrivesIt() {
    SampleJar cool = jar(17);
    assertThat(cool.reads().likely().orElseThrow()).isLessThan(45);
    assertThat(cool.doughWarmerKelvin()).isGreaterThan(0.75);
    assertThat(cool.reads().low().orElseThrow())
        .isLessThanOrEqualTo(cool.reads().high().orElseThrow());
    assertThat(jar(30).reads().likely().orElseThrow()).isGreaterThan(50);
  }

  @Test
  void aJarAtTheDoughsOwnTemperatureShowsTheDoughsRise() {
    DoughTemperature steady = DoughTemperature.steady(Temperature.ofCelsius(24));
    RiseForecast dough = FORECASTER.forecast(FORMULA, steady);
    SampleJar jar = SampleJar.when(dough, steady, HALF).orElseThrow();
    assertThat(jar.reads().low().orElseThrow()).isCloseTo(50, within(0.1));
    assertThat(jar.reads().high().orElseThrow()).isCloseTo(50, within(0.1));
    assertThat(jar.doughWarmerKelvin()).isCloseTo(0, within(1e-9));
  }

  @Test
  void outsideGrowthThereIsNoReading() {
    DoughTemperature hot = DoughTemperature.steady(Temperature.ofCelsius(41));
    DoughTemperature mild = DoughTemperature.steady(Temperature.ofCelsius(24));
    assertThat(SampleJar.when(FORECASTER.forecast(FORMULA, hot), mild, HALF)).isEmpty();
    assertThat(SampleJar.when(FORECASTER.forecast(FORMULA, mild), hot, HALF)).isEmpty();
    assertThat(SampleJar.when(FORECASTER.forecast(FORMULA, mild), mild, Rise.ofPercent(1500)))
        .isEmpty();
  }
}
