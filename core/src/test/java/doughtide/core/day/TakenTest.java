package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.BakeStep.Kind;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Mass;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Others bake two loaves at 20:00, in an oven for four: loaded in five minutes, out at 20:50. */
class TakenTest {
  private static final BenchHours BENCH = new BenchHours(List.of(new BenchInterval(8, 24)));
  private static final double OUT = 20 + 50 / 60.0;
  private static final Taken OVEN = Taken.NOTHING.with(loaves(2), 20);

  private static BakeDay loaves(int number) {
    return BakeDay.builder()
        .readyAt(30)
        .bench(BENCH)
        .loaves(number, Mass.ofGrams(850), PieceForm.ROUND)
        .oven(Oven.usual().withLoaves(4))
        .build();
  }

  private static BakeStep step(Kind kind, double from, double to) {
    return new BakeStep(kind, from, to, 0);
  }

  private static Taken shaping(double from, double to) {
    return Taken.NOTHING.with(List.of(step(Kind.SHAPE, from, to)));
  }

  @Test
  void nothingIsNothing() {
    assertThat(Taken.NOTHING.isNothing()).isTrue();
    assertThat(OVEN.isNothing()).isFalse();
    assertThat(shaping(10, 11).isNothing()).isFalse();
    assertThat(OVEN.loads()).hasSize(1).allMatch(Taken::hasSome);
  }

  @Test
  void handsAreFreeBesideWhatOthersDo() {
    assertThat(shaping(10, 11).leavesHands(BENCH, 10.5, 10.6, 1)).isFalse();
    assertThat(shaping(10, 11).leavesHands(BENCH, 10.5, 10.6, 2)).isTrue();
    assertThat(shaping(10, 11).leavesHands(BENCH, 11, 12, 1)).isTrue();
    assertThat(Taken.NOTHING.leavesHands(BENCH, 7, 9, 1)).as("nobody is there").isFalse();
  }

  /** Loading and unloading of others, which their loads tell, not their steps. */
  @Test
  void othersLoadAndUnloadTheOven() {
    assertThat(OVEN.leavesHands(BENCH, 19.9, 20.05, 1)).isFalse();
    assertThat(OVEN.leavesHands(BENCH, 20.1, 20.8, 1)).isTrue();
    assertThat(OVEN.leavesHands(BENCH, OUT, OUT + 0.05, 1)).isFalse();
    assertThat(OVEN.leavesHands(BENCH, OUT + 0.1, 22, 1)).isTrue();
    Taken told = OVEN.with(List.of(step(Kind.BAKE, 20, 20.1), step(Kind.COOL, 21, 21.1)));
    assertThat(told.leavesHands(BENCH, 21, 21.05, 1)).isTrue();
    assertThat(told.isNothing()).isFalse();
    assertThat(Taken.NOTHING.with(List.of(step(Kind.COOL, 21, 21.1))).isNothing()).isTrue();
  }

  @Test
  void whatHappenedWithMoreHandsThanThereAreLeavesTheRestAsFree() {
    Taken two = shaping(10, 11).with(List.of(step(Kind.MIX, 10, 10.5)));

    assertThat(two.leavesHands(BENCH, 12, 13, 1)).isTrue();
    assertThat(two.leavesHands(BENCH, 10.1, 10.2, 1)).isFalse();
    assertThat(two.leavesHands(BENCH, 10.6, 10.7, 1)).isTrue();
    assertThat(two.leavesHands(BENCH, 10.6, 10.7, 2)).isTrue();
    assertThat(two.leavesRoom(loaves(2), List.of(step(Kind.FOLD, 10.1, 10.2)), 15, 1)).isFalse();
    assertThat(two.leavesRoom(loaves(2), List.of(step(Kind.FOLD, 12, 12.1)), 15, 1)).isTrue();
  }

  /** Hot for a load of others then, or one that came out no longer ago than it heats up. */
  @Test
  void theOvenIsHotForOthersAndStaysSo() {
    Oven oven = Oven.usual();
    assertThat(OVEN.isHotAt(20, oven)).isTrue();
    assertThat(OVEN.isHotAt(20.2, oven)).as("it is full").isFalse();
    assertThat(OVEN.isHotAt(19.9, oven)).isFalse();
    assertThat(OVEN.isHotAt(OUT, oven)).isTrue();
    assertThat(OVEN.isHotAt(OUT + 0.75, oven)).isTrue();
    assertThat(OVEN.isHotAt(OUT + 0.76, oven)).isFalse();
    assertThat(Taken.NOTHING.isHotAt(20, oven)).isFalse();
  }

  @Test
  void loavesGoInTogetherWhereTheyFitOrBeforeOrAfter() {
    assertThat(room(2, 20)).isTrue();
    assertThat(room(3, 20)).as("five loaves in an oven for four").isFalse();
    assertThat(room(2, 20.1)).isFalse();
    assertThat(room(2, 19.5)).isFalse();
    assertThat(room(2, OUT)).isTrue();
    assertThat(room(2, 20 - 50 / 60.0)).isTrue();
    assertThat(room(6, OUT)).isTrue();
    assertThat(room(6, 19.9)).isFalse();
  }

  private static boolean room(int loaves, double oven) {
    return OVEN.leavesRoom(loaves(loaves), List.of(), oven, 1);
  }

  @Test
  void oneIsNotAtTheOvenAndAtTheBenchAtOnce() {
    List<BakeStep> fold = List.of(step(Kind.FOLD, 22, 22.1));
    assertThat(OVEN.leavesRoom(loaves(2), fold, 21, 1)).isTrue();
    assertThat(OVEN.leavesRoom(loaves(2), fold, 22, 1)).isFalse();
    assertThat(OVEN.leavesRoom(loaves(2), fold, 22, 2)).isTrue();
    assertThat(OVEN.leavesRoom(loaves(2), List.of(step(Kind.BAKE, 22, 22.1)), 22, 1)).isTrue();
    assertThat(OVEN.leavesRoom(loaves(2), List.of(step(Kind.FOLD, 20.05, 20.1)), 22, 1)).isFalse();
  }
}
