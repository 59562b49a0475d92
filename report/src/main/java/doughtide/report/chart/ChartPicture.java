package doughtide.report.chart;

import java.util.List;
import java.util.Optional;

/**
 * What stands in a {@link PrintedChart}, in the units of its axes. Meaning is carried by line
 * style, hatching and words, never by colour.
 *
 * @param right a second scale for the same upright axis
 * @param notes lines under the chart
 * @param dots what was measured
 */
public record ChartPicture(
    String title,
    List<String> subtitle,
    ChartAxis x,
    ChartAxis y,
    Optional<ChartAxis> right,
    List<Band> bands,
    List<Curve> curves,
    List<Span> spans,
    List<Zone> zones,
    List<Lane> lanes,
    Optional<Strip> strip,
    List<String> notes,
    List<Dot> dots) {

  /** Without dots. */
  ChartPicture(
      String title,
      List<String> subtitle,
      ChartAxis x,
      ChartAxis y,
      Optional<ChartAxis> right,
      List<Band> bands,
      List<Curve> curves,
      List<Span> spans,
      List<Zone> zones,
      List<Lane> lanes,
      Optional<Strip> strip,
      List<String> notes) {
    this(title, subtitle, x, y, right, bands, curves, spans, zones, lanes, strip, notes, List.of());
  }

  public ChartPicture {
    dots = List.copyOf(dots);
    subtitle = List.copyOf(subtitle);
    bands = List.copyOf(bands);
    curves = List.copyOf(curves);
    spans = List.copyOf(spans);
    zones = List.copyOf(zones);
    lanes = List.copyOf(lanes);
    notes = List.copyOf(notes);
  }

  /** How a line is drawn. */
  @SuppressWarnings("ImmutableEnumChecker") // only read, inside this package
  enum Pen {
    BOLD(2.4f),
    THIN(0.7f),
    SOLID(1.5f),
    DASHED(1.5f, 7, 4),
    DOTTED(1.7f, 1.7f, 3.2f),
    DASH_DOT(1.5f, 8, 3, 1.5f, 3),
    LONG_DASH(1.5f, 14, 5);

    final float widthPt;
    final float[] dashPt;

    Pen(float widthPt, float... dashPt) {
      this.widthPt = widthPt;
      this.dashPt = dashPt;
    }
  }

  /** A grey area between two curves over the same x. */
  @SuppressWarnings("ArrayRecordComponent") // only read, inside this package
  record Band(String name, double[] x, double[] low, double[] high, Fill fill) {
    /** A grey band. */
    Band(String name, double[] x, double[] low, double[] high) {
      this(name, x, low, high, Fill.GREY);
    }
  }

  /** What a band is filled with. */
  enum Fill {
    GREY,
    /** For what is not sure. */
    WHITE
  }

  /** A line, with its name written beside it when there is one. */
  @SuppressWarnings("ArrayRecordComponent") // only read, inside this package
  record Curve(String name, double[] x, double[] y, Pen pen, boolean named) {}

  /** A level reached between an early and a late x, with a marker at the likely one. */
  record Span(double early, double likely, double late, double y, String label) {}

  /** A measured point, drawn as a cross. */
  record Dot(double x, double y) {}

  /** A hatched stretch over the whole height. */
  record Zone(double from, double to, String label) {}

  /** A window of time in a row of its own over the chart, with a dashed line down to the x axis. */
  record Lane(double early, double likely, double late, String label) {}

  /** A low panel over the chart with a quantity of its own over the same x. */
  @SuppressWarnings("ArrayRecordComponent") // only read, inside this package
  record Strip(String title, double[] x, double[] y, String unit) {}
}
