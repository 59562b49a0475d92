package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.loaf.ShapeHour;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The hour with which a loaf has risen by a half at the oven, between the hours 1 and 12. */
class ShapeHourTest {
  private static final RiseCurve BULK =
      RiseModel.of(
              DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(25)))
          .run(14);

  private static OptionalDouble find(DoubleUnaryOperator rise, double guess) {
    return ShapeHour.find(rise, BULK, 0.5, 1, 12, guess);
  }

  @Test
  void theHourIsFoundWhereverTheSearchBegins() {
    List<DoubleUnaryOperator> rises =
        List.of(
            x -> 0.1 * x,
            x -> x * x / 50,
            x -> 1 - Math.exp(-x / 7),
            x -> x < 6 ? 0.05 * x : 0.3 + 0.4 * (x - 6));
    for (DoubleUnaryOperator rise : rises) {
      for (double guess : new double[] {-3, 1, 4, 5, 8, 12, 20}) {
        double hour = find(rise, guess).orElseThrow();
        assertThat(hour).isBetween(1.0, 12.0);
        assertThat(rise.applyAsDouble(hour)).as("guess %s", guess).isCloseTo(0.5, within(0.005));
      }
    }
  }

  /** A loaf that rises as the dough does is found with few looks, each a loaf followed anew. */
  @Test
  void aSearchNearTheHourCostsFewLoaves() {
    double hour = BULK.hoursToRise(Rise.ofPercent(50)).orElseThrow();
    for (double off : new double[] {-0.6, -0.3, 0.3, 0.6}) {
      int[] looks = {0};
      double found =
          find(
                  x -> {
                    looks[0]++;
                    return BULK.riseAt(x).fraction();
                  },
                  hour + off)
              .orElseThrow();
      assertThat(found).isCloseTo(hour, within(0.05));
      assertThat(looks[0]).as("%s h off", off).isLessThanOrEqualTo(4);
    }
  }

  @Test
  void aGuessThatIsRightIsTaken() {
    assertThat(find(x -> 0.1 * x, 5.04)).hasValue(5.04);
  }

  @Test
  void aLoafThatIsTooFarIsShapedAtOnceAndOneThatNeverGetsThereIsNot() {
    assertThat(find(x -> 0.6 + 0.1 * x, 6)).hasValue(1);
    assertThat(find(x -> 0.01 * x, 6)).isEmpty();
    assertThat(ShapeHour.find(x -> 0.1 * x, BULK, 0.5, 6, 6, 6)).isEmpty();
  }

  @Test
  void aSearchKeepsTheOrderOfItsPartsOnAnyThreads() {
    List<Integer> items = IntStream.range(0, 100).boxed().toList();
    ExecutorService two = Executors.newFixedThreadPool(2);
    try {
      for (SearchControl each : List.of(SearchControl.none(), SearchControl.none().on(two))) {
        assertThat(each.map(items, item -> 2 * item))
            .isEqualTo(items.stream().map(item -> 2 * item).toList());
      }
      assertThatThrownBy(
              () ->
                  SearchControl.none()
                      .on(two)
                      .map(
                          items,
                          item -> {
                            throw new IllegalStateException("fault of a part");
                          }))
          .isInstanceOf(IllegalStateException.class)
          .hasMessage("fault of a part");
    } finally {
      two.shutdown();
    }
  }

  @Test
  void aSearchStopsForAnyOfItsReasonsAndTellsHowFarItIs() {
    List<Double> told = new ArrayList<>();
    SearchControl control = SearchControl.none().withProgress(told::add);
    control.at(0.5);
    control.silently().at(0.7);

    assertThat(told).containsExactly(0.5);
    assertThat(control.stopped()).isFalse();
    assertThat(control.stoppingWhen(() -> true).stoppingWhen(() -> false).stopped()).isTrue();
    assertThat(control.stoppingWhen(() -> false).stoppingWhen(() -> true).stopped()).isTrue();
    assertThat(control.stoppingWhen(() -> true).silently().stopped()).isTrue();
    Thread.currentThread().interrupt();
    try {
      assertThat(control.interruptedWith(Thread.currentThread()).stopped()).isTrue();
    } finally {
      assertThat(Thread.interrupted()).isTrue();
    }
  }
}
