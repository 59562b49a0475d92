package doughtide.report.phone;

import java.util.Arrays;
import java.util.Base64;

/**
 * Numbers of the members of a forecast, each in two bytes (the lower first) between a lowest and a
 * highest one; the largest code stands for infinite. As text in the alphabet of RFC 4648.
 *
 * @param low the lowest finite number
 * @param high the highest
 * @param text the numbers in the order of the members
 */
record MemberNumbers(double low, double high, String text) {

  private static final int STEPS = 65_534;
  private static final int NEVER = 65_535;

  /** Between their own lowest and highest. */
  static MemberNumbers of(double[] values) {
    double low = finite(values).min().orElse(0);
    return between(low, finite(values).max().orElse(low), values);
  }

  private static java.util.stream.DoubleStream finite(double[] values) {
    return Arrays.stream(values).filter(Double::isFinite);
  }

  /**
   * Between two given ones.
   *
   * @param values inside them, or infinite
   */
  static MemberNumbers between(double low, double high, double[] values) {
    byte[] bytes = new byte[2 * values.length];
    double width = Math.max(high - low, 1e-9);
    for (int i = 0; i < values.length; i++) {
      double part = Math.min(Math.max((values[i] - low) / width, 0), 1);
      int code = Double.isFinite(values[i]) ? (int) Math.round(STEPS * part) : NEVER;
      bytes[2 * i] = (byte) code;
      bytes[2 * i + 1] = (byte) (code >> 8);
    }
    return new MemberNumbers(low, low + width, Base64.getEncoder().encodeToString(bytes));
  }
}
