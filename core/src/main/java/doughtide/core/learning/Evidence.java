package doughtide.core.learning;

import java.util.Arrays;
import java.util.List;

/** Weighs the rate curve forms by how well each explains the readings. */
final class Evidence {
  private Evidence() {}

  /** Weights with the sum 1. */
  static double[] weights(double[] logEvidence) {
    double[] alike = new double[logEvidence.length];
    Arrays.fill(alike, 1);
    return weights(logEvidence, alike);
  }

  /** Weights with the sum 1, from what was believed before. */
  static double[] weights(double[] logEvidence, double[] before) {
    double best = Arrays.stream(logEvidence).max().orElse(0);
    double[] weights = new double[logEvidence.length];
    double sum = 0;
    for (int k = 0; k < weights.length; k++) {
      weights[k] = before[k] * Math.exp(logEvidence[k] - best);
      sum += weights[k];
    }
    for (int k = 0; k < weights.length; k++) {
      weights[k] /= sum;
    }
    return weights;
  }

  /** Mean and deviation of a weighted mixture. */
  static JarError mixed(List<JarError> jars, double[] weights) {
    double mean = 0;
    double square = 0;
    for (int k = 0; k < weights.length; k++) {
      JarError jar = jars.get(k);
      mean += weights[k] * jar.mean();
      square += weights[k] * (jar.mean() * jar.mean() + jar.deviation() * jar.deviation());
    }
    return new JarError(mean, Math.sqrt(Math.max(square - mean * mean, 0)));
  }
}
