package doughtide.report.chart;

import doughtide.core.quantity.Hours;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Axes of hours since a moment, and of the clock. */
final class TimeAxes {
  private static final int MOST_TICKS = 12;

  private final double from;
  private final double to;
  private final Optional<Squeeze> squeeze;
  private final Words words;

  /** From hour to hour, with a stretch that is drawn narrower. */
  TimeAxes(double from, double to, Optional<Squeeze> squeeze, Words words) {
    this.from = from;
    this.to = to;
    this.squeeze = squeeze;
    this.words = words;
  }

  /** As far as its width goes. */
  private double span() {
    return to - from - squeeze.map(each -> each.lost(to)).orElse(0.0);
  }

  /**
   * Marks at full hours since the beginning.
   *
   * @param title what they count from
   */
  ChartAxis hours(String title) {
    double step = ChartAxis.step(span(), MOST_TICKS, 0.25, 0.5, 1, 2, 3, 4, 6, 12, 24, 48);
    List<ChartTick> ticks = new ArrayList<>();
    for (int i = 0; i * step <= to + 1e-9; i++) {
      if (i * step >= from) {
        int decimals = step >= 1 ? 0 : step == 0.5 ? 1 : 2;
        ticks.add(new ChartTick(i * step, words.number(i * step, decimals)));
      }
    }
    return new ChartAxis(from, to, ticks, title, List.of(words.say("chart.rowHours")), squeeze);
  }

  /** Marks at full hours of the clock, which need not be full hours of the axis. */
  ChartAxis clock(ZonedDateTime zero) {
    int step = (int) ChartAxis.step(span(), MOST_TICKS, 1, 2, 3, 4, 6, 12, 24, 48);
    boolean isOneDay = midnights(zero).isEmpty();
    List<ChartTick> ticks = new ArrayList<>();
    String before = "";
    for (ZonedDateTime at = firstFullHour(zero);
        Hours.between(zero, at) <= to;
        at = at.plusHours(1)) {
      if (at.getHour() % Math.min(step, 24) == 0) {
        String today = words.day(at);
        List<String> rows =
            isOneDay
                ? List.of(words.clock(at))
                : List.of(words.clock(at), today.equals(before) ? "" : today);
        ticks.add(new ChartTick(Hours.between(zero, at), rows));
        before = today;
      }
    }
    return new ChartAxis(from, to, ticks, "", List.of(words.say("chart.rowClock")), squeeze);
  }

  private ZonedDateTime firstFullHour(ZonedDateTime zero) {
    ZonedDateTime first = Hours.after(zero, from).truncatedTo(ChronoUnit.HOURS);
    return Hours.between(zero, first) < from - 1e-9 ? first.plusHours(1) : first;
  }

  /** Where a day begins inside the axis. */
  List<Double> midnights(ZonedDateTime zero) {
    List<Double> found = new ArrayList<>();
    ZonedDateTime day =
        Hours.after(zero, from).toLocalDate().plusDays(1).atStartOfDay(zero.getZone());
    for (;
        Hours.between(zero, day) < to;
        day = day.toLocalDate().plusDays(1).atStartOfDay(zero.getZone())) {
      found.add(Hours.between(zero, day));
    }
    return found;
  }
}
