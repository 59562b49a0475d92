package doughtide.report.chart;

import doughtide.report.type.Fonts;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * Unbroken lines, drawn by XChart. What surrounds them is drawn by {@link ChartDrawing}, because
 * XChart turns its own text into outlines and dashes its lines segment by segment.
 */
final class CurvePainter {

  private final ChartPicture picture;

  CurvePainter(ChartPicture picture) {
    this.picture = picture;
  }

  /** Draws into the plot's frame. */
  void paint(Graphics2D graphics, Rectangle2D plot) {
    Graphics2D inner = (Graphics2D) graphics.create();
    inner.translate(plot.getX(), plot.getY());
    inner.clip(new Rectangle2D.Double(-1.5, -1, plot.getWidth() + 1.5, plot.getHeight() + 2.5));
    chart().paint(inner, (int) plot.getWidth(), (int) plot.getHeight());
    inner.dispose();
  }

  private XYChart chart() {
    XYChart chart = new Transparent();
    style(chart.getStyler());
    picture.curves().stream()
        .filter(curve -> curve.pen().dashPt.length == 0)
        .forEach(curve -> add(chart, curve));
    if (chart.getSeriesCollection().isEmpty()) {
      double[] y = {picture.y().min(), picture.y().max()};
      chart.addSeries("frame", new double[] {0, 1}, y).setEnabled(false);
    }
    return chart;
  }

  /** The sheet is already white, and the grid below the curves must stay visible. */
  private static final class Transparent extends XYChart {
    private static final long serialVersionUID = 1;

    Transparent() {
      super(100, 100);
    }

    @Override
    protected void paintBackground(Graphics2D graphics) {
      // nothing
    }
  }

  private void style(XYStyler styler) {
    styler.setLegendVisible(false);
    styler.setChartTitleVisible(false);
    styler.setAxisTitlesVisible(false);
    styler.setAxisTicksVisible(false);
    styler.setPlotGridLinesVisible(false);
    styler.setPlotBorderVisible(false);
    styler.setPlotContentSize(0.999);
    styler.setPlotMargin(0);
    styler.setChartPadding(0);
    styler.setPlotBackgroundColor(new Color(255, 255, 255, 0));
    styler.setChartBackgroundColor(Color.WHITE);
    styler.setXAxisMin(0.0);
    styler.setXAxisMax(1.0);
    styler.setYAxisMin(picture.y().min());
    styler.setYAxisMax(picture.y().max());
    styler.setBaseFont(Fonts.plain(12));
    styler.setAxisTickLabelsFont(Fonts.plain(12));
    styler.setAxisTitleFont(Fonts.plain(12));
    styler.setLegendFont(Fonts.plain(12));
    styler.setChartTitleFont(Fonts.bold(12));
  }

  /** Places along the axis, so that stretches of it may be drawn narrower. */
  private double[] fractions(double[] x) {
    return Arrays.stream(x).map(picture.x()::fraction).toArray();
  }

  private void add(XYChart chart, ChartPicture.Curve curve) {
    XYSeries series = chart.addSeries(curve.name(), fractions(curve.x()), curve.y());
    series.setMarker(SeriesMarkers.NONE);
    series.setLineColor(Color.BLACK);
    series.setLineStyle(
        new BasicStroke(curve.pen().widthPt, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
  }
}
