package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * A second dough beside one that is mixed at 10:00, in its baskets at 15:00 and baked from 20:00 to
 * 20:50; two loaves each, the starter from the cold.
 */
class OtherDoughsTest {
  private static final FeedRatio EQUAL = FeedRatio.oneTo(1, Share.ofPercent(100));
  private static final double LOAD = 50 / 60.0;
  private static final BakeDay FOUR = day(4);
  private static final BakeDay TWO = day(2);
  private final DayModel model = new DayModel(FOUR);

  private static BakeDay day(int oven) {
    return BakeDay.builder()
        .readyAt(30)
        .bench(new BenchHours(BenchHoursTest.intervals(-12, 40)))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND)
        .oven(Oven.usual().withLoaves(oven))
        .cold(Temperature.ofCelsius(4))
        .starterInCold(24)
        .starterPercents(List.of(20.0))
        .doughCelsius(List.of(24.0))
        .build();
  }

  private static Draft draft(ProofKind proof, double mix, double oven) {
    StrengthPlan none = new StrengthPlan(0, 0, 0, 0.5, OptionalDouble.empty());
    FeedChoice feed = new FeedChoice(mix - 24, mix, EQUAL, 0, 48);
    return new Draft(BakeRoute.inRoom(20, 24, mix), feed, none, proof, 5, oven, 0.5, 0.2);
  }

  private static OtherDoughs beside(BakeDay day, int hands) {
    SortedMap<Integer, Draft> placed = new TreeMap<>();
    placed.put(0, draft(ProofKind.ROOM, 10, 20));
    return new OtherDoughs(List.of(day, day), 1, placed, hands, Taken.NOTHING, Optional.empty());
  }

  private Optional<Draft> moved(BakeDay day, int hands, Draft draft) {
    return beside(day, hands).moved(draft, new DraftSearch(model, day));
  }

  @Test
  void aloneADraftStaysAsItIs() {
    OtherDoughs none =
        new OtherDoughs(List.of(FOUR), 0, new TreeMap<>(), 1, Taken.NOTHING, Optional.empty());
    Draft draft = draft(ProofKind.ROOM, 12, 25);

    assertThat(none.isEmpty()).isTrue();
    assertThat(none.fit(draft)).isTrue();
    assertThat(none.moved(draft, new DraftSearch(model, FOUR))).contains(draft);
    assertThat(none.moved(draft(ProofKind.ROOM, 12, 39), new DraftSearch(model, FOUR)))
        .as("too late for the bread")
        .isEmpty();
    assertThat(beside(FOUR, 1).isEmpty()).isFalse();
    Taken oven = Taken.NOTHING.with(FOUR, 26);
    assertThat(
            new OtherDoughs(List.of(FOUR), 0, new TreeMap<>(), 1, oven, Optional.empty()).isEmpty())
        .isFalse();
  }

  @Test
  void ovenAndHandsMustBeEnoughForBoth() {
    assertThat(beside(FOUR, 1).fit(draft(ProofKind.ROOM, 11, 20))).as("together").isTrue();
    assertThat(beside(FOUR, 1).fit(draft(ProofKind.ROOM, 11, 20.5))).as("in between").isFalse();
    assertThat(beside(FOUR, 1).fit(draft(ProofKind.ROOM, 11, 20 + LOAD))).as("after").isTrue();
    assertThat(beside(TWO, 1).fit(draft(ProofKind.ROOM, 11, 20))).as("no room").isFalse();
    assertThat(beside(FOUR, 1).fit(draft(ProofKind.ROOM, 10.1, 20))).as("two mixings").isFalse();
    assertThat(beside(FOUR, 2).fit(draft(ProofKind.ROOM, 10.1, 20))).as("two persons").isTrue();
  }

  /** The whole dough is moved with its oven: into the load, or right after it, or right before. */
  @Test
  void aLoafFromTheRoomIsMovedToTheOthersLoad() {
    Draft together = moved(FOUR, 1, draft(ProofKind.ROOM, 11.5, 20.5)).orElseThrow();
    assertThat(together.ovenHour()).isCloseTo(20, within(1e-9));
    assertThat(together.mixHour()).isCloseTo(11, within(1e-9));
    assertThat(together.feed().feedHour()).isCloseTo(11 - 24, within(0.5));

    Draft after = moved(TWO, 1, draft(ProofKind.ROOM, 11.5, 20.5)).orElseThrow();
    assertThat(after.ovenHour()).isCloseTo(20 + LOAD, within(1e-9));
    assertThat(after.mixHour()).isCloseTo(11.5 + LOAD - 0.5, within(1e-9));

    Draft before = moved(TWO, 1, draft(ProofKind.ROOM, 8.5, 19)).orElseThrow();
    assertThat(before.ovenHour()).isCloseTo(20 - LOAD, within(1e-9));
    Draft far = draft(ProofKind.ROOM, 13, 24);
    assertThat(moved(FOUR, 1, far)).as("more than an hour and a half away").contains(far);
  }

  /** After a night in the cold the oven alone moves, by four hours at most. */
  @Test
  void aLoafFromTheColdWaitsForTheOthersLoad() {
    Draft waits = moved(FOUR, 1, draft(ProofKind.COLD, 6, 22)).orElseThrow();
    assertThat(waits.ovenHour()).isCloseTo(20, within(1e-9));
    assertThat(waits.mixHour()).isEqualTo(6);
    Draft far = draft(ProofKind.COLD, 6, 25);
    assertThat(moved(FOUR, 1, far)).contains(far);
    Draft soon = moved(FOUR, 1, draft(ProofKind.COLD, 11, 21.5)).orElseThrow();
    assertThat(soon.ovenHour()).as("five hours in the cold").isCloseTo(21.5, within(1e-9));
  }

  /** Hands that are busy with shaping are free some minutes later. */
  @Test
  void aDraftIsMovedByFiveMinutesAtATimeForTheHands() {
    Draft moved = moved(FOUR, 1, draft(ProofKind.ROOM, 10.2, 26)).orElseThrow();
    double by = moved.mixHour() - 10.2;

    assertThat(by).as("shaping takes half an hour").isCloseTo(4 / 12.0, within(1e-9));
    assertThat(moved.ovenHour()).isCloseTo(26 + by, within(1e-9));
    assertThat(beside(FOUR, 1).fit(moved)).isTrue();
    Draft stays = moved(FOUR, 2, draft(ProofKind.ROOM, 10, 26)).orElseThrow();
    assertThat(stays.mixHour()).isEqualTo(10);
  }

  /** A dough whose tub stands in the cold keeps its hours. */
  @Test
  void aTubInTheColdIsNotMoved() {
    Draft room = draft(ProofKind.ROOM, 10, 26);
    Draft tub =
        new Draft(
            room.route().partlyCold(14, 22),
            room.feed(),
            room.strength(),
            ProofKind.ROOM,
            13,
            26,
            0.5,
            0.2);
    assertThat(moved(FOUR, 1, tub)).isEmpty();
    assertThat(moved(FOUR, 2, tub)).contains(tub);
  }

  /** What is fed for the other dough serves this one where it is ripe; else it is fed nearby. */
  @Test
  void oneFeedingServesBothWhereItCan() {
    BakeDay fed =
        BakeDay.builder()
            .readyAt(30)
            .bench(new BenchHours(BenchHoursTest.intervals(-12, 40)))
            .loaves(2, Mass.ofGrams(850), PieceForm.ROUND)
            .oven(Oven.usual().withLoaves(4))
            .starterPercents(List.of(20.0))
            .doughCelsius(List.of(24.0))
            .build();
    DayModel own = new DayModel(fed);
    DraftSearch search = new DraftSearch(own, fed);
    FeedChoice feed = search.feeds().best(10).orElseThrow();
    Draft first = draft(ProofKind.ROOM, 10, 20).withFeed(feed);
    FeedChoice other = search.feeds().at(feed.feedHour() + 0.5, 10.5, feed.ratio());
    Draft second = draft(ProofKind.ROOM, 10.5, 20).withFeed(other);
    SortedMap<Integer, Draft> placed = new TreeMap<>();
    placed.put(0, first);
    OtherDoughs beside =
        new OtherDoughs(List.of(fed, fed), 1, placed, 1, Taken.NOTHING, Optional.empty());
    Draft moved = beside.moved(second, search).orElseThrow();

    assertThat(moved.feed().feedHour()).isEqualTo(feed.feedHour());
    assertThat(moved.feed().mixHour()).isEqualTo(moved.mixHour());
    Draft late = draft(ProofKind.ROOM, 15, 24.5).withFeed(search.feeds().best(15).orElseThrow());
    Draft alone = beside.moved(late, search).orElseThrow();
    assertThat(alone.feed().feedHour() - feed.feedHour()).isGreaterThan(2);
    assertThat(search.feeds().isRipe(alone.feed())).isTrue();
  }

  /** Four loaves in two loads: both after the load of the other dough, or both before it. */
  @Test
  void everyLoadFindsItsPlace() {
    BakeDay four = FOUR.toBuilder().loaves(4, Mass.ofGrams(850), PieceForm.ROUND).build();
    BakeDay byTwos = four.toBuilder().oven(Oven.usual().withLoaves(2)).build();

    assertThat(baked(byTwos, 21)).as("both after it").isCloseTo(20 + LOAD, within(1e-9));
    assertThat(baked(byTwos, 19.9))
        .as("the second would be in its way")
        .isCloseTo(20 + LOAD, within(1e-9));
    assertThat(baked(byTwos, 18.6)).as("both before it").isCloseTo(20 - 2 * LOAD, within(1e-9));
  }

  /** When a loaf from the room that was drafted for an hour is baked beside the other dough. */
  private double baked(BakeDay four, double hour) {
    BakeDay first = four.toBuilder().loaves(2, Mass.ofGrams(850), PieceForm.ROUND).build();
    SortedMap<Integer, Draft> placed = new TreeMap<>();
    placed.put(0, draft(ProofKind.ROOM, 10, 20));
    OtherDoughs beside =
        new OtherDoughs(List.of(first, four), 1, placed, 2, Taken.NOTHING, Optional.empty());
    Draft draft = draft(ProofKind.ROOM, hour - 12, hour);
    return beside.moved(draft, new DraftSearch(new DayModel(four), four)).orElseThrow().ovenHour();
  }
}
