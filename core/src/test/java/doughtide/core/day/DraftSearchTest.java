package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Drafts of one dough, of 20 % starter and 24 °C, at the bench from 7 to 22 and from 31 to 47. */
class DraftSearchTest {
  private static final BenchHours BENCH = new BenchHours(BenchHoursTest.intervals(7, 22, 31, 47));
  private static final BakeDay DAY =
      BakeDay.builder()
          .readyAt(46)
          .bench(BENCH)
          .room(TemperatureTrace.steady(Temperature.ofCelsius(24)))
          .starterPercents(List.of(20.0))
          .doughCelsius(List.of(24.0))
          .starterInCold(24)
          .cold(Temperature.ofCelsius(4))
          .loaves(2, Mass.ofGrams(850), PieceForm.ROUND)
          .target(new Rise(0.8))
          .build();
  private final DayModel model = new DayModel(DAY);
  private final DraftSearch search = new DraftSearch(model, DAY);
  private final DraftSearch.Found found = search.search(1, SearchControl.none());
  private static final FeedRatio EQUAL = FeedRatio.oneTo(1, Share.ofPercent(100));
  private static final StrengthPlan TWO_FOLDS =
      new StrengthPlan(0, 2, 2, 0.5, OptionalDouble.empty());

  private List<Draft> fitting() {
    return found.fitting().stream().map(DraftSearch.Scored::draft).toList();
  }

  /** Mixed at 10:00, in its baskets at 15:00, baked at a given hour. */
  private static Draft draft(ProofKind proof, double oven) {
    FeedChoice feed = new FeedChoice(5, 10, EQUAL, 4, 6);
    return new Draft(BakeRoute.inRoom(20, 24, 10), feed, TWO_FOLDS, proof, 5, oven, 0.5, 0.25);
  }

  @Test
  void fittingDraftsKeepTheBenchAndTheHourOfTheBread() {
    assertThat(found.fitting()).hasSizeGreaterThan(20);
    for (Draft draft : fitting()) {
      List<BakeStep> steps = draft.steps(DAY);
      assertThat(steps)
          .filteredOn(each -> each.kind().handsOn())
          .allMatch(each -> BENCH.contains(each.fromHour(), each.toHour()));
      double ready = steps.get(steps.size() - 1).toHour();
      assertThat(ready).isBetween(DAY.readyHour() - 12 - 1e-6, DAY.readyHour() + 1e-6);
      assertThat(Draft.overlap(steps)).isFalse();
    }
    assertThat(found.fitting())
        .isSortedAccordingTo(Comparator.comparingDouble(DraftSearch.Scored::score).reversed());
    assertThat(found.near()).isNotEmpty().allMatch(each -> each.hours() > 0 && each.hours() <= 3);
    assertThat(found.near())
        .isSortedAccordingTo(Comparator.comparingDouble(DraftSearch.Miss::hours));
  }

  /** At full hours of the bench; the mixing itself and 2.5 h of rising must be possible after. */
  @Test
  void mixedAtTheHoursOfTheBench() {
    List<Double> hours = new ArrayList<>();
    for (int hour = 7; hour <= 21; hour++) {
      hours.add((double) hour);
    }
    double last = DAY.readyHour() - DAY.oven().coolHours() - Draft.ovenBusyHours(DAY) - 2.5;
    for (int hour = 31; hour <= last; hour++) {
      hours.add((double) hour);
    }
    assertThat(found.fed()).isEqualTo(hours.size());
    assertThat(fitting()).allMatch(each -> hours.contains(each.mixHour()));
    BakeDay late = DAY.toBuilder().readyAt(70).bench(BENCH).build();
    assertThat(new DraftSearch(model, late).search(1, SearchControl.none()).fed())
        .as("no more than 56 hours before")
        .isEqualTo(8 + 16);
    assertThat(search.search(0.5, SearchControl.none()).fed()).isGreaterThan(found.fed() + 14);
  }

