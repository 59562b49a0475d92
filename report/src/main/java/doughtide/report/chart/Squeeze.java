package doughtide.report.chart;

/**
 * A stretch of an axis that is drawn narrower than the rest.
 *
 * @param from where it begins, in the unit of the axis
 * @param to where it ends
 * @param share of its width that is left, above 0, at most 1
 */
record Squeeze(double from, double to, double share) {
  Squeeze {
    if (!(from < to) || !(share > 0) || !(share <= 1)) {
      throw new IllegalArgumentException("stretch from " + from + " to " + to + " at " + share);
    }
  }

  /** How much an axis up to here has lost. */
  double lost(double at) {
    return (1 - share) * (Math.max(from, Math.min(to, at)) - from);
  }

  boolean contains(double at) {
    return at > from && at < to;
  }
}
