package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.loaf.StrengthPlan;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Mixed at 10:00; half an hour of autolyse and three folds, of which two must be, are wanted. */
class FittingFoldsTest {
  private static final StrengthPlan WANTED =
      new StrengthPlan(0.5, 3, 2, 0.5, OptionalDouble.empty());
  private static final BakeRoute ROUTE = BakeRoute.inRoom(20, 24, 10);
  private static final OptionalDouble SLOW = OptionalDouble.empty();

  private static Optional<StrengthPlan> of(
      double from, double to, BakeRoute route, OptionalDouble rises) {
    BenchHours bench = new BenchHours(List.of(new BenchInterval(from, to)));
    return FittingFolds.of(WANTED, bench, route, rises);
  }

  private static StrengthPlan until(double to) {
    return of(0, to, ROUTE, SLOW).orElseThrow();
  }

  @Test
  void whoIsThereAllDayDoesAllThatIsWanted() {
    assertThat(until(24)).isEqualTo(WANTED);
  }

  /** Ten minutes to stir flour and water, then half an hour: from 09:20. */
  @Test
  void whoComesTooLateForTheAutolyseLeavesItOut() {
    assertThat(of(9.3, 24, ROUTE, SLOW)).contains(WANTED);
    assertThat(of(9.4, 24, ROUTE, SLOW)).contains(WANTED.withoutAutolyse());
    assertThat(of(10, 24, ROUTE, SLOW)).contains(WANTED.withoutAutolyse());
  }

  @Test
  void noFoldComesAfterTheDoughHasRisen() {
    assertThat(of(0, 24, ROUTE, OptionalDouble.of(1.5))).contains(WANTED);
    assertThat(of(0, 24, ROUTE, OptionalDouble.of(1.4))).contains(WANTED.withFolds(2));
    assertThat(of(0, 24, ROUTE, OptionalDouble.of(1))).contains(WANTED.withFolds(2));
    assertThat(of(0, 24, ROUTE, OptionalDouble.of(0.9))).isEmpty();
  }

  /** The last fold is a quarter of an hour before the tub goes into the cold. */
  @Test
  void noFoldComesInTheCold() {
    assertThat(of(0, 24, ROUTE.partlyCold(11.75, 18), SLOW)).contains(WANTED);
    assertThat(of(0, 24, ROUTE.partlyCold(11.7, 18), SLOW)).contains(WANTED.withFolds(2));
    assertThat(of(0, 24, ROUTE.partlyCold(11.2, 18), SLOW)).isEmpty();
    assertThat(of(0, 24, ROUTE.partlyCold(11.75, 18), OptionalDouble.of(1.2)))
        .contains(WANTED.withFolds(2));
  }

  /** Folds at 10:30 and 11:00 take five minutes each; at 10:20 and 10:40 they are done by 10:45. */
  @Test
  void foldsComeCloserWhereTheBakerMustLeave() {
    assertThat(until(11.1)).isEqualTo(WANTED.withFolds(2));
    StrengthPlan closer = until(11);
    assertThat(closer.spacingHours()).isCloseTo(1.0 / 3, within(1e-12));
    assertThat(closer.folds()).isEqualTo(2);
    assertThat(until(10.76)).isEqualTo(closer);
  }

  @Test
  void whereCloserFoldsDoNotHelpTheyStay() {
    assertThat(until(10.7)).isEqualTo(WANTED.withFolds(2));
  }

  /** Mixing in batches: a fold of the first batch must not come before the last is mixed. */
  @Test
  void foldsKeepTheSpacingThatMixingAsks() {
    assertThat(spaced(24, 0.75).spacingHours()).isEqualTo(0.75);
    assertThat(spaced(24, 0.4).spacingHours()).isEqualTo(0.5);
    assertThat(spaced(11, 0.4).spacingHours()).isEqualTo(0.4);
    assertThat(spaced(11, 0.75).spacingHours()).isEqualTo(0.75);
  }

  private static StrengthPlan spaced(double to, double least) {
    BenchHours bench = new BenchHours(List.of(new BenchInterval(0, to)));
    return FittingFolds.of(WANTED, bench, ROUTE, SLOW, least).orElseThrow();
  }
}
