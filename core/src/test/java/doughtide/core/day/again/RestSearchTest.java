package doughtide.core.day.again;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeDay;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeRoute;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.ProofKind;
import doughtide.core.day.StepMargin;
import doughtide.core.day.Taken;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** One dough of 20 % and 26 °C that was mixed at 8:00; its loaves were meant for the room. */
class RestSearchTest {
  private static final Temperature ROOM = Temperature.ofCelsius(23);
  private static final OptionalDouble NEVER = OptionalDouble.empty();
  private static final double FIVE_MINUTES = 1.0 / 12;
  private static final BakeRoute ROUTE = BakeRoute.inRoom(20, 26, 8);
  private static final BakeDay DAY = day(22, 7, 22).build();

  private static BakeDay.Builder day(double ready, double... edges) {
    List<BenchInterval> bench =
        IntStream.range(0, edges.length / 2)
            .mapToObj(i -> new BenchInterval(edges[2 * i], edges[2 * i + 1]))
            .toList();
    return BakeDay.builder()
        .readyAt(ready)
        .bench(new BenchHours(bench))
        .room(TemperatureTrace.steady(ROOM))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND);
  }

  /** What has happened, what was meant. */
  private record Dough(
      BakeRoute route,
      double now,
      OptionalDouble shaped,
      OptionalDouble intoCold,
      OptionalDouble preheated,
      OptionalDouble baked,
      ProofKind proof,
      double oven,
      List<BakeStep> open) {
    Dough() {
      this(ROUTE, 9, NEVER, NEVER, NEVER, NEVER, ProofKind.ROOM, 16, List.of());
    }

    Dough mixed(BakeRoute way) {
      return new Dough(way, now, shaped, intoCold, preheated, baked, proof, oven, open);
    }

    Dough at(double hour) {
      return new Dough(route, hour, shaped, intoCold, preheated, baked, proof, oven, open);
    }

    Dough shaped(double hour) {
      OptionalDouble then = OptionalDouble.of(hour);
      return new Dough(route, now, then, intoCold, preheated, baked, proof, oven, open);
    }

    Dough intoCold(double hour) {
      OptionalDouble then = OptionalDouble.of(hour);
      return new Dough(route, now, shaped, then, preheated, baked, proof, oven, open);
    }

    Dough preheated(double hour) {
      OptionalDouble then = OptionalDouble.of(hour);
      return new Dough(route, now, shaped, intoCold, then, baked, proof, oven, open);
    }

    Dough baked(double hour) {
      OptionalDouble then = OptionalDouble.of(hour);
      return new Dough(route, now, shaped, intoCold, preheated, then, proof, oven, open);
    }

    Dough meant(ProofKind place, double hour) {
      return new Dough(route, now, shaped, intoCold, preheated, baked, place, hour, open);
    }

    Dough open(BakeStep... steps) {
      return new Dough(route, now, shaped, intoCold, preheated, baked, proof, oven, List.of(steps));
    }

    Slipped slipped() {
      FeedChoice feed = new FeedChoice(3, 8, FeedRatio.oneTo(1, Share.ofPercent(100)), 4, 6);
      return new Slipped(
          route, feed, now, shaped, intoCold, preheated, baked, 4, proof, 2, oven, open);
    }

    RestSearch in(BakeDay day) {
      return new RestSearch(day, slipped(), 1);
    }
  }

  private static RestSearch.Way best(RestSearch search) {
    return search.bestIfAny().orElseThrow();
  }

  private static Optional<BakeStep> step(RestSearch.Way way, Kind kind) {
    return way.steps().stream().filter(each -> each.kind() == kind).findFirst();
  }

  private static double point(BakeDay day, Proof proof) {
    return 8
        + ShapeForecaster.of(day.bulk(ROUTE, 64, 48), day.ofItsLoaves(proof))
            .folded(new Dough().slipped().folds(day.strength()))
            .point()
            .hours()
            .likely()
            .orElseThrow();
  }

  /** At the bench all day it is shaped within five minutes of its point. */
  @Test
  void itIsShapedAtItsPoint() {
    double point = point(DAY, Proof.inRoom(ROOM, 2));
    RestSearch.Way way = best(new Dough().in(DAY));

    assertThat(way.place()).isEqualTo(LoafPlace.fromBench(ProofKind.ROOM));
    assertThat(way.shapeHour()).isCloseTo(point, within(FIVE_MINUTES + 0.02));
    assertThat(step(way, Kind.SHAPE).orElseThrow().fromHour())
        .isCloseTo(way.shapeHour(), within(1e-9));
    checkOven(DAY, new Dough(), way);
  }

  /** Past its point it is shaped now, or when somebody is next there with free hands. */
  @Test
  void pastItsPointItIsShapedAtOnce() {
    double point = point(DAY, Proof.inRoom(ROOM, 2));
    double now = Math.ceil(point * 12) / 12 + 0.5;
    Dough late = new Dough().at(now);
    assertThat(best(late.in(DAY)).shapeHour()).isCloseTo(now, within(1e-6));
    Taken hands = Taken.NOTHING.with(List.of(new BakeStep(Kind.FOLD, now - 0.1, now + 0.4, 1)));
    RestSearch.Way beside = best(late.in(DAY).beside(hands));
    assertThat(beside.shapeHour()).isBetween(now + 0.4 - 1e-6, now + 0.4 + FIVE_MINUTES);
  }

  /** Nobody is there at its point: last thing before, or first thing after. */
  @Test
  void awayFromTheBenchItIsShapedBeforeOrAfter() {
    double point = point(DAY, Proof.inRoom(ROOM, 2));
    double gone = Math.floor(point * 12) / 12 + DAY.restHours() - 0.25;
    BakeDay away = day(22, 7, gone, gone + 1.5, 22).build();
    RestSearch.Way way = best(new Dough().in(away));

    double before = gone - away.restHours();
    double after = gone + 1.5;
    assertThat(Math.min(Math.abs(way.shapeHour() - before), Math.abs(way.shapeHour() - after)))
        .isLessThan(FIVE_MINUTES);
    checkOven(away, new Dough(), way);
    BakeDay none = day(22, 7, 8.5, gone + 1.5, 22).build();
    assertThat(best(new Dough().in(none)).shapeHour())
        .as("nobody is there before")
        .isBetween(after - 1e-6, after + FIVE_MINUTES);
  }

  /**
   * Nearly as many loaves come right as at any hour at which they can be baked, and at no hour that
   * is nearer to the one that was meant.
   */
  private static void checkOven(BakeDay day, Dough dough, RestSearch.Way way) {
    double basket = way.shapeHour() + day.restHours();
    List<Double> possible = new ArrayList<>();
    for (int i = (int) Math.ceil(12 * (basket + 0.25) - 1e-6); i < 12 * (basket + 24); i++) {
      double oven = i / 12.0;
      boolean fits =
          day.stepsAfterBulk(way.place().kind(), basket, oven)
              .filter(
                  steps ->
                      steps.stream()
                          .filter(step -> step.kind().handsOn())
                          .allMatch(
                              step ->
                                  step.fromHour() >= dough.now() - 1e-6
                                      && day.bench().contains(step.fromHour(), step.toHour())))
              .isPresent();
      if (fits) {
        possible.add(oven);
      }
    }
    double most = possible.stream().mapToDouble(oven -> share(way, oven)).max().orElseThrow();
    double off = Math.abs(way.ovenHour() - dough.oven());

    assertThat(possible).anyMatch(oven -> Math.abs(oven - way.ovenHour()) < 1e-6);
    assertThat(way.goodShare()).isGreaterThanOrEqualTo(most - 0.05);
    assertThat(possible)
        .filteredOn(oven -> Math.abs(oven - dough.oven()) < off - 1e-6)
        .allMatch(oven -> share(way, oven) < most - 0.05);
    assertThat(most).isPositive();
  }

  /** Of a way that is baked at another hour. */
  private static double share(RestSearch.Way way, double oven) {
    return new RestSearch.Way(
            way.shapeHour(), way.overdue(), way.place(), oven, way.loaves(), way.steps())
        .goodShare();
  }

  @Test
  void itIsBakedNearTheHourThatWasMeant() {
    for (double meant : new double[] {13.5, 14.75, 15.25, 20}) {
      Dough dough = new Dough().meant(ProofKind.ROOM, meant);
      checkOven(DAY, dough, best(dough.in(DAY)));
    }
    BakeDay cold = day(36, 7, 22, 30, 36).cold(Temperature.ofCelsius(4)).build();
    for (double meant : new double[] {30.75, 32, 35}) {
      Dough dough = new Dough().meant(ProofKind.COLD, meant);
      checkOven(cold, dough, best(dough.in(cold)));
    }
  }

  /** In the cold, too, if more come right so; the carrying takes hands. */
  @Test
  void wasMeantForTheRoomAndGoesIntoTheCold() {
    BakeDay evening = day(36, 7, 13.5, 30, 36).cold(Temperature.ofCelsius(4)).build();
    RestSearch.Way way = best(new Dough().in(evening));

    assertThat(way.place()).isEqualTo(LoafPlace.fromBench(ProofKind.COLD));
    BakeStep into = step(way, Kind.LOAVES_INTO_COLD).orElseThrow();
    assertThat(into.fromHour()).isCloseTo(way.shapeHour() + evening.restHours(), within(1e-9));
    assertThat(into.toHour()).isLessThanOrEqualTo(13.5 + 1e-6);
    assertThat(way.ovenHour()).isGreaterThanOrEqualTo(30.0);
    BakeDay warm = day(36, 7, 13.5, 30, 36).build();
    assertThat(way.goodShare()).isGreaterThan(best(new Dough().in(warm)).goodShare() + 0.05);
  }

  /** Every dough is shaped at that hour, and none waits for what the likely jar shows then. */
  @Test
  void aDoughPastItsShapePointIsShapedAtOnce() {
    RestSearch late = new Dough().at(14).in(DAY);
    RestSearch.Way way = best(late);
    BakePlan plan = late.plan(way);
    RestSearch early = new Dough().in(DAY);

    assertThat(way.overdue()).isTrue();
    assertThat(way.shapeHour()).isEqualTo(14);
    assertThat(100 * plan.overdueJar().orElseThrow().fraction())
        .isCloseTo(DAY.bulk(ROUTE, 64, 48).bandAt(6).riseLikelyPercent(), within(1e-6));
    assertThat(plan.shapeRise().fraction()).isLessThan(plan.overdueJar().get().fraction());
    assertThat(best(early).overdue()).isFalse();
    assertThat(early.plan(best(early)).overdueJar()).isEmpty();
    assertThat(best(early).shapeHour()).isBetween(10.0, 14.0);
  }

  /** What is in the oven was shaped when it was, and nothing of it can be moved. */
  @Test
  void loavesInTheOvenAreWhereTheyAre() {
    Dough baked = new Dough().shaped(12.5).baked(15).at(15.25);
    BakeDay gone = day(22, 20, 22).cold(Temperature.ofCelsius(4)).build();
    RestSearch search = baked.in(gone);
    RestSearch.Way way = best(search);

    assertThat(way.shapeHour()).isEqualTo(12.5);
    assertThat(way.ovenHour()).isEqualTo(15);
    assertThat(way.place()).isEqualTo(LoafPlace.fromBench(ProofKind.ROOM));
    BakePlan plan = search.plan(way);
    assertThat(plan.margins()).isEmpty();
    assertThat(plan.basketHour()).isCloseTo(12.5 + gone.restHours(), within(1e-9));
    assertThat(plan.goodShare()).isEqualTo(way.goodShare());
    assertThat(plan.shapeWindow().likely()).hasValue(12.5);
    assertThat(100 * plan.shapeRise().fraction())
        .isCloseTo(gone.bulk(ROUTE, 64, 48).bandAt(4.5).riseLikelyPercent(), within(1e-6));
  }

  /** An oven that was switched on at 29:48, before now, is hot three quarters of an hour later. */
  @Test
  void anOvenThatIsOnIsHotThen() {
    BakeDay day = day(36, 7, 22, 30, 36).cold(Temperature.ofCelsius(4)).build();
    Dough soon = new Dough().shaped(11.5).intoCold(12).at(30).meant(ProofKind.COLD, 30);
    RestSearch.Way off = best(soon.in(day));
    RestSearch.Way on = best(soon.preheated(29.8).in(day));

    assertThat(off.place()).isEqualTo(LoafPlace.fromBench(ProofKind.COLD));
    assertThat(off.ovenHour()).isCloseTo(30.75, within(1e-6));
    assertThat(on.ovenHour()).isCloseTo(30 + 7 * FIVE_MINUTES, within(1e-6));
  }

  /** Beside loaves of another dough the oven is hot, and has no room for others meanwhile. */
  @Test
  void besideAnotherDoughTheOvenIsNotSwitchedOnAgain() {
    Dough dough = new Dough().shaped(12.25).at(13.75).meant(ProofKind.ROOM, 14.5);
    RestSearch.Way alone = best(dough.in(DAY));
    assertThat(step(alone, Kind.PREHEAT)).isPresent();
    Taken others = Taken.NOTHING.with(DAY, 14);
    RestSearch.Way way = best(dough.in(DAY).beside(others));

    double out = 14 + DAY.bakingHours();
    assertThat(step(way, Kind.PREHEAT)).isEmpty();
    assertThat(way.ovenHour()).isBetween(out - 1e-3, out + FIVE_MINUTES + 1e-6);
  }

  private static BakeStep fold(int number, double hour) {
    return new BakeStep(Kind.FOLD, hour, hour + FIVE_MINUTES, number);
  }

  /** Folds until it is shaped, then what is shaped and baked; the other doughs see all of it. */
  @Test
  void aWayTakesHandsAndOven() {
    Dough dough = new Dough().open(fold(1, 9.5), fold(2, 21));
    RestSearch search = dough.in(DAY);
    RestSearch.Way way = best(search);
    List<BakeStep> steps = search.steps(way);

    assertThat(steps).contains(fold(1, 9.5)).doesNotContain(fold(2, 21)).containsAll(way.steps());
    assertThat(steps).hasSize(1 + way.steps().size());
    Taken taken = search.taking(way, Taken.NOTHING);
    BenchHours bench = DAY.bench();
    assertThat(taken.leavesHands(bench, 9.5, 9.6, 1)).isFalse();
    assertThat(taken.leavesHands(bench, 9.5, 9.6, 2)).isTrue();
    assertThat(taken.leavesHands(bench, 21, 21.1, 1)).isTrue();
    assertThat(taken.leavesHands(bench, way.shapeHour() + 0.1, way.shapeHour() + 0.2, 1)).isFalse();
    assertThat(taken.isHotAt(way.ovenHour(), DAY.oven())).isTrue();
    assertThat(taken.leavesRoom(DAY, List.of(), way.ovenHour() + 0.2, 2)).isFalse();
  }

  /** What was shaped before now takes no hands any more. */
  @Test
  void whatIsDoneTakesNoHands() {
    RestSearch search = new Dough().shaped(12.25).at(12.5).in(DAY);
    RestSearch.Way way = best(search);
    Taken taken = search.taking(way, Taken.NOTHING);

    assertThat(way.steps()).anyMatch(each -> each.kind() == Kind.SHAPE && each.fromHour() == 12.25);
    assertThat(taken.leavesHands(DAY.bench(), 12.3, 12.4, 1)).isTrue();
    double preheat = step(way, Kind.PREHEAT).orElseThrow().fromHour();
    assertThat(taken.leavesHands(DAY.bench(), preheat, preheat + 0.01, 1)).isFalse();
  }

  @Test
  void whereThereIsNoWayItIsSaidWhy() {
    RestSearch frozen = new Dough().mixed(BakeRoute.inRoom(20, 26, 8)).in(day(22, 8.9, 9).build());
    assertThat(frozen.bestIfAny()).isEmpty();
    assertThat(frozen.whyNone()).hasMessageContaining("no time to bake the rest");
    assertThat(frozen.whyNone().key()).isEqualTo(RestPlanner.NO_TIME);
  }

  /** Bread is wanted long after: a loaf from the cold may be baked six hours late, no more. */
  @Test
  void noMarginIsLongerThanSixHours() {
    BakeDay cold = day(70, 7, 22, 30, 60).cold(Temperature.ofCelsius(2)).build();
    Dough dough = new Dough().shaped(11).at(12).meant(ProofKind.COLD, 31);
    RestSearch search = dough.in(cold);
    BakePlan plan = search.plan(best(search));

    assertThat(plan.margins()).extracting(StepMargin::kind).containsExactly(Kind.BAKE);
    assertThat(plan.margins().get(0).hours()).isLessThanOrEqualTo(6 + 1e-9);
  }
}
