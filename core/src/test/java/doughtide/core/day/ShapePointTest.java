package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Shape points of one dough of 24 °C by few doughs of the belief, each kept for later. */
class ShapePointTest {
  private static final BakeDay STEADY =
      LikelyDoughTest.HELD.toBuilder().forecaster(RiseForecaster.standard().withMembers(8)).build();
  private static final BakeDay CHANGING =
      STEADY.toBuilder()
          .room(
              TemperatureTrace.steps(
                  List.of(
                      new TemperatureTrace.Step(0, Temperature.ofCelsius(28)),
                      new TemperatureTrace.Step(16, Temperature.ofCelsius(18)))))
          .build();

  /**
   * Of the same dough.
   *
   * @param oven hour from mixing
   */
  private static Draft draft(BakeRoute route, ProofKind proof, double shaped, double oven) {
    double mix = route.mixHour();
    FeedChoice feed = new FeedChoice(mix - 6, mix, FeedRatio.oneTo(1, Share.ofPercent(100)), 5, 8);
    return new Draft(route, feed, STEADY.strength(), proof, shaped, mix + oven, 0.5, 0.1);
  }

  private static List<Draft> drafts() {
    BakeRoute ten = BakeRoute.inRoom(20, 24, 10);
    List<Draft> drafts = new ArrayList<>();
    for (double oven : new double[] {14, 16, 20}) {
      drafts.add(draft(ten, ProofKind.COLD, 5, oven));
    }
    for (double proof : new double[] {1.5, 2, 3}) {
      drafts.add(draft(ten, ProofKind.ROOM, 5, 5 + proof));
      drafts.add(draft(ten, ProofKind.ROOM, 6.5, 6.5 + proof));
    }
    drafts.add(draft(ten, ProofKind.COLD, 6, 17)); // as long in the cold as one before
    drafts.add(draft(ten, ProofKind.ROOM, 5.5, 7.5)); // the same sum as of five and eight hours
    drafts.add(draft(ten, ProofKind.ROOM, 5.75, 7.75)); // before the room changes
    drafts.add(draft(ten, ProofKind.ROOM, 6, 8)); // after it
    drafts.add(draft(BakeRoute.inRoom(20, 24, 4), ProofKind.ROOM, 5, 7));
    drafts.add(draft(ten.partlyCold(12, 22), ProofKind.ROOM, 15, 17));
    return drafts;
  }

  /** What is kept of one loaf is never told of another. */
  @Test
  void everyLoafHasItsOwnPoint() {
    for (BakeDay day : List.of(STEADY, CHANGING)) {
      DayModel kept = new DayModel(day);
      for (Draft draft : drafts()) {
        DayModel fresh = new DayModel(day);
        Draft printed = kept.shapePoint().printed(draft);
        assertThat(printed).isEqualTo(fresh.shapePoint().printed(draft));
        double proof = printed.ovenHour() - printed.basketHour();
        if (draft.proof() == ProofKind.ROOM) {
          assertThat(proof).isCloseTo(draft.ovenHour() - draft.basketHour(), within(1e-6));
        } else {
          assertThat(printed.ovenHour()).isEqualTo(draft.ovenHour());
        }
        Draft clock = kept.shapePoint().atClock(draft);
        assertThat(clock).isEqualTo(fresh.shapePoint().atClock(draft));
        assertThat(clock.ovenHour()).isCloseTo(draft.ovenHour(), within(1e-9));
      }
    }
  }

  /** By the same doughs the quick point is less than half an hour off the printed one. */
  @Test
  void theQuickPointIsNearThePrintedOne() {
    DayModel model = new DayModel(STEADY);
    for (Draft draft : drafts()) {
      Draft quick = model.shapePoint().quickly(draft, model.members(8));
      Draft printed = model.shapePoint().printed(draft);
      if (!printed.equals(draft)) {
        assertThat(quick.shapedHours()).isCloseTo(printed.shapedHours(), within(0.5));
        assertThat(quick.shapeRise()).isCloseTo(printed.shapeRise(), within(0.15));
      }
    }
  }
}
