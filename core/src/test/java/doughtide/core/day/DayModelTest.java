package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Starter;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.LoafScores;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Runs of one dough of 24 °C whose room changes from 28 to 18 °C at 16:00. */
class DayModelTest {
  private static final BakeRoute ROUTE = BakeRoute.inRoom(20, 24, 10);
  private static final BakeDay DAY = day().build();
  private final DayModel model = new DayModel(DAY);

  private static BakeDay.Builder day() {
    return BakeDay.builder()
        .readyAt(60)
        .bench(new BenchHours(BenchHoursTest.intervals(0, 60)))
        .room(
            TemperatureTrace.steps(
                List.of(
                    new TemperatureTrace.Step(0, Temperature.ofCelsius(28)),
                    new TemperatureTrace.Step(16, Temperature.ofCelsius(18)))))
        .bulkPlace(BakeDay.BulkPlace.HELD)
        .starterPercents(List.of(20.0))
        .doughCelsius(List.of(24.0))
        .cold(Temperature.ofCelsius(4))
        .forecaster(RiseForecaster.standard().withMembers(8));
  }

  private DayModel.BulkRun bulk() {
    RiseCurve curve = model.run(ROUTE, Unknowns.typical(), 48);
    return new DayModel.BulkRun(curve, LoafScores.of(0), DAY.strength());
  }

  /** What stands in the room follows it; what is held does not. */
  @Test
  void aTubInTheRoomLosesItsDifferenceToIt() {
    DayModel inRoom = new DayModel(day().bulkPlace(BakeDay.BulkPlace.ROOM).build());

    assertThat(model.keptInRoom(5)).isEqualTo(1);
    assertThat(inRoom.keptInRoom(0)).isEqualTo(1);
    double hour = inRoom.keptInRoom(1);
    assertThat(hour).isBetween(0.3, 0.95);
    assertThat(inRoom.keptInRoom(3)).isCloseTo(hour * hour * hour, within(1e-9));
  }

  /** The rise at the oven is that at the end of the loaf that is followed there. */
  @Test
  void theRiseAtTheOvenIsThatOfTheLoafThen() {
    for (double proof : new double[] {1, 2, 3.5}) {
      PieceCurve room = model.loaf(bulk(), 5, ProofKind.ROOM, 15, proof);
      assertThat(model.riseAtOven(bulk(), 10, 5, ProofKind.ROOM, 5 + proof))
          .isCloseTo(room.riseAtEnd().fraction(), within(1e-3));
      PieceCurve cold = model.loaf(bulk(), 5, ProofKind.COLD, 15, 5 * proof);
      assertThat(model.riseAtOven(bulk(), 10, 5, ProofKind.COLD, 5 + 5 * proof))
          .isCloseTo(cold.riseAtEnd().fraction(), within(1e-3));
    }
  }

  /** In the room it is the hour that tells how warm it is; in the cold it does not matter. */
  @Test
  void aLoafInTheRoomIsAsWarmAsTheRoomIsThen() {
    double warm = model.riseAtOven(bulk(), 2, 5, ProofKind.ROOM, 8);
    double cool = model.riseAtOven(bulk(), 12, 5, ProofKind.ROOM, 8);
    assertThat(warm).isGreaterThan(cool + 0.05);
    assertThat(model.riseAtOven(bulk(), 2, 5, ProofKind.COLD, 17))
        .isEqualTo(model.riseAtOven(bulk(), 12, 5, ProofKind.COLD, 17));
  }

  /** As many as always, unless fewer are asked for than weigh a plan. */
  @Test
  void thePrintedPointIsFoundByAsManyDoughs() {
    assertThat(model.printing().ensemble().size()).isEqualTo(8);
    for (int members : new int[] {DoughCandidates.MEMBERS, 2 * DoughCandidates.MEMBERS}) {
      DayModel many =
          new DayModel(day().forecaster(RiseForecaster.standard().withMembers(members)).build());
      assertThat(many.printing().ensemble().size()).isEqualTo(DoughCandidates.POINT_MEMBERS);
      assertThat(many.members(16)).hasSize(16);
    }
    assertThat(model.members(64)).hasSize(8);
  }

  /** Doughs of a day share what has been run of a starter, if it is the same. */
  @Test
  void anotherStarterIsRipeAtOtherHours() {
    DayModel stiff =
        new DayModel(
            day()
                .dough(DoughFormula.builder().starter(Starter.ripe(Share.ofPercent(60))).build())
                .build(),
            List.of(model));
    FeedChoice feed = new FeedChoice(3, 8, new FeedRatio(1, 2, 2), 4, 6);
    List<Unknowns> some = List.of(Unknowns.typical());
    List<RipeTimes.RipeTime> first = model.ripeTimes().members(feed, some);

    assertThat(new DayModel(DAY, List.of(model)).ripeTimes().members(feed, some)).isEqualTo(first);
    assertThat(stiff.ripeTimes().members(feed, some)).isNotEqualTo(first);
    assertThat(stiff.ripeTimes().members(feed, some))
        .isEqualTo(new DayModel(stiff.day()).ripeTimes().members(feed, some));
  }
}
