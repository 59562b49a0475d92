package doughtide.core.day.again;

import doughtide.core.Internal;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BenchHours;
import doughtide.core.day.HandsOnTime;
import doughtide.core.day.Taken;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Checks;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * How far a starter has come that is built in stages. Those that are done were made when they were;
 * each one to come is made at its hour, or as near to it as somebody is at the bench with free
 * hands, and begins with what the one before has by then.
 *
 * @param build as it was meant
 * @param doneHours when each stage that is done was made, in order, hours on the axis of the day
 * @param nowHour what the clock says
 */
@Internal
public record StagesBegun(StagedBuild build, List<Double> doneHours, double nowHour) {
  /** So much of its hours a stage stands at least (starting value). */
  private static final double LEAST_PART = 0.5;

  /** Further than this no free hour is looked for. */
  private static final int MOST_STEPS = 48 * 12;

  /** Refuses stages none of which is done, or more than there are. */
  public StagesBegun {
    Checks.given("build", build);
    doneHours = List.copyOf(doneHours);
    Checks.inRange("stages done", doneHours.size(), 1, build.stages().size(), "");
  }

  /** When the stages were and will be made. */
  BuildTimes times(RiseForecaster forecaster, BenchHours bench, Taken taken, int hands) {
    return BuildTimes.begun(
        FeedingPlanner.with(forecaster)
            .build(
                build,
                (stage, from, meant) -> {
                  int next = stage + 1;
                  if (next == build.stages().size() || meant.isEmpty()) {
                    return meant;
                  }
                  double made = firstHour() + from;
                  double handedOn =
                      next < doneHours.size()
                          ? doneHours.get(next)
                          : possible(made, meant.getAsDouble(), bench, taken, hands);
                  return OptionalDouble.of(handedOn - made);
                }));
  }

  private double firstHour() {
    return doneHours.get(0);
  }

  /**
   * The hour nearest to the one meant at which somebody can make a stage, from now on and not
   * before the stage before has stood for half its hours.
   */
  private double possible(double made, double hours, BenchHours bench, Taken taken, int hands) {
    double soonest = Math.max(nowHour, made + hours * LEAST_PART);
    double meant = Math.max(nowHour, made + hours);
    return IntStream.rangeClosed(-MOST_STEPS, MOST_STEPS)
        .boxed()
        .sorted(Comparator.comparingInt(i -> Math.abs(i)))
        .map(i -> meant + i * OpenSteps.FIVE_MINUTES)
        .filter(from -> from >= soonest && isFree(from, bench, taken, hands))
        .findFirst()
        .orElse(meant);
  }

  private static boolean isFree(double from, BenchHours bench, Taken taken, int hands) {
    return taken.leavesHands(bench, from, from + HandsOnTime.FEED_HOURS, hands);
  }

  /** The day of a dough whose starter it is. */
  BakeDay in(BakeDay day, BuildTimes times) {
    return day.toBuilder().stagesBegun(times, firstHour(), doneHours.size()).build();
  }

  /** The stages that are still to come. */
  List<BakeStep> open(BuildTimes times) {
    return IntStream.range(doneHours.size(), times.stages().size())
        .mapToObj(
            i -> {
              double at = firstHour() + times.stages().get(i).fromHours();
              return new BakeStep(BakeStep.Kind.FEED, at, at + HandsOnTime.FEED_HOURS, i + 1);
            })
        .toList();
  }
}
