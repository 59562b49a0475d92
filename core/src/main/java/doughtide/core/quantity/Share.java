package doughtide.core.quantity;

import java.io.Serializable;

/**
 * A share of something, as bakers write it in per cent: hydration, salt, starter, prefermented
 * flour.
 *
 * @param fraction 0…5, where 1 is 100 %
 */
public record Share(double fraction) implements Comparable<Share>, Serializable {
  /**
   * @param fraction 0…5, where 1 is 100 %
   * @throws InputException outside 0…500 % or not a number
   */
  public Share {
    Checks.inRange("share", fraction * 100, 0, 500, "%");
  }

  /**
   * @param percent 0…500
   * @return the share
   */
  public static Share ofPercent(double percent) {
    return new Share(percent / 100);
  }

  /**
   * @param fraction 0…5
   * @return the share
   */
  public static Share ofFraction(double fraction) {
    return new Share(fraction);
  }

  /** {@return per cent} */
  public double percent() {
    return fraction * 100;
  }

  @Override
  public int compareTo(Share other) {
    return Double.compare(fraction, other.fraction);
  }
}
