package doughtide.core.feeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** From when until when the last stage of a build may be used. */
class BuildTimesTest {
  private static final FeedingPlanner PLANNER =
      FeedingPlanner.with(RiseForecaster.standard().withMembers(16));
  private static final double NEAR = 0.25;

  private static BuildStage stage(double celsius, OptionalDouble yield, OptionalDouble hours) {
    return new BuildStage(
        Optional.empty(),
        new FeedRatio(1, 2, 2),
        yield,
        FlourClass.WHITE.flour(),
        Temperature.ofCelsius(celsius),
        hours);
  }

  private static BuildStage stage(double celsius, OptionalDouble hours) {
    return stage(celsius, OptionalDouble.empty(), hours);
  }

  private static StagedForecast forecast(BuildStage... stages) {
    return PLANNER.build(new StagedBuild(Starter.ripe(), List.of(stages), Altitude.SEA_LEVEL));
  }

  private static double falling(StagedForecast.Step last) {
    return last.fromHours() + last.forecast().falling().likely().orElseThrow();
  }

  /** Where hours are asked for it is used at these; a quarter of an hour is no matter. */
  @Test
  void askedHoursAreKeptToAQuarterOfAnHour() {
    BuildTimes times =
        BuildTimes.of(forecast(stage(25, OptionalDouble.of(4)), stage(25, OptionalDouble.of(3))));

    assertThat(times.ripeHours()).isCloseTo(7 - NEAR, within(1e-9));
    assertThat(times.fallingHours()).isCloseTo(7 + NEAR, within(1e-9));
    assertThat(times.stages()).hasSize(2);
    assertThat(times.stages().get(1).fromHours()).isCloseTo(4, within(1e-9));
    assertThat(times.stages().get(0).endPh()).isBetween(3.3, 6.0);
  }

  /** Otherwise from the middle of its ripe time until it begins to fall. */
  @Test
  void withoutHoursItIsUsedUntilItFalls() {
    StagedForecast forecast =
        forecast(stage(25, OptionalDouble.of(4)), stage(25, OptionalDouble.empty()));
    StagedForecast.Step last = forecast.steps().get(1);
    BuildTimes times = BuildTimes.of(forecast);

    assertThat(times.ripeHours()).isCloseTo(forecast.readyHours().orElseThrow(), within(1e-9));
    assertThat(times.fallingHours())
        .isCloseTo(Math.max(falling(last), times.ripeHours() + NEAR), within(1e-9));
    assertThat(times.stages().get(1).ripe().likely().orElseThrow())
        .isCloseTo(4 + last.forecast().ripe().likely().orElseThrow(), within(1e-9));
  }

  /** A build that was begun is used whenever it is ripe, whatever hours were asked. */
  @Test
  void aBuildThatWasBegunIsUsedWhileItIsRipe() {
    StagedForecast forecast =
        forecast(stage(25, OptionalDouble.of(4)), stage(25, OptionalDouble.of(2)));
    StagedForecast.Step last = forecast.steps().get(1);
    BuildTimes begun = BuildTimes.begun(forecast);

    assertThat(last.forecast().readyHours().orElseThrow()).isGreaterThan(2 + NEAR);
    assertThat(begun.ripeHours()).isCloseTo(6 - NEAR, within(1e-9));
    assertThat(begun.fallingHours()).isCloseTo(falling(last), within(1e-9));
    assertThat(begun.stages()).isEqualTo(BuildTimes.of(forecast).stages());
    StagedForecast late =
        forecast(stage(25, OptionalDouble.of(4)), stage(28, OptionalDouble.of(30)));
    StagedForecast.Step lateLast = late.steps().get(1);
    assertThat(BuildTimes.begun(late).ripeHours())
        .isCloseTo(4 + lateLast.forecast().readyHours().orElseThrow(), within(1e-9));
    assertThat(BuildTimes.begun(late).fallingHours()).isCloseTo(34 + NEAR, within(1e-9));
  }

  @Test
  void aStageThatIsNeverRipeIsRefused() {
    assertThatThrownBy(() -> BuildTimes.of(forecast(stage(2, OptionalDouble.empty()))))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("is not likely to be ripe within ten days");
  }

  @Test
  void aStageChecksItsYieldAndItsHours() {
    assertThatThrownBy(() -> stage(25, OptionalDouble.of(144), OptionalDouble.empty()))
        .hasMessageContaining("dough yield of a stage 144 is outside 145…300");
    assertThatThrownBy(() -> stage(25, OptionalDouble.of(0.4)))
        .hasMessageContaining("hours of a stage 0.4 h is outside 0.5…120 h");
    assertThatThrownBy(() -> stage(46, OptionalDouble.empty()))
        .hasMessageContaining("temperature of a stage 46 °C is outside -2…45 °C");
  }
}
