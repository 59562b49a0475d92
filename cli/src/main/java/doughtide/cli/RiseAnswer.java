package doughtide.cli;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Unknown;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Rise;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;

/**
 * What the rise command found out, before it is printed.
 *
 * @param dough the dough as described
 * @param title heading of the chart, if one was given
 * @param temperatureWords the dough's temperature in words
 * @param clock clock times, if the time of mixing was given
 * @param forecast the rise with its uncertainty
 * @param passings when each rise is passed, ascending
 * @param over from when the dough is past its best
 * @param curve the band over time; no points if no hours can be given
 * @param widens what makes the window wide, largest first
 * @param warnings what the baker should know
 */
record RiseAnswer(
    DoughOptions dough,
    Optional<String> title,
    String temperatureWords,
    Optional<ClockTimes> clock,
    RiseForecast forecast,
    List<Passing> passings,
    TimeWindow over,
    List<RiseForecast.BandPoint> curve,
    List<Widening> widens,
    List<Warning> warnings) {

  /** Points of the curve: one every 1/192 of the time, dense enough to draw. */
  private static final int CURVE_POINTS = 193;

  RiseAnswer {
    passings = List.copyOf(passings);
    curve = List.copyOf(curve);
    widens = List.copyOf(widens);
    warnings = List.copyOf(warnings);
  }

  /**
   * When a rise is passed.
   *
   * @param rise the rise
   * @param when early, likely, late
   */
  record Passing(Rise rise, TimeWindow when) {}

  /**
   * What makes a window wide.
   *
   * @param unknown what is not known
   * @param share of the variance of the time to {@code at}, 0…1
   * @param at the rise whose time is meant
   */
  record Widening(Unknown unknown, double share, Rise at) {}

  /** Asks the forecast everything the answer needs. */
  static RiseAnswer of(
      DoughOptions dough,
      Optional<String> title,
      String temperatureWords,
      Optional<ClockTimes> clock,
      RiseForecast forecast,
      SortedSet<Rise> rises) {
    List<Passing> passings =
        rises.stream().map(rise -> new Passing(rise, forecast.hoursToRise(rise))).toList();
    return new RiseAnswer(
        dough,
        title,
        temperatureWords,
        clock,
        forecast,
        passings,
        forecast.hoursToOver(),
        forecast.band(CURVE_POINTS),
        widens(forecast),
        forecast.warnings());
  }

  private static List<Widening> widens(RiseForecast forecast) {
    for (double percent : new double[] {50, 30, 25}) {
      Rise at = Rise.ofPercent(percent);
      Map<Unknown, Double> shares = forecast.whatWidens(at);
      if (!shares.isEmpty()) {
        List<Widening> widens = new ArrayList<>();
        shares.forEach((unknown, share) -> widens.add(new Widening(unknown, share, at)));
        widens.sort(Comparator.comparingDouble(Widening::share).reversed());
        return widens;
      }
    }
    return List.of();
  }

  /** Whether hours can be given at all. */
  boolean isPossible() {
    return forecast.isPossible();
  }
}
