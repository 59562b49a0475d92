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
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.day.ProofKind;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.loaf.LoafLimits;
import doughtide.core.loaf.LoafModel;
import doughtide.core.loaf.LoafScores;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** One dough that was mixed, on a day with somebody at the bench from 16 to 22 and from 6 to 9. */
class RestOfADoughTest {
  private static final double CARRIED = 21.5;

  private static final BenchHours BENCH =
      new BenchHours(
          List.of(new BenchInterval(16, 22), new BenchInterval(30, 33), new BenchInterval(40, 46)));

  private static BakeDay day() {
    return BakeDay.builder()
        .readyAt(43)
        .bench(BENCH)
        .room(TemperatureTrace.steady(Temperature.ofCelsius(23)))
        .cold(Temperature.ofCelsius(4))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND)
        .build();
  }

  /**
   * Twenty per cent of starter, 28 °C; its tub was meant to wait in the cold from 21:30 to 6:00.
   */
  private static Slipped mixed(double mixHour, double nowHour) {
    BakeRoute route =
        new BakeRoute(20, 28, mixHour, OptionalDouble.of(CARRIED), OptionalDouble.of(30));
    return slipped(
        route,
        nowHour,
        OptionalDouble.empty(),
        List.of(carry(Kind.BULK_INTO_COLD, CARRIED), carry(Kind.BULK_OUT_OF_COLD, 30)));
  }

  private static BakeStep carry(Kind kind, double hour) {
    return new BakeStep(kind, hour, hour + 1.0 / 12, 0);
  }

  private static Slipped slipped(
      BakeRoute route, double nowHour, OptionalDouble shaped, List<BakeStep> open) {
    return slipped(route, nowHour, shaped, OptionalDouble.empty(), open);
  }

  private static Slipped slipped(
      BakeRoute route,
      double nowHour,
      OptionalDouble shaped,
      OptionalDouble intoCold,
      List<BakeStep> open) {
    return new Slipped(
        route,
        new FeedChoice(8, 13, FeedRatio.oneTo(1, Share.ofPercent(100)), 4, 6),
        nowHour,
        shaped,
        intoCold,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        4,
        ProofKind.ROOM,
        1,
        31.9,
        open);
  }

  private static DayPlan rest(Slipped dough) {
    return RestPlanner.plan(
        List.of(new RestPlanner.Dough("", day(), Optional.of(dough), Optional.empty())),
        1,
        dough.nowHour(),
        found -> new InputException("no plan"));
  }

  private static OptionalDouble hour(DayPlan day, Kind kind) {
    return day.steps().stream()
        .map(DayStep::step)
        .filter(step -> step.kind() == kind)
        .mapToDouble(BakeStep::fromHour)
        .findFirst();
  }

  /** By 21:30 it would stand far above its shape point, and hardly one in ten come right. */
  @Test
  void aTubThatWasMixedLongBeforeItsHourDoesNotWaitForTheHourOfItsCold() {
    DayPlan rest = rest(mixed(13.5, 16.25));
    BakePlan plan = rest.plans().get(0);

    assertThat(hour(rest, Kind.BULK_INTO_COLD).orElse(hour(rest, Kind.SHAPE).getAsDouble()))
        .isBetween(16.25, CARRIED - 0.9);
    assertThat(plan.goodShare()).isGreaterThan(0.3);
  }

  @Test
  void aTubThatWasMixedAtItsHourGoesIntoTheColdAtItsHour() {
    assertThat(hour(rest(mixed(17, 17.5)), Kind.BULK_INTO_COLD)).hasValue(CARRIED);
  }

  private static final double SHAPED = 19.5;

  private static Slipped shaped(double nowHour, OptionalDouble intoCold) {
    BakeRoute inRoom = BakeRoute.inRoom(20, 26, 14);
    return slipped(inRoom, nowHour, OptionalDouble.of(SHAPED), intoCold, List.of());
  }

  /** In the room it would be far past its best when somebody comes again. */
  @Test
  void aLoafThatIsShapedInTheEveningGoesIntoTheColdThoughItWasMeantToStayInTheRoom() {
    DayPlan rest = rest(shaped(20.5, OptionalDouble.empty()));
    BakePlan plan = rest.plans().get(0);

    assertThat(plan.proofKind()).isEqualTo(ProofKind.COLD);
    assertThat(plan.ovenHour()).isBetween(30.0, 33.0);
    double into = hour(rest, Kind.LOAVES_INTO_COLD).getAsDouble();
    assertThat(into).isBetween(20.5, 22 - 1.0 / 12);
    assertThat(plan.goodShare()).isEqualTo(replayed(plan, into), within(1e-9));
    assertThat(plan.goodShare()).isGreaterThan(replayed(plan, plan.ovenHour()) + 0.1);
  }

  @Test
  void aLoafThatIsInTheColdIsNotCarriedThereAgainAndStoodInTheRoomBefore() {
    BakePlan late = rest(shaped(22.5, OptionalDouble.of(21.5))).plans().get(0);
    BakePlan atOnce = rest(shaped(22.5, OptionalDouble.of(20))).plans().get(0);

    assertThat(late.goodShare()).isEqualTo(replayed(late, 21.5), within(1e-9));
    assertThat(atOnce.goodShare()).isEqualTo(replayed(atOnce, 20), within(1e-9));
    assertThat(late.ovenHour()).isBetween(30.0, 33.0);
  }

  /** Nobody is there until 6:00, when it has stood in the room for ten hours. */
  @Test
  void whereNobodyIsThereToCarryItTheLoafIsNotInTheColdBeforeSomebodyIs() {
    DayPlan rest = rest(shaped(21.95, OptionalDouble.empty()));

    rest.steps().stream()
        .filter(each -> each.step().kind() == Kind.LOAVES_INTO_COLD)
        .forEach(each -> assertThat(each.step().fromHour()).isGreaterThanOrEqualTo(30));
  }

  /** How many of 64 doughs come right, each followed by itself: the room, the cold, the oven. */
  private static double replayed(BakePlan plan, double intoColdHour) {
    double basket = plan.basketHour() - plan.mixHour();
    double oven = plan.ovenHour() - plan.mixHour();
    double room = intoColdHour - plan.mixHour() - basket;
    Proof proof =
        Proof.inColdUntil(Temperature.ofCelsius(4), oven)
            .afterRoom(Temperature.ofCelsius(23), room);
    LoafModel model =
        LoafModel.of(plan.dough(), day().ofItsLoaves(proof), LoafSettings.SEARCH.withMembers(64))
            .folded(plan.strength());
    List<RiseCurve> doughs = day().bulk(BakeRoute.inRoom(20, 26, plan.mixHour()), 64, 48).curves();
    long right =
        IntStream.range(0, doughs.size())
            .filter(
                i -> {
                  PieceCurve loaf =
                      model.run(
                          doughs.get(i),
                          Math.min(basket, doughs.get(i).endHours()),
                          LoafScores.of(i),
                          oven - basket + 1);
                  return LoafLimits.right(day().target()).isGood(loaf, oven);
                })
            .count();
    return (double) right / doughs.size();
  }
}
