package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.DayAnswer.Choice;
import doughtide.core.day.DayAnswer.Criterion;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Share;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Which of two plans a baker would take; bread for noon of the second day, hour 36. */
class PlanWorthTest {
  private static final BakeDay DAY =
      BakeDay.builder()
          .readyAt(36)
          .bench(new BenchHours(List.of(new BenchInterval(-12, 40))))
          .build();
  private static final FeedRatio EQUAL = FeedRatio.oneTo(1, Share.ofPercent(100));

  /** Fed five hours before mixing, shaped five hours after, baked two hours later. */
  private static Draft mixedAt(double mix, double celsius, double percent) {
    return new Draft(
        BakeRoute.inRoom(percent, celsius, mix),
        new FeedChoice(mix - 5, mix, EQUAL, 4, 6),
        StrengthPlan.of(DAY.dough()).withoutAutolyse().withFolds(1),
        ProofKind.ROOM,
        5,
        mix + 7,
        0.5,
        0.2);
  }

  private static PlanWorth worth(Draft draft, double marginHours, double good) {
    TimeWindow window = TimeWindow.of(new double[] {1, 2, 3});
    StepMargin margin = new StepMargin(BakeStep.Kind.SHAPE, marginHours, StepMargin.Limit.DOUGH);
    return new PlanWorth(DAY, draft, new BakePlan.Weighed(good, window, List.of(margin)), true);
  }

  private static Choice over(PlanWorth better, PlanWorth worse) {
    assertThat(better).isLessThan(worse);
    assertThat(worse).isGreaterThan(better);
    return better.over(worse);
  }

  /** Mixed at 08:00, ready at about 17:20; or at noon of the next day. */
  private static final Draft FRESH = mixedAt(26.5, 24, 20);

  @Test
  void aLongerMarginComesFirstUpToAnHour() {
    Choice choice = over(worth(FRESH, 0.25, 0.5), worth(FRESH, 0.2, 0.9));
    assertThat(choice).isEqualTo(new Choice(Criterion.MARGIN, 0.25, 0.2));

    assertThat(over(worth(FRESH, 1, 0.5), worth(FRESH, 0.9, 0.9)).criterion())
        .isEqualTo(Criterion.MARGIN);
    assertThat(over(worth(FRESH, 1, 0.5), worth(mixedAt(17, 24, 20), 3, 0.5)).criterion())
        .isEqualTo(Criterion.FRESH);
  }

  /** A loaf of the morning with 20 minutes before one of the evening before with 35. */
  /** A plan by which hardly a dough comes right is no plan, and none holds without a minute. */
  @Test
  void whatIsSeldomRightOrLeavesNoTimeComesLast() {
    assertThat(over(worth(FRESH, 0.25, 0.25), worth(FRESH, 1.5, 0.18)))
        .isEqualTo(new Choice(Criterion.RIGHT, 0.25, 0.18));
    assertThat(over(worth(FRESH, 0.1, 0.25), worth(FRESH, 0.02, 0.8)).criterion())
        .isEqualTo(Criterion.MARGIN);
    assertThat(over(worth(FRESH, 0.5, 0.18), worth(FRESH, 0.02, 0.8)).criterion())
        .isEqualTo(Criterion.MARGIN);
  }

  @Test
  void freshBreadCountsWhereBothMarginsHold() {
    assertThat(over(worth(FRESH, 20 / 60.0, 0.5), worth(mixedAt(17, 24, 20), 35 / 60.0, 0.5)))
        .extracting(Choice::criterion)
        .isEqualTo(Criterion.FRESH);
    assertThat(over(worth(FRESH, 35 / 60.0, 0.5), worth(FRESH, 20 / 60.0, 0.5)))
        .isEqualTo(new Choice(Criterion.MARGIN, 35 / 60.0, 20 / 60.0));
  }

  /** The same to five minutes and to the hour: what little is left is told, and is true. */
  @Test
  void thatMarginsAreTheSameIsNoReason() {
    Draft earlier = FRESH.movedBy(0, 33.25);
    Choice choice = over(worth(FRESH, 0.5, 0.5), worth(earlier, 0.52, 0.5));
    assertThat(choice.criterion()).isEqualTo(Criterion.FRESH);
    assertThat(choice.other() - choice.value()).isCloseTo(0.25, within(1e-9));
  }

