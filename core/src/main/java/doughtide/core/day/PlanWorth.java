package doughtide.core.day;

import doughtide.core.day.DayAnswer.Choice;
import doughtide.core.day.DayAnswer.Criterion;
import doughtide.core.forecast.TimeWindow;
import java.util.Comparator;
import java.util.List;

/**
 * What a plan is worth to a baker, the best first: what comes right for fewer than one dough in
 * five comes last, however much time it leaves; by its least margin in coarse classes (under a
 * quarter of an hour, up to an hour, more: both of two plans hold well enough within one, and the
 * fresher bread counts; beside other doughs, where each takes room from the others, half an hour
 * parts the middle one), by fifths of right doughs, by whether a third or two thirds of the hours
 * in which the jar may show its mark are hours at the bench (who sleeps meanwhile cannot shape by
 * the jar), then by what a baker would rather not have, counted in hours: bread that lies, steps in
 * the night, a long way from the first step to the bread, and what is not ordinary in dough and
 * starter. Where these are the same to an hour, the longer margin to five minutes comes first. All
 * numbers are starting values.
 */
final class PlanWorth implements Comparable<PlanWorth> {
  private static final double[] STEPS_ALONE_HOURS = {0.25, 1};
  private static final double[] STEPS_BESIDE_OTHERS_HOURS = {0.25, 0.5, 1};
  private static final double SHARE_STEPS = 5;
  private static final double USUAL_KELVIN = 4; // of the dough over or under the room
  private static final double LEAST_USUAL_PERCENT = 5; // starter of the flour added
  private static final double MOST_USUAL_PERCENT = 25;

  private static final double NIGHT_FROM_CLOCK_HOUR = 23;
  private static final double NIGHT_TO_CLOCK_HOUR = 6;
  private static final double NIGHT_STEP_COST_HOURS = 3;
  private static final double ODD_COST_HOURS = 4;
  private static final double USUAL_LENGTH_HOURS = 12;
  private static final double LENGTH_COST_HOURS = 0.15; // for each hour over the usual

  private static final Comparator<PlanWorth> ORDER =
      Comparator.comparing(PlanWorth::isSound)
          .thenComparingLong(PlanWorth::marginSteps)
          .thenComparingLong(PlanWorth::sharesRight)
          .thenComparingLong(PlanWorth::jarSteps)
          .reversed()
          .thenComparingLong(each -> Math.round(each.troubleHours()))
          .thenComparingDouble(each -> -each.marginTold())
          .thenComparingLong(each -> each.alone ? each.troubleFives() : 0)
          .thenComparing(each -> -each.goodShare);

  private final BakeDay day;
  private final Draft draft;
  private final double goodShare;
  private final TimeWindow jar;
  private final double marginHours;
  private final boolean alone;

  /**
   * @param alone whether it is the only dough of its day
   */
  PlanWorth(BakeDay day, Draft draft, BakePlan.Weighed weighed, boolean alone) {
    this(day, draft, weighed.goodShare(), weighed.shape(), weighed.marginHours(), alone);
  }

  /**
   * @param alone whether it is the only dough of its day
   */
  PlanWorth(BakeDay day, Draft draft, PlanWeigher.Weighing weighing, boolean alone) {
    this(day, draft, weighing.goodShare(), weighing.shape(), weighing.leastMarginHours(), alone);
  }

  private PlanWorth(
      BakeDay day,
      Draft draft,
      double goodShare,
      TimeWindow jar,
      double marginHours,
      boolean alone) {
    this.day = day;
    this.draft = draft;
    this.goodShare = goodShare;
    this.jar = jar;
    this.marginHours = marginHours;
    this.alone = alone;
  }

  @Override
  public int compareTo(PlanWorth other) {
    return ORDER.compare(this, other);
  }

  private long marginSteps() {
    long steps = 0;
    for (double hours : alone ? STEPS_ALONE_HOURS : STEPS_BESIDE_OTHERS_HOURS) {
      steps += marginHours >= hours - 1e-9 ? 1 : 0;
    }
    return steps;
  }

  /** As margins are told, in five minutes. */
  private long marginFives() {
    return Math.round(marginHours * 12);
  }

  /** Of a dough alone only what is told tells plans apart. */
  private double marginTold() {
    return alone ? marginFives() : marginHours;
  }

  private long troubleFives() {
    return Math.round(troubleHours() * 12);
  }

  private long sharesRight() {
    return (long) Math.floor(goodShare * SHARE_STEPS + 1e-9);
  }

  private boolean isSound() {
    return sharesRight() > 0 && marginFives() > 0;
  }

  private long jarSteps() {
    return Math.min(2, (long) Math.floor(jarAtBenchShare() * 3 + 1e-9));
  }

  private double jarAtBenchShare() {
    return jarAtBenchShare(day, jar);
  }

  /**
   * Share of the hours in which the jar may show its mark that are hours at the bench with time
   * left to shape; 0 where there is no last hour.
   */
  static double jarAtBenchShare(BakeDay day, TimeWindow jar) {
    double from = jar.early().orElse(0);
    double to = jar.late().orElse(Double.POSITIVE_INFINITY);
    double hours =
        day.bench().intervals().stream()
            .mapToDouble(
                at -> Math.min(to, at.toHour() - day.restHours()) - Math.max(from, at.fromHour()))
            .filter(each -> each > 0)
            .sum();
    return to > from ? hours / (to - from) : day.bench().contains(to, to + day.restHours()) ? 1 : 0;
  }

