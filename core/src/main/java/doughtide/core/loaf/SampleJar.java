package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TemperatureWarnings;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a small sample jar shows when the dough it was taken from has reached a rise. A little dough
 * takes on the temperature of the room sooner than much, so in a cool room the jar lags behind and
 * in a warm one it runs ahead. Both are the same dough with the same unknowns, run at their own
 * temperatures.
 *
 * <pre>{@code
 * Optional<SampleJar> jar = SampleJar.when(forecast, jarTemperature, Rise.ofPercent(50));
 * }</pre>
 *
 * @param point rise of the dough
 * @param reads what the jar shows then, per cent, with its uncertainty
 * @param hours likely hour at which it happens
 * @param doughCelsius temperature of the dough then, °C
 * @param jarCelsius temperature in the jar then, °C
 */
@Internal
public record SampleJar(
    Rise point, ShapeForecast.RiseRange reads, double hours, double doughCelsius, double jarCelsius)
    implements Serializable {
  private static final double SHORTEST_HOURS = 0.001;

  /**
   * Runs the jar beside the dough.
   *
   * @param dough the dough's forecast
   * @param jar temperature of the dough in the jar
   * @param point rise of the dough that is waited for
   * @return empty if the likely dough does not get there or no hours can be given
   */
  public static Optional<SampleJar> when(RiseForecast dough, DoughTemperature jar, Rise point) {
    if (!dough.isPossible() || forbidden(jar, dough.hours())) {
      return Optional.empty();
    }
    RiseCurve likelyDough = dough.typical().runFast(dough.hours());
    OptionalDouble at = likelyDough.hoursToRise(point);
    if (at.isEmpty()) {
      return Optional.empty();
    }
    double hours = at.getAsDouble();
    RiseCurve likelyJar = dough.typical().with(jar).runFast(dough.hours());
    return Optional.of(
        new SampleJar(
            point,
            reads(dough, jar, point),
            hours,
            likelyDough.celsiusAt(hours),
            likelyJar.celsiusAt(hours)));
  }

  private static boolean forbidden(DoughTemperature jar, double hours) {
    return TemperatureWarnings.of(jar, hours).stream().anyMatch(TemperatureWarnings::forbidsHours);
  }

  private static ShapeForecast.RiseRange reads(
      RiseForecast dough, DoughTemperature jar, Rise point) {
    RiseModel inJar = dough.typical().with(jar);
    List<RiseCurve> curves = dough.curves();
    double[] reads = new double[curves.size()];
    int known = 0;
    for (int i = 0; i < reads.length; i++) {
      OptionalDouble at = curves.get(i).hoursToRise(point);
      if (at.isPresent() && at.getAsDouble() >= SHORTEST_HOURS) {
        RiseModel member = inJar.with(dough.ensemble().members().get(i));
        reads[known++] = member.runFast(at.getAsDouble()).riseAt(at.getAsDouble()).percent();
      }
    }
    return known == 0
        ? ShapeForecast.RiseRange.NONE
        : ShapeForecast.RiseRange.of(Distribution.of(Arrays.copyOf(reads, known)));
  }

  /** How much warmer the dough is than the jar, K. */
  public double doughWarmerKelvin() {
    return doughCelsius - jarCelsius;
  }
}
