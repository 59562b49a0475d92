package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.LoafScores;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** When one dough of 24 °C, held there, is shaped for the oven; a target of 80 %. */
class LikelyDoughTest {
  private static final double REST = Proof.USUAL_REST_HOURS;
  private static final double TARGET = 0.8;

  /** One recipe, held at 24 °C, with somebody at the bench all the time. */
  static final BakeDay HELD =
      BakeDay.builder()
          .readyAt(60)
          .bench(new BenchHours(BenchHoursTest.intervals(0, 60)))
          .room(TemperatureTrace.steady(Temperature.ofCelsius(24)))
          .bulkPlace(BakeDay.BulkPlace.HELD)
          .starterPercents(List.of(20.0))
          .doughCelsius(List.of(24.0))
          .cold(Temperature.ofCelsius(4))
          .build();

  private static final BakeDay DAY = HELD.toBuilder().target(new Rise(TARGET)).build();
  private final DayModel model = new DayModel(DAY);
  private static final BakeRoute ROUTE = BakeRoute.inRoom(20, 24, 10);
  private final LikelyDough likely = model.likely(ROUTE);

  private double atOven(double shaped, ProofKind proof, double oven) {
    RiseCurve curve = model.run(ROUTE, model.middle(), 30);
    return model.riseAtOven(
        new DayModel.BulkRun(curve, model.middleScores(), DAY.strength()), 10, shaped, proof, oven);
  }

  /** It goes into its basket half an hour after its jar shows a fifth to one and a half times. */
  @Test
  void itIsFitForShapingBetweenPartsOfTheTarget() {
    assertThat(likely.riseAt(likely.low() - REST)).isCloseTo(0.2 * TARGET, within(0.002));
    assertThat(likely.riseAt(likely.high() - REST)).isCloseTo(1.5 * TARGET, within(0.002));
    assertThat(likely.riseAt(likely.lastFold().orElseThrow()))
        .isCloseTo(FittingFolds.LAST_RISE.fraction(), within(0.002));
    double slope = (likely.riseAt(5.25) - likely.riseAt(4.75)) / 0.5;
    assertThat(likely.risePerHour(5)).isCloseTo(slope, within(1e-9));
    assertThat(likely.risePerHour(0)).as("never nothing").isGreaterThanOrEqualTo(0.01);
    BakeRoute tub = ROUTE.partlyCold(16, 30);
    assertThat(model.likely(tub).low()).isGreaterThanOrEqualTo(20 + REST);
  }

  /** Forty loaves are shaped for hours: the first are begun while the jar shows less. */
  @Test
  void aLongShapingIsBegunEarlier() {
    BakeDay many = DAY.toBuilder().restHours(2).build();
    LikelyDough dough = new DayModel(many).likely(ROUTE);

    assertThat(dough.riseAt(dough.low() - 2)).isCloseTo(0.2 * TARGET / 4, within(0.002));
  }

  @Test
  void shapedForTheColdTheLoafMeetsItsTarget() {
    for (double oven : new double[] {17, 18, 19.4, 22}) {
      double shaped = likely.shapedForCold(oven).orElseThrow();

      assertThat(shaped).isBetween(likely.low(), likely.high());
      assertThat(atOven(shaped, ProofKind.COLD, oven)).isCloseTo(TARGET, within(0.02));
    }
    double here = likely.shapedForCold(17).orElseThrow();
    double next = likely.shapedForCold(18).orElseThrow();
    assertThat(likely.shapedForCold(17.25).orElseThrow())
        .isCloseTo(0.75 * here + 0.25 * next, within(1e-9));
    assertThat(likely.shapedForCold(likely.low() + 1)).isEmpty();
  }

  /** Five hours in the cold at least, and from one evening to the next at most. */
  @Test
  void aNightInTheColdIsNeitherTooShortNorTooLong() {
    int some = 0;
    for (double oven = likely.low() + 1; oven < likely.high() + 27; oven += 0.7) {
      OptionalDouble shaped = likely.shapedForCold(oven);
      some += shaped.isPresent() ? 1 : 0;
      if (shaped.isPresent()) {
        assertThat(oven - shaped.getAsDouble()).isBetween(5 - 1e-6, 24 + 1e-6);
        assertThat(shaped.getAsDouble()).isBetween(likely.low(), likely.high());
      }
    }
    assertThat(some).isGreaterThan(5);
    assertThat(likely.shapedForCold(likely.low() + 4.9)).isEmpty();
    assertThat(likely.shapedForCold(likely.high() + 24.5)).isEmpty();
  }

