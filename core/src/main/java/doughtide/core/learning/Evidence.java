package doughtide.core.learning;

import doughtide.core.rise.RiseParameters.RateCurves;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Weighs the rate curve forms by how well each explains the readings. */
final class Evidence {
  private Evidence() {}

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

  /** The weights by the keys of their rate curves. */
  static Map<String, Double> byKey(List<RateCurves> curves, double[] weights) {
    Map<String, Double> byKey = new LinkedHashMap<>();
    for (int k = 0; k < weights.length; k++) {
      byKey.put(curves.get(k).key(), weights[k]);
    }
    return byKey;
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
