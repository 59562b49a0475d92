package doughtide.core.quantity;

import doughtide.core.Internal;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Range checks that name the quantity, the value given and what is allowed. */
@Internal
public final class Checks {
  private static final double WARMEST_ROOM = 45;

  private Checks() {}

  /**
   * Returns {@code value} if it is finite and inside the range, both ends included. The key of the
   * refusal is the name's words joined by hyphens.
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
    return value >= low && value <= high
        ? value
        : inRange(InputException.keyOf(name), name, value, low, high, unit);
  }

  /**
   * As {@link #inRange(String, double, double, double, String)}, for a name that holds a part of
   * its own.
   *
   * @param key the same whatever the name holds
   * @param name what the value is, in the trade's words
   * @param value the value given
   * @param low lowest value allowed
   * @param high highest value allowed
   * @param unit the unit as printed; may be empty
   * @return {@code value}
   * @throws InputException if the value is not a number or lies outside
   */
  public static double inRange(
      String key, String name, double value, double low, double high, String unit) {
    if (value >= low && value <= high) {
      return value;
    }
    String sentence = outside(name, value, low, high, unit) + didYouMean(value, low, high, unit);
    InputException.Limits limits = new InputException.Limits(low, high, unit);
    throw InputException.outside(key, sentence, name, value, limits);
  }

  /**
   * Returns a number that was worked out, or for which a result is asked, if it lies where it must.
   *
   * @param name what the number is
   * @param value the number
   * @param low lowest value possible
   * @param high highest value possible
   * @param unit the unit as printed; may be empty
   * @return {@code value}
   * @throws InnerFault if it lies outside or is not a number: the program that asked is wrong
   */
  public static double inside(String name, double value, double low, double high, String unit) {
    if (value >= low && value <= high) {
      return value;
    }
    throw new InnerFault(outside(name, value, low, high, unit));
  }

  /**
   * Returns what was given, if it was. The key of the refusal is the name's with {@code .missing}.
   *
   * @param name what it is, in the trade's words
   * @param value anything but null
   * @return {@code value}
   * @throws InputException if it is null
   */
  public static <T> T given(String name, @Nullable T value) {
    if (value == null) {
      throw new InputException(
          InputException.keyOf(name) + ".missing", name + " is missing: give one");
    }
    return value;
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
        + unit;
  }

  /**
   * A decimal point lost in typing a temperature of a room, 240 for 24.0, is the one slip that can
   * be guessed: elsewhere a tenth is as often nonsense.
   */
  private static String didYouMean(double value, double low, double high, String unit) {
    double tenth = value / 10;
    boolean plausible =
        unit.equals("°C")
            && value > high
            && tenth > Math.max(low, 0)
            && tenth < Math.min(high, WARMEST_ROOM);
    return plausible ? " (did you mean " + plain(tenth) + " °C?)" : "";
  }

  /**
   * Numbers in a line for logs, to the hundredth, a stroke between them and a dash for none.
   *
   * @param values early, likely and late, or low, likely and high
   * @return the line, without a unit
   */
  public static String line(OptionalDouble... values) {
    return Arrays.stream(values)
        .map(each -> each.isEmpty() ? "–" : plain(Math.round(each.getAsDouble() * 100) / 100.0))
        .collect(Collectors.joining(" / "));
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
