package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class BusyHandsTest {
  private static BusyHands busy(double... edges) {
    BusyHands busy = new BusyHands();
    for (int i = 0; i < edges.length; i += 2) {
      busy.add(edges[i], edges[i + 1]);
    }
    return busy;
  }

  @Test
  void whatOverlapsNeedsTwoPairsOfHands() {
    assertThat(busy(1, 2, 1.5, 3).areEnough(1)).isFalse();
    assertThat(busy(1, 2, 1.5, 3).areEnough(2)).isTrue();
    assertThat(busy(0, 2, 1, 3, 2, 4).areEnough(2)).isTrue();
    assertThat(busy(0, 2.5, 1, 3, 2, 4).areEnough(2)).isFalse();
  }

  @Test
  void onePairDoesOneThingAfterAnother() {
    assertThat(busy(2, 3, 1, 2, 3, 4).areEnough(1)).isTrue();
    assertThat(busy(2, 3, 1, 2 + 5e-7).areEnough(1)).as("less than a second").isTrue();
    assertThat(busy(2, 3, 1, 2.01).areEnough(1)).isFalse();
    assertThat(new BusyHands().areEnough(1)).isTrue();
  }

  @Test
  void whatTakesNoTimeNeedsNobody() {
    BusyHands busy = busy(1, 2);
    busy.add(new BakeStep(BakeStep.Kind.COOL, 1.5, 1.5, 0));
    assertThat(busy.areEnough(1)).isTrue();
    busy.add(new BakeStep(BakeStep.Kind.FOLD, 1.5, 1.6, 1));
    assertThat(busy.areEnough(1)).isFalse();
  }

  @Test
  void aLongDayIsCountedToItsEnd() {
    BusyHands busy = new BusyHands();
    for (int i = 0; i < 150; i++) {
      busy.add(0, 1 + i);
    }
    assertThat(busy.areEnough(149)).isFalse();
    assertThat(busy.areEnough(150)).isTrue();
  }

  @Test
  void aCopyGoesItsOwnWay() {
    BusyHands busy = busy(1, 2);
    BusyHands copy = busy.copy();
    copy.add(1, 2);
    assertThat(copy.areEnough(1)).isFalse();
    assertThat(busy.areEnough(1)).isTrue();
  }
}
