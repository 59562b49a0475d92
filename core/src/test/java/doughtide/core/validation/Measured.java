package doughtide.core.validation;

import doughtide.core.forecast.TimeWindow;
import java.util.Locale;

/** What the model gives for a check; three equal parts for a single figure. */
record Measured(double early, double likely, double late) {
  static Measured of(double value) {
    return new Measured(value, value, value);
  }

  static Measured of(TimeWindow window) {
    return new Measured(
        window.early().orElse(Double.POSITIVE_INFINITY),
        window.likely().orElse(Double.POSITIVE_INFINITY),
        window.late().orElse(Double.POSITIVE_INFINITY));
  }

  static Measured parse(String text) {
    String[] parts = text.split("/");
    double first = Double.parseDouble(parts[0]);
    return parts.length == 1
        ? of(first)
        : new Measured(first, Double.parseDouble(parts[1]), Double.parseDouble(parts[2]));
  }

  boolean meets(Check check) {
    return switch (check.test()) {
      case "value", "likely" -> likely >= check.low() && likely <= check.high();
      case "window" -> early <= check.high() && late >= check.low();
      default -> throw new AssertionError("unknown kind of test " + check.test());
    };
  }

  /** Close enough to a recorded figure: 2 %, or below anything that matters. */
  boolean isNear(Measured recorded) {
    return near(early, recorded.early)
        && near(likely, recorded.likely)
        && near(late, recorded.late);
  }

  private static boolean near(double a, double b) {
    return a == b || Math.abs(a - b) <= 0.02 * Math.abs(b) || Math.abs(a - b) <= 2e-8;
  }

  String text() {
    boolean single = early == likely && likely == late;
    return single ? text(likely) : text(early) + "/" + text(likely) + "/" + text(late);
  }

  private static String text(double value) {
    if (Double.isInfinite(value)) {
      return Double.toString(value);
    }
    double size = Math.abs(value);
    if (size > 0 && size < 5e-4) {
      return String.format(Locale.ROOT, "%.2e", value);
    }
    return String.format(Locale.ROOT, size < 0.1 ? "%.4f" : size < 100 ? "%.3f" : "%.1f", value);
  }
}
