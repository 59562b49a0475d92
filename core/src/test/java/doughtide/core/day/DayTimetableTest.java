package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeStep.Kind;
import doughtide.core.dough.Starter;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * Two doughs of two loaves in an oven for four, without folds; each is in its baskets five hours
 * after mixing. A load takes 50 minutes, the oven 45 minutes to be hot.
 */
class DayTimetableTest {
  private static final FeedRatio EQUAL = FeedRatio.oneTo(1, Share.ofPercent(100));
  private static final BakeDay DAY = day(4, -12, 40);
  private static final double LOAD = 50 / 60.0;

  private static BakeDay day(int oven, double... edges) {
    return BakeDay.builder()
        .readyAt(36)
        .bench(new BenchHours(BenchHoursTest.intervals(edges)))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND)
        .oven(Oven.usual().withLoaves(oven))
        .build();
  }

  private static Draft draft(double fed, double mix, double oven) {
    return draft(new FeedChoice(fed, mix, EQUAL, 4, 7), mix, oven);
  }

  private static Draft draft(FeedChoice feed, double mix, double oven) {
    StrengthPlan none = new StrengthPlan(0, 0, 0, 0.5, OptionalDouble.empty());
    return new Draft(BakeRoute.inRoom(20, 24, mix), feed, none, ProofKind.ROOM, 5, oven, 0.5, 0.2);
  }

  private static Optional<DayTimetable> table(BakeDay day, int hands, Taken taken, Draft... all) {
    TreeMap<Integer, Draft> placed = new TreeMap<>();
    for (Draft each : all) {
      placed.put(placed.size(), each);
    }
    return DayTimetable.of(List.of(day, day), placed, hands, taken);
  }

  private static Optional<DayTimetable> table(int hands, Draft... all) {
    return table(DAY, hands, Taken.NOTHING, all);
  }

  /** For example {@code MIX [1] 10:30-10:45 by 0}. */
  private static List<String> told(DayTimetable table) {
    return table.steps().stream()
        .map(
            each ->
                each.step().kind() + " " + each.doughs() + " " + clock(each) + " " + each.person())
        .toList();
  }

  private static String clock(DayStep each) {
    return minutes(each.step().fromHour()) + "-" + minutes(each.step().toHour());
  }

  private static String minutes(double hour) {
    long minutes = Math.round(hour * 60);
    return minutes / 60 + ":" + (minutes % 60 < 10 ? "0" : "") + minutes % 60;
  }

  @Test
  void oneFeedingAndOneLoadServeBothDoughs() {
    DayTimetable table = table(1, draft(5, 10, 17), draft(5, 10.5, 17)).orElseThrow();

    assertThat(told(table))
        .containsExactly(
            "FEED [0, 1] 5:00-5:05 0",
            "MIX [0] 10:00-10:15 0",
            "MIX [1] 10:30-10:45 0",
            "SHAPE [0] 14:30-15:00 0",
            "SHAPE [1] 15:00-15:30 0",
            "PREHEAT [0, 1] 16:15-16:17 0",
            "BAKE [0, 1] 17:00-17:05 0",
            "COOL [0, 1] 17:50-17:55 0",
            "READY [0] 19:20-19:20 -1",
            "READY [1] 19:20-19:20 -1");
    assertThat(table.loads()).singleElement().extracting(OvenLoad::loaves).isEqualTo(4);
    assertThat(table.loads().get(0).portions())
        .containsExactly(new OvenLoad.Portion(0, 1, 2), new OvenLoad.Portion(1, 1, 2));
  }

  @Test
  void feedingsThatDifferAreTwo() {
    FeedChoice other = new FeedChoice(5, 10.5, FeedRatio.oneTo(2, Share.ofPercent(100)), 4, 7);
    Draft second = draft(other, 10.5, 17);

    assertThat(table(1, draft(5, 10, 17), second)).as("both at once").isEmpty();
    assertThat(told(table(2, draft(5, 10, 17), second).orElseThrow()))
        .contains("FEED [0] 5:00-5:05 0", "FEED [1] 5:00-5:05 1");
    assertThat(told(table(1, draft(5, 10, 17), draft(5.1, 10.5, 17)).orElseThrow()))
        .contains("FEED [0] 5:00-5:05 0", "FEED [1] 5:06-5:11 0");
  }

  @Test
  void starterOfAnotherKindIsFedByItself() {
    BakeDay rye =
        DAY.toBuilder()
            .dough(DAY.dough().toBuilder().starter(Starter.ripe(Share.ofPercent(60))).build())
            .build();
    TreeMap<Integer, Draft> placed = new TreeMap<>();
    placed.put(0, draft(5, 10, 17));
    placed.put(1, draft(5, 10.5, 17));

    DayTimetable table = DayTimetable.of(List.of(DAY, rye), placed, 2, Taken.NOTHING).orElseThrow();
    assertThat(told(table)).contains("FEED [0] 5:00-5:05 0", "FEED [1] 5:00-5:05 1");
  }

  @Test
  void theOvenHoldsFourLoavesAndOneLoadAfterAnother() {
    assertThat(table(day(3, -12, 40), 2, Taken.NOTHING, draft(5, 10, 17), draft(5, 10.5, 17)))
        .isEmpty();
    assertThat(table(2, draft(5, 10, 17), draft(5, 10.5, 17.8))).isEmpty();
    assertThat(told(table(1, draft(5, 10, 17), draft(5, 10.5, 17 + LOAD)).orElseThrow()))
        .as("unloaded while the next is loaded")
        .containsSubsequence(
            "PREHEAT [0] 16:15-16:17 0",
            "BAKE [0] 17:00-17:05 0",
            "COOL [0] 17:50-17:50 -1",
            "BAKE [1] 17:50-17:55 0",
            "COOL [1] 18:40-18:45 0")
        .doesNotContain("PREHEAT [1] 17:05-17:07 0");
  }

  /** Out at 17:50: until 18:35 it is hot enough for another load. */
  @Test
  void anOvenThatIsColdIsSwitchedOnAgain() {
    assertThat(told(table(1, draft(5, 10, 17), draft(5, 10.5, 18.58)).orElseThrow()))
        .filteredOn(step -> step.startsWith("PREHEAT"))
        .hasSize(1);
    assertThat(told(table(1, draft(5, 10, 17), draft(5, 10.5, 18.75)).orElseThrow()))
        .contains("PREHEAT [1] 18:00-18:02 0", "COOL [0] 17:50-17:55 0");
  }

  @Test
  void twoDoughsAtOnceNeedTwoPersons() {
    assertThat(table(1, draft(5, 10, 17), draft(5, 10.1, 17))).isEmpty();
    assertThat(told(table(2, draft(5, 10, 17), draft(5, 10.1, 17)).orElseThrow()))
        .contains("MIX [0] 10:00-10:15 0", "MIX [1] 10:06-10:21 1", "SHAPE [1] 14:36-15:06 1");
  }

  /** The second is shaped from 16:00 to 16:30, when the oven should be switched on. */
  @Test
  void theOvenIsSwitchedOnBeforeHandsAreBusy() {
    assertThat(told(table(1, draft(5, 10, 17), draft(5, 11.5, 17)).orElseThrow()))
        .contains("PREHEAT [0, 1] 15:58-16:00 0");
    assertThat(told(table(2, draft(5, 10, 17), draft(5, 11.5, 17)).orElseThrow()))
        .contains("PREHEAT [0, 1] 16:15-16:17 1");
  }

  @Test
  void whereNobodyCanSwitchItOnThereIsNoDay() {
    assertThat(table(day(4, 16.2, 40), 1, Taken.NOTHING, draft(5, 10, 17))).isPresent();
    assertThat(table(day(4, 16.27, 40), 1, Taken.NOTHING, draft(5, 10, 17))).isEmpty();
    Taken busy = Taken.NOTHING.with(List.of(new BakeStep(Kind.SHAPE, 15, 16.9, 0)));
    assertThat(table(DAY, 1, busy, draft(5, 9.5, 17))).as("not more than an hour sooner").isEmpty();
    assertThat(table(DAY, 2, busy, draft(5, 9.5, 17))).isPresent();
  }

  @Test
  void loavesGoIntoTheHotOvenOfOthers() {
    Taken others = Taken.NOTHING.with(DAY, 17);
    DayTimetable table = table(DAY, 1, others, draft(5, 10, 17)).orElseThrow();

    assertThat(told(table)).noneMatch(step -> step.startsWith("PREHEAT"));
    assertThat(table(DAY, 1, others, draft(5, 10, 17), draft(5, 10.5, 17))).isEmpty();
  }

  @Test
  void oneMoreDoughFitsBesideTheOthersOrNot() {
    assertThat(fitsUnfed(10.5, 17, 1)).isTrue();
    assertThat(fitsUnfed(10.5, 17.5, 1)).as("the oven is full").isFalse();
    assertThat(fitsUnfed(10.1, 17, 1)).as("two are mixed at once").isFalse();
    assertThat(fitsUnfed(10.1, 17, 2)).isTrue();
    assertThat(fitsUnfed(12.45, 17 + LOAD, 1)).as("shaped while the oven is loaded").isFalse();
  }

  private static boolean fitsUnfed(double mix, double oven, int hands) {
    List<BakeDay> doughs = List.of(DAY, DAY);
    TreeMap<Integer, Draft> placed = new TreeMap<>();
    placed.put(0, draft(5, 10, 17));
    BusyHands busy = DayTimetable.busyBesideOven(doughs, placed, Taken.NOTHING);
    List<OvenLoad> loads = DayTimetable.loads(doughs, placed, Taken.NOTHING);
    return DayTimetable.fitsUnfed(DAY, 1, draft(5, mix, oven), loads, busy, hands);
  }

  private static BakePlan plan(Draft draft, double marginHours) {
    StepMargin shape = new StepMargin(Kind.SHAPE, marginHours, StepMargin.Limit.DOUGH);
    StepMargin bake = new StepMargin(Kind.BAKE, 2, StepMargin.Limit.BENCH);
    return new BakePlan(
        DAY,
        draft,
        new BakePlan.Weighed(0.6, TimeWindow.NEVER, List.of(bake, shape)),
        DoughTemperature.steady(Temperature.ofCelsius(24)));
  }

  private static BakeStep step(Kind kind, double from, double to) {
    return new BakeStep(kind, from, to, 0);
  }

  /** What is left is told whether hands are enough or not; whoever is free first takes it. */
  @Test
  void theRestOfADayIsToldAsItIs() {
    List<BakePlan> plans = List.of(plan(draft(5, 10, 17), 1), plan(draft(5, 10.5, 17), 0.5));
    List<BakeStep> own = List.of(step(Kind.SHAPE, 14.5, 15), step(Kind.PREHEAT, 16.25, 16.3));
    List<BakeStep> others = List.of(step(Kind.SHAPE, 14.6, 15.1), step(Kind.PREHEAT, 16, 16.05));

    DayPlan rest = DayPlan.begun(plans, List.of(own, others), 1);
    assertThat(told(new DayTimetable(rest.steps(), rest.loads())))
        .containsExactly(
            "SHAPE [0] 14:30-15:00 0",
            "SHAPE [1] 14:36-15:06 0",
            "PREHEAT [0, 1] 16:00-16:03 0",
            "BAKE [0, 1] 17:00-17:05 0",
            "COOL [0, 1] 17:50-17:55 0");
    assertThat(rest.loosening()).isEmpty();
  }

  @Test
  void whoIsFreeFirstGoesOn() {
    List<BakePlan> plans = List.of(plan(draft(5, 10, 17), 1), plan(draft(5, 10.5, 17 + LOAD), 0.5));
    List<BakeStep> own = List.of(step(Kind.SHAPE, 14, 16), step(Kind.FOLD, 14.6, 14.7));
    List<BakeStep> others = List.of(step(Kind.SHAPE, 14.5, 15), step(Kind.PREHEAT, 16, 16.05));

    DayPlan rest = DayPlan.begun(plans, List.of(own, others), 2);
    assertThat(told(new DayTimetable(rest.steps(), rest.loads())))
        .contains("SHAPE [0] 14:00-16:00 0", "SHAPE [1] 14:30-15:00 1", "FOLD [0] 14:36-14:42 1")
        .as("the second load finds it hot, and of the first nobody switches it on")
        .noneMatch(step -> step.startsWith("PREHEAT"));
  }

  /** 2 × 850 g with 20 % of starter on the flour added; both doughs are fed at once. */
  @Test
  void aDayTellsItsTightestDoughAndFeedsForAll() {
    List<BakePlan> plans = List.of(plan(draft(5, 10, 17), 1), plan(draft(5, 10.5, 17), 0.5));
    DayPlan day = DayPlan.begun(plans, List.of(List.of(), List.of()), 1);

    assertThat(day.tightDough()).isEqualTo(1);
    assertThat(day.marginHours()).isEqualTo(0.5);
    assertThat(plans.get(0).tight().kind()).isEqualTo(Kind.SHAPE);
    FeedAmounts both = day.feedAmounts(new DayStep(step(Kind.FEED, 5, 5.1), List.of(0, 1), 0));
    double one = plans.get(0).ingredients().starterGrams();
    assertThat(both.useGrams()).isCloseTo(2 * one, within(1e-9));
    assertThat(both.keepGrams()).isEqualTo(20);
    assertThat(plans.get(0).feedAmounts().useGrams()).isCloseTo(one, within(1e-9));
  }

  /** One part to ten and ten: 50 g to use are of 2.4 g, too little for a kitchen scale. */
  @Test
  void noStarterIsWeighedBelowFourGrams() {
    FeedRatio much = FeedRatio.oneTo(10, Share.ofPercent(100));
    BakePlan plan = plan(draft(new FeedChoice(5, 10, much, 4, 7), 10, 17), 1);

    assertThat(plan.feedAmounts(50).starterGrams()).isCloseTo(4, within(1e-9));
    assertThat(plan.feedAmounts(50).keepGrams()).isCloseTo(34, within(1e-9));
    assertThat(plan.feedAmounts(500).keepGrams()).isEqualTo(20);
  }

  @Test
  void aPlanTellsItsHours() {
    BakePlan plan = plan(draft(5, 10, 17), 1);

    assertThat(plan.mixHour()).isEqualTo(10);
    assertThat(plan.bulkEndHour()).isEqualTo(14.5);
    assertThat(plan.basketHour()).isEqualTo(15);
    assertThat(plan.proofHours()).isEqualTo(2);
    assertThat(plan.starterPercent()).isEqualTo(20);
    assertThat(plan.doughTemperature().celsius()).isEqualTo(24);
    assertThat(plan.shapeRise().percent()).isEqualTo(50);
    assertThat(plan.goodShare()).isEqualTo(0.6);
    assertThat(plan.ingredients().doughGrams()).isCloseTo(1700, within(1e-9));
    assertThat(new BakePlan.Weighed(0, TimeWindow.NEVER, List.of()).marginHours()).isZero();
    assertThat(new BakePlan.Weighed(0, TimeWindow.NEVER, plan.margins()).margin(Kind.BAKE))
        .isEqualTo(2);
    assertThat(new BakePlan.Weighed(0, TimeWindow.NEVER, plan.margins()).margin(Kind.FEED))
        .isZero();
  }
}
