package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Steers by the sample jar: at this hour and this height, wait so much or shape now. A lively dough
 * stands higher at an hour, and has less time left. A height is worth as much here as a reading is
 * that is noted: the rule tells the height whose reading would make the likely shape hour so late.
 *
 * @param looks hours at which to look, ascending; none where heights tell nothing
 */
@Internal
public record JarRule(List<AtHour> looks) implements Serializable {
  private static final double[] WAIT_HOURS = {0, 0.5, 1, 1.5};
  private static final double[] AROUND_HOURS = {-1, 0, 1};
  private static final double SOONEST_HOURS = 0.5;
  private static final double ACCURACY_PERCENT = 0.05;
  private static final double LONGEST_HOURS = RiseModel.LONGEST_HOURS; // for never
  private static final ReadingNoise READING = ReadingNoise.standard();

  /** Copies the looks. */
  public JarRule {
    looks = List.copyOf(looks);
  }

  /**
   * One look at the jar.
   *
   * @param hours since mixing
   * @param waits from shaping now on, the height falling
   */
  @Internal
  public record AtHour(double hours, List<Wait> waits) implements Serializable {
    /** Copies the waits. */
    public AtHour {
      waits = List.copyOf(waits);
    }
  }

  /**
   * How long to wait at a height.
   *
   * @param risePercent of the jar
   * @param hours 0 for shape now
   */
  @Internal
  public record Wait(double risePercent, double hours) implements Serializable {}

  /**
   * From the members of an ensemble.
   *
   * @param curves their jars
   * @param weights of the members
   * @param shapeHours when each is at its shape point, infinite for never
   * @param likely hour of the shape point
   */
  static JarRule of(List<RiseCurve> curves, double[] weights, double[] shapeHours, double likely) {
    List<AtHour> looks = new ArrayList<>();
    for (double around : AROUND_HOURS) {
      double at = Math.rint((likely + around) * 2) / 2;
      if (at >= SOONEST_HOURS && at <= curves.get(0).endHours()) {
        List<Wait> waits = new Look(curves, weights, shapeHours, at).waits();
        if (!waits.isEmpty()) {
          looks.add(new AtHour(at, waits));
        }
      }
    }
    return new JarRule(looks);
  }

  /** What a height read at one hour would make of the shape hour. */
  private static final class Look {
    private final double at;
    private final double[] weights;
    private final double[] shapeHours;
    private final double[] heights; // times the height at the start
    private final double highestPercent;

    Look(List<RiseCurve> curves, double[] weights, double[] shapeHours, double at) {
      this.at = at;
      this.weights = weights;
      this.shapeHours = shapeHours;
      this.heights = new double[shapeHours.length];
      Arrays.setAll(heights, i -> curves.get(i).riseAt(at).heightTimes());
      this.highestPercent = 100 * (Arrays.stream(heights).max().orElse(1) - 1);
    }

    List<Wait> waits() {
      List<Wait> waits = new ArrayList<>();
      double longest = hoursLeft(0);
      double shortest = hoursLeft(highestPercent);
      for (double wait : WAIT_HOURS) {
        if (wait < longest && wait > shortest) {
          waits.add(new Wait(percentAt(wait), wait));
        }
      }
      return waits;
    }

    private double percentAt(double wait) {
      double low = 0;
      double high = highestPercent;
      while (high - low > ACCURACY_PERCENT) {
        double middle = (low + high) / 2;
        if (hoursLeft(middle) > wait) {
          low = middle;
        } else {
          high = middle;
        }
      }
      return high;
    }

    /** Likely hours to the shape point once this height has been read. */
    private double hoursLeft(double percent) {
      Rise read = Rise.ofPercent(percent);
      double deviation = READING.riseDeviation(read);
      double[] then = new double[shapeHours.length];
      for (int i = 0; i < then.length; i++) {
        double residual = (heights[i] - read.heightTimes()) / deviation;
        then[i] = weights[i] * Math.exp(READING.logLikelihood(residual));
      }
      return Distribution.of(shapeHours, then).quantile(0.5).orElse(LONGEST_HOURS) - at;
    }
  }
}