  /** Of little starter and cool it does not rise far enough in thirty hours. */
  @Test
  void aSlowDoughIsFollowedForThirtyHours() {
    BakeDay cool =
        DAY.toBuilder().starterPercents(List.of(1.0)).doughCelsius(List.of(14.0)).build();
    LikelyDough slow = new DayModel(cool).likely(BakeRoute.inRoom(1, 14, 10));

    assertThat(slow.riseAt(30)).isLessThan(1.5 * TARGET);
    assertThat(slow.high()).isCloseTo(30 - 0.25, within(1e-9));
  }

  @Test
  void shapedForTheRoomTheLoafMeetsItsTarget() {
    for (double proof : new double[] {1.25, 2, 2.5}) {
      double shaped = likely.shapedForRoom(proof).orElseThrow();
      assertThat(atOven(shaped, ProofKind.ROOM, shaped + proof)).isCloseTo(TARGET, within(0.02));
    }
    assertThat(likely.shapedForRoom(12)).as("too far however early").isEmpty();
  }

  /** In a room of one temperature it does not matter when it is mixed. */
  @Test
  void theHourOfMixingMattersWhereTheRoomChanges() {
    assertThat(model.likely(ROUTE.withMixHour(15))).isSameAs(likely);
    assertThat(model.steadyRoom()).isTrue();
    TemperatureTrace rooms =
        TemperatureTrace.steps(
            List.of(
                new TemperatureTrace.Step(0, Temperature.ofCelsius(27)),
                new TemperatureTrace.Step(12, Temperature.ofCelsius(19))));
    DayModel changing =
        new DayModel(DAY.toBuilder().room(rooms).bulkPlace(BakeDay.BulkPlace.ROOM).build());
    assertThat(changing.steadyRoom()).isFalse();
    double early = changing.likely(ROUTE.withMixHour(4)).low();
    double late = changing.likely(ROUTE.withMixHour(13)).low();
    assertThat(early).isLessThan(late - 0.3);
    assertThat(changing.temperature(ROUTE.withMixHour(4)).startCelsius()).isEqualTo(24);
    assertThat(changing.roomFrom(11).celsius(0.5)).isEqualTo(27);
    assertThat(changing.roomFrom(11).celsius(1.5)).isEqualTo(19);
  }

  /** A tub that is carried into the cold at 16:00 and out at 26:00 cools and warms again. */
  @Test
  void aTubInTheColdIsCold() {
    RiseCurve curve = model.run(ROUTE.partlyCold(16, 26), model.middle(), 48);

    assertThat(curve.celsiusAt(5.9))
        .isCloseTo(24 + model.middle().temperatureErrorCelsius(), within(0.01));
    assertThat(curve.celsiusAt(15.9)).isBetween(3.0, 16.0);
    assertThat(curve.celsiusAt(30)).isGreaterThan(20);
    assertThat(curve.endHours()).isEqualTo(48);
    assertThat(model.run(ROUTE, model.middle(), 50).endHours()).isEqualTo(96);
  }

  /** Ten kilograms in a tub at most: of eleven, half in each cools as 5.5 kg does. */
  @Test
  void muchDoughIsKeptInSeveralTubs() {
    assertThat(coreAfterFiveHours(20, 575)).isCloseTo(coreAfterFiveHours(10, 575), within(0.05));
    assertThat(coreAfterFiveHours(10, 575)).isGreaterThan(coreAfterFiveHours(2, 575) + 0.2);
  }

  private static double coreAfterFiveHours(int loaves, double grams) {
    BakeDay day =
        DAY.toBuilder()
            .loaves(loaves, Mass.ofGrams(grams), PieceForm.ROUND)
            .bulkPlace(BakeDay.BulkPlace.ROOM)
            .room(TemperatureTrace.steady(Temperature.ofCelsius(16)))
            .build();
    return new DayModel(day).run(ROUTE, Unknowns.typical(), 48).celsiusAt(5);
  }

  /** Of three doughs that differ in one thing alone, the middle one. */
  @Test
  void theMemberThatStandsForAllIsTheMiddleOne() {
    List<Unknowns> three =
        IntStream.of(2, 0, 1).mapToObj(i -> vigour(0.5 * Math.pow(2, i))).toList();
    assertThat(new LikelyMember(model, ROUTE).of(three, SearchControl.none())).isEqualTo(2);
    List<Unknowns> five =
        IntStream.of(4, 3, 2, 0, 1).mapToObj(i -> vigour(0.5 * Math.pow(1.4, i))).toList();
    assertThat(new LikelyMember(model, ROUTE).of(five, SearchControl.none())).isEqualTo(2);
  }

  private static Unknowns vigour(double vigour) {
    Unknowns usual = Unknowns.typical();
    return new Unknowns(vigour, 1, 0, 1, 0, Unknowns.USUAL_STARTING_AIR, 1, usual.curves());
  }

