package doughtide.core.forecast;

import doughtide.core.quantity.Checks;
import doughtide.core.rise.DoughTemperature;
import java.util.ArrayList;
import java.util.List;

/** What has to be said about the dough's temperature. */
public final class TemperatureWarnings {
  /** Sourdough yeast does not grow from here on (Gänzle's figures for bakers). */
  public static final double WARMEST_GROWTH_CELSIUS = 35;

  /** Dough begins to freeze a little below this; no hours are given from here down. */
  public static final double FREEZING_CELSIUS = 0;

  private static final double THIN_BELOW_CELSIUS = 12;
  private static final double THIN_ABOVE_CELSIUS = 30;
  private static final double VERY_THIN_BELOW_CELSIUS = 2;

  private TemperatureWarnings() {}

  public static boolean forbidsHours(Warning warning) {
    return warning.kind() == Warning.Kind.OUTSIDE_GROWTH || warning.kind() == Warning.Kind.FREEZING;
  }

  public static List<Warning> of(DoughTemperature temperature, double hours) {
    double low = temperature.lowestCelsius(hours);
    double high = temperature.highestCelsius(hours);
    List<Warning> warnings = new ArrayList<>();
    if (high >= WARMEST_GROWTH_CELSIUS) {
      warnings.add(tooWarm(high));
    } else if (low <= FREEZING_CELSIUS) {
      warnings.add(freezing(low));
    } else {
      addThinData(warnings, low, high);
    }
    return warnings;
  }

  public static Warning tooWarm(double high) {
    return new Warning(
        Warning.Kind.OUTSIDE_GROWTH,
        "At "
            + degrees(high)
            + " the dough is outside the growth of sourdough yeast, which stops at about 35 °C: no hours are given.",
        "Cool the dough below 30 °C; colder water is the quickest way.");
  }

  public static Warning freezing(double low) {
    return new Warning(
        Warning.Kind.FREEZING,
        "At " + degrees(low) + " the dough freezes and does not ferment: no hours are given.",
        "Keep it above 0 °C; a refrigerator at 2 to 5 °C holds it back without freezing it.");
  }

  private static void addThinData(List<Warning> warnings, double low, double high) {
    if (low < VERY_THIN_BELOW_CELSIUS) {
      warnings.add(thin(low, "below 2 °C"));
    } else if (low < THIN_BELOW_CELSIUS) {
      warnings.add(thin(low, "below 12 °C"));
    }
    if (high > THIN_ABOVE_CELSIUS) {
      warnings.add(thin(high, "above 30 °C"));
    }
  }

  private static Warning thin(double celsius, String where) {
    return new Warning(
        Warning.Kind.THIN_DATA,
        "At "
            + degrees(celsius)
            + " the window is wide: few measurements of rates exist "
            + where
            + ".",
        "Trust the look of the dough over the clock, and note your readings.");
  }

  private static String degrees(double celsius) {
    return Checks.plain(Math.rint(celsius * 10) / 10) + " °C";
  }
}