  private double troubleHours() {
    return troubleHours(day, draft);
  }

  /** What a baker would rather not have, in hours of old bread; 0 or more where it is in time. */
  static double troubleHours(BakeDay day, Draft draft) {
    return Criteria.of(day, draft).troubleHours();
  }

  /** What put this before another that is worth less. */
  Choice over(PlanWorth other) {
    if (isSound() && !other.isSound()) {
      return other.sharesRight() == 0
          ? choice(Criterion.RIGHT, goodShare, other.goodShare)
          : choice(Criterion.MARGIN, marginHours, other.marginHours);
    }
    if (marginSteps() != other.marginSteps()) {
      return choice(Criterion.MARGIN, marginHours, other.marginHours);
    }
    if (sharesRight() != other.sharesRight()) {
      return choice(Criterion.RIGHT, goodShare, other.goodShare);
    }
    if (jarSteps() != other.jarSteps()) {
      return choice(Criterion.JAR, jarAtBenchShare(), other.jarAtBenchShare());
    }
    Criteria own = Criteria.of(day, draft);
    Criteria others = Criteria.of(other.day, other.draft);
    boolean alike = Math.round(own.troubleHours()) == Math.round(others.troubleHours());
    if (alike && marginFives() != other.marginFives()) {
      return choice(Criterion.MARGIN, marginHours, other.marginHours);
    }
    return troubleFives() == other.troubleFives()
        ? choice(Criterion.RIGHT, goodShare, other.goodShare)
        : own.over(others);
  }

  private static Choice choice(Criterion criterion, double own, double other) {
    return new Choice(criterion, own, other);
  }

  /** How old the bread is when it is wanted, hours. */
  static double ageHours(BakeDay day, Draft draft) {
    double busy = Draft.ovenBusyHours(day) + day.oven().coolHours();
    return day.readyHour() - draft.ovenHour() - busy;
  }

  /**
   * What is looked at where margins are alike.
   *
   * @param ageHours of the bread when it is wanted
   * @param nightSteps steps with hands on between 23:00 and 06:00
   * @param lengthHours from the first step to the bread
   * @param oddities of dough and starter
   */
  private record Criteria(double ageHours, int nightSteps, double lengthHours, int oddities) {

    static Criteria of(BakeDay day, Draft draft) {
      List<BakeStep> steps = draft.steps(day);
      double length = steps.get(steps.size() - 1).toHour() - steps.get(0).fromHour();
      long night = steps.stream().filter(Criteria::isInTheNight).count();
      return new Criteria(PlanWorth.ageHours(day, draft), (int) night, length, odd(day, draft));
    }

    private static boolean isInTheNight(BakeStep step) {
      double clock = (step.fromHour() % 24 + 24) % 24;
      boolean night = clock < NIGHT_TO_CLOCK_HOUR - 1e-6 || clock > NIGHT_FROM_CLOCK_HOUR + 1e-6;
      return step.kind().handsOn() && night;
    }

    /**
     * A dough much warmer or colder than its room, very little or very much starter, and a starter
     * that was fed with very little of the old one.
     */
    private static int odd(BakeDay day, Draft draft) {
      double room = day.room().celsius(draft.mixHour());
      boolean forced =
          day.bulkPlace() == BakeDay.BulkPlace.ROOM
              && Math.abs(draft.route().doughCelsius() - room) > USUAL_KELVIN;
      double percent = draft.route().starterPercent();
      boolean unusual = percent < LEAST_USUAL_PERCENT || percent > MOST_USUAL_PERCENT;
      boolean thin = draft.feed().ratio().flourPerStarter() > FeedSearch.MOST_USUAL_PARTS;
      return (forced ? 1 : 0) + (unusual ? 1 : 0) + (thin ? 1 : 0);
    }

    private double lengthCost() {
      return LENGTH_COST_HOURS * Math.max(0, lengthHours - USUAL_LENGTH_HOURS);
    }

    double troubleHours() {
      return ageHours
          + NIGHT_STEP_COST_HOURS * nightSteps
          + lengthCost()
          + ODD_COST_HOURS * oddities;
    }

    /** The largest part of the difference. */
    Choice over(Criteria other) {
      double fresh = other.ageHours - ageHours;
      double night = NIGHT_STEP_COST_HOURS * (other.nightSteps - nightSteps);
      double length = other.lengthCost() - lengthCost();
      double ordinary = ODD_COST_HOURS * (other.oddities - oddities);
      double most = Math.max(Math.max(fresh, night), Math.max(length, ordinary));
      if (most == fresh) {
        return choice(Criterion.FRESH, ageHours, other.ageHours);
      }
      if (most == night) {
        return choice(Criterion.NIGHT, nightSteps, other.nightSteps);
      }
      return most == length
          ? choice(Criterion.LENGTH, lengthHours, other.lengthHours)
          : choice(Criterion.ORDINARY, oddities, other.oddities);
    }
  }
}
