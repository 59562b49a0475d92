package doughtide.core.forecast;

import java.io.Serializable;

/**
 * Something the user should know, and what to do about it.
 *
 * @param kind what it is about
 * @param text one sentence with the numbers and units
 * @param remedy what would help or narrow the answer
 */
public record Warning(Kind kind, String text, String remedy) implements Serializable {
  /** What a warning is about. */
  public enum Kind {
    /** The dough is outside the temperatures at which the yeast grows: no hours are given. */
    OUTSIDE_GROWTH,
    /** The dough freezes: no hours are given. */
    FREEZING,
    /** The refrigerator is not colder than the dough. */
    NOT_COOLING,
    /** Few data lie behind the rates at this temperature. */
    THIN_DATA,
    /** A rise asked for is not reached. */
    NOT_REACHED,
    /** The window is wide. */
    WIDE_WINDOW,
    /** The starter is not at its best. */
    STARTER,
    /** An amount lies at the edge of what is usual. */
    UNUSUAL,
    /** Caution for health or safety. */
    SAFETY
  }
}
