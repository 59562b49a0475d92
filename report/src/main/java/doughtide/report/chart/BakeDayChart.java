package doughtide.report.chart;

import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.forecast.TimeWindow;
import doughtide.report.words.Words;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The chart of a bake day: a bar for each thing that happens, over the clock, with bold marks where
 * hands are needed and a thin line for a window of time. Hatched stretches are the hours at the
 * bench.
 *
 * <pre>{@code
 * PrintedChart chart = BakeDayChart.of("Bread ready by Sun 12:00", plan, zero, words);
 * }</pre>
 */
public final class BakeDayChart {
  private static final double HALF_BAR = 0.26;
  private static final double EDGE_HOURS = 0.7;
  private static final int MOST_TICKS = 13;

  private final BakePlan plan;
  private final ZonedDateTime zero;
  private final Words words;
  private final List<Row> rows = new ArrayList<>();

  private BakeDayChart(BakePlan plan, ZonedDateTime zero, Words words) {
    this.plan = plan;
    this.zero = zero;
    this.words = words;
    addRows();
  }

  /** A bar, and the window of its end if it has one. */
  private record Row(String name, double from, double to, Optional<TimeWindow> end) {}

  /**
   * The chart, ready to be written or put on a page.
   *
   * @param title over the chart
   * @param plan what is shown
   * @param zero the moment of hour 0 of the plan's axis
   * @param words the language
   */
  public static PrintedChart of(String title, BakePlan plan, ZonedDateTime zero, Words words) {
    return new PrintedChart(
        new BakeDayChart(plan, zero, words).picture(title), OptionalDouble.empty());
  }

  /** Title and a description in a sentence. */
  public static ChartCaption caption(String title, BakePlan plan, ZonedDateTime zero, Words words) {
    StringBuilder description = new StringBuilder(words.say("day.key"));
    for (Row row : new BakeDayChart(plan, zero, words).rows) {
      description.append(' ').append(row.name()).append('.');
    }
    return new ChartCaption(title, description.toString(), words.language());
  }

  private void addRows() {
    row("day.starter", plan.feed().feedHour(), plan.mixHour(), Optional.empty());
    if (plan.bulkColdFrom().isPresent()) {
      double cold = plan.bulkColdFrom().getAsDouble();
      double out = plan.bulkColdTo().orElseThrow();
      row("day.bulk", plan.mixHour(), cold, Optional.empty());
      row("day.bulkCold", cold, out, Optional.empty());
      row("day.bulk", out, plan.bulkEndHour(), Optional.of(plan.shapeWindow()));
    } else {
      row("day.bulk", plan.mixHour(), plan.bulkEndHour(), Optional.of(plan.shapeWindow()));
    }
    row("day.shape", plan.bulkEndHour(), plan.basketHour(), Optional.empty());
    String proof =
        switch (plan.proofKind()) {
          case COLD -> "day.proofCold";
          case ROOM -> "day.proofRoom";
        };
    row(proof, plan.basketHour(), plan.ovenHour(), Optional.empty());
    double out = last(BakeStep.Kind.COOL);
    row("day.oven", plan.ovenHour() - plan.day().oven().preheatHours(), out, Optional.empty());
    row("day.cool", out, last(BakeStep.Kind.READY), Optional.empty());
  }

  private void row(String key, double from, double to, Optional<TimeWindow> end) {
    String span = words.clock(clock(from)) + "–" + words.clock(clock(to));
    rows.add(new Row(words.say(key) + " " + span, from, to, end));
  }

  private double last(BakeStep.Kind kind) {
    return plan.steps().stream()
        .filter(step -> step.kind() == kind)
        .mapToDouble(BakeStep::fromHour)
        .max()
        .orElse(plan.ovenHour());
  }

