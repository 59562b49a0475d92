package doughtide.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LabelLayoutTest {

  private static final Rectangle2D FRAME = new Rectangle2D.Double(0, 0, 400, 300);

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void crowdedLabelsNeverOverlapAndStayInside(long seed) {
    Random random = new Random(seed);
    LabelLayout layout = new LabelLayout(FRAME);
    Rectangle2D kept = new Rectangle2D.Double(100, 100, 120, 60);
    layout.avoid(kept);
    List<Rectangle2D> placed = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      double[] wish = {150 + 60 * random.nextDouble(), 120 + 30 * random.nextDouble()};
      layout.place(70, 14, List.of(wish), 500).ifPresent(placed::add);
    }
    assertThat(placed).as("seed " + seed).hasSizeGreaterThan(20);
    for (int i = 0; i < placed.size(); i++) {
      assertThat(FRAME.contains(placed.get(i))).as("seed " + seed).isTrue();
      assertThat(placed.get(i).intersects(kept)).as("seed " + seed).isFalse();
      for (int j = 0; j < i; j++) {
        assertThat(placed.get(i).intersects(placed.get(j))).as("seed " + seed).isFalse();
      }
    }
  }

  @Test
  void firstFreeWishIsTaken() {
    LabelLayout layout = new LabelLayout(FRAME);
    layout.avoid(new Rectangle2D.Double(0, 0, 50, 50));
    Optional<Rectangle2D> place =
        layout.place(40, 10, List.of(new double[] {10, 10}, new double[] {60, 10}), 500);
    assertThat(place).contains(new Rectangle2D.Double(60, 10, 40, 10));
  }

  @Test
  void curveIsKeptFree() {
    LabelLayout layout = new LabelLayout(FRAME);
    layout.avoidPath(new double[] {0, 400}, new double[] {0, 300}, 2);
    Rectangle2D place = layout.place(60, 12, List.of(new double[] {180, 145}), 500).orElseThrow();
    assertThat(place.intersectsLine(0, 0, 400, 300)).isFalse();
  }

  @Test
  void labelLargerThanTheFrameIsLeftOut() {
    assertThat(new LabelLayout(FRAME).place(500, 10, List.of(new double[] {0, 0}), 500)).isEmpty();
  }

  @Test
  void labelIsLeftOutRatherThanPutFarAway() {
    LabelLayout layout = new LabelLayout(FRAME);
    layout.avoid(new Rectangle2D.Double(0, 0, 200, 300));
    assertThat(layout.place(40, 10, List.of(new double[] {10, 10}), 100)).isEmpty();
    assertThat(layout.place(40, 10, List.of(new double[] {10, 10}), 250)).isPresent();
  }
}
