package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** At the bench from 8 to 10 and from 18 to 20 unless said otherwise. */
class BenchHoursTest {
  private static final BenchHours TWICE = bench(8, 10, 18, 20);

  private static BenchHours bench(double... edges) {
    return new BenchHours(BenchHoursTest.intervals(edges));
  }

  static List<BenchInterval> intervals(double... edges) {
    return java.util.stream.IntStream.range(0, edges.length / 2)
        .mapToObj(i -> new BenchInterval(edges[2 * i], edges[2 * i + 1]))
        .toList();
  }

  @Test
  void hoursThatTouchOrOverlapAreOneStay() {
    assertThat(bench(18, 20, 8, 10).intervals()).isEqualTo(intervals(8, 10, 18, 20));
    assertThat(bench(8, 10, 10, 12).intervals()).isEqualTo(intervals(8, 12));
    assertThat(bench(8, 14, 9, 10).intervals()).isEqualTo(intervals(8, 14));
    assertThat(bench(9, 11, 8, 10, 12, 13).intervals()).isEqualTo(intervals(8, 11, 12, 13));
  }

  @Test
  void workLiesWithinOneStayItsEdgesIncluded() {
    assertThat(TWICE.contains(8, 10)).isTrue();
    assertThat(TWICE.contains(7.9, 9)).isFalse();
    assertThat(TWICE.contains(9, 10.1)).isFalse();
    assertThat(TWICE.contains(9, 19)).isFalse();
    assertThat(TWICE.around(18.5, 19)).contains(new BenchInterval(18, 20));
    assertThat(TWICE.around(12, 13)).isEmpty();
    assertThat(TWICE.firstHour()).isEqualTo(8);
  }

  @Test
  void slackIsWhatIsLeftAfterTheWork() {
    assertThat(TWICE.slackHours(8.5, 9.5)).isEqualTo(0.5);
    assertThat(TWICE.slackHours(9, 10)).isZero();
    assertThat(TWICE.slackHours(11, 12)).isZero();
  }

  @Test
  void workMissesAStayByWhatStandsOutOnBothSides() {
    assertThat(TWICE.miss(0, 8, 10)).isZero();
    assertThat(TWICE.miss(0, 7, 10.5)).isEqualTo(1.5);
    assertThat(TWICE.miss(1, 8, 10)).isEqualTo(10);
    assertThat(TWICE.miss(0, 9, 10 + 5e-7)).as("less than a second").isZero();
    assertThat(TWICE.miss(0, 9, 10.001)).isCloseTo(0.001, within(1e-9));
  }

  @Test
  void theNearestStayIsTheOneThatIsMissedByLeastTheFirstOfTwo() {
    assertThat(TWICE.nearest(10.5, 11)).isZero();
    assertThat(TWICE.nearest(16, 17)).isEqualTo(1);
    assertThat(TWICE.nearest(13.5, 14.5)).isZero();
  }

  @Test
  void oneStayCanBeReplaced() {
    assertThat(TWICE.with(1, new BenchInterval(17, 21)).intervals())
        .isEqualTo(intervals(8, 10, 17, 21));
    assertThat(TWICE.with(0, new BenchInterval(8, 18)).intervals()).isEqualTo(intervals(8, 20));
  }
}