  private ChartPicture picture(String title) {
    double from = rows.get(0).from() - EDGE_HOURS;
    double to = Math.max(last(BakeStep.Kind.READY), plan.day().readyHour()) + EDGE_HOURS;
    List<ChartPicture.Band> bars = new ArrayList<>();
    List<ChartPicture.Curve> hands = new ArrayList<>();
    List<ChartPicture.Span> windows = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      double y = rows.size() - i;
      addBars(bars, i, row, y);
      row.end().ifPresent(window -> window(windows, window, y - 0.38));
    }
    int number = 0;
    for (BakeStep step : plan.steps()) {
      if (step.kind().handsOn()) {
        hands.add(hand("hand " + number++, step.fromHour(), rowOf(step)));
      }
    }
    return new ChartPicture(
        title,
        List.of(),
        clockAxis(from, to),
        new ChartAxis(0.2, rows.size() + 0.8, names(), "", List.of()),
        Optional.empty(),
        bars,
        hands,
        windows,
        bench(from, to),
        List.of(),
        Optional.empty(),
        List.of(words.say("day.key")));
  }

  /** Grey as far as it is sure, white where the end may fall. */
  private static void addBars(List<ChartPicture.Band> bars, int number, Row row, double y) {
    double early = row.end().map(TimeWindow::early).orElse(OptionalDouble.empty()).orElse(row.to());
    double late = row.end().map(TimeWindow::late).orElse(OptionalDouble.empty()).orElse(row.to());
    double sure = Math.max(Math.min(early, row.to()), row.from() + 0.05);
    bars.add(bar("bar " + number, row.from(), sure, y, ChartPicture.Fill.GREY));
    double end = Math.max(late, row.to());
    if (end > sure + 0.05) {
      bars.add(bar("end " + number, sure, end, y, ChartPicture.Fill.WHITE));
    }
  }

  private static ChartPicture.Band bar(
      String name, double from, double to, double y, ChartPicture.Fill fill) {
    return new ChartPicture.Band(
        name,
        new double[] {from, to},
        new double[] {y - HALF_BAR, y - HALF_BAR},
        new double[] {y + HALF_BAR, y + HALF_BAR},
        fill);
  }

  private static ChartPicture.Curve hand(String name, double at, double y) {
    return new ChartPicture.Curve(
        name,
        new double[] {at, at},
        new double[] {y - HALF_BAR, y + HALF_BAR},
        ChartPicture.Pen.BOLD,
        false);
  }

  private static void window(List<ChartPicture.Span> windows, TimeWindow window, double y) {
    if (window.early().isPresent() && window.late().isPresent()) {
      double likely = window.likely().orElse(window.early().getAsDouble());
      windows.add(
          new ChartPicture.Span(
              window.early().getAsDouble(), likely, window.late().getAsDouble(), y, ""));
    }
  }

  /** The row in whose bar a step lies, from above. */
  private double rowOf(BakeStep step) {
    int best = 0;
    for (int i = 0; i < rows.size(); i++) {
      if (step.fromHour() >= rows.get(i).from() - 1e-6
          && step.fromHour() <= rows.get(i).to() + 1e-6) {
        best = i;
      }
    }
    return rows.size() - best;
  }

  private List<ChartTick> names() {
    List<ChartTick> ticks = new ArrayList<>();
    for (int i = rows.size() - 1; i >= 0; i--) {
      ticks.add(new ChartTick(rows.size() - i, rows.get(i).name()));
    }
    return ticks;
  }

  private List<ChartPicture.Zone> bench(double from, double to) {
    return plan.day().bench().intervals().stream()
        .filter(at -> at.toHour() > from && at.fromHour() < to)
        .map(
            at ->
                new ChartPicture.Zone(Math.max(from, at.fromHour()), Math.min(to, at.toHour()), ""))
        .toList();
  }

  /** Marks at full hours of the clock, which need not be full hours of the axis. */
  private ChartAxis clockAxis(double from, double to) {
    int step = (int) ChartAxis.step(to - from, MOST_TICKS, 1, 2, 3, 4, 6, 12);
    List<ChartTick> ticks = new ArrayList<>();
    String day = "";
    ZonedDateTime at = clock(from).truncatedTo(ChronoUnit.HOURS).plusHours(1);
    for (; hour(at) <= to; at = at.plusHours(1)) {
      if (at.getHour() % step == 0) {
        String today = words.day(at);
        ticks.add(
            new ChartTick(hour(at), List.of(words.clock(at), today.equals(day) ? "" : today)));
        day = today;
      }
    }
    return new ChartAxis(from, to, ticks, "", List.of());
  }

  private ZonedDateTime clock(double hour) {
    return zero.plus(Duration.ofSeconds(Math.round(hour * 60) * 60));
  }

  private double hour(ZonedDateTime moment) {
    return Duration.between(zero, moment).toSeconds() / 3600.0;
  }
}
