package doughtide.core.day.again;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeStep;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.Taken;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Three stages of five hours each, of which some are done. */
class StagesBegunTest {
  private static final RiseForecaster FORECASTER = RiseForecaster.standard().withMembers(16);
  private static final BuildStage STAGE =
      new BuildStage(
          Optional.empty(),
          new FeedRatio(1, 4, 4),
          OptionalDouble.empty(),
          FlourClass.WHITE.flour(),
          Temperature.ofCelsius(26),
          OptionalDouble.of(5));
  private static final StagedBuild BUILD =
      new StagedBuild(Starter.ripe(), List.of(STAGE, STAGE, STAGE), Altitude.SEA_LEVEL);

  private static BuildTimes times(StagesBegun begun, Taken taken, double... bench) {
    BenchHours hours =
        new BenchHours(
            List.of(new BenchInterval(bench[0], bench[1]), new BenchInterval(bench[2], bench[3])));
    return begun.times(FORECASTER, hours, taken, 1);
  }

  private static List<Double> hours(BuildTimes times) {
    return times.stages().stream().map(BuildTimes.Stage::fromHours).toList();
  }

  @Test
  void whatIsDoneIsHistoryAndTheRestKeepsItsHoursWhereTheBenchAllows() {
    StagesBegun begun = new StagesBegun(BUILD, List.of(1.0, 6.5), 7);

    BuildTimes times = times(begun, Taken.NOTHING, 7, 20, 30, 40);

    assertThat(hours(times)).containsExactly(0.0, 5.5, 10.5);
    assertThat(begun.open(times))
        .singleElement()
        .satisfies(step -> assertThat(step.fromHour()).isCloseTo(11.5, within(1e-9)))
        .satisfies(step -> assertThat(step.number()).isEqualTo(3));
    assertThat(times.ripeHours())
        .as("five hours as asked, or when it is ripe")
        .isBetween(12.0, 15.3);
    assertThat(times.fallingHours()).isGreaterThanOrEqualTo(15.75 - 1e-9);
  }

  @Test
  void aStageIsMadeAtTheNearestHourAtTheBenchWithFreeHands() {
    StagesBegun begun = new StagesBegun(BUILD, List.of(0.0), 1);

    assertThat(hours(times(begun, Taken.NOTHING, 1, 4.5, 9, 20)).get(1))
        .as("before somebody leaves")
        .isCloseTo(4 + 5.0 / 12, within(1e-9));
    Taken folds = Taken.NOTHING.with(List.of(new BakeStep(BakeStep.Kind.FOLD, 4.9, 5.2, 1)));
    assertThat(hours(times(begun, folds, 1, 8, 9, 20)).get(1))
        .as("before a fold that is nearer")
        .isCloseTo(4.75, within(0.09));
    assertThat(hours(times(begun, Taken.NOTHING, 1, 2, 9, 20)).get(1))
        .as("not before half its hours")
        .isCloseTo(9, within(1e-9));
  }

  @Test
  void aStageThatStoodTooLongIsSourerWhenItIsHandedOn() {
    double sooner =
        times(new StagesBegun(BUILD, List.of(0.0, 5.0), 6), Taken.NOTHING, 6, 20, 30, 40)
            .stages()
            .get(0)
            .endPh();
    double later =
        times(new StagesBegun(BUILD, List.of(0.0), 14), Taken.NOTHING, 14, 30, 32, 40)
            .stages()
            .get(0)
            .endPh();

    assertThat(later).isLessThan(sooner - 0.1);
  }

  @Test
  void someStageMustBeDone() {
    assertThatThrownBy(() -> new StagesBegun(BUILD, List.of(), 0))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("stages done");
  }
}
