package doughtide.core.forecast;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.rise.DoughTemperature;
import java.util.ArrayList;
import java.util.List;

/** What has to be said about the dough's temperature. */
@Internal
public final class TemperatureWarnings {
  /**
   * No hours are given from here on, whichever yeast rules the starter (starting value): one kind
   * stops at 35 °C (Gänzle's figures for bakers), the other slows down (Molinet et al. 2025), and
   * no baker's figures are known.
   */
  public static final double WARMEST_GROWTH_CELSIUS = 36;

  private static final double STARTERS_PART_CELSIUS = 29;

  /** Dough begins to freeze a little below this; no hours are given from here down. */
  public static final double FREEZING_CELSIUS = 0;

  private static final double THIN_BELOW_CELSIUS = 12;
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
      addThinData(warnings, low);
      if (high > STARTERS_PART_CELSIUS) {
        warnings.add(Warning.Kind.YEAST_KIND.with(tenths(high)));
      }
    }
    if (high < WARMEST_GROWTH_CELSIUS
        && temperature.highestSpikeCelsius() >= WARMEST_GROWTH_CELSIUS) {
      warnings.add(Warning.Kind.LOGGER_SPIKE.with(tenths(temperature.highestSpikeCelsius())));
    }
    return warnings;
  }

  /**
   * The refusal of a temperature that forbids hours.
   *
   * @param warning one that {@link #forbidsHours}
   */
  public static InputException refusal(Warning warning) {
    String at = "at " + Checks.plain(warning.number("celsius")) + " °C ";
    return new InputException(
        "dough.no-growth",
        warning.kind() == Warning.Kind.FREEZING
            ? at + "the dough freezes and no hours are given: keep it above 0 °C"
            : at
                + "the dough is too warm for one kind of sourdough yeast and at the edge of the"
                + " other, and from 36 °C no hours are given: cool the dough below 30 °C");
  }

  public static Warning tooWarm(double high) {
    return Warning.Kind.OUTSIDE_GROWTH.with(tenths(high));
  }

  public static Warning freezing(double low) {
    return Warning.Kind.FREEZING.with(tenths(low));
  }

  private static void addThinData(List<Warning> warnings, double low) {
    if (low < VERY_THIN_BELOW_CELSIUS) {
      warnings.add(Warning.Kind.THIN_DATA_COLD.with(tenths(low), VERY_THIN_BELOW_CELSIUS));
    } else if (low < THIN_BELOW_CELSIUS) {
      warnings.add(Warning.Kind.THIN_DATA_COLD.with(tenths(low), THIN_BELOW_CELSIUS));
    }
  }

  private static double tenths(double celsius) {
    return Math.rint(celsius * 10) / 10;
  }
}
