package doughtide.core.planning;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.FlourClass;
import doughtide.core.quantity.Share;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class StrengthPlanTest {
  @Test
  void wetterDoughsAreFoldedMore() {
    int dry = StrengthPlan.of(FlourClass.STRONG_WHITE.flour(), Share.ofPercent(62)).folds();
    int usual = StrengthPlan.of(FlourClass.STRONG_WHITE.flour(), Share.ofPercent(69)).folds();
    int wet = StrengthPlan.of(FlourClass.STRONG_WHITE.flour(), Share.ofPercent(80)).folds();

    assertThat(List.of(dry, usual, wet)).isSorted().doesNotHaveDuplicates();
  }

  @Test
  void ryeIsNotFoldedAndWholemealRestsLonger() {
    assertThat(StrengthPlan.of(FlourClass.RYE.flour(), Share.ofPercent(80)).folds()).isZero();
    assertThat(
            StrengthPlan.of(FlourClass.WHOLEMEAL_WHEAT.flour(), Share.ofPercent(75))
                .autolyseHours())
        .isGreaterThan(
            StrengthPlan.of(FlourClass.WHITE.flour(), Share.ofPercent(65)).autolyseHours());
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
}