  @Test
  void loavesWaitInTheColdOrInTheRoom() {
    assertThat(fitting()).anyMatch(each -> each.proof() == ProofKind.COLD);
    assertThat(fitting()).anyMatch(each -> each.proof() == ProofKind.ROOM);
    for (Draft draft : fitting()) {
      double proof = draft.ovenHour() - draft.basketHour();
      if (draft.proof() == ProofKind.COLD) {
        assertThat(proof).isBetween(5 - 0.1, 24 + 0.1);
      } else {
        assertThat(List.of(1.0, 1.5, 2.0, 3.0, 4.0))
            .anyMatch(each -> Math.abs(proof - each) < 1e-6);
      }
      double fives = draft.basketHour() * 12;
      assertThat(fives).isCloseTo(Math.rint(fives), within(1e-6));
      LikelyDough likely = model.likely(draft.route());
      assertThat(draft.shapeRise())
          .isCloseTo(likely.riseAt(draft.shapedHours() - DAY.restHours()), within(1e-9));
    }
    BakeDay warm = BakeDay.builder().readyAt(46).bench(BENCH).starterInCold(24).build();
    assertThat(new DraftSearch(new DayModel(warm), warm).search(2, SearchControl.none()).fitting())
        .allMatch(each -> each.draft().proof() == ProofKind.ROOM);
  }

  /**
   * The tub goes in after 1.5, 3 or 4.5 hours, or last thing before a night, out in the morning.
   */
  @Test
  void aTubMayWaitInTheColdUntilTheBakerIsBack() {
    List<Draft> tubs =
        fitting().stream().filter(each -> each.route().coldFrom().isPresent()).toList();
    assertThat(tubs).isNotEmpty();
    for (Draft draft : tubs) {
      double from = draft.route().coldFrom().orElseThrow();
      double after = from - draft.mixHour();
      boolean atLast = Math.abs(from - (22 - HandsOnTime.CARRY_HOURS)) < 1e-9 && after > 1.5;
      assertThat(after == 1.5 || after == 3 || after == 4.5 || atLast).isTrue();
      assertThat(draft.route().coldTo()).hasValue(31);
      assertThat(31 - from).isBetween(5.0, 20.0);
    }
    assertThat(tubs).anyMatch(each -> each.route().coldFrom().orElseThrow() - each.mixHour() == 3);
    assertThat(tubs)
        .as("nine hours later the baker is back: no long absence")
        .noneMatch(each -> each.route().coldFrom().orElseThrow() == 22 - HandsOnTime.CARRY_HOURS);
    BakeDay evening = DAY.toBuilder().bench(bench(7, 16.3, 31, 47)).build();
    assertThat(new DraftSearch(model, evening).search(1, SearchControl.none()).fitting())
        .as("last thing before a long absence")
        .anyMatch(
            each ->
                each.draft().route().coldFrom().stream()
                    .anyMatch(hour -> hour == 16.3 - HandsOnTime.CARRY_HOURS));
    BakeDay little = DAY.toBuilder().starterPercents(List.of(6.0)).build();
    assertThat(new DraftSearch(model, little).search(1, SearchControl.none()).fitting())
        .allMatch(each -> each.draft().route().coldFrom().isEmpty());
    BakeDay cool = DAY.toBuilder().doughCelsius(List.of(22.0)).build();
    assertThat(new DraftSearch(model, cool).search(1, SearchControl.none()).fitting())
        .allMatch(each -> each.draft().route().coldFrom().isEmpty());
  }

  /** Hours outside the bench are added up; bread too late and too old as well. */
  @Test
  void whatMissesTheDayIsCountedInHours() {
    Draft draft = draft(ProofKind.ROOM, 33);
    double ready = draft.steps(DAY).get(draft.steps(DAY).size() - 1).toHour();
    assertThat(search.miss(draft)).isZero();
    assertThat(missOn(DAY.toBuilder().readyAt(ready - 0.75).build(), draft))
        .isCloseTo(0.75, within(1e-9));
    assertThat(missOn(DAY.toBuilder().readyAt(ready + 12.5).build(), draft))
        .isCloseTo(0.5, within(1e-9));
    BenchHours later = new BenchHours(BenchHoursTest.intervals(10.2, 22, 31, 47));
    assertThat(missOn(DAY.toBuilder().bench(later).build(), draft)).isCloseTo(0.2, within(1e-9));
    BenchHours shorter = new BenchHours(BenchHoursTest.intervals(7, 14.9, 31, 47));
    assertThat(missOn(DAY.toBuilder().bench(shorter).build(), draft)).isCloseTo(0.1, within(1e-9));
    Draft early = new Draft(draft.route(), draft.feed(), TWO_FOLDS, ProofKind.ROOM, 0.7, 33, 0, 1);
    assertThat(search.miss(early)).as("shaped before it is folded").isGreaterThanOrEqualTo(6);
  }

