package doughtide.core.day;

import java.util.Arrays;

/** The times in which hands are busy, and whether there are enough pairs of them. */
final class BusyHands {
  private static final double SAME_HOURS = 1e-6;

  private double[] from;
  private double[] to;
  private int number;

  BusyHands() {
    this(new double[64], new double[64], 0);
  }

  private BusyHands(double[] from, double[] to, int number) {
    this.from = from;
    this.to = to;
    this.number = number;
  }

  BusyHands copy() {
    return new BusyHands(from.clone(), to.clone(), number);
  }

  /** Adds a step; one that takes no time needs nobody. */
  void add(BakeStep step) {
    if (step.toHour() > step.fromHour()) {
      add(step.fromHour(), step.toHour());
    }
  }

  void add(double fromHour, double toHour) {
    if (number == from.length) {
      from = Arrays.copyOf(from, 2 * number);
      to = Arrays.copyOf(to, 2 * number);
    }
    from[number] = fromHour;
    to[number++] = toHour;
  }

  /** Whether never more pairs of hands are busy at once than there are. */
  boolean areEnough(int hands) {
    double[] begins = Arrays.copyOf(from, number);
    double[] ends = Arrays.copyOf(to, number);
    Arrays.sort(begins);
    Arrays.sort(ends);
    int ended = 0;
    for (int begun = 1; begun <= number; begun++) {
      while (ends[ended] <= begins[begun - 1] + SAME_HOURS) {
        ended++;
      }
      if (begun - ended > hands) {
        return false;
      }
    }
    return true;
  }
}
