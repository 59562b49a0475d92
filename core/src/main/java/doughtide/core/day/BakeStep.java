package doughtide.core.day;

import doughtide.core.quantity.Checks;

/**
 * One moment of a plan, on the plan's axis of hours.
 *
 * @param kind what is done
 * @param fromHour when it begins
 * @param toHour when hands are free again; the same as {@code fromHour} where nothing is done
 * @param number 1 for the first fold or batch, and so on; 0 where there is only one
 */
public record BakeStep(Kind kind, double fromHour, double toHour, int number) {
  /** What is done. */
  public enum Kind {
    /** Starter, flour and water for the starter. */
    FEED("feed the starter"),
    /** Flour and water only. */
    AUTOLYSE("mix flour and water, leave them (autolyse)"),
    /** Starter and salt come in: the dough's hour 0. */
    MIX("mix the dough"),
    /** Stretch and fold. */
    FOLD("fold"),
    /** The tub with the dough goes into the cold. */
    BULK_INTO_COLD("put the tub into the cold"),
    /** The tub comes out again. */
    BULK_OUT_OF_COLD("take the tub out of the cold"),
    /** Divide, bench rest, shape. */
    SHAPE("divide, rest, shape"),
    /** The shaped loaves go into the cold. */
    LOAVES_INTO_COLD("put the loaves into the cold"),
    /** Switch the oven on. */
    PREHEAT("switch the oven on"),
    /** Into the oven. */
    BAKE("bake"),
    /** Out of the oven. */
    COOL("take out, leave to cool"),
    /** Cool enough to slice: nothing to do. */
    READY("ready to slice");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** As a baker says it. */
    public String words() {
      return words;
    }

    /** Whether the baker has to be there. */
    public boolean handsOn() {
      return this != READY;
    }
  }

  /** Checks the hours. */
  public BakeStep {
    Checks.inside("begin of a step", fromHour, -8760, 8760, "h");
    Checks.inside("end of a step", toHour, fromHour, 8760, "h");
  }

  /** Words with the number. */
  public String words() {
    return number == 0 ? kind.words() : kind.words() + " " + number;
  }
}
