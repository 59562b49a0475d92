package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.Unknown;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import java.io.Serializable;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;

/**
 * What a probe in one loaf teaches about the cold: its air and its film, by Bayes' rule on a grid.
 * The probe is taken to err by {@value #PROBE_CELSIUS} °C (starting value); the dough's temperature
 * when it went in by as much as any dough's, and that error is one for all readings.
 */
@Internal
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
  @Internal
  public record Reading(double hours, double celsius) implements Serializable {
    /** Checks the ranges. */
    public Reading {
      Checks.inRange("time of the probe in the cold", hours, 0.1, 96, "h");
      Checks.inRange("temperature of the probe", celsius, -30, 45, "°C");
    }
  }

  /**
   * A proof whose cold is known as after the readings. The loaf is taken to have been shaped at the
   * likely shape point, unless it is known when it went into the cold, and its dough to be one
   * whose unknowns are all at their middle: what the dough makes of the core is small beside the
   * cold.
   *
   * @param bulk the dough
   * @param proof with a cold
   * @param intoColdHours from mixing until the loaf went into the cold, if that is known
   * @param readings of the probe, for the hour at which the loaf went into the cold
   * @throws InputException if there is no cold, no shape point where one is needed, or no reading
   */
  public static Proof taught(
      RiseForecast bulk,
      Proof proof,
      OptionalDouble intoColdHours,
      DoubleFunction<List<Reading>> readings) {
    Cold cold =
        proof
            .coldPlace()
            .orElseThrow(
                () ->
                    new InputException(
                        "core-readings.no-cold", "a probe in the cold needs the cold, 4 °C say"));
    ShapeForecast.Night night =
        ShapeForecaster.of(bulk, proof)
            .forecast()
            .likely()
            .orElseThrow(
                () ->
                    new InputException(
                        "core-readings.no-shape",
                        "a probe needs a loaf that can be shaped: see without its readings"));
    double inCold = intoColdHours.orElse(night.proofFromHours() + proof.roomHours());
    RiseCurve typical = RiseModel.of(bulk.formula(), bulk.temperature()).runFast(bulk.hours());
    double from = Math.max(0, Math.min(inCold - proof.roomHours(), typical.endHours()));
    return proof.withCold(
        of(
            LoafModel.of(bulk.formula(), proof, LoafSettings.FULL),
            cold,
            typical,
            from,
            proof.roomHours(),
            readings.apply(inCold)));
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
