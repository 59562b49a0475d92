package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.rise.RiseCurve;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * Steers by the sample jar: at this hour and this height, wait so much or shape now. A lively dough
 * stands higher at an hour, and has less time left; a line through the members of the ensemble says
 * how much.
 *
 * @param looks hours at which to look, ascending; none where heights tell nothing
 */
@Internal
public record JarRule(List<AtHour> looks) implements Serializable {
  private static final double[] WAIT_HOURS = {0, 0.5, 1, 1.5};
  private static final double[] AROUND_HOURS = {-1, 0, 1};
  private static final double SOONEST_HOURS = 0.5;
  private static final double NEAR_HOURS = 3; // what counts for the line
  private static final int FEWEST = 8;

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
   * @param shapeHours when each is at its shape point, infinite for never
   * @param likely hour of the shape point
   */
  static JarRule of(List<RiseCurve> curves, double[] shapeHours, double likely) {
    List<AtHour> looks = new ArrayList<>();
    for (double around : AROUND_HOURS) {
      double at = Math.rint((likely + around) * 2) / 2;
      if (at >= SOONEST_HOURS && at <= curves.get(0).endHours()) {
        List<Wait> waits = waits(curves, shapeHours, at);
        if (!waits.isEmpty()) {
          looks.add(new AtHour(at, waits));
        }
      }
    }
    return new JarRule(looks);
  }

  private static List<Wait> waits(List<RiseCurve> curves, double[] shapeHours, double at) {
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i < shapeHours.length; i++) {
      if (Math.abs(shapeHours[i] - at) <= NEAR_HOURS) {
        line.addData(curves.get(i).riseAt(at).percent(), shapeHours[i] - at);
      }
    }
    List<Wait> waits = new ArrayList<>();
    if (line.getN() < FEWEST || !(line.getSlope() < 0)) {
      return waits;
    }
    for (double wait : WAIT_HOURS) {
      double percent = (wait - line.getIntercept()) / line.getSlope();
      if (percent > 0) {
        waits.add(new Wait(percent, wait));
      }
    }
    return waits;
  }
}
