package doughtide.core.day;

import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A plan on the likely path, before it is weighed.
 *
 * @param route starter share, dough temperature, mixing, cold
 * @param feed the feeding
 * @param strength autolyse and folds that fit
 * @param proof where the loaves wait
 * @param shapedHours from mixing to the basket
 * @param ovenHour first batch into the oven, on the axis
 * @param shapeRise rise at which bulk fermentation ends
 * @param risePerHour how fast the dough rises then
 */
record Draft(
    BakeRoute route,
    FeedChoice feed,
    StrengthPlan strength,
    ProofKind proof,
    double shapedHours,
    double ovenHour,
    double shapeRise,
    double risePerHour) {

  double mixHour() {
    return route.mixHour();
  }

  double basketHour() {
    return mixHour() + shapedHours;
  }

  double ovenHours() {
    return ovenHour - mixHour();
  }

  /**
   * Shaped at another hour, to five minutes; the oven keeps its hour after a night in the cold, and
   * the proof its length in the room.
   *
   * @param bulkEndHours from mixing
   * @param shown rise that the jar shows then
   * @param restHours bench rest and shaping
   */
  Draft shapedAt(double bulkEndHours, Rise shown, double restHours) {
    double later = Math.rint((bulkEndHours + restHours - shapedHours) * 12) / 12;
    return new Draft(
            route,
            feed,
            strength,
            proof,
            shapedHours + later,
            proof == ProofKind.COLD ? ovenHour : ovenHour + later,
            shown.fraction(),
            risePerHour)
        .withFoldsBeforeShaping(restHours);
  }

  /** What happens after bulk fermentation, for a forecast of the loaf. */
  Proof proof(BakeDay day) {
    Proof plain =
        proof == ProofKind.COLD
            ? Proof.inColdUntil(day.cold().orElseThrow(), ovenHours())
            : Proof.inRoom(
                Temperature.ofCelsius(day.room().celsius(basketHour())), ovenHour - basketHour());
    return day.ofItsLoaves(plain);
  }

  /**
   * The whole dough moved, but for what happens in the cold.
   *
   * @param by hours
   * @param oven when it is baked then
   */
  Draft movedBy(double by, double oven) {
    BakeRoute moved = by == 0 ? route : route.withMixHour(mixHour() + by);
    return new Draft(moved, feed, strength, proof, shapedHours, oven, shapeRise, risePerHour);
  }

  Draft withFeed(FeedChoice other) {
    return new Draft(route, other, strength, proof, shapedHours, ovenHour, shapeRise, risePerHour);
  }

  /** All steps by the clock. */
  List<BakeStep> steps(BakeDay day) {
    List<BakeStep> steps = new ArrayList<>();
    addFeedings(steps, day);
    if (strength.autolyseHours() > 0) {
      double from = mixHour() - strength.autolyseHours() - HandsOnTime.AUTOLYSE_HOURS;
      add(steps, BakeStep.Kind.AUTOLYSE, from, HandsOnTime.AUTOLYSE_HOURS, 0);
    }
    add(steps, BakeStep.Kind.MIX, mixHour(), day.mixHours(), 0);
    for (int i = 1; i <= strength.folds(); i++) {
      double at = mixHour() + i * strength.spacingHours();
      add(steps, BakeStep.Kind.FOLD, at, HandsOnTime.FOLD_HOURS, i);
    }
    route
        .coldFrom()
        .ifPresent(at -> add(steps, BakeStep.Kind.BULK_INTO_COLD, at, HandsOnTime.CARRY_HOURS, 0));
    route
        .coldTo()
        .ifPresent(
            at -> add(steps, BakeStep.Kind.BULK_OUT_OF_COLD, at, HandsOnTime.CARRY_HOURS, 0));
    steps.addAll(afterBulk(day, proof, basketHour(), ovenHour));
    steps.sort(Comparator.comparingDouble(BakeStep::fromHour));
    return steps;
  }

  /** One, or one for each stage that is still to come. */
  private void addFeedings(List<BakeStep> steps, BakeDay day) {
    List<BuildTimes.Stage> stages = day.stages().map(BuildTimes::stages).orElse(List.of());
    int done = day.stagesDone();
    int all = Math.max(1, stages.size());
    for (int i = done; i < all && (day.needsFeeding() || done > 0); i++) {
      double at = feed.feedHour() + (stages.isEmpty() ? 0 : stages.get(i).fromHours());
      add(steps, BakeStep.Kind.FEED, at, HandsOnTime.FEED_HOURS, all == 1 ? 0 : i + 1);
    }
  }

  /** The steps from shaping on. */
  static List<BakeStep> afterBulk(
      BakeDay day, ProofKind proof, double basketHour, double ovenHour) {
    List<BakeStep> steps = new ArrayList<>();
    double rest = day.restHours();
    add(steps, BakeStep.Kind.SHAPE, basketHour - rest, rest, 0);
    if (proof == ProofKind.COLD) {
      add(steps, BakeStep.Kind.LOAVES_INTO_COLD, basketHour, HandsOnTime.CARRY_HOURS, 0);
    }
    double preheat = preheatHour(day, basketHour, ovenHour);
    add(steps, BakeStep.Kind.PREHEAT, preheat, HandsOnTime.SWITCH_HOURS, 0);
    addOven(steps, day, ovenHour);
    steps.sort(Comparator.comparingDouble(BakeStep::fromHour));
    return steps;
  }

  private static void addOven(List<BakeStep> steps, BakeDay day, double ovenHour) {
    Oven oven = day.oven();
    int batches = oven.batches(day.loaves());
    double each = oven.bakeHours() + HandsOnTime.LOAD_HOURS;
    for (int i = 0; i < batches; i++) {
      int number = batches == 1 ? 0 : i + 1;
      double in = ovenHour + i * each;
      add(steps, BakeStep.Kind.BAKE, in, HandsOnTime.LOAD_HOURS, number);
      // The next batch is loaded while the one before is put down to cool.
      double hands = i == batches - 1 ? HandsOnTime.UNLOAD_HOURS : 0;
      add(steps, BakeStep.Kind.COOL, in + HandsOnTime.LOAD_HOURS + oven.bakeHours(), hands, number);
    }
    double out = ovenHour + batches * each;
    add(steps, BakeStep.Kind.READY, out + oven.coolHours(), 0, 0);
  }

  /** Not while hands are busy shaping: then the oven is switched on just before. */
  private static double preheatHour(BakeDay day, double basketHour, double ovenHour) {
    double hour = ovenHour - Math.max(day.oven().preheatHours(), HandsOnTime.SWITCH_HOURS);
    double shape = basketHour - day.restHours();
    boolean busy = hour + HandsOnTime.SWITCH_HOURS > shape && hour < basketHour;
    return busy ? Math.min(hour, shape - HandsOnTime.SWITCH_HOURS) : hour;
  }

  /** Whether two things would have to be done at once; what takes no time needs nobody. */
  static boolean overlap(List<BakeStep> steps) {
    double free = Double.NEGATIVE_INFINITY;
    for (BakeStep step : steps) {
      if (step.kind().handsOn() && step.toHour() > step.fromHour()) {
        if (step.fromHour() < free - 1e-6) {
          return true;
        }
        free = step.toHour();
      }
    }
    return false;
  }

  private static void add(
      List<BakeStep> steps, BakeStep.Kind kind, double from, double hours, int number) {
    steps.add(new BakeStep(kind, from, from + hours, number));
  }

  /** Only the folds that are done before bulk fermentation ends, but not fewer than it needs. */
  Draft withFoldsBeforeShaping(double restHours) {
    double end = shapedHours - restHours;
    int fit = 0;
    while (fit < strength.folds() && foldEnd(fit + 1) <= end) {
      fit++;
    }
    return new Draft(
        route, feed, strength.withFolds(fit), proof, shapedHours, ovenHour, shapeRise, risePerHour);
  }

  /** Whether it would be shaped before its tub has come out of the cold. */
  boolean isShapedTooSoon(double restHours) {
    return route.coldTo().isPresent()
        && shapedHours - restHours < route.earliestShapeHours() - 1e-9;
  }

  /** Whether a fold would come after bulk fermentation has ended. */
  boolean foldsTooLate(double restHours) {
    return strength.folds() > 0 && foldEnd(strength.folds()) > shapedHours - restHours + 1e-9;
  }

  private double foldEnd(int number) {
    return number * strength.spacingHours() + HandsOnTime.FOLD_HOURS;
  }

  /** From the first batch in to the last batch out. */
  static double ovenBusyHours(BakeDay day) {
    return day.oven().batches(day.loaves()) * (day.oven().bakeHours() + HandsOnTime.LOAD_HOURS);
  }
}
