package doughtide.core.loaf;

import doughtide.core.forecast.Unknown;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import java.io.Serializable;
import java.util.List;

/**
 * What a probe in one loaf teaches about the refrigerator: its air and its film, by Bayes' rule on
 * a grid. The probe is taken to err by {@value #PROBE_CELSIUS} °C (starting value); the dough's
 * temperature when it went in by as much as any dough's, and that error is one for all readings.
 */
public final class ColdFit {
  private static final double PROBE_CELSIUS = 0.5;
  private static final double WIDEST_SCORE = 3.2;
  private static final int POINTS = 33;

  private ColdFit() {}

  /**
   * A reading of a probe in the middle of a loaf.
   *
   * @param hours since it went into the cold, 0.1…96
   * @param celsius −30…45 °C
   */
  public record Reading(double hours, double celsius) implements Serializable {
    /** Checks the ranges. */
    public Reading {
      Checks.inRange("time of the probe in the cold", hours, 0.1, 96, "h");
      Checks.inRange("temperature of the probe", celsius, -30, 45, "°C");
    }
  }

  /**
   * The cold as it is known after the readings.
   *
   * @param loaf the loaf
   * @param cold it went into, as known before
   * @param bulk the dough it was taken from
   * @param fromHours from mixing until it was shaped
   * @param coldAfterHours from then until it went into the cold
   * @param readings one or more
   */
  public static Cold of(
      LoafModel loaf,
      Cold cold,
      RiseCurve bulk,
      double fromHours,
      double coldAfterHours,
      List<Reading> readings) {
    if (readings.isEmpty()) {
      throw new InputException("core-readings.none", "a probe needs readings, for example 3h:12C");
    }
    double last = readings.stream().mapToDouble(Reading::hours).max().orElseThrow();
    Moments moments = new Moments();
    for (int f = 0; f < POINTS; f++) {
      double film = score(f);
      Grid grid = new Grid(loaf, bulk, fromHours, coldAfterHours, last, film);
      for (int a = 0; a < POINTS; a++) {
        double misfit = grid.misfit(readings, score(a), cold);
        double weight = Math.exp(-(film * film + score(a) * score(a) + misfit) / 2);
        moments.add(weight, score(a), film);
      }
    }
    return moments.known(cold);
  }

  private static double score(int point) {
    return WIDEST_SCORE * (2.0 * point / (POINTS - 1) - 1);
  }

  /** Loaves in one film; the core follows the air in a straight line. */
  private static final class Grid {
    private final PieceCurve middle;
    private final PieceCurve warmer;
    private final double start;
    private final double inCold;

    Grid(
        LoafModel loaf,
        RiseCurve bulk,
        double from,
        double coldAfterHours,
        double last,
        double film) {
      double hours = coldAfterHours + last + 0.1;
      this.middle = loaf.run(bulk, from, new LoafScores(0, film, 0.5), hours);
      this.warmer = loaf.run(bulk, from, new LoafScores(1, film, 0.5), hours);
      this.start = bulk.celsiusAt(from);
      this.inCold = from + coldAfterHours;
    }

    /** Chi square, with the error of the start common to all readings. */
    double misfit(List<Reading> readings, double air, Cold cold) {
      double squares = 0;
      double common = 0;
      double sensitivity = 0;
      for (Reading each : readings) {
        double at = inCold + each.hours();
        double core = middle.coreCelsiusAt(at);
        double miss = each.celsius() - core - air * (warmer.coreCelsiusAt(at) - core);
        double left = (core - cold.airCelsius(0)) / (start - cold.airCelsius(0));
        squares += miss * miss;
        common += left * miss;
        sensitivity += left * left;
      }
      double probe = PROBE_CELSIUS * PROBE_CELSIUS;
      double dough = Math.pow(Unknown.TEMPERATURE.deviation(), 2);
      return (squares - common * common * dough / (probe + dough * sensitivity)) / probe;
    }
  }

  private static final class Moments {
    private double sum;
    private double air;
    private double airSquares;
    private double film;
    private double filmSquares;

    void add(double weight, double airScore, double filmScore) {
      sum += weight;
      air += weight * airScore;
      airSquares += weight * airScore * airScore;
      film += weight * filmScore;
      filmSquares += weight * filmScore * filmScore;
    }

    Cold known(Cold cold) {
      double airMean = air / sum;
      double filmMean = film / sum;
      return cold.known(
          cold.offsetCelsius() + cold.deviationCelsius() * airMean,
          cold.deviationCelsius() * deviation(airSquares / sum, airMean),
          cold.filmLogFactor() + cold.filmLogDeviation() * filmMean,
          cold.filmLogDeviation() * deviation(filmSquares / sum, filmMean));
    }

    private static double deviation(double meanSquare, double mean) {
      return Math.sqrt(Math.max(meanSquare - mean * mean, 0));
    }
  }
}
