package doughtide.core.day;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;

/**
 * A stretch of time in which the baker can be at the bench. Hours count along the plan's own axis,
 * whose zero is the caller's choice.
 *
 * @param fromHour when it begins, −8760…8760
 * @param toHour when it ends, later than {@code fromHour}
 */
public record BenchInterval(double fromHour, double toHour) implements Serializable {
  /**
   * @param fromHour when it begins, −8760…8760
   * @param toHour when it ends, later than {@code fromHour}
   * @throws InputException if an hour is out of range or the end is not after the begin
   */
  public BenchInterval {
    Checks.inRange("begin of the bench hours", fromHour, -8760, 8760, "h");
    Checks.inRange("end of the bench hours", toHour, -8760, 8760, "h");
    if (!(toHour > fromHour)) {
      throw new InputException(
          "bench-hours.order", "bench hours must end after they begin: put the earlier hour first");
    }
  }
}
