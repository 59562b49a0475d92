package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.again.RestPlanner;
import doughtide.core.day.again.Slipped;
import doughtide.core.day.again.StagesBegun;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The rest of days of several doughs at the bench from 9:00, of which some are mixed. */
class RestPlansTest {
  private static final RiseForecaster FEW = RiseForecaster.standard().withMembers(8);
  private static final double NOW = 9;
  private static final OptionalDouble NEVER = OptionalDouble.empty();
  private static final double LOAD = 50 / 60.0;

  /** With a ripe starter from the cold. */
  private static BakeDay.Builder day(int oven) {
    return starterless(oven).starterInCold(24);
  }

  private static BakeDay.Builder starterless(int oven) {
    return BakeDay.builder()
        .readyAt(46)
        .bench(new BenchHours(BenchHoursTest.intervals(NOW, 23, 31, 47)))
        .room(TemperatureTrace.steady(Temperature.ofCelsius(23)))
        .starterPercents(List.of(20.0))
        .doughCelsius(List.of(26.0))
        .oven(Oven.usual().withLoaves(oven))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND)
        .forecaster(FEW)
        .plans(1);
  }

  private static Slipped slipped(
      double mixed, double meant, OptionalDouble shaped, OptionalDouble baked, BakeStep... open) {
    return new Slipped(
        BakeRoute.inRoom(20, 26, mixed),
        new FeedChoice(mixed - 5, mixed, FeedRatio.oneTo(1, Share.ofPercent(100)), 4, 6),
        NOW,
        shaped,
        NEVER,
        NEVER,
        baked,
        4,
        ProofKind.ROOM,
        2,
        meant,
        List.of(open));
  }

  private static Slipped switchedOn(Slipped slipped, double hour) {
    return new Slipped(
        slipped.route(),
        slipped.feed(),
        slipped.nowHour(),
        slipped.shapedHour(),
        slipped.intoColdHour(),
        OptionalDouble.of(hour),
        slipped.bakedHour(),
        slipped.folds(),
        slipped.proof(),
        slipped.proofHours(),
        slipped.ovenHour(),
        slipped.open());
  }

  private static RestPlanner.Dough mixed(BakeDay day, Slipped slipped) {
    return new RestPlanner.Dough("", day, Optional.of(slipped), Optional.empty());
  }

  private static RestPlanner.Dough mixed(BakeDay day, double mixed, double meant) {
    return mixed(day, slipped(mixed, meant, NEVER, NEVER));
  }

  private static RestPlanner.Dough unmixed(BakeDay day) {
    return new RestPlanner.Dough("", day, Optional.empty(), Optional.empty());
  }

  private static DayPlan rest(RestPlanner.Dough... doughs) {
    DayPlan rest =
        RestPlanner.plan(List.of(doughs), 1, 0, found -> new InputException("test", "no plan"));
    assertThat(rest.plans()).hasSize(doughs.length);
    DayPlannerTest.checkOven(rest);
    return rest;
  }

  private static double oven(DayPlan rest, int dough) {
    return rest.plans().get(dough).ovenHour();
  }

  /** Each of a day keeps its number, wherever it stands; what is not mixed is mixed from now on. */
  @Test
  void mixedAndUnmixedDoughsKeepTheirPlaces() {
    RestPlanner.Dough mixed = mixed(day(4).build(), 8, 15);
    RestPlanner.Dough small = unmixed(day(4).loaves(1, Mass.ofGrams(500), PieceForm.ROUND).build());
    RestPlanner.Dough other = unmixed(day(4).build());
    DayPlan rest = rest(small, mixed, other);

    DayPlannerTest.checkHands(rest, mixed.day().bench(), 1);
    RandomDaysPropertyTest.checkGrams(rest);
    assertThat(rest.plans().get(0).day().loaves()).isEqualTo(1);
    assertThat(rest.plans().get(1).mixHour()).isEqualTo(8);
    assertThat(rest.plans().get(2).day().loaves()).isEqualTo(2);
    for (int i : new int[] {0, 2}) {
      double mix = rest.plans().get(i).mixHour();
      assertThat(mix).isGreaterThanOrEqualTo(NOW);
      assertThat(hour(rest, i, Kind.MIX)).isCloseTo(mix, within(1e-6));
      assertThat(hour(rest, i, Kind.BAKE)).isCloseTo(oven(rest, i), within(1e-3));
    }
    assertThat(of(rest, 1, Kind.MIX)).isEmpty();
    assertThat(hour(rest, 1, Kind.BAKE)).isCloseTo(oven(rest, 1), within(1e-3));
    assertThat(rest.steps())
        .allMatch(each -> each.doughs().stream().allMatch(number -> number >= 0 && number < 3));
  }

  private static List<BakeStep> of(DayPlan rest, int dough, Kind kind) {
    return rest.steps().stream()
        .filter(each -> each.doughs().contains(dough) && each.step().kind() == kind)
        .map(DayStep::step)
        .toList();
  }

  private static double hour(DayPlan rest, int dough, Kind kind) {
    List<BakeStep> steps = of(rest, dough, kind);
    assertThat(steps).as("%s of %s", kind, dough).hasSize(1);
    return steps.get(0).fromHour();
  }

  /** Whoever was meant for the oven first has it as alone; the other is baked before or after. */
  @Test
  void whatWasToBeBakedFirstGoesFirst() {
    BakeDay day = day(2).build();
    double alone = oven(rest(mixed(day, 8, 15)), 0);
    for (boolean first : new boolean[] {true, false}) {
      RestPlanner.Dough sooner = mixed(day, 8, 15);
      RestPlanner.Dough later = mixed(day, 8.25, 15.25);
      DayPlan rest = first ? rest(sooner, later) : rest(later, sooner);

      assertThat(oven(rest, first ? 0 : 1)).isCloseTo(alone, within(1e-6));
      assertThat(Math.abs(oven(rest, 0) - oven(rest, 1))).isGreaterThanOrEqualTo(LOAD - 1e-3);
    }
  }

  /** It has the oven, though it was meant for later; the other waits until it is out. */
  @Test
  void whatIsInTheOvenGoesFirst() {
    BakeDay day = day(2).build();
    RestPlanner.Dough baked =
        mixed(day, slipped(2, 20, OptionalDouble.of(6.5), OptionalDouble.of(8.8)));
    Slipped shaped = slipped(-1, 9, OptionalDouble.of(4.5), NEVER);
    RestPlanner.Dough ripe = mixed(day, switchedOn(shaped, 8));
    assertThat(oven(rest(ripe), 0)).as("alone").isLessThan(8.8 + LOAD - 0.2);
    DayPlan rest = rest(ripe, baked);

    assertThat(oven(rest, 1)).isEqualTo(8.8);
    assertThat(oven(rest, 0)).isBetween(8.8 + LOAD - 1e-3, 11.0);
    assertThat(of(rest, 0, Kind.PREHEAT)).as("the oven is hot").isEmpty();
  }

  /** Hands that fold one dough do not shape another meanwhile. */
  @Test
  void foldsOfAnotherDoughTakeHands() {
    BakeDay day = day(4).build();
    double shape = hour(rest(mixed(day, 8, 15)), 0, Kind.SHAPE);
    BakeStep fold = new BakeStep(Kind.FOLD, shape + 0.1, shape + 0.2, 1);
    DayPlan rest = rest(mixed(day, 8, 15), mixed(day, slipped(8.5, 20, NEVER, NEVER, fold)));

    DayPlannerTest.checkHands(rest, day.bench(), 1);
    assertThat(of(rest, 1, Kind.FOLD)).hasSize(1);
    assertThat(Math.abs(hour(rest, 0, Kind.SHAPE) - shape)).isPositive();
  }

  @Test
  void whatHasNoWayOnIsNamed() {
    BakeDay gone = day(2).bench(new BenchHours(BenchHoursTest.intervals(NOW, 9.5))).build();
    Slipped dough = slipped(8, 15, NEVER, NEVER);
    assertThatThrownBy(() -> rest(mixed(gone, dough)))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("the hours at the bench leave no time");
    RestPlanner.Dough rye =
        new RestPlanner.Dough("rye", gone, Optional.of(dough), Optional.empty());
    assertThatThrownBy(() -> rest(rye))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("'rye': the hours at the bench leave no time")
        .matches(e -> ((InputException) e).key().equals(RestPlanner.NO_TIME));
  }

  /** Held at 18 °C it would not be risen the same day: it is mixed warmer. */
  @Test
  void whatCannotBeMixedAsMeantIsMixedWarmer() {
    BakeDay day =
        day(2).bulkPlace(BakeDay.BulkPlace.HELD).doughCelsius(List.of(18.0)).readyAt(22).build();
    assertThat(DayPlanner.plan(List.of(day), 1, SearchControl.none()).days()).isEmpty();
    BakePlan warmer = rest(unmixed(day)).plans().get(0);

    assertThat(warmer.draft().route().doughCelsius()).isBetween(26.0, 28.0);
    assertThat(warmer.goodShare()).isGreaterThanOrEqualTo(DayPlanner.LEAST_GOOD_SHARE);
    BakeDay never = day.toBuilder().readyAt(13).build();
    assertThatThrownBy(
            () ->
                RestPlanner.plan(
                    List.of(unmixed(never)),
                    1,
                    0,
                    found -> new InputException("test", "days " + found.days().size())))
        .hasMessage("days 0");
  }

  private static final StagedBuild BUILD = build();

  private static StagedBuild build() {
    BuildStage stage =
        new BuildStage(
            Optional.empty(),
            new FeedRatio(1, 4, 4),
            OptionalDouble.empty(),
            FlourClass.WHITE.flour(),
            Temperature.ofCelsius(26),
            OptionalDouble.of(5));
    return new StagedBuild(Starter.ripe(), List.of(stage, stage), Altitude.SEA_LEVEL);
  }

  private static RestPlanner.Dough staged(double done) {
    BakeDay.Builder day =
        starterless(4)
            .cold(Temperature.ofCelsius(4))
            .dough(DoughFormula.builder().starter(BUILD.ripened()).build())
            .stages(BuildTimes.of(FeedingPlanner.with(FEW).build(BUILD)));
    return new RestPlanner.Dough(
        "", day.build(), Optional.empty(), Optional.of(new StagesBegun(BUILD, List.of(done), NOW)));
  }

  /** The second stage is made once for both, five hours after the first that is done. */
  @Test
  void stagesThatAreBegunGoOnOnceForAll() {
    DayPlan rest = rest(staged(5), staged(5));

    List<DayStep> feeds =
        rest.steps().stream().filter(each -> each.step().kind() == Kind.FEED).toList();
    assertThat(feeds).hasSize(1);
    assertThat(feeds.get(0).doughs()).containsExactly(0, 1);
    assertThat(feeds.get(0).step().fromHour()).isCloseTo(10, within(1e-6));
    assertThat(rest.plans()).allMatch(each -> each.mixHour() > 12);
    DayPlan two = rest(staged(5), staged(5.05));
    assertThat(of(two, 0, Kind.FEED).get(0).fromHour()).isCloseTo(10, within(1e-6));
    assertThat(Math.abs(of(two, 1, Kind.FEED).get(0).fromHour() - 10))
        .as("hands are busy with the other")
        .isBetween(5.0 / 60 - 1e-6, 0.3);
  }
}
