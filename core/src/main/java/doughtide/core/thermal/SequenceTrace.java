package doughtide.core.thermal;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Value;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/** One trace after another; the second starts its own hour 0 at the change. */
final class SequenceTrace extends Value implements TemperatureTrace {
  private static final long serialVersionUID = 1;

  private final TemperatureTrace first;
  private final double change;
  private final TemperatureTrace next;

  SequenceTrace(TemperatureTrace first, double change, TemperatureTrace next) {
    Checks.inRange("hour of the change of temperature", change, 0, 8760, "h");
    this.first = first;
    this.change = change;
    this.next = next;
  }

  @Override
  public double celsius(double hours) {
    return hours < change ? first.celsius(hours) : next.celsius(hours - change);
  }

  @Override
  public double[] breakpoints() {
    DoubleStream before = Arrays.stream(first.breakpoints()).filter(hour -> hour < change);
    DoubleStream after =
        Arrays.stream(next.breakpoints()).filter(hour -> hour > 0).map(hour -> hour + change);
    return DoubleStream.concat(DoubleStream.concat(before, DoubleStream.of(change)), after)
        .toArray();
  }

  @Override
  protected List<?> parts() {
    return List.of(first, change, next);
  }

  @Override
  public String toString() {
    return first + ", then from " + Checks.plain(change) + " h (" + next + ")";
  }
}
