package doughtide.core.forecast;

import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The median pH of all runs over time, worked out when first asked for. */
final class LikelyPh implements Serializable {
  private static final long serialVersionUID = 1;

  private final SummaryGrid grid;
  private final List<float[]> runs;
  private final double[] weights;
  private transient volatile float @Nullable [] medians;

  /**
   * Keeps what it is given.
   *
   * @param runs pH at each hour of the grid, one array a run
   * @param weights one a run
   */
  LikelyPh(SummaryGrid grid, List<float[]> runs, double[] weights) {
    this.grid = grid;
    this.runs = runs;
    this.weights = weights;
  }

  /** The median at an hour; there must be a run. */
  double at(double hours) {
    float[] known = medians;
    if (known == null) {
      known = medians();
      medians = known;
    }
    return grid.valueAt(hours, known);
  }

  private float[] medians() {
    float[] made = new float[grid.size()];
    for (int i = 0; i < made.length; i++) {
      int place = i;
      double[] each = runs.stream().mapToDouble(run -> run[place]).toArray();
      made[i] = (float) Distribution.of(each, weights).quantile(0.5).orElseThrow();
    }
    return made;
  }
}