  private static Draft draft(ProofKind proof, double shaped, double oven) {
    FeedChoice feed = new FeedChoice(4, 10, FeedRatio.oneTo(1, Share.ofPercent(100)), 5, 8);
    return new Draft(ROUTE, feed, DAY.strength(), proof, shaped, 10 + oven, 0.5, 0.1);
  }

  /** A quick point by some members and the printed one are near the forecaster's for all. */
  @Test
  void aDraftIsMovedToItsShapePoint() {
    RiseForecast bulk =
        RiseForecaster.standard()
            .withMembers(DoughCandidates.POINT_MEMBERS)
            .keepingCurves()
            .forecast(DAY.dough(20), model.temperature(ROUTE), 36);
    Draft night = draft(ProofKind.COLD, 4, 20);
    ShapeForecaster.Point point =
        ShapeForecaster.of(bulk, night.proof(DAY)).folded(night.strength()).point();
    double hours = point.hours().likely().orElseThrow();
    Draft printed = model.shapePoint().printed(night);

    assertThat(printed.shapedHours() - REST).isCloseTo(hours, within(0.1));
    assertThat(printed.shapeRise())
        .isCloseTo(point.rise().likely().orElseThrow() / 100, within(0.02));
    assertThat(printed.ovenHour()).isEqualTo(night.ovenHour());
    List<Unknowns> some = RiseForecaster.standard().withMembers(32).ensemble().members();
    Draft quick = model.shapePoint().quickly(night, some);
    assertThat(quick.shapedHours()).isCloseTo(printed.shapedHours(), within(0.5));
    assertThat(quick.shapeRise()).isCloseTo(printed.shapeRise(), within(0.08));
    Draft room = draft(ProofKind.ROOM, 5, 7);
    Draft moved = model.shapePoint().printed(room);
    assertThat(moved.ovenHour() - moved.basketHour())
        .as("as long a proof")
        .isCloseTo(2, within(1e-9));
    assertThat(model.shapePoint().quickly(room, some).shapedHours())
        .isCloseTo(moved.shapedHours(), within(0.5));
  }

  /** A tub that waits in the cold is shaped after it has come out, quickly found and printed. */
  @Test
  void aTubsShapePointLiesAfterTheCold() {
    Draft room = draft(ProofKind.ROOM, 20, 22);
    Draft tub =
        new Draft(
            ROUTE.partlyCold(12, 28),
            room.feed(),
            room.strength(),
            ProofKind.ROOM,
            20.5,
            33,
            0.5,
            0.1);
    List<Unknowns> some = RiseForecaster.standard().withMembers(32).ensemble().members();
    Draft quick = model.shapePoint().quickly(tub, some);
    Draft printed = model.shapePoint().printed(tub);

    assertThat(printed.shapedHours()).isGreaterThan(18 + REST);
    assertThat(quick.shapedHours()).isCloseTo(printed.shapedHours(), within(0.5));
    assertThat(quick.ovenHour() - quick.basketHour()).isCloseTo(2.5, within(1e-9));
  }

  /** By the clock the jar shows what such jars show then. */
  @Test
  void aDraftByTheClockTellsWhatItsJarShows() {
    Draft clock = model.shapePoint().atClock(draft(ProofKind.COLD, 5.5, 20));
    RiseForecast bulk =
        RiseForecaster.standard()
            .withMembers(DoughCandidates.POINT_MEMBERS)
            .forecast(DAY.dough(20), model.temperature(ROUTE), 24);

    assertThat(clock.shapedHours()).isCloseTo(5.5, within(1e-9));
    assertThat(100 * clock.shapeRise()).isCloseTo(bulk.likelyPercentAt(5), within(0.5));
  }

  /** A loaf that is past its target from the start stays where it was drafted. */
  @Test
  void whereThereIsNoPointADraftStays() {
    Draft long18 = draft(ProofKind.ROOM, 5, 23);
    assertThat(model.shapePoint().printed(long18)).isEqualTo(long18);
    assertThat(model.shapePoint().quickly(long18, List.of(model.middle())).shapedHours())
        .isLessThanOrEqualTo(long18.shapedHours());
  }

  @Test
  void theMedianOfAnEvenNumberIsTheMeanOfTheMiddleTwo() {
    assertThat(ShapePoint.median(new double[] {5, 1, 3})).isEqualTo(3);
    assertThat(ShapePoint.median(new double[] {5, 1, 3, 4})).isEqualTo(3.5);
    assertThat(ShapePoint.median(new double[] {2, Double.POSITIVE_INFINITY}))
        .isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(model.middleScores()).isIn(IntStream.range(0, 32).mapToObj(LoafScores::of).toList());
  }
}
