package doughtide.core.loaf;

import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.quantity.Rise;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/** When the members of a forecast are shaped, each with its weight. */
final class MemberShapes {
  private static final double AT_ONCE_HOURS = 1.0 / 60;

  private final List<MemberShape> members;
  private final double[] weights;

  MemberShapes(List<MemberShape> members, double[] weights) {
    this.members = members;
    this.weights = weights;
  }

  double[] each(ToDoubleFunction<MemberShape> value) {
    return members.stream().mapToDouble(value).toArray();
  }

  Distribution over(ToDoubleFunction<MemberShape> value) {
    return Distribution.of(each(value), weights);
  }

  /** Why half of the members have none; nothing where the likely dough has one. */
  ShapeSearch.Missing whyMissing() {
    return whyMissing(over(MemberShape::hours));
  }

  private ShapeSearch.Missing whyMissing(Distribution hours) {
    double likely = hours.quantile(0.5).orElse(Double.POSITIVE_INFINITY);
    if (Double.isInfinite(likely)) {
      return ShapeSearch.Missing.OUT_OF_REACH;
    }
    if (likely > AT_ONCE_HOURS) {
      return ShapeSearch.Missing.NOTHING;
    }
    long fallen =
        members.stream().filter(each -> each.missing() == ShapeSearch.Missing.PAST_BEST).count();
    return 4 * fallen > members.size()
        ? ShapeSearch.Missing.PAST_BEST
        : ShapeSearch.Missing.PAST_TARGET;
  }

  /**
   * The shape point of all of them, where there is one: its hours are those at which the jars of
   * such doughs show the likely rise, which is what a baker at the bench waits for.
   *
   * @param bulk the forecast they are of
   */
  ShapeForecaster.Point point(RiseForecast bulk) {
    Distribution own = over(MemberShape::hours);
    if (whyMissing(own) != ShapeSearch.Missing.NOTHING) {
      return ShapeForecaster.Point.NONE;
    }
    ShapeForecast.RiseRange rises = onLikelyLine(bulk, own.quantile(0.5).orElseThrow());
    return new ShapeForecaster.Point(shownBy(bulk, rises).window(), rises);
  }

  /** When the jars of all doughs show the likely rise. */
  Distribution shownBy(RiseForecast bulk, ShapeForecast.RiseRange rises) {
    return bulk.passes(Rise.ofPercent(rises.likely().orElseThrow()));
  }

  /** The likely rise is the one that the likely jar shows at the likely hour. */
  private ShapeForecast.RiseRange onLikelyLine(RiseForecast bulk, double likelyHours) {
    ShapeForecast.RiseRange rises = ShapeForecast.RiseRange.of(over(MemberShape::jarPercent));
    double likely = bulk.likelyPercentAt(Math.min(likelyHours, bulk.hours()));
    double low = Math.min(rises.low().orElse(likely), likely);
    double high = Math.max(rises.high().orElse(likely), likely);
    return new ShapeForecast.RiseRange(
        OptionalDouble.of(low), OptionalDouble.of(likely), OptionalDouble.of(high));
  }
}
