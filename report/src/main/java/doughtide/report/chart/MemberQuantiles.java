package doughtide.report.chart;

import doughtide.core.Internal;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.quantity.Rise;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;

/**
 * Where 8 of 10 members of a forecast lie.
 *
 * @param low 10 % quantile
 * @param high 90 % quantile
 */
@Internal
public record MemberQuantiles(double low, double high) {

  /** Of finite values; absent for none. */
  public static Optional<MemberQuantiles> of(DoubleStream values) {
    double[] known = values.filter(Double::isFinite).toArray();
    if (known.length == 0) {
      return Optional.empty();
    }
    Percentile percentile = new Percentile().withEstimationType(EstimationType.R_7);
    percentile.setData(known);
    return Optional.of(new MemberQuantiles(percentile.evaluate(10), percentile.evaluate(90)));
  }

  /**
   * How many times as long one dough takes to a rise as another, member by member: both forecasts
   * draw the same bakers, so what a baker does not know about both cancels. Absent unless nine in
   * ten members of both get there.
   */
  public static Optional<MemberQuantiles> timesAsLong(
      RiseForecast slow, RiseForecast fast, Rise rise) {
    if (slow.hoursToRise(rise).late().isEmpty() || fast.hoursToRise(rise).late().isEmpty()) {
      return Optional.empty();
    }
    double[] late = slow.hoursOfMembers(rise);
    double[] soon = fast.hoursOfMembers(rise);
    return of(IntStream.range(0, late.length).mapToDouble(i -> late[i] / soon[i]));
  }
}
