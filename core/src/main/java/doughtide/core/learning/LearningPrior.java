package doughtide.core.learning;

import doughtide.core.Internal;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.Unknown;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Value;
import java.util.List;

/**
 * What is believed before any reading, in two levels: how bakers differ from each other, and how
 * one baker's bakes differ from that baker's mean. Coordinates are those of {@link Belief}, and the
 * jar's misreading last. Immutable.
 *
 * <p>The standard prior splits {@link Belief#standard()} so that the squares of both levels add up
 * to its own. How much of it is one baker's from bake to bake depends on the {@link
 * StarterRoutine}; the deviations are starting values, set so that the hours to 50 % scatter as
 * stated there. The rate belongs to culture and flour and changes little. Temperature 0.5 °C: where
 * the probe sits, this time. Jar 1.5 %: 1 mm on a starting height of 65 mm; 3 % between bakers.
 */
@Internal
public final class LearningPrior extends Value {
  private static final long serialVersionUID = 1;
  static final int SIZE = Belief.SIZE + 1;
  static final int JAR = Belief.SIZE;

  private final double[] mean;
  private final double[] bakerDeviation;
  private final double[] bakeDeviation;

  private LearningPrior(double[] mean, double[] bakerDeviation, double[] bakeDeviation) {
    this.mean = mean;
    this.bakerDeviation = bakerDeviation;
    this.bakeDeviation = bakeDeviation;
  }

  /** For a baker whose routine is not known. */
  public static LearningPrior standard() {
    return of(StarterRoutine.UNKNOWN);
  }

  /** For a baker who keeps the starter in a stated way. */
  public static LearningPrior of(StarterRoutine routine) {
    double[] bake = routine.bakeDeviation();
    double[] baker = new double[SIZE];
    for (int i = 0; i < Belief.SIZE; i++) {
      double all = Unknown.values()[i].deviation();
      baker[i] = Math.sqrt(all * all - bake[i] * bake[i]);
    }
    baker[JAR] = 0.03;
    return new LearningPrior(new double[SIZE], baker, bake);
  }

  /**
   * A prior of one's own.
   *
   * @param mean eight numbers, −3…3
   * @param bakerDeviation eight standard deviations between bakers, 1e-6…3
   * @param bakeDeviation eight standard deviations between the bakes of one baker, 0…3
   * @throws InputException if a size is wrong or a number out of range
   */
  public static LearningPrior of(double[] mean, double[] bakerDeviation, double[] bakeDeviation) {
    if (mean.length != SIZE || bakerDeviation.length != SIZE || bakeDeviation.length != SIZE) {
      throw new InputException(
          "prior.size", "a prior for learning needs " + SIZE + " numbers in each part");
    }
    for (int i = 0; i < SIZE; i++) {
      Checks.inRange("prior mean", mean[i], -3, 3, "");
      Checks.inRange("prior deviation between bakers", bakerDeviation[i], 1e-6, 3, "");
      Checks.inRange("prior deviation between bakes", bakeDeviation[i], 0, 3, "");
    }
    return new LearningPrior(mean.clone(), bakerDeviation.clone(), bakeDeviation.clone());
  }

  /** Prior mean, a copy. */
  public double[] mean() {
    return mean.clone();
  }

  /** Standard deviations between bakers, a copy. */
  public double[] bakerDeviation() {
    return bakerDeviation.clone();
  }

  /** Standard deviations between the bakes of one baker, a copy. */
  public double[] bakeDeviation() {
    return bakeDeviation.clone();
  }

  /** What is believed of the next bake of a baker nobody knows. */
  public Belief nextBake() {
    double[] middle = new double[Belief.SIZE];
    double[][] covariance = new double[Belief.SIZE][Belief.SIZE];
    for (int i = 0; i < Belief.SIZE; i++) {
      middle[i] = mean[i];
      covariance[i][i] =
          bakerDeviation[i] * bakerDeviation[i] + bakeDeviation[i] * bakeDeviation[i];
    }
    return Belief.of(middle, covariance);
  }

  /** How the jar of a baker nobody knows misreads at the next bake. */
  public JarError nextJar() {
    return new JarError(mean[JAR], Math.hypot(bakerDeviation[JAR], bakeDeviation[JAR]));
  }

  @Override
  protected List<?> parts() {
    return List.of(list(mean), list(bakerDeviation), list(bakeDeviation));
  }

  @Override
  public String toString() {
    return "mean "
        + list(mean)
        + ", deviation between bakers "
        + list(bakerDeviation)
        + ", between bakes "
        + list(bakeDeviation);
  }
}
