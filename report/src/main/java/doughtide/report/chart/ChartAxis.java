package doughtide.report.chart;

import doughtide.core.Internal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * An axis with the marks that are to stand on it.
 *
 * @param min where it begins, in the unit of what is drawn: mostly hours or per cent
 * @param max where it ends, in the same unit
 * @param ticks its marks, in the same unit
 * @param title what it shows, with its unit
 * @param rowNames what each row of labels holds, as long as the rows of the ticks
 * @param squeeze a stretch that is drawn narrower, if there is one
 */
@Internal
public record ChartAxis(
    double min,
    double max,
    List<ChartTick> ticks,
    String title,
    List<String> rowNames,
    Optional<Squeeze> squeeze) {
  public ChartAxis {
    if (!(min < max) || !Double.isFinite(min) || !Double.isFinite(max)) {
      throw new IllegalArgumentException("axis from " + min + " to " + max);
    }
    ticks = List.copyOf(ticks);
    rowNames = List.copyOf(rowNames);
  }

  /** An even axis. */
  public ChartAxis(
      double min, double max, List<ChartTick> ticks, String title, List<String> rowNames) {
    this(min, max, ticks, title, rowNames, Optional.empty());
  }

  public static ChartAxis every(
      double step, double min, double max, String title, DoubleFunction<String> label) {
    List<ChartTick> ticks = new ArrayList<>();
    for (long i = Math.round(Math.ceil(min / step - 1e-9)); i * step <= max + 1e-9 * step; i++) {
      ticks.add(new ChartTick(i * step, label.apply(i * step)));
    }
    return new ChartAxis(min, max, ticks, title, List.of());
  }

  /** The smallest of the steps that needs at most the given number of ticks, else the largest. */
  static double step(double span, int most, double... steps) {
    for (double step : steps) {
      if (span / step <= most) {
        return step;
      }
    }
    return steps[steps.length - 1];
  }

  /** Position between 0 at the lower end and 1 at the upper end. */
  double fraction(double value) {
    return (value - min - lost(value)) / (max - min - lost(max));
  }

  private double lost(double value) {
    return squeeze.map(each -> each.lost(value)).orElse(0.0);
  }

  double clamp(double value) {
    return Math.max(min, Math.min(max, value));
  }
}
