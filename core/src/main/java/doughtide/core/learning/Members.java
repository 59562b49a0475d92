package doughtide.core.learning;

import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.quantity.Rise;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.util.MathArrays;

/** The members of a dough in hand, each with its jar, before the readings weigh them. */
final class Members {
  private static final int SHUFFLE = 20_261_126; // any number; always the same draws

  private final RiseForecast forecast; // its weights are those before the readings
  private final double[] factors; // height read over true height
  private final double worth; // how many equal members these were when they were drawn
  private final boolean drawn;

  private Members(RiseForecast forecast, double[] factors, double worth, boolean drawn) {
    this.forecast = forecast;
    this.factors = factors;
    this.worth = worth;
    this.drawn = drawn;
  }

  static Members of(RiseForecast forecast, JarError jar) {
    int size = forecast.ensemble().size();
    return new Members(forecast, jar.factorsOfMembers(size), size, false);
  }

  /**
   * Members that count alike after some readings, each of these as often as it is likely. They
   * weigh less before the readings, so that the same readings make them alike.
   */
  Members drawn(int number, List<Reading> readings) {
    double[] log = logLikelihoods(readings);
    RiseForecast weighted = weighted(log);
    int[] places = weighted.placesDrawn(number);
    MathArrays.shuffle(places, new Well19937c(SHUFFLE)); // else slow doughs meet like loaves
    double best = best(log);
    double[] before = Arrays.stream(places).mapToDouble(i -> Math.exp(best - log[i])).toArray();
    double[] jars = Arrays.stream(places).mapToDouble(i -> factors[i]).toArray();
    return new Members(forecast.at(places, before), jars, worth(weighted), true);
  }

  boolean isDrawn() {
    return drawn;
  }

  /** Height read over true height. */
  double factor(int member) {
    return factors[member];
  }

  /** The members as the readings weigh them. */
  RiseForecast weighted(double[] logLikelihoods) {
    double[] weights = forecast.ensemble().weights();
    double best = best(logLikelihoods);
    for (int i = 0; i < weights.length; i++) {
      weights[i] *= Math.exp(logLikelihoods[i] - best);
    }
    return forecast.weighted(weights);
  }

  private static double best(double[] log) {
    return Arrays.stream(log).max().orElse(0);
  }

  double[] logLikelihoods(List<Reading> readings) {
    double[] log = new double[factors.length];
    long heights = readings.stream().filter(each -> each.rise().isPresent()).count();
    double crowd = Math.max(1, heights / (double) ReadingNoise.MOST_INDEPENDENT);
    for (Reading reading : readings) {
      reading.rise().ifPresent(rise -> addLikelihood(reading.hours(), rise, crowd, log));
    }
    return log;
  }

  private void addLikelihood(double hours, Rise read, double crowd, double[] log) {
    ReadingNoise noise = ReadingNoise.standard();
    double deviation = noise.riseDeviation(read) * Math.sqrt(crowd);
    double[] rises = forecast.risesOfMembers(hours);
    for (int i = 0; i < log.length; i++) {
      log[i] += noise.logLikelihood(((1 + rises[i]) * factors[i] - read.heightTimes()) / deviation);
    }
  }

  /** How many equal members the weighted ones are worth: none that was drawn twice counts twice. */
  double worthOf(RiseForecast weighted) {
    return worth(weighted) * worth / factors.length;
  }

  /** Kish's effective number. */
  static double worth(RiseForecast weighted) {
    double[] weights = weighted.ensemble().weights();
    double sum = Arrays.stream(weights).sum();
    return sum * sum / Arrays.stream(weights).map(weight -> weight * weight).sum();
  }
}
