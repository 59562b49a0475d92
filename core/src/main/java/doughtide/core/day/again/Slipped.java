package doughtide.core.day.again;

import doughtide.core.Internal;
import doughtide.core.day.BakeRoute;
import doughtide.core.day.BakeStep;
import doughtide.core.day.ProofKind;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Checks;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How far a day has come that does not run as planned; all hours on the axis of the day.
 *
 * @param route the dough as it was mixed, and when its tub is in the cold
 * @param feed how its starter was fed
 * @param nowHour what the clock says; nothing is planned before it
 * @param shapedHour when dividing began, if it has
 * @param intoColdHour when its shaped loaves went or go into the cold, if that is done or settled
 * @param preheatedHour when the oven was switched on, if it was
 * @param bakedHour when the first loaves went into the oven, if they did
 * @param folds folds that were done
 * @param proof where the loaves were meant to wait
 * @param proofHours how long, hours
 * @param ovenHour when they were meant to be baked
 * @param open what hands are still needed for before it is shaped: folds, its tub into the cold and
 *     out of it
 */
@Internal
public record Slipped(
    BakeRoute route,
    FeedChoice feed,
    double nowHour,
    OptionalDouble shapedHour,
    OptionalDouble intoColdHour,
    OptionalDouble preheatedHour,
    OptionalDouble bakedHour,
    int folds,
    ProofKind proof,
    double proofHours,
    double ovenHour,
    List<BakeStep> open) {

  /** Refuses a dough that is not mixed yet. */
  public Slipped {
    Checks.given("route", route);
    Checks.given("feed", feed);
    Checks.given("proof", proof);
    Checks.inside("hour now", nowHour, route.mixHour(), 8760, "h");
    Checks.inside("length of the proof", proofHours, 0, 168, "h");
    open = List.copyOf(open);
  }

  /** The same with its open steps at other hours, its tub in the cold by them. */
  Slipped with(List<BakeStep> steps) {
    BakeRoute moved =
        new BakeRoute(
            route.starterPercent(),
            route.doughCelsius(),
            route.mixHour(),
            hour(steps, BakeStep.Kind.BULK_INTO_COLD, route.coldFrom()),
            hour(steps, BakeStep.Kind.BULK_OUT_OF_COLD, route.coldTo()));
    return with(moved, proof, proofHours, steps);
  }

  /** The same with its tub never in the cold. */
  Slipped withoutCold(List<BakeStep> steps) {
    BakeRoute inRoom =
        BakeRoute.inRoom(route.starterPercent(), route.doughCelsius(), route.mixHour());
    return with(inRoom, proof, proofHours, steps);
  }

  /** The same with its loaves meant to wait in the room. */
  Slipped proofedInRoom(double hours) {
    return with(route, ProofKind.ROOM, hours, open);
  }

  /** A plan with the folds that were done and those that are open, however many it asks for. */
  StrengthPlan folds(StrengthPlan wanted) {
    int all = folds + (int) open.stream().filter(step -> step.kind() == BakeStep.Kind.FOLD).count();
    return new StrengthPlan(
        wanted.autolyseHours(),
        all,
        Math.min(wanted.leastFolds(), all),
        wanted.spacingHours(),
        wanted.pointsBelowLimit());
  }

  private Slipped with(BakeRoute way, ProofKind waiting, double waitHours, List<BakeStep> steps) {
    return new Slipped(
        way,
        feed,
        nowHour,
        shapedHour,
        intoColdHour,
        preheatedHour,
        bakedHour,
        folds,
        waiting,
        waitHours,
        ovenHour,
        steps);
  }

  private static OptionalDouble hour(
      List<BakeStep> steps, BakeStep.Kind kind, OptionalDouble usual) {
    OptionalDouble moved =
        steps.stream()
            .filter(step -> step.kind() == kind)
            .mapToDouble(BakeStep::fromHour)
            .findFirst();
    return moved.isPresent() ? moved : usual;
  }
}
