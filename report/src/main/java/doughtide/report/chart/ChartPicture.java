package doughtide.report.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What stands in a {@link PrintedChart}, in the units of its axes. Meaning is carried by line
 * style, hatching and words, never by colour: one code means one thing in every picture.
 *
 * @param title first line
 * @param answer what the chart says, in bold under the title
 * @param subtitle further lines
 * @param x axis along the foot
 * @param under a second axis under it for the same places
 * @param y upright axis
 * @param right a second scale for the upright axis
 * @param notes lines under the chart
 * @param dots what was measured
 */
record ChartPicture(
    String title,
    List<String> answer,
    List<String> subtitle,
    ChartAxis x,
    Optional<ChartAxis> under,
    ChartAxis y,
    Optional<ChartAxis> right,
    List<Band> bands,
    List<Curve> curves,
    List<Span> spans,
    List<Zone> zones,
    List<Bench> bench,
    List<Lane> lanes,
    List<Upright> uprights,
    List<Mark> marks,
    Optional<Ribbon> ribbon,
    Optional<TwentyDots> twenty,
    Optional<Strip> strip,
    List<String> notes,
    List<Dot> dots) {

  ChartPicture {
    answer = List.copyOf(answer);
    subtitle = List.copyOf(subtitle);
    bands = List.copyOf(bands);
    curves = List.copyOf(curves);
    spans = List.copyOf(spans);
    zones = List.copyOf(zones);
    bench = List.copyOf(bench);
    lanes = List.copyOf(lanes);
    uprights = List.copyOf(uprights);
    marks = List.copyOf(marks);
    notes = List.copyOf(notes);
    dots = List.copyOf(dots);
  }

  /** An empty picture to be filled. */
  static Builder on(ChartAxis x, ChartAxis y) {
    return new Builder(x, y);
  }

  /** Collects what stands in a picture. */
  static final class Builder {
    private final ChartAxis x;
    private final ChartAxis y;
    private String title = "";
    private final List<String> answer = new ArrayList<>();
    private final List<String> subtitle = new ArrayList<>();
    private Optional<ChartAxis> under = Optional.empty();
    private Optional<ChartAxis> right = Optional.empty();
    private final List<Band> bands = new ArrayList<>();
    private final List<Curve> curves = new ArrayList<>();
    private final List<Span> spans = new ArrayList<>();
    private final List<Zone> zones = new ArrayList<>();
    private final List<Bench> bench = new ArrayList<>();
    private final List<Lane> lanes = new ArrayList<>();
    private final List<Upright> uprights = new ArrayList<>();
    private final List<Mark> marks = new ArrayList<>();
    private Optional<Ribbon> ribbon = Optional.empty();
    private Optional<TwentyDots> twenty = Optional.empty();
    private Optional<Strip> strip = Optional.empty();
    private final List<String> notes = new ArrayList<>();
    private final List<Dot> dots = new ArrayList<>();

    private Builder(ChartAxis x, ChartAxis y) {
      this.x = x;
      this.y = y;
    }

    Builder title(String text) {
      title = text;
      return this;
    }

    Builder answer(List<String> lines) {
      answer.addAll(lines);
      return this;
    }

    Builder subtitle(List<String> lines) {
      subtitle.addAll(lines);
      return this;
    }

    Builder under(ChartAxis axis) {
      under = Optional.of(axis);
      return this;
    }

    Builder right(ChartAxis axis) {
      right = Optional.of(axis);
      return this;
    }

    Builder bands(List<Band> more) {
      bands.addAll(more);
      return this;
    }

    Builder curves(List<Curve> more) {
      curves.addAll(more);
      return this;
    }

    Builder spans(List<Span> more) {
      spans.addAll(more);
      return this;
    }

    Builder zones(List<Zone> more) {
      zones.addAll(more);
      return this;
    }

    Builder bench(List<Bench> more) {
      bench.addAll(more);
      return this;
    }

    Builder lanes(List<Lane> more) {
      lanes.addAll(more);
      return this;
    }

    Builder uprights(List<Upright> more) {
      uprights.addAll(more);
      return this;
    }

    Builder marks(List<Mark> more) {
      marks.addAll(more);
      return this;
    }

    Builder ribbon(Optional<Ribbon> one) {
      ribbon = one;
      return this;
    }

    Builder twenty(Optional<TwentyDots> one) {
      twenty = one;
      return this;
    }

    Builder strip(Optional<Strip> one) {
      strip = one;
      return this;
    }

    Builder notes(List<String> lines) {
      notes.addAll(lines);
      return this;
    }

    Builder dots(List<Dot> more) {
      dots.addAll(more);
      return this;
    }

    PrintedChart chart() {
      return new PrintedChart(picture());
    }

    ChartPicture picture() {
      return new ChartPicture(
          title, answer, subtitle, x, under, y, right, bands, curves, spans, zones, bench, lanes,
          uprights, marks, ribbon, twenty, strip, notes, dots);
    }
  }

  /** How a line is drawn. */
  @SuppressWarnings("ImmutableEnumChecker") // only read, inside this package
  enum Pen {
    /** What is likely. */
    BOLD(2.4f),
    THIN(0.7f),
    SOLID(1.5f),
    DASHED(1.5f, 7, 4),
    DOTTED(1.7f, 1.7f, 3.2f),
    DASH_DOT(1.5f, 8, 3, 1.5f, 3),
    LONG_DASH(1.5f, 14, 5),
    DASH_DOT_DOT(1.5f, 8, 3, 1.5f, 3, 1.5f, 3);

    final float widthPt;
    final float[] dashPt;

    Pen(float widthPt, float... dashPt) {
      this.widthPt = widthPt;
      this.dashPt = dashPt;
    }
  }

  /** An area between two curves over the same x. */
  @SuppressWarnings("ArrayRecordComponent") // only read, inside this package
  record Band(String name, double[] x, double[] low, double[] high, Fill fill) {
    /** Eight of ten. */
    Band(String name, double[] x, double[] low, double[] high) {
      this(name, x, low, high, Fill.DOTTED);
    }
  }

  /** What an area is filled with. */
  enum Fill {
    /** Grey with small dots, which a copy keeps: eight of ten. */
    DOTTED,
    GREY,
    /** For what is not sure, or not yet. */
    WHITE,
    /** Hands are needed. */
    BLACK,
    /** Slanted lines: in the cold. */
    COLD
  }

  /** A line, with its name written beside it when there is one. */
  @SuppressWarnings("ArrayRecordComponent") // only read, inside this package
  record Curve(String name, double[] x, double[] y, Pen pen, boolean named) {}

  /** A level reached between an early and a late x, with a ring at the likely one. */
  record Span(double early, double likely, double late, double y, String label) {}

  /** A measured point, drawn as a cross. */
  record Dot(double x, double y) {}

  /** A hatched stretch over the whole height: in the cold. */
  record Zone(double from, double to, String label) {}

  /** A thick line along the top of the plot: at the bench. */
  record Bench(double from, double to) {}

  /** A window of time in a row of its own over the chart, with a dashed line down to the x axis. */
  record Lane(double early, double likely, double late, String label) {}

  /** A line over the whole height, with its name at its top where it has one. */
  record Upright(double x, String label, Kind kind) {
    /** What it stands for. */
    enum Kind {
      /** Thin and unbroken: a day begins. */
      MIDNIGHT,
      /** Dashed: something to do or to keep. */
      MOMENT
    }
  }

  /** A diamond on a line, with a dashed line down to the foot: the answer. */
  record Mark(double x, double y, String label) {}

  /** What an hour means, in a row under the plot. */
  record Ribbon(String name, List<Stage> stages) {
    Ribbon {
      stages = List.copyOf(stages);
    }
  }

  /** A stretch of the ribbon. */
  record Stage(double from, double to, String label, Fill fill) {}

  /**
   * Twenty dots, each one dough in twenty.
   *
   * @param name at its left
   * @param at those that get there
   * @param laterOrNever how many are not there within the axis
   */
  @SuppressWarnings("ArrayRecordComponent") // only read, inside this package
  record TwentyDots(String name, double[] at, int laterOrNever) {}

  /** A low panel over the chart with a quantity of its own over the same x. */
  @SuppressWarnings("ArrayRecordComponent") // only read, inside this package
  record Strip(String title, double[] x, double[] y, String unit) {}
}
