package doughtide.core.loaf;

import java.util.Arrays;
import java.util.OptionalDouble;

/** Looks for the smallest change with which one loaf in ten more is too far at the oven. */
final class SpoilSearch {
  private static final double ONE_IN_TEN = 0.1;

  private final TooFar tooFar;
  private final int loaves;

  private SpoilSearch(TooFar tooFar, int loaves) {
    this.tooFar = tooFar;
    this.loaves = loaves;
  }

  /** Whether a loaf is too far after a change; if it is, it is so after every larger one. */
  @FunctionalInterface
  interface TooFar {
    boolean is(int loaf, double change);
  }

  /**
   * Searches.
   *
   * @param tooFar which loaves are too far after which change
   * @param loaves how many there are, 1 or more
   * @param step the change in its smallest steps
   * @param most how many steps at most
   * @return the change; empty if even the largest does not
   */
  static OptionalDouble smallest(TooFar tooFar, int loaves, double step, int most) {
    return new SpoilSearch(tooFar, loaves).smallest(step, most);
  }

  private OptionalDouble smallest(double step, int most) {
    boolean[] far = after(0, new boolean[loaves], everyLoaf());
    double limit = share(far) + ONE_IN_TEN - 1e-9;
    boolean[] maybe = everyLoaf();
    int fine = 0;
    int spoiled = most + 1;
    while (spoiled - fine > 1) {
      int middle = (fine + spoiled) / 2;
      boolean[] found = after(middle * step, far, maybe);
      if (share(found) >= limit) {
        spoiled = middle;
        maybe = found;
      } else {
        fine = middle;
        far = found;
      }
    }
    return spoiled > most ? OptionalDouble.empty() : OptionalDouble.of(spoiled * step);
  }

  /** Looks only at loaves that are not known to be too far, and may be. */
  private boolean[] after(double change, boolean[] known, boolean[] maybe) {
    boolean[] far = new boolean[loaves];
    for (int i = 0; i < loaves; i++) {
      far[i] = known[i] || (maybe[i] && tooFar.is(i, change));
    }
    return far;
  }

  private boolean[] everyLoaf() {
    boolean[] all = new boolean[loaves];
    Arrays.fill(all, true);
    return all;
  }

  private double share(boolean[] far) {
    int count = 0;
    for (boolean each : far) {
      count += each ? 1 : 0;
    }
    return (double) count / loaves;
  }
}
