package doughtide.core.planning;

import doughtide.core.quantity.Checks;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Several doughs on one day that share one oven and one pair of hands: no two hands-on steps
 * overlap, and the oven bakes one dough at a time. A feeding may serve several doughs.
 *
 * <p>Doughs are placed one after the other in the hours the others leave. A dough that finds no
 * place goes to the head of the line and the day is begun again, so that the hardest to place
 * chooses first.
 */
public final class SharedDay {
  private static final int MOST_DOUGHS = 12;

  private final List<BakeDay> doughs;

  private SharedDay(List<BakeDay> doughs) {
    this.doughs = doughs;
  }

  /**
   * The outcome.
   *
   * @param plans one for each dough in the order given; empty if they do not all fit
   * @param misfit number of the dough that found no place, from 0
   */
  public record Answer(List<BakePlan> plans, Optional<Integer> misfit) {
    /** Keeps its own copy. */
    public Answer {
      plans = List.copyOf(plans);
    }
  }

  /**
   * Plans all doughs.
   *
   * @param doughs 1…12 doughs with the same oven; each says when the baker is at the bench
   * @param progress is told how far the search has come
   */
  public static Answer plan(List<BakeDay> doughs, SearchProgress progress) {
    Checks.inRange("doughs", doughs.size(), 1, MOST_DOUGHS, "");
    return new SharedDay(List.copyOf(doughs)).plan(progress);
  }

  private Answer plan(SearchProgress progress) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < doughs.size(); i++) {
      order.add(i);
    }
    Optional<Integer> misfit = Optional.empty();
    for (int attempt = 0; attempt < doughs.size(); attempt++) {
      List<Placed> placed = new ArrayList<>();
      misfit = place(order, placed, progress);
      if (misfit.isEmpty()) {
        placed.sort(Comparator.comparingInt(Placed::number));
        return new Answer(placed.stream().map(Placed::plan).toList(), Optional.empty());
      }
      Integer hard = misfit.get();
      if (order.get(0).equals(hard)) {
        break;
      }
      order.remove(hard);
      order.add(0, hard);
    }
    return new Answer(List.of(), misfit);
  }

  private record Placed(int number, BakePlan plan) {}

  private Optional<Integer> place(
      List<Integer> order, List<Placed> placed, SearchProgress progress) {
    for (int number : order) {
      Optional<BakePlan> plan = beside(doughs.get(number), placed);
      if (plan.isEmpty()) {
        return Optional.of(number);
      }
      placed.add(new Placed(number, plan.get()));
      progress.at((double) placed.size() / order.size());
    }
    return Optional.empty();
  }

  private static Optional<BakePlan> beside(BakeDay dough, List<Placed> placed) {
    List<BenchInterval> busy = new ArrayList<>();
    List<BenchInterval> oven = new ArrayList<>(dough.ovenTaken());
    List<FeedChoice> feedings = new ArrayList<>(dough.otherFeedings());
    for (Placed other : placed) {
      BakePlan plan = other.plan();
      plan.steps().stream()
          .filter(step -> step.toHour() > step.fromHour())
          .forEach(step -> busy.add(new BenchInterval(step.fromHour(), step.toHour())));
      oven.add(plan.draft().ovenTime(plan.day()));
      if (plan.dough().starter().equals(dough.dough().starter())) {
        feedings.add(plan.feed());
      }
    }
    Optional<BenchHours> left = dough.bench().without(busy);
    if (left.isEmpty()) {
      return Optional.empty();
    }
    BakeDay rest =
        dough.toBuilder().bench(left.get()).ovenTaken(oven).otherFeedings(feedings).build();
    return BakeDayPlanner.plansBeside(dough.toBuilder().plans(1).build(), rest).stream()
        .findFirst();
  }
}