  private double missOn(BakeDay day, Draft draft) {
    return new DraftSearch(model, day).miss(draft);
  }

  /**
   * The rough margin is the least of the room that its steps have, and a little for a slow dough:
   * at the bench after its baskets less its spread, before them, its pace, and half its starter's.
   */
  @Test
  void theRoughMarginIsTheLeastRoomOfAStep() {
    Draft draft = draft(ProofKind.ROOM, 33);
    double slow = 0.02 * pace(0.25);
    assertThat(margin(DAY, draft))
        .as("half an hour of the starter")
        .isCloseTo(0.5 + slow, within(1e-9));
    FeedChoice roomy = new FeedChoice(0, 10, EQUAL, 4, 16);
    Draft unfed = draft.withFeed(roomy);
    assertThat(margin(DAY, unfed)).as("the pace").isCloseTo(pace(0.25) + slow, within(1e-9));
    Draft slowly = new Draft(unfed.route(), roomy, TWO_FOLDS, ProofKind.ROOM, 5, 33, 0.5, 0.05);
    double spread = 0.16 * 5;
    double late = 22 - 15 - spread;
    double early = 14.5 - 7 - spread + 0.5 * spread + 1;
    double least = Math.min(Math.min(3, late), Math.min(early, pace(0.05)));
    assertThat(margin(DAY, slowly)).isCloseTo(least + 0.02 * pace(0.05), within(1e-9));
    BakeDay untilFour = DAY.toBuilder().bench(bench(7, 16, 31, 47)).build();
    assertThat(margin(untilFour, slowly)).isCloseTo(0.2 + 0.02 * pace(0.05), within(1e-9));
    BakeDay fromNine = DAY.toBuilder().bench(bench(9.95, 22, 31, 47)).build();
    assertThat(margin(fromNine, slowly))
        .isCloseTo(Math.min(3, 14.5 - 9.95 - spread / 2 + 1) + 0.02 * pace(0.05), within(1e-9));
    BakeDay mixing = DAY.toBuilder().bench(bench(7, 10.4, 12, 22, 31, 47)).build();
    Draft unfolded =
        new Draft(
            unfed.route(),
            roomy,
            new StrengthPlan(0, 0, 0, 0.5, OptionalDouble.empty()),
            ProofKind.ROOM,
            5,
            33,
            0.5,
            0.05);
    double mix = 10.4 - 10 - DAY.mixHours();
    assertThat(margin(mixing, unfolded)).isCloseTo(mix + 0.02 * pace(0.05), within(1e-9));
    double unloaded = 33 + Draft.ovenBusyHours(DAY) + HandsOnTime.UNLOAD_HOURS;
    BakeDay baking = DAY.toBuilder().bench(bench(7, 22, 31, unloaded + 0.1)).build();
    assertThat(margin(baking, slowly)).isCloseTo(0.6 + 0.02 * pace(0.05), within(1e-9));
  }

  private static BenchHours bench(double... edges) {
    return new BenchHours(BenchHoursTest.intervals(edges));
  }

  private static double pace(double risePerHour) {
    return 0.25 * 0.8 / risePerHour;
  }

  private DraftSearch.Scored scored(BakeDay day, Draft draft) {
    return new DraftSearch(model, day).fitting(List.of(draft)).get(0);
  }

  private double margin(BakeDay day, Draft draft) {
    return scored(day, draft).margin();
  }

  /** Over an hour and a half a margin counts a fifth; trouble costs. */
  @Test
  void aLongMarginCountsLess() {
    FeedChoice roomy = new FeedChoice(0, 10, EQUAL, 4, 16);
    Draft slowly =
        new Draft(BakeRoute.inRoom(20, 24, 10), roomy, TWO_FOLDS, ProofKind.ROOM, 5, 33, 0.5, 0.05);
    for (Draft draft : List.of(slowly, draft(ProofKind.ROOM, 33))) {
      DraftSearch.Scored scored = scored(DAY, draft);
      double counted = Math.min(scored.margin(), 1.5) + 0.2 * Math.max(0, scored.margin() - 1.5);
      assertThat(scored.score())
          .isCloseTo(counted - 0.06 * PlanWorth.troubleHours(DAY, draft), within(1e-9));
    }
  }

