package doughtide.core.day;

import java.util.Comparator;

/**
 * What a plan is worth to a baker, the best first: by its least margin in quarters of an hour, up
 * to two hours; by whole tenths of right doughs; by how old the bread is when it is wanted, in
 * steps of three hours; by how ordinary dough and starter are. All steps are starting values.
 */
final class PlanWorth implements Comparable<PlanWorth> {
  private static final double MARGIN_STEPS_PER_HOUR = 4;
  private static final double MOST_MARGIN_HOURS = 2;
  private static final double FRESH_STEP_HOURS = 3;
  private static final double USUAL_KELVIN = 4; // of the dough over or under the room
  private static final double LEAST_USUAL_PERCENT = 5; // starter of the flour added
  private static final double MOST_USUAL_PERCENT = 25;

  private static final Comparator<PlanWorth> ORDER =
      Comparator.comparingLong(PlanWorth::marginSteps)
          .thenComparingLong(PlanWorth::tenthsRight)
          .reversed()
          .thenComparingLong(PlanWorth::ageSteps)
          .thenComparingInt(PlanWorth::oddities)
          .thenComparing(each -> -each.weighed.marginHours())
          .thenComparing(each -> -each.weighed.goodShare());

  private final BakeDay day;
  private final Draft draft;
  private final BakePlan.Weighed weighed;

  PlanWorth(BakeDay day, Draft draft, BakePlan.Weighed weighed) {
    this.day = day;
    this.draft = draft;
    this.weighed = weighed;
  }

  @Override
  public int compareTo(PlanWorth other) {
    return ORDER.compare(this, other);
  }

  private long marginSteps() {
    double hours = Math.min(weighed.marginHours(), MOST_MARGIN_HOURS);
    return (long) Math.floor(hours * MARGIN_STEPS_PER_HOUR + 1e-9);
  }

  private long tenthsRight() {
    return (long) Math.floor(weighed.goodShare() * 10 + 1e-9);
  }

  private long ageSteps() {
    double ready = draft.ovenHour() + Draft.ovenBusyHours(day) + day.oven().coolHours();
    return (long) Math.floor((day.readyHour() - ready) / FRESH_STEP_HOURS + 1e-9);
  }

  /** A dough much warmer or colder than its room, and very little or very much starter. */
  private int oddities() {
    double room = day.kitchen().celsius(draft.mixHour());
    boolean forced =
        day.bulkPlace() == BakeDay.BulkPlace.KITCHEN
            && Math.abs(draft.route().doughCelsius() - room) > USUAL_KELVIN;
    double percent = draft.route().starterPercent();
    boolean unusual = percent < LEAST_USUAL_PERCENT || percent > MOST_USUAL_PERCENT;
    return (forced ? 1 : 0) + (unusual ? 1 : 0);
  }
}
