package doughtide.core.learning;

import doughtide.core.forecast.Belief;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.RiseParameters;
import java.util.ArrayList;
import java.util.List;

/**
 * What the model says at the readings of one bake, in standard deviations off what was read, and
 * how that answers to each coordinate. Coordinates as in {@link LearningPrior}.
 */
final class BakeResponse {
  /**
   * Steps of the central differences. Truncation is of the order of the square, and the runs repeat
   * to about 1e-7, so both errors stay below 1e-4 of the slope. No reading tells of strength, the
   * last coordinate of a belief.
   */
  private static final double[] STEPS = {0.01, 0.02, 0.02, 0.005, 0.001, 0.02};

  /** The model has one pair of rate curves, which is used whatever the key. */
  static final String ONLY_CURVES = "";

  private static final double SHORTEST_HOURS = 0.001;

  private final RiseModel model;
  private final ReadingNoise noise;
  private final List<Reading> rises = new ArrayList<>();
  private final List<Reading> phs = new ArrayList<>();
  private final double hours;
  private final String occasion;

  BakeResponse(Bake bake, RiseParameters oneForm, ReadingNoise noise) {
    this.model = RiseModel.of(bake.formula(), bake.temperature()).with(oneForm);
    this.noise = noise;
    for (Reading reading : bake.readings()) {
      if (reading.rise().isPresent()) {
        rises.add(reading);
      }
      if (reading.ph().isPresent()) {
        phs.add(reading);
      }
    }
    this.occasion = bake.occasion();
    this.hours = Math.max(bake.lastHours(), SHORTEST_HOURS);
  }

  /** As in {@link Bake#occasion}. */
  String occasion() {
    return occasion;
  }

  int rows() {
    return rises.size() + phs.size();
  }

  private RiseCurve run(double[] x) {
    return model.with(Belief.unknownsAt(x, ONLY_CURVES)).runFast(hours);
  }

  /** Model minus reading, in standard deviations. */
  double[] residuals(double[] x) {
    return rows() == 0 ? new double[0] : residuals(x, run(x));
  }

  private double[] residuals(double[] x, RiseCurve curve) {
    double[] residual = new double[rows()];
    double read = Math.exp(x[LearningPrior.JAR]);
    double crowd = Math.sqrt(Math.max(1, rises.size() / (double) ReadingNoise.MOST_INDEPENDENT));
    int row = 0;
    for (Reading reading : rises) {
      Rise given = reading.rise().orElseThrow();
      double height = curve.riseAt(reading.hours()).heightTimes() * read;
      residual[row++] = (height - given.heightTimes()) / (noise.riseDeviation(given) * crowd);
    }
    for (Reading reading : phs) {
      double off = curve.phAt(reading.hours()) - reading.ph().orElseThrow();
      residual[row++] = off / (noise.ph() * Math.sqrt(phs.size()));
    }
    return residual;
  }

  /** Derivatives of the residuals: one row a reading, one column a coordinate. */
  double[][] slopes(double[] x) {
    double[][] slope = new double[rows()][LearningPrior.SIZE];
    if (rows() == 0) {
      return slope;
    }
    for (int i = 0; i < STEPS.length; i++) {
      putDifference(slope, i, residualsAt(x, i, STEPS[i]), residualsAt(x, i, -STEPS[i]), STEPS[i]);
    }
    RiseCurve curve = run(x);
    double step = 1e-4;
    double[] up = x.clone();
    double[] down = x.clone();
    up[LearningPrior.JAR] += step;
    down[LearningPrior.JAR] -= step;
    putDifference(slope, LearningPrior.JAR, residuals(up, curve), residuals(down, curve), step);
    return slope;
  }

  private double[] residualsAt(double[] x, int coordinate, double step) {
    double[] moved = x.clone();
    moved[coordinate] += step;
    return residuals(moved, run(moved));
  }

  private static void putDifference(
      double[][] slope, int column, double[] up, double[] down, double step) {
    for (int row = 0; row < slope.length; row++) {
      slope[row][column] = (up[row] - down[row]) / (2 * step);
    }
  }
}
