package doughtide.core.day;

import java.util.Arrays;

/** The times in which hands are busy, and whether there are enough pairs of them. */
final class BusyHands {
  private static final double SAME_HOURS = 1e-6;

  private double[] begins; // ascending
  private double[] ends; // ascending
  private int number;

  BusyHands() {
    this(new double[64], new double[64], 0);
  }

  private BusyHands(double[] begins, double[] ends, int number) {
    this.begins = begins;
    this.ends = ends;
    this.number = number;
  }

  BusyHands copy() {
    return new BusyHands(begins.clone(), ends.clone(), number);
  }

  /** Adds a step; one that takes no time needs nobody. */
  void add(BakeStep step) {
    if (step.toHour() > step.fromHour()) {
      add(step.fromHour(), step.toHour());
    }
  }

  void add(double fromHour, double toHour) {
    if (number == begins.length) {
      begins = Arrays.copyOf(begins, 2 * number);
      ends = Arrays.copyOf(ends, 2 * number);
    }
    insert(begins, fromHour);
    insert(ends, toHour);
    number++;
  }

  private void insert(double[] sorted, double hour) {
    int place = number;
    while (place > 0 && sorted[place - 1] > hour) {
      sorted[place] = sorted[place - 1];
      place--;
    }
    sorted[place] = hour;
  }

  /** Whether never more pairs of hands are busy at once than there are. */
  boolean areEnough(int hands) {
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