  /** A stopped search gives what it has: nothing. */
  @Test
  void aStoppedSearchDraftsNothing() {
    List<Double> told = new ArrayList<>();
    DraftSearch.Found none =
        search.search(2, SearchControl.none().stoppingWhen(() -> true).withProgress(told::add));
    assertThat(none.fitting()).isEmpty();
    assertThat(told).isNotEmpty().last().isEqualTo(1.0);
  }

  /** The ways on from one mixing: of the last none that would be too late for the bread. */
  @Test
  void aMixingGoesOnInEveryWayThatIsInTime() {
    FeedChoice feed = new FeedChoice(5, 10, EQUAL, 4, 6);
    List<Draft> ways = search.drafts(BakeRoute.inRoom(20, 24, 10), feed);

    assertThat(ways).allMatch(each -> each.feed().equals(feed) && each.mixHour() == 10);
    long room = ways.stream().filter(each -> each.proof() == ProofKind.ROOM).count();
    assertThat(room).isBetween(2L, 5L);
    assertThat(ways.size() - room).isPositive();
    double last = DAY.readyHour() - DAY.oven().coolHours() - Draft.ovenBusyHours(DAY);
    List<Draft> all = search.drafts(BakeRoute.inRoom(20, 24, 32), feed);
    List<Draft> late = search.drafts(BakeRoute.inRoom(20, 24, 32.5), feed);
    assertThat(all).allMatch(each -> each.proof() == ProofKind.ROOM && each.ovenHour() < last);
    long inTime = all.stream().filter(each -> each.ovenHour() + 0.5 < last - 0.1).count();
    assertThat(late).hasSizeBetween((int) inTime, all.size() - 1);
    assertThat(search.drafts(BakeRoute.inRoom(20, 24, 50), feed))
        .as("nobody is there to shape")
        .isEmpty();
  }

  /** A dough of 23 °C with 7 % of starter may stand in the cold; a little less of either not. */
  @Test
  void aTubInTheColdIsWarmEnoughAndHasEnoughStarter() {
    assertThat(tubs(7, 23)).isPositive();
    assertThat(tubs(6.9, 23)).isZero();
    assertThat(tubs(7, 22.9)).isZero();
  }

  private long tubs(double percent, double celsius) {
    BakeDay day =
        DAY.toBuilder().starterPercents(List.of(percent)).doughCelsius(List.of(celsius)).build();
    DraftSearch.Found all = new DraftSearch(model, day).search(3, SearchControl.none());
    return Stream.concat(
            all.fitting().stream().map(DraftSearch.Scored::draft),
            all.near().stream().map(DraftSearch.Miss::draft))
        .filter(each -> each.route().coldFrom().isPresent())
        .count();
  }

  /** Every half hour from the first at the bench on, within 56 hours before the bread. */
  @Test
  void mixedAtHalfHours() {
    DraftSearch.Found halves = search.search(0.5, SearchControl.none());
    assertThat(halves.fitting())
        .extracting(each -> each.draft().mixHour())
        .allMatch(hour -> hour * 2 == Math.rint(hour * 2))
        .anyMatch(hour -> hour != Math.rint(hour));
    double last = DAY.readyHour() - DAY.oven().coolHours() - Draft.ovenBusyHours(DAY) - 2.5;
    long first = Math.round((22 - DAY.mixHours() - 7 - 0.01) * 2 - 0.5) + 1;
    assertThat(halves.fed()).isEqualTo(first + (long) Math.floor((last - 31) * 2) + 1);
  }

  /** A starter that is fed once an evening is ripe for some hours of mixing alone. */
  @Test
  void hoursAtWhichNoStarterIsRipeAreNotCounted() {
    BakeDay fed =
        BakeDay.builder()
            .readyAt(46)
            .bench(bench(7, 8, 20, 21, 31, 47))
            .room(TemperatureTrace.steady(Temperature.ofCelsius(24)))
            .starterPercents(List.of(20.0))
            .doughCelsius(List.of(24.0))
            .build();
    DraftSearch own = new DraftSearch(new DayModel(fed), fed);
    long hours =
        IntStream.rangeClosed(31, 41).filter(hour -> own.feeds().best(hour).isPresent()).count()
            + IntStream.of(7, 20).filter(hour -> own.feeds().best(hour).isPresent()).count();
    assertThat(own.search(1, SearchControl.none()).fed())
        .isBetween(hours - 1, hours)
        .isLessThan(13);
  }
}
