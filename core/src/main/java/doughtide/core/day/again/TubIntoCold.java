package doughtide.core.day.again;

import doughtide.core.day.BakeRoute;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.HandsOnTime;
import doughtide.core.day.Taken;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Ways to put the tub of a dough that is not shaped into the cold, though that was not meant: as
 * late as somebody is there, or at once, until somebody is there again.
 */
final class TubIntoCold {
  private static final double ROOM_PROOF_HOURS = 2; // after it, in the room or the cold again

  private final Slipped slipped;
  private final BenchHours bench;
  private final Taken others;
  private final int hands;

  private TubIntoCold(Slipped slipped, BenchHours bench, Taken others, int hands) {
    this.slipped = slipped;
    this.bench = bench;
    this.others = others;
    this.hands = hands;
  }

  /**
   * The dough with its tub in the cold, some ways.
   *
   * @param others what the other doughs take
   * @param hands how many persons work
   */
  static List<Slipped> ways(Slipped slipped, BenchHours bench, Taken others, int hands) {
    boolean possible = slipped.shapedHour().isEmpty() && slipped.route().coldFrom().isEmpty();
    return possible ? new TubIntoCold(slipped, bench, others, hands).all() : List.of();
  }

  private List<Slipped> all() {
    return into()
        .boxed()
        .flatMap(from -> outOf(from).mapToObj(out -> slipped.with(steps(from, out))))
        .map(each -> each.proofedInRoom(ROOM_PROOF_HOURS))
        .toList();
  }

  /** The last moment of the hours at the bench, which leaves time for folds, and the first. */
  private DoubleStream into() {
    for (BenchInterval at : bench.intervals()) {
      double[] free = free(Math.max(at.fromHour(), slipped.nowHour()), at.toHour());
      if (free.length > 0) {
        return DoubleStream.of(free[free.length - 1], free[0]).distinct();
      }
    }
    return DoubleStream.empty();
  }

  private double[] free(double from, double to) {
    return IntStream.rangeClosed(0, (int) Math.floor((to - from) / OpenSteps.FIVE_MINUTES))
        .mapToDouble(i -> from + i * OpenSteps.FIVE_MINUTES)
        .filter(this::isFree)
        .toArray();
  }

  private boolean isFree(double hour) {
    return others.leavesHands(bench, hour, hour + HandsOnTime.CARRY_HOURS, hands);
  }

  /** When somebody comes to the bench. */
  private DoubleStream outOf(double from) {
    return bench.intervals().stream()
        .mapToDouble(BenchInterval::fromHour)
        .filter(hour -> BakeRoute.mayStayInCold(from, hour) && isFree(hour));
  }

  /** What is open before it goes into the cold; in the cold nobody folds. */
  private List<BakeStep> steps(double from, double out) {
    Stream<BakeStep> before = slipped.open().stream().filter(step -> step.toHour() <= from + 1e-6);
    List<BakeStep> steps = new ArrayList<>(before.toList());
    steps.add(carry(Kind.BULK_INTO_COLD, from));
    steps.add(carry(Kind.BULK_OUT_OF_COLD, out));
    return steps;
  }

  private static BakeStep carry(Kind kind, double hour) {
    return new BakeStep(kind, hour, hour + HandsOnTime.CARRY_HOURS, 0);
  }
}
