package doughtide.report.chart;

import doughtide.core.Internal;
import java.util.List;

/**
 * Where the plot of a chart lies on its sheet, in points from the upper left corner, for what is
 * drawn over it later.
 *
 * @param top edge of the plot
 * @param bottom edge of the plot
 * @param yLeast the value at the lower edge
 * @param yMost the value at the upper edge
 * @param xs places on the level axis, ascending; it is even between one and the next
 */
@Internal
public record ChartFrame(double top, double bottom, double yLeast, double yMost, List<Place> xs) {

  /** Copies the list. */
  public ChartFrame {
    xs = List.copyOf(xs);
  }

  /**
   * A place on the level axis.
   *
   * @param value on the axis
   * @param at points from the left edge of the sheet
   */
  @Internal
  public record Place(double value, double at) {}
}
