package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SpoilSearchTest {
  @Test
  void theSmallestChangeIsAWholeStep() {
    assertThat(SpoilSearch.smallest(x -> x >= 1.3 ? 0.2 : 0.05, 0.5, 8)).hasValue(1.5);
    assertThat(SpoilSearch.smallest(x -> x > 0 ? 1 : 0, 0.5, 8)).hasValue(0.5);
    assertThat(SpoilSearch.smallest(x -> x >= 3.9 ? 1 : 0, 0.5, 8)).hasValue(4.0);
    assertThat(SpoilSearch.smallest(x -> x >= 4.1 ? 1 : 0, 0.5, 8)).isEmpty();
  }

  /** What is too far already does not count: one loaf in ten more must be. */
  @Test
  void oneLoafInTenMoreIsTooFar() {
    assertThat(SpoilSearch.smallest(x -> 0.3 + 0.05 * x, 1, 8)).hasValue(2);
    assertThat(SpoilSearch.smallest(x -> x >= 2 ? 0.11 : x >= 1 ? 0.099 : 0, 1, 8)).hasValue(2);
    assertThat(SpoilSearch.smallest(x -> 0.95, 1, 8)).isEmpty();
  }
}
