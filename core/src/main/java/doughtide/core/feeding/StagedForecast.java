package doughtide.core.feeding;

import doughtide.core.Internal;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.SeedState;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * A starter built in stages, stage by stage: when each is ripe, how sour it gets, and what it hands
 * on. What one stage leaves in cells, acid and gas the next begins with, member by member of the
 * ensemble; the baker hands on by the clock, so all members are handed on at the same hour.
 *
 * <pre>{@code
 * StagedForecast forecast = FeedingPlanner.with(RiseForecaster.standard()).build(build);
 * double hours = forecast.readyHours().orElseThrow();
 * }</pre>
 */
@Internal
public final class StagedForecast {

  private final StagedBuild build;
  private final List<Step> steps;

  private StagedForecast(StagedBuild build, List<Step> steps) {
    this.build = build;
    this.steps = List.copyOf(steps);
  }

  /**
   * One stage.
   *
   * @param stage what was asked
   * @param fromHours when it is made, hours since the first
   * @param hours how long it stands; empty if it is not ripe within ten days
   * @param forecast hours count from this stage
   * @param startPh pH just after it is made
   * @param endPh pH when it is handed on
   */
  @Internal
  public record Step(
      BuildStage stage,
      double fromHours,
      OptionalDouble hours,
      FeedingForecast forecast,
      Distribution startPh,
      Distribution endPh) {
    /** When it is handed on, hours since the first stage. */
    public OptionalDouble toHours() {
      return hours.isEmpty() ? hours : OptionalDouble.of(fromHours + hours.getAsDouble());
    }
  }

  /**
   * Works a build out.
   *
   * @param runner with which belief and parameters
   * @param handOver when each stage is handed on
   * @throws doughtide.core.quantity.InputException if a stage is too warm or too cold for hours
   */
  static StagedForecast of(StagedBuild build, StageRunner runner, HandOver handOver) {
    List<Step> steps = new ArrayList<>();
    List<SeedState> seeds = List.of();
    double from = 0;
    for (int i = 0; i < build.stages().size(); i++) {
      BuildStage stage = build.stages().get(i);
      FeedingForecast forecast = runner.run(build.feedings().get(i), stage, seeds);
      OptionalDouble meant = stage.hours().isPresent() ? stage.hours() : forecast.readyHours();
      OptionalDouble hours = handOver.hours(i, from, meant);
      List<RiseCurve> curves = forecast.rise().curves();
      if (hours.isEmpty() || curves.isEmpty()) {
        steps.add(new Step(stage, from, hours, forecast, Distribution.NEVER, Distribution.NEVER));
        break;
      }
      // What stood for longer than the forecast goes has long fallen.
      double at = Math.min(hours.getAsDouble(), forecast.rise().hours());
      steps.add(
          new Step(
              stage,
              from,
              hours,
              forecast,
              phs(forecast.rise(), curve -> curve.phAt(0)),
              phs(forecast.rise(), curve -> curve.phAt(at))));
      seeds = curves.stream().map(curve -> curve.seedAt(at)).toList();
      from += hours.getAsDouble();
    }
    return new StagedForecast(build, steps);
  }

  /** Runs one stage. */
  interface StageRunner {
    /**
     * @param seeds what each member begins with; none: by the starter's condition
     */
    FeedingForecast run(Feeding feeding, BuildStage stage, List<SeedState> seeds);
  }

  /** When a stage is handed on. */
  @Internal
  public interface HandOver {
    /** As it was meant. */
    HandOver AS_MEANT = (stage, fromHours, meant) -> meant;

    /**
     * How long a stage stands, hours.
     *
     * @param stage its number from 0
     * @param fromHours when it is made, hours since the first
     * @param meant how long it was meant to stand; empty if it is not ripe within ten days
     */
    OptionalDouble hours(int stage, double fromHours, OptionalDouble meant);
  }

  private static Distribution phs(RiseForecast rise, ToDoubleFunction<RiseCurve> of) {
    double[] values = rise.curves().stream().mapToDouble(of).toArray();
    return Distribution.of(values, rise.ensemble().weights());
  }

  /** What is built. */
  public StagedBuild build() {
    return build;
  }

  /** The stages in order; fewer than asked for if one of them is not ripe within ten days. */
  public List<Step> steps() {
    return steps;
  }

  /** When the last stage is handed on, hours since the first; empty if that is never. */
  public OptionalDouble readyHours() {
    return steps.size() < build.stages().size()
        ? OptionalDouble.empty()
        : steps.get(steps.size() - 1).toHours();
  }
}
