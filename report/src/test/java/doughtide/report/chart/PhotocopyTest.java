package doughtide.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
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
