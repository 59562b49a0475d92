package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.BakeStep.Kind;
import doughtide.core.loaf.StrengthPlan;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Two drafts, weighed and replayed apart, without the search that would have found them. */
class PlanWeigherTest {
  private static BakeDay.Builder small(BakeDay.Builder day, double percent, double celsius) {
    return day.starterPercents(List.of(percent)).doughCelsius(List.of(celsius));
  }

  /** Mixed at 7:00, in its basket at 12:25 and in the oven at 15:25. */
  private static final BakeDay HOME = small(Weeks.atHome(), 20, 24).build();

  private static final DayModel AT_HOME = new DayModel(HOME);
  private static final Draft ROOM =
      draft(
          AT_HOME, BakeRoute.inRoom(20, 24, 31), ProofKind.ROOM, 4, 65 / 12.0, 39 + 5 / 12.0, 0.29);

  /** Mixed after a night's work, shaped before the next and baked after it. */
  private static final BakeDay WORK = small(Weeks.nightWorker(), 5, 22).build();

  private static final DayModel AT_WORK = new DayModel(WORK);
  private static final Draft COLD =
      draft(
          AT_WORK,
          BakeRoute.inRoom(5, 22, 7.5),
          ProofKind.COLD,
          3,
          151 / 12.0,
          32 + 1 / 3.0,
          0.617);

  private static Draft draft(
      DayModel model,
      BakeRoute route,
      ProofKind proof,
      int folds,
      double shaped,
      double oven,
      double rise) {
    BakeDay day = model.day();
    return new Draft(
        route,
        new FeedSearch(model, day).best(route.mixHour()).orElseThrow(),
        new StrengthPlan(0, folds, folds, 0.5, StrengthPlan.of(day.dough()).pointsBelowLimit()),
        proof,
        shaped,
        oven,
        rise,
        0.2);
  }

  private static PlanWeigher weigher(DayModel model) {
    return new PlanWeigher(
        model,
        model.day(),
        model.day().forecaster().withMembers(DoughCandidates.MEMBERS).ensemble().members(),
        SearchControl.none());
  }

  private static BakePlan plan(DayModel model, Draft draft) {
    BakePlan.Weighed weighed = weigher(model).weigh(draft);
    return new BakePlan(model.day(), draft, weighed, model.temperature(draft.route()));
  }

  @Test
  void marginsOfALoafInTheRoomHold() {
    BakePlan plan = plan(AT_HOME, ROOM);
    assertThat(plan.margins())
        .extracting(StepMargin::kind)
        .containsExactly(Kind.FEED, Kind.MIX, Kind.SHAPE, Kind.BAKE);
    MarginsTest.check("at home", plan);
  }

  @Test
  void marginsOfALoafInTheColdHold() {
    BakePlan plan = plan(AT_WORK, COLD);
    assertThat(plan.margins())
        .extracting(StepMargin::kind)
        .containsExactly(Kind.FEED, Kind.MIX, Kind.SHAPE, Kind.LOAVES_INTO_COLD, Kind.BAKE);
    MarginsTest.check("night worker", plan);
  }

  /** What ranks a plan is the least of the margins that are told of it. */
  @Test
  void theLeastMarginIsFoundAlone() {
    for (DayModel model : List.of(AT_HOME, AT_WORK)) {
      PlanWeigher.Weighing weighing = weigher(model).weighing(model == AT_HOME ? ROOM : COLD);
      assertThat(weighing.leastMarginHours())
          .isEqualTo(weighing.weighed().marginHours())
          .isPositive();
    }
  }

  /** What is asked quickly agrees with what is counted to the end. */
  @Test
  void aPlanIsGoodWhereAsManyDoughsComeRight() {
    for (DayModel model : List.of(AT_HOME, AT_WORK)) {
      Draft draft = model == AT_HOME ? ROOM : COLD;
      double good = weigher(model).goodShare(draft);
      assertThat(good).isEqualTo(weigher(model).weigh(draft).goodShare());
      assertThat(weigher(model).isGood(draft, good)).isTrue();
      assertThat(weigher(model).isGood(draft, good + 1.0 / DoughCandidates.MEMBERS)).isFalse();
    }
  }

  /** Shaped an hour and a half after mixing and baked an hour later: hardly risen. */
  @Test
  void aPlanThatHardlyEverComesRightHasNoMargins() {
    Draft young =
        new Draft(ROOM.route(), ROOM.feed(), ROOM.strength(), ProofKind.ROOM, 2, 33.5, 0.01, 0.2);
    BakePlan.Weighed weighed = weigher(AT_HOME).weigh(young);
    assertThat(weighed.goodShare()).isLessThan(DayPlanner.LEAST_GOOD_SHARE);
    assertThat(weighed.margins()).isEmpty();
  }
}
