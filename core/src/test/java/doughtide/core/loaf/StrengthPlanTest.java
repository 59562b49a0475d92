package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeRoute;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.FittingFolds;
import doughtide.core.dough.FlourClass;
import doughtide.core.quantity.Share;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class StrengthPlanTest {
  private static final Share LIMIT = Share.ofPercent(73);

  @Test
  void wetterDoughsAreFoldedMore() {
    int dry = strong(62).folds();
    int usual = strong(69).folds();
    int wet = strong(80).folds();

    assertThat(List.of(dry, usual, wet)).isSorted().doesNotHaveDuplicates();
    assertThat(strong(74).reason()).isEqualTo("1 point of water above the limit of this flour");
  }

  private static StrengthPlan strong(double percent) {
    return StrengthPlan.of(FlourClass.STRONG_WHITE.flour(), Share.ofPercent(percent), LIMIT);
  }

  @Test
  void ryeIsNotFoldedAndWholemealRestsLonger() {
    assertThat(StrengthPlan.usual(FlourClass.RYE.flour()).folds()).isZero();
    assertThat(StrengthPlan.of(FlourClass.RYE.flour(), Share.ofPercent(80), LIMIT).folds())
        .isZero();
    assertThat(StrengthPlan.usual(FlourClass.WHOLEMEAL_WHEAT.flour()).autolyseHours())
        .isGreaterThan(StrengthPlan.usual(FlourClass.WHITE.flour()).autolyseHours());
  }

  @Test
  void theLastFoldIsDoneBeforeTheDoughHasRisen() {
    StrengthPlan wanted = new StrengthPlan(0, 4, 2, 0.5, "test");
    BenchHours bench = new BenchHours(List.of(new BenchInterval(0, 10)));
    BakeRoute route = BakeRoute.inRoom(20, 26, 1);

    assertThat(FittingFolds.of(wanted, bench, route, OptionalDouble.of(1.6)).orElseThrow().folds())
        .isEqualTo(3);
    assertThat(FittingFolds.of(wanted, bench, route, OptionalDouble.of(0.7))).isEmpty();
  }

  @Test
  void foldsComeCloserWhereTheBakerMustLeave() {
    StrengthPlan wanted = new StrengthPlan(0, 4, 3, 0.5, "test");
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
