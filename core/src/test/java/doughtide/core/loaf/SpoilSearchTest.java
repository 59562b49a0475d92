package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class SpoilSearchTest {
  private static final int LOAVES = 1000;

  /** Of a thousand loaves, that share is too far after a change. */
  private static OptionalDouble smallest(DoubleUnaryOperator share, double step, int most) {
    return SpoilSearch.smallest(
        (loaf, change) -> loaf < Math.round(LOAVES * share.applyAsDouble(change)),
        LOAVES,
        step,
        most);
  }

  @Test
  void theSmallestChangeIsAWholeStep() {
    assertThat(smallest(x -> x >= 1.3 ? 0.2 : 0.05, 0.5, 8)).hasValue(1.5);
    assertThat(smallest(x -> x > 0 ? 1 : 0, 0.5, 8)).hasValue(0.5);
    assertThat(smallest(x -> x >= 3.9 ? 1 : 0, 0.5, 8)).hasValue(4.0);
    assertThat(smallest(x -> x >= 4.1 ? 1 : 0, 0.5, 8)).isEmpty();
  }

  /** What is too far already does not count: one loaf in ten more must be. */
  @Test
  void oneLoafInTenMoreIsTooFar() {
    assertThat(smallest(x -> 0.3 + 0.05 * x, 1, 8)).hasValue(2);
    assertThat(smallest(x -> x >= 2 ? 0.11 : x >= 1 ? 0.099 : 0, 1, 8)).hasValue(2);
    assertThat(smallest(x -> 0.95, 1, 8)).isEmpty();
  }

  /** What a loaf is after a smaller or a larger change is not asked again. */
  @Test
  void aLoafIsAskedOnlyWhileItsAnswerIsOpen() {
    List<Integer> asked = new ArrayList<>();
    SpoilSearch.TooFar tooFar =
        (loaf, change) -> {
          asked.add(loaf);
          return change >= loaf * 0.3;
        };

    assertThat(SpoilSearch.smallest(tooFar, 10, 1, 8)).hasValue(1);
    assertThat(asked).filteredOn(loaf -> loaf == 0).hasSize(1);
    assertThat(asked).filteredOn(loaf -> loaf == 9).hasSizeLessThan(5);
  }
}
