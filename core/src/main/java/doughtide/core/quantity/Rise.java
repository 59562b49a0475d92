package doughtide.core.quantity;

import java.io.Serializable;

/**
 * How far a dough has risen: the gain in volume over the volume after mixing, as an undisturbed
 * straight-sided sample jar shows it. 50 % means one and a half times the starting height, 100 %
 * means doubled.
 *
 * @param fraction −0.5…20, where 1 is 100 % (a dough that is cooled shrinks, so small negative
 *     rises exist)
 */
public record Rise(double fraction) implements Comparable<Rise>, Serializable {
  /**
   * @param fraction −0.5…20, where 1 is 100 %
   * @throws InputException outside −50…2000 % or not a number
   */
  public Rise {
    Checks.inRange("rise", fraction * 100, -50, 2000, "%");
  }

  /**
   * @param percent −50…2000
   * @return the rise
   */
  public static Rise ofPercent(double percent) {
    return new Rise(percent / 100);
  }

  /** {@return per cent of the starting volume} */
  public double percent() {
    return fraction * 100;
  }

  /** {@return height in a straight-sided jar, in times the starting height} */
  public double heightTimes() {
    return 1 + fraction;
  }

  @Override
  public int compareTo(Rise other) {
    return Double.compare(fraction, other.fraction);
  }
}