  @Test
  void thenMoreDoughsRight() {
    assertThat(over(worth(FRESH, 1, 0.6), worth(FRESH, 1.5, 0.55)))
        .isEqualTo(new Choice(Criterion.RIGHT, 0.6, 0.55));
  }

  /** At the bench from hour 30 to 40; shaping takes half an hour, so the jar helps until 39:30. */
  @Test
  void thenAJarThatIsSeen() {
    BakeDay day = DAY.toBuilder().bench(new BenchHours(List.of(new BenchInterval(30, 40)))).build();
    PlanWorth seen = jar(day, 0.55, 31, 33, 35);
    PlanWorth asleep = jar(day, 0.45, 24, 28, 32);

    assertThat(over(seen, asleep)).isEqualTo(new Choice(Criterion.JAR, 1, 0.25));
    assertThat(over(asleep, jar(day, 0.39, 31, 33, 35)).criterion()).isEqualTo(Criterion.RIGHT);
    assertThat(PlanWorth.jarAtBenchShare(day, new TimeWindow(hour(38), hour(39), hour(41), 0.95)))
        .isCloseTo(0.5, within(1e-9));
    assertThat(PlanWorth.jarAtBenchShare(day, TimeWindow.NEVER)).isZero();
    TimeWindow endless = new TimeWindow(hour(31), hour(39), OptionalDouble.empty(), 0.6);
    assertThat(PlanWorth.jarAtBenchShare(day, endless)).isZero();
  }

  private static OptionalDouble hour(double hour) {
    return OptionalDouble.of(hour);
  }

  private static PlanWorth jar(BakeDay day, double good, double early, double likely, double late) {
    TimeWindow window = new TimeWindow(hour(early), hour(likely), hour(late), 1);
    StepMargin margin = new StepMargin(BakeStep.Kind.SHAPE, 0.5, StepMargin.Limit.DOUGH);
    return new PlanWorth(day, FRESH, new BakePlan.Weighed(good, window, List.of(margin)), true);
  }

  /** Bread that could be sliced at 00:10 lies twelve hours until noon. */
  @Test
  void thenBreadThatDoesNotLie() {
    Draft late = FRESH.movedBy(-1, 33);
    Draft old = FRESH.movedBy(-1, 21.84);
    Choice choice = over(worth(late, 1, 0.5), worth(old, 1, 0.5));
    assertThat(choice.criterion()).isEqualTo(Criterion.FRESH);
    assertThat(choice.other()).isCloseTo(11.83, within(0.01));
    assertThat(choice.value()).isCloseTo(0.67, within(0.01));
  }

  /** Fed at 22:30 and mixed at 03:30; an hour earlier costs two steps less in the night. */
  @Test
  void thenTheHoursThatAPersonKeeps() {
    Draft byDay = FRESH.withFeed(new FeedChoice(22, 26.5, EQUAL, 4, 6)).movedBy(0, 33.5);
    Draft byNight = FRESH.withFeed(new FeedChoice(23.5, 26.5, EQUAL, 3, 6));
    Choice choice = over(worth(byDay, 1, 0.5), worth(byNight, 1, 0.5));
    assertThat(choice).isEqualTo(new Choice(Criterion.NIGHT, 4, 5));
  }

  /** The starter fed in the evening before instead of two days before. */
  @Test
  void thenAShorterWayToTheBread() {
    Draft twoDays = FRESH.withFeed(new FeedChoice(-12, 26.5, EQUAL, 4, 60));
    Choice choice = over(worth(FRESH, 1, 0.5), worth(twoDays, 1, 0.5));
    assertThat(choice.criterion()).isEqualTo(Criterion.LENGTH);
    assertThat(choice.other() - choice.value()).isCloseTo(33.5, within(1e-9));
  }

  @Test
  void thenTheOrdinary() {
    assertThat(over(worth(FRESH, 1, 0.5), worth(mixedAt(26.5, 28, 20), 1, 0.5)))
        .isEqualTo(new Choice(Criterion.ORDINARY, 0, 1));
    assertThat(over(worth(FRESH, 1, 0.5), worth(mixedAt(26.5, 28, 3), 1, 0.5)))
        .isEqualTo(new Choice(Criterion.ORDINARY, 0, 2));
  }
}
