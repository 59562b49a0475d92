package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeRoute;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.FittingFolds;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.quantity.Share;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class StrengthPlanTest {
  private static final Share LIMIT = Share.ofPercent(73);

  @Test
  void wetterDoughsAreFoldedMore() {
    int dry = strong(62).folds();
    int usual = strong(69).folds();
    int wet = strong(80).folds();

    assertThat(List.of(dry, usual, wet)).isSorted().doesNotHaveDuplicates();
    assertThat(strong(74).pointsBelowLimit().orElseThrow()).isCloseTo(-1, within(1e-9));
  }

  private static StrengthPlan strong(double percent) {
    return StrengthPlan.of(FlourClass.STRONG_WHITE.flour(), Share.ofPercent(percent), LIMIT);
  }

  @Test
  void ryeIsNotFoldedAndWholemealRestsLonger() {
    assertThat(of(FlourClass.RYE.flour()).steps()).isEmpty();
    assertThat(of(FlourClass.WHOLEMEAL_WHEAT.flour()).autolyseHours())
        .isGreaterThan(of(FlourClass.WHITE.flour()).autolyseHours());
  }

  @ParameterizedTest
  @EnumSource(
      value = FlourClass.class,
      names = {"RYE", "WHOLEMEAL_RYE"},
      mode = EnumSource.Mode.EXCLUDE)
  void noDoughOfMoreThanHalfRyeIsFolded(FlourClass other) {
    for (int rye = 51; rye <= 99; rye += 4) {
      Flour mix =
          Flour.mix(
              List.of(
                  new Flour.Part(FlourClass.RYE.flour(), Share.ofPercent(rye)),
                  new Flour.Part(other.flour(), Share.ofPercent(100 - rye))));
      assertThat(of(mix).folds()).as(rye + " % rye").isZero();
      assertThat(of(mix).within(6).folds()).isZero();
    }
  }

  private static StrengthPlan of(Flour flour) {
    return StrengthPlan.of(DoughFormula.builder().flour(flour).build());
  }

  @Test
  void slackDoughIsSlappedFirstAndLaterFoldsAreGentle() {
    assertThat(strong(80).steps())
        .extracting(StrengthPlan.Fold::kind)
        .containsExactly(FoldKind.SLAP, FoldKind.COIL, FoldKind.COIL, FoldKind.COIL);
    assertThat(strong(69).steps())
        .extracting(StrengthPlan.Fold::kind)
        .containsExactly(FoldKind.STRETCH, FoldKind.LAMINATION, FoldKind.COIL);
    assertThat(strong(62).steps())
        .extracting(StrengthPlan.Fold::kind)
        .containsExactly(FoldKind.STRETCH, FoldKind.STRETCH);
  }

  @Test
  void theLimitThatGradedBowlsGaveCountsBeforeTheOneExpected() {
    DoughFormula.Builder dough = DoughFormula.builder().hydration(Share.ofPercent(70));
    Flour flour = FlourClass.WHITE.flour();

    StrengthPlan graded = StrengthPlan.of(dough.flour(flour, Share.ofPercent(77.5)).build());
    StrengthPlan expected = StrengthPlan.of(dough.flour(flour).build());

    assertThat(graded.pointsBelowLimit().orElseThrow()).isCloseTo(7.5, within(1e-9));
    assertThat(expected).isNotEqualTo(graded).isEqualTo(of(flour));
  }

  @Test
  void saysHowMuchWaterChangesTheNumberOfFolds() {
    for (double percent = 55; percent <= 80; percent += 0.5) {
      StrengthPlan plan = strong(percent);
      double wetter = percent;
      plan.pointsToOneMore()
          .ifPresent(
              more -> assertThat(strong(wetter + more + 0.01).folds()).isEqualTo(plan.folds() + 1));
      plan.pointsToOneFewer()
          .ifPresent(
              less -> assertThat(strong(wetter - less - 0.01).folds()).isEqualTo(plan.folds() - 1));
    }
    assertThat(strong(80).pointsToOneMore()).isEmpty();
    assertThat(strong(60).pointsToOneFewer()).isEmpty();
  }

  @Test
  void foldsFitIntoTheTimeTheDoughLeaves() {
    for (double latest = 0.1; latest < 12; latest += 0.1) {
      StrengthPlan plan = strong(80).within(latest);
      assertThat(plan.lastFoldHours()).as("%s h", latest).isLessThanOrEqualTo(latest + 1e-9);
      assertThat(plan.spacingHours()).isBetween(1.0 / 3, 1.0);
    }
    assertThat(strong(80).within(5.0 / 60).folds()).isZero();
    assertThat(strong(80).within(1.4).folds()).isEqualTo(4);
    assertThat(strong(80).within(0.7).folds()).isEqualTo(2);
    assertThat(strong(80).within(6).spacingHours()).isCloseTo(0.75, within(1e-9));
    assertThat(strong(80).within(5.0 / 60).spacingHours()).isCloseTo(1.0 / 3, within(1e-9));
    assertThat(strong(80).within(1).folds()).isEqualTo(3);
    assertThat(strong(80).within(1.4).spacingHours()).isCloseTo(0.35, within(1e-9));
  }

  /** At eight points below the limit, and at two, a dough is of the wetter kind. */
  @Test
  void theLimitsBelongToTheWetterKind() {
    assertThat(strong(64.5).folds()).isEqualTo(2);
    assertThat(strong(65).folds()).isEqualTo(3);
    assertThat(strong(71).folds()).isEqualTo(4);
    assertThat(strong(65).pointsToOneFewer()).hasValue(0);
    assertThat(strong(65).steps().get(1).kind()).isEqualTo(FoldKind.LAMINATION);
    assertThat(strong(71).steps().get(0).kind()).isEqualTo(FoldKind.SLAP);
    assertThat(strong(80).steps())
        .extracting(StrengthPlan.Fold::hours)
        .containsExactly(0.5, 1.0, 1.5, 2.0);
  }

  @Test
  void handsTakeAShareBetweenLightestAndHeaviest() {
    assertThat(new Handling(0.1, 0.3).share(0)).isEqualTo(0.1);
    assertThat(new Handling(0.1, 0.3).share(0.5)).isCloseTo(0.2, within(1e-12));
    assertThat(Handling.FOLD.share(1)).isEqualTo(0.05);
  }

  @Test
  void theLastFoldIsDoneBeforeTheDoughHasRisen() {
    StrengthPlan wanted = new StrengthPlan(0, 4, 2, 0.5, OptionalDouble.of(5));
    BenchHours bench = new BenchHours(List.of(new BenchInterval(0, 10)));
    BakeRoute route = BakeRoute.inRoom(20, 26, 1);

    assertThat(FittingFolds.of(wanted, bench, route, OptionalDouble.of(1.6)).orElseThrow().folds())
        .isEqualTo(3);
    assertThat(FittingFolds.of(wanted, bench, route, OptionalDouble.of(0.7))).isEmpty();
  }

  @Test
  void foldsComeCloserWhereTheBakerMustLeave() {
    StrengthPlan wanted = new StrengthPlan(0, 4, 3, 0.5, OptionalDouble.of(5));
    BenchHours hour = new BenchHours(List.of(new BenchInterval(0, 1.2)));
    BakeRoute route = BakeRoute.inRoom(20, 24, 0);

    StrengthPlan close = FittingFolds.of(wanted, hour, route, OptionalDouble.of(3)).orElseThrow();
    assertThat(close.folds()).isEqualTo(3);
    assertThat(close.spacingHours()).isCloseTo(1.0 / 3, within(1e-9));

    BenchHours long4 = new BenchHours(List.of(new BenchInterval(0, 4)));
    assertThat(
            FittingFolds.of(wanted, long4, route, OptionalDouble.of(3))
                .orElseThrow()
                .spacingHours())
        .isEqualTo(0.5);
  }
}
