package doughtide.core.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Range checks that name the quantity, the value given and what is allowed. */
public final class Checks {
  private Checks() {}

  /**
   * Returns {@code value} if it is finite and inside the range, both ends included.
   *
   * @param name what the value is, in the trade's words
   * @param value the value given
   * @param low lowest value allowed
   * @param high highest value allowed
   * @param unit the unit as printed, for example {@code "°C"} or {@code "%"}; may be empty
   * @return {@code value}
   * @throws InputException if the value is not a number or lies outside
   */
  public static double inRange(String name, double value, double low, double high, String unit) {
    if (value >= low && value <= high) {
      return value;
    }
    throw new InputException(outside(name, value, low, high, unit));
  }

  private static String outside(String name, double value, double low, double high, String unit) {
    String space = unit.isEmpty() ? "" : " ";
    return name
        + " "
        + plain(value)
        + space
        + unit
        + " is outside "
        + plain(low)
        + "…"
        + plain(high)
        + space
        + unit
        + didYouMean(value, low, high, unit);
  }

  /** A decimal point lost in typing is the commonest slip: 240 for 24.0. */
  private static String didYouMean(double value, double low, double high, String unit) {
    double tenth = value / 10;
    boolean plausible = Double.isFinite(value) && value > high && tenth > low && tenth < high;
    return plausible ? " (did you mean " + plain(tenth) + " " + unit + "?)" : "";
  }

  /**
   * A number as people write it: at most four decimals, no exponent for ordinary sizes, always a
   * decimal point.
   *
   * @param value any double
   * @return the text, the same in every locale
   */
  public static String plain(double value) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    if (Math.abs(value) >= 1e9) {
      return String.format(Locale.ROOT, "%.3g", value);
    }
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(4, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
