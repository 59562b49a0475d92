package doughtide.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A copier knows black and white only: what areas mean must survive it. */
class PhotocopyTest {

  private static final int DOTS_PER_INCH = 200;
  private static final double DARKER_THAN = 0.6;

  /** Share of an area that is black in a copy. */
  private static double black(ChartPicture.Fill fill) {
    double scale = DOTS_PER_INCH / 72.0;
    BufferedImage image = new BufferedImage(400, 300, BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D g = image.createGraphics();
    g.setColor(Color.WHITE);
    g.fillRect(0, 0, 400, 300);
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.scale(scale, scale);
    new AreaFill(g, 12).fill(new Rectangle2D.Double(0, 0, 400 / scale, 300 / scale), fill);
    g.dispose();
    int black = 0;
    for (int x = 0; x < 400; x++) {
      for (int y = 0; y < 300; y++) {
        black += image.getRaster().getSample(x, y, 0) < 255 * DARKER_THAN ? 1 : 0;
      }
    }
    return black / (400.0 * 300);
  }

  @Test
  void bandsAndHatchesSurviveAndDiffer() {
    assertThat(black(ChartPicture.Fill.WHITE)).isZero();
    assertThat(black(ChartPicture.Fill.BLACK)).isEqualTo(1);
    assertThat(black(ChartPicture.Fill.DOTTED)).isBetween(0.005, 0.04);
    assertThat(black(ChartPicture.Fill.COLD)).isBetween(0.045, 0.3);
  }

  /** Any two lines differ in what is left of them: how long their strokes are, or how thick. */
  @Test
  void noTwoLinesBecomeAlike() {
    Map<ChartPicture.Pen, Copy> copies = new EnumMap<>(ChartPicture.Pen.class);
    for (ChartPicture.Pen pen : ChartPicture.Pen.values()) {
      copies.put(pen, copy(pen));
    }
    copies.forEach(
        (pen, copy) ->
            copies.forEach(
                (other, its) ->
                    assertThat(pen == other || copy.isUnlike(its))
                        .as("%s %s, %s %s", pen, copy, other, its)
                        .isTrue()));
  }

  /** Mean length of a stroke and thickness, in dots. */
  private record Copy(double stroke, int rows) {
    /** By two dots of a stroke, which is a quarter of a millimetre, or by one of thickness. */
    boolean isUnlike(Copy other) {
      return Math.abs(stroke - other.stroke) > 2 || rows != other.rows;
    }
  }

  private static Copy copy(ChartPicture.Pen pen) {
    ChartAxis axis = ChartAxis.every(5, 0, 10, "", v -> "");
    ChartPicture.Curve level =
        new ChartPicture.Curve("level", new double[] {0, 10}, new double[] {3, 3}, pen, false);
    BufferedImage image =
        ChartOutput.image(
            ChartPicture.on(axis, axis).curves(List.of(level)).chart(),
            ChartSize.A5_LANDSCAPE,
            DOTS_PER_INCH);
    int from = image.getWidth() / 4;
    int to = image.getWidth() * 3 / 4;
    int rows = 0;
    List<Boolean> thickest = List.of();
    for (int y = image.getHeight() / 2; y < image.getHeight() * 3 / 4; y++) {
      int row = y;
      List<Boolean> dots =
          IntStream.range(from, to)
              .mapToObj(x -> image.getRaster().getSample(x, row, 0) < 255 * DARKER_THAN)
              .toList();
      rows += dots.contains(true) ? 1 : 0;
      thickest =
          Collections.frequency(dots, true) > Collections.frequency(thickest, true)
              ? dots
              : thickest;
    }
    assertThat(thickest).as(pen.name()).contains(true);
    return new Copy(Collections.frequency(thickest, true) / strokes(thickest), rows);
  }

  private static double strokes(List<Boolean> dots) {
    return IntStream.range(0, dots.size())
        .filter(i -> dots.get(i) && (i == 0 || !dots.get(i - 1)))
        .count();
  }

  @Test
  void theBandOfAChartIsStillThere() {
    ChartAxis axis = ChartAxis.every(5, 0, 10, "", v -> "");
    double[] x = {0, 10};
    ChartPicture.Band band =
        new ChartPicture.Band("band", x, new double[] {2, 2}, new double[] {8, 8});
    PrintedChart with = ChartPicture.on(axis, axis).bands(List.of(band)).chart();
    PrintedChart without = ChartPicture.on(axis, axis).chart();

    assertThat(blackIn(without)).isZero();
    assertThat(blackIn(with)).isGreaterThan(100);
  }

  /** Black dots in the middle of a picture. */
  private static int blackIn(PrintedChart chart) {
    BufferedImage image = ChartOutput.image(chart, ChartSize.A5_LANDSCAPE, DOTS_PER_INCH);
    int black = 0;
    for (int x = image.getWidth() / 4; x < image.getWidth() * 3 / 8; x++) {
      for (int y = image.getHeight() * 3 / 8; y < image.getHeight() * 5 / 8; y++) {
        black += image.getRaster().getSample(x, y, 0) < 255 * DARKER_THAN ? 1 : 0;
      }
    }
    return black;
  }
}
