package doughtide.core.forecast;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Value;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The line a chart draws for the likely dough: through the median hour of each rise, up to where
 * less than a hundredth of the height is missing to the median of the greatest rises; level from
 * there until the likely dough begins to fall; then down as the median dough falls from its own
 * top. It has no step, never falls before its top, ends where fewer than half of the doughs were
 * followed, and a mark at the median hour of a rise lies on it, within half a hundredth of the
 * height.
 *
 * <pre>{@code
 * LikelyLine line = LikelyLine.of(forecast);
 * double percent = line.percentAt(4.5);
 * }</pre>
 */
@Internal
public final class LikelyLine extends Value {
  private static final long serialVersionUID = 1;

  private static final double CLOSE_SHARE = 0.01; // of the height; nobody reads a jar better
  private static final int FALLS = 80;

  private final double[] hours;
  private final double[] percent;

  private LikelyLine(List<double[]> points) {
    this.hours = points.stream().mapToDouble(point -> point[0]).toArray();
    this.percent = points.stream().mapToDouble(point -> point[1]).toArray();
  }

  /**
   * Of a forecast.
   *
   * @param forecast must be possible
   */
  public static LikelyLine of(RiseForecast forecast) {
    double top = forecast.greatestPercent().quantile(0.5).orElseThrow();
    OptionalDouble falls = forecast.beginsToFall().quantile(0.5);
    double close = top - CLOSE_SHARE * (100 + top);
    List<double[]> points = new ArrayList<>();
    for (double[] point : forecast.likelyHighest()) {
      points.add(point);
      if (falls.isPresent() && point[1] >= close) {
        break;
      }
    }
    double from = last(points)[0];
    if (falls.orElse(from) > from) {
      points.add(new double[] {falls.getAsDouble(), last(points)[1]});
    }
    if (falls.isPresent()) {
      addFall(points, forecast);
    }
    return new LikelyLine(points);
  }

  private static void addFall(List<double[]> points, RiseForecast forecast) {
    double from = last(points)[0];
    double top = last(points)[1];
    double left = forecast.hours() - from;
    for (int i = 1; i <= FALLS && left > 0; i++) {
      double after = left * i / FALLS;
      OptionalDouble part = forecast.partOfTop(after).quantile(0.5);
      if (part.isEmpty()) {
        return;
      }
      double percent = part.getAsDouble() * (100 + top) - 100;
      points.add(new double[] {from + after, Math.min(percent, last(points)[1])});
    }
  }

  private static double[] last(List<double[]> points) {
    return points.get(points.size() - 1);
  }

  /** Hours of its points, ascending from 0, a copy. */
  public double[] hours() {
    return hours.clone();
  }

  /** The last hour for which it is known. */
  public double endHours() {
    return hours[hours.length - 1];
  }

  /**
   * The likely rise at an hour, percent.
   *
   * @param at 0…{@link #endHours()}
   */
  public double percentAt(double at) {
    Checks.inside("hour of the likely line", at, 0, endHours(), "h");
    int found = Arrays.binarySearch(hours, at);
    if (found >= 0) {
      return percent[found];
    }
    int after = -found - 1;
    double part = (at - hours[after - 1]) / (hours[after] - hours[after - 1]);
    return percent[after - 1] + part * (percent[after] - percent[after - 1]);
  }

  @Override
  protected List<?> parts() {
    return List.of(list(hours), list(percent));
  }

  @Override
  public String toString() {
    return "through "
        + hours.length
        + " points, to "
        + Checks.plain(percent[percent.length - 1])
        + " % at "
        + Checks.plain(hours[hours.length - 1])
        + " h";
  }
}
