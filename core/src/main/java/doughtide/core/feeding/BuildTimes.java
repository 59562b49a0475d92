package doughtide.core.feeding;

import doughtide.core.Internal;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * When the stages of a build are made and when the last one is ripe; hours since the first stage.
 *
 * @param build seed and stages
 * @param stages in order
 * @param ripeHours from when the last one can be used
 * @param fallingHours until when
 */
@Internal
public record BuildTimes(
    StagedBuild build, List<Stage> stages, double ripeHours, double fallingHours)
    implements Serializable {

  /** So far from the hours that were asked for the last stage is used too (starting value). */
  private static final double NEAR_HOURS = 0.25;

  /**
   * One stage.
   *
   * @param fromHours when it is made
   * @param ripe when it is ripe
   * @param endPh likely pH when it is handed on
   */
  @Internal
  public record Stage(double fromHours, TimeWindow ripe, double endPh) implements Serializable {
    /** Checks that the window is given. */
    public Stage {
      Checks.given("ripe", ripe);
    }
  }

  /** Keeps its own copy. */
  public BuildTimes {
    Checks.given("build", build);
    stages = List.copyOf(stages);
  }

  /**
   * The times of a build that was worked out.
   *
   * @throws InputException if a stage is not ripe within ten days
   */
  public static BuildTimes of(StagedForecast forecast) {
    StagedForecast.Step last = last(forecast);
    double ready = forecast.readyHours().orElseThrow();
    boolean asked = last.stage().hours().isPresent();
    double falling = falling(last, ready);
    return new BuildTimes(
        forecast.build(),
        stages(forecast),
        asked ? ready - NEAR_HOURS : ready,
        asked ? ready + NEAR_HOURS : Math.max(falling, ready + NEAR_HOURS));
  }

  /**
   * The times of a build that was begun: its last stage is used as long as it is ripe, too, where
   * hours were asked for it.
   *
   * @throws InputException if a stage is not ripe within ten days
   */
  public static BuildTimes begun(StagedForecast forecast) {
    BuildTimes meant = of(forecast);
    StagedForecast.Step last = last(forecast);
    double ripe = last.fromHours() + last.forecast().readyHours().orElse(Double.POSITIVE_INFINITY);
    return new BuildTimes(
        forecast.build(),
        meant.stages(),
        Math.min(meant.ripeHours(), ripe),
        Math.max(meant.fallingHours(), falling(last, meant.fallingHours())));
  }

  private static StagedForecast.Step last(StagedForecast forecast) {
    if (forecast.readyHours().isEmpty()) {
      throw new InputException(
          "stage.ripe",
          "a stage is not likely to be ripe within ten days: give it its hours or more warmth");
    }
    return forecast.steps().get(forecast.steps().size() - 1);
  }

  /** When the last stage is likely to begin to fall, hours since the first. */
  private static double falling(StagedForecast.Step last, double otherwise) {
    OptionalDouble falling = last.forecast().falling().likely();
    return falling.isPresent() ? last.fromHours() + falling.getAsDouble() : otherwise;
  }

  private static List<Stage> stages(StagedForecast forecast) {
    List<Stage> stages = new ArrayList<>();
    for (StagedForecast.Step step : forecast.steps()) {
      TimeWindow ripe = step.forecast().ripe().plus(step.fromHours());
      stages.add(new Stage(step.fromHours(), ripe, step.endPh().quantile(0.5).orElse(Double.NaN)));
    }
    return stages;
  }
}
