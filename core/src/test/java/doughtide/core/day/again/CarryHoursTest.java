package doughtide.core.day.again;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.BakeStep;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.Taken;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Somebody is there from 8 to 12 and from 20 to 23, and folds another dough at 9:00. */
class CarryHoursTest {
  private static final Offset<Double> SECOND = Offset.offset(1.0 / 3600);
  private static final BenchHours BENCH =
      new BenchHours(List.of(new BenchInterval(8, 12), new BenchInterval(20, 23)));
  private static final Taken FOLD =
      Taken.NOTHING.with(List.of(new BakeStep(BakeStep.Kind.FOLD, 9, 9.25, 1)));
  private static final CarryHours ONE = new CarryHours(BENCH, FOLD, 1);

  private static void same(DoubleStream hours, double... expected) {
    double[] found = hours.toArray();
    assertThat(found).hasSameSizeAs(expected);
    for (int i = 0; i < found.length; i++) {
      assertThat(found[i]).isCloseTo(expected[i], SECOND);
    }
  }

  @Test
  void aTubIsCarriedByFreeHandsAtTheBench() {
    assertThat(ONE.isFree(8)).isTrue();
    assertThat(ONE.isFree(7.99)).as("nobody is there").isFalse();
    assertThat(ONE.isFree(12)).as("gone before it is carried").isFalse();
    assertThat(ONE.isFree(9 - 1.0 / 12)).isTrue();
    assertThat(ONE.isFree(9)).as("hands in the other dough").isFalse();
    assertThat(ONE.isFree(9.25)).isTrue();
    assertThat(new CarryHours(BENCH, FOLD, 2).isFree(9)).isTrue();
  }

  @Test
  void everyFiveMinutesButThoseOfTheFold() {
    double[] all = IntStream.range(0, 48).mapToDouble(i -> 8 + i / 12.0).toArray();
    same(
        Arrays.stream(ONE.free(8, 12)),
        Arrays.stream(all).filter(hour -> hour < 8.99 || hour > 9.24).toArray());
    same(Arrays.stream(ONE.free(20, 20.2)), 20, 20 + 1 / 12.0, 20 + 2 / 12.0);
    assertThat(ONE.free(13, 19)).isEmpty();
  }

  @Test
  void theFirstAboutOneAnHourAndTheLast() {
    same(ONE.some(8, 12), 8, 9.25, 10.25, 11.25, 12 - 1.0 / 12);
    same(ONE.some(20, 21), 20, 21);
    same(ONE.some(13, 19));
  }

  @Test
  void soonIsInTheHoursAtTheBenchThatAreNotOver() {
    same(ONE.someSoon(10), 10, 11, 12 - 1.0 / 12);
    same(ONE.someSoon(2), ONE.some(8, 12).toArray());
    same(ONE.someSoon(12 - 1.0 / 12), 12 - 1.0 / 12);
    same(ONE.someSoon(11.95), 20, 21, 22, 23 - 1.0 / 12);
    same(ONE.someSoon(23));
  }
}
