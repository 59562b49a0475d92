package doughtide.core.rise;

import java.util.Arrays;

/** The hours between which a piece is followed, from 0; the change of its air is one of them. */
final class PieceMesh {
  private static final double COLD_CELSIUS = 10; // so cold that a dough hardly goes on
  private static final double COOLING_HOURS = 3; // of a loaf of a kilogram (starting value)
  private static final double GROWTH = 1.25; // of each step against the one before
  private static final double LONGEST_STEPS = 4; // in steps of the warm dough

  private PieceMesh() {}

  /**
   * Equal steps up to the change of air and after it, which grow in a steady cold once a loaf has
   * cooled. The rise at the end is within 0.02 points of that of equal steps.
   */
  static double[] of(PieceBody body, double shift, double hours, double stepHours) {
    double cool = Math.max(body.changesFromHours(), 0) + COOLING_HOURS;
    if (hours <= cool || !body.isSteadyFrom(cool) || body.airCelsius(cool, shift) > COLD_CELSIUS) {
      return even(body.changesFromHours(), hours, stepHours);
    }
    double[] warm = even(body.changesFromHours(), cool, stepHours);
    double[] grown = grown(hours - cool, stepHours);
    double[] mesh = Arrays.copyOf(warm, warm.length + grown.length);
    for (int i = 0; i < grown.length; i++) {
      mesh[warm.length + i] = cool + grown[i];
    }
    return mesh;
  }

  /** Equal steps up to the change of air and after it. */
  private static double[] even(double change, double hours, double stepHours) {
    double first = Math.min(Math.max(change, 0), hours);
    int before = (int) Math.ceil(first / stepHours - 1e-9);
    int behind = (int) Math.ceil((hours - first) / stepHours - 1e-9);
    int all = Math.max(1, before + behind);
    double[] mesh = new double[all + 1];
    for (int i = 1; i <= all; i++) {
      mesh[i] =
          i <= before
              ? first * i / before
              : first + (hours - first) * (i - before) / Math.max(1, all - before);
    }
    return mesh;
  }

  /** Steps that grow, stretched so that they end where they must. */
  private static double[] grown(double hours, double stepHours) {
    double[] ends = new double[(int) Math.ceil(hours / stepHours)];
    double step = stepHours;
    int count = 0;
    double end = 0;
    while (end < hours - 1e-9) {
      step = Math.min(step * GROWTH, LONGEST_STEPS * stepHours);
      end += step;
      ends[count++] = end;
    }
    for (int i = 0; i < count; i++) {
      ends[i] *= hours / end;
    }
    return Arrays.copyOf(ends, count);
  }
}
