package doughtide.core.day.again;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeRoute;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.ProofKind;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.quantity.Share;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** At the bench from 18:00 to 22:00 and from 30:30; steps take five minutes. */
class OpenStepsTest {
  private static final double FIVE = 1.0 / 12;
  private static final BenchHours BENCH =
      new BenchHours(List.of(new BenchInterval(18, 22), new BenchInterval(30.5, 40)));

  private static BakeStep step(Kind kind, double hour) {
    return new BakeStep(kind, hour, hour + FIVE, kind == Kind.FOLD ? 1 : 0);
  }

  private static Slipped dough(double nowHour, BakeStep... open) {
    return new Slipped(
        BakeRoute.inRoom(20, 26, 20),
        new FeedChoice(15, 20, FeedRatio.oneTo(1, Share.ofPercent(100)), 4, 6),
        nowHour,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        3,
        ProofKind.COLD,
        9,
        31,
        List.of(open));
  }

  private static List<List<BakeStep>> settled(int hands, Slipped... doughs) {
    return OpenSteps.settled(List.of(doughs), BENCH, hands).stream().map(Slipped::open).toList();
  }

  private static List<Double> hours(List<BakeStep> steps) {
    return steps.stream().map(BakeStep::fromHour).toList();
  }

  @Test
  void whatCanBeDoneAtItsHourStaysThere() {
    BakeStep fold = step(Kind.FOLD, 21);
    BakeStep carry = step(Kind.BULK_INTO_COLD, 21.5);
    List<BakeStep> steps = settled(1, dough(20.5, fold, carry)).get(0);
    assertThat(hours(steps)).containsExactly(21.0, 21.5);
    assertThat(steps).extracting(BakeStep::kind).containsExactly(Kind.FOLD, Kind.BULK_INTO_COLD);
  }

  @Test
  void whatIsLateIsDoneNow() {
    BakeStep late = settled(1, dough(20.5, step(Kind.FOLD, 20))).get(0).get(0);
    assertThat(late.fromHour()).isEqualTo(20.5);
    assertThat(late.toHour()).isCloseTo(20.5 + FIVE, within(1e-9));
    assertThat(late.number()).isEqualTo(1);
  }

  /** Two folds at 21:00 with one pair of hands: the second comes five minutes later. */
  @Test
  void oneAfterAnotherWhereHandsAreShort() {
    Slipped dough = dough(20.5, step(Kind.FOLD, 21));
    List<List<BakeStep>> one = settled(1, dough, dough);
    assertThat(hours(one.get(0))).containsExactly(21.0);
    assertThat(one.get(1).get(0).fromHour()).isCloseTo(21 + FIVE, within(1e-9));
    assertThat(hours(settled(2, dough, dough).get(1))).containsExactly(21.0);
  }

  @Test
  void theEarlierStepGoesFirstWhosesoeverItIs() {
    List<List<BakeStep>> both =
        settled(1, dough(20.5, step(Kind.FOLD, 21 + FIVE / 2)), dough(20.5, step(Kind.FOLD, 21)));
    assertThat(hours(both.get(1))).containsExactly(21.0);
    assertThat(both.get(0).get(0).fromHour()).isCloseTo(21 + 1.5 * FIVE, within(1e-9));
  }

  /** Nobody is there from 22:00 on: a fold is not done next morning, a tub is carried then. */
  @Test
  void aFoldThatWouldBeMuchLaterIsLeftOutAndATubIsNot() {
    assertThat(settled(1, dough(20.5, step(Kind.FOLD, 21.95))).get(0)).isEmpty();
    assertThat(settled(1, dough(20.5, step(Kind.BULK_OUT_OF_COLD, 29))).get(0).get(0).fromHour())
        .isCloseTo(30.5, within(1e-9));
    assertThat(settled(1, dough(20.5, step(Kind.FOLD, 30))).get(0).get(0).fromHour())
        .as("half an hour later it still helps")
        .isCloseTo(30.5, within(1e-9));
    assertThat(settled(1, dough(20.5, step(Kind.FOLD, 29.9))).get(0)).isEmpty();
  }

  @Test
  void aTubThatNobodyCanCarryKeepsItsHour() {
    assertThat(hours(settled(1, dough(20.5, step(Kind.BULK_OUT_OF_COLD, 41))).get(0)))
        .containsExactly(41.0);
  }

  @Test
  void doughsWithoutStepsHaveNone() {
    assertThat(Stream.of(settled(1, dough(20.5))).toList()).containsExactly(List.of(List.of()));
  }
}
