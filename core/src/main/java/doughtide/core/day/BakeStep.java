package doughtide.core.day;

import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * One moment of a plan, on the plan's axis of hours.
 *
 * @param kind what is done
 * @param fromHour when it begins
 * @param toHour when hands are free again; the same as {@code fromHour} where nothing is done
 * @param number 1 for the first fold or batch, and so on; 0 where there is only one
 */
public record BakeStep(Kind kind, double fromHour, double toHour, int number)
    implements Serializable {
  /** What is done. */
  public enum Kind {
    /** Starter, flour and water for the starter. */
    FEED,
    /** Flour and water only. */
    AUTOLYSE,
    /** Starter and salt come in: the dough's hour 0. */
    MIX,
    /** Stretch and fold. */
    FOLD,
    /** The tub with the dough goes into the cold. */
    BULK_INTO_COLD,
    /** The tub comes out again. */
    BULK_OUT_OF_COLD,
    /** Divide, bench rest, shape. */
    SHAPE,
    /** The shaped loaves go into the cold. */
    LOAVES_INTO_COLD,
    /** Switch the oven on. */
    PREHEAT,
    /** Into the oven. */
    BAKE,
    /** Out of the oven. */
    COOL,
    /** Cool enough to slice: nothing to do. */
    READY;

    /** {@return whether the baker has to be there} */
    public boolean handsOn() {
      return this != READY;
    }
  }

  /**
   * Checks the hours.
   *
   * @param kind what is done
   * @param fromHour when it begins
   * @param toHour when hands are free again; the same as {@code fromHour} where nothing is done
   * @param number 1 for the first fold or batch, and so on; 0 where there is only one
   */
  public BakeStep {
    Checks.inside("begin of a step", fromHour, -8760, 8760, "h");
    Checks.inside("end of a step", toHour, fromHour, 8760, "h");
  }
}
