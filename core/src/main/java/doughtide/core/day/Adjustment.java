package doughtide.core.day;

import java.io.Serializable;

/**
 * One thing that can be done otherwise, so that a day becomes possible or its tightest step has
 * more room.
 *
 * @param kind what is changed
 * @param value by how many hours for {@link Kind#BENCH_EARLIER}, {@link Kind#BENCH_LONGER}, {@link
 *     Kind#EVERY_TIME_LONGER}, {@link Kind#READY} and {@link Kind#MIX}, positive is later or
 *     longer; how many hours for {@link Kind#EVENING_BEFORE}; else the new value: per cent of the
 *     flour added, °C, persons, or loaves in the oven; 0 where there is none
 * @param atHour the edge of the bench hours that moves, when the evening begins, or the new hour at
 *     which the bread is ready, on the axis; 0 for other kinds
 * @param dough the dough it is about, from 0; {@link #EVERY_DOUGH} for all
 */
public record Adjustment(Kind kind, double value, double atHour, int dough)
    implements Serializable {
  /** It is about all doughs of the day. */
  public static final int EVERY_DOUGH = -1;

  /** What is changed. */
  public enum Kind {
    /** The baker comes to the bench earlier. */
    BENCH_EARLIER,
    /** The baker stays at the bench longer. */
    BENCH_LONGER,
    /** The baker stays longer every time. */
    EVERY_TIME_LONGER,
    /** The baker is at the bench in the evening before, too. */
    EVENING_BEFORE,
    /** A cold where there is none. */
    COLD,
    /** A ripe starter that waits in the cold, so that none is fed. */
    STARTER_IN_COLD,
    /** The bread is wanted at another hour. */
    READY,
    /** Another starter share. */
    STARTER_SHARE,
    /** Another dough temperature. */
    DOUGH_TEMPERATURE,
    /** So many persons. */
    HANDS,
    /** Room for so many loaves in the oven. */
    OVEN_CAPACITY,
    /** The starter is fed earlier, or kept warmer. */
    FEED,
    /** The dough is mixed at another hour. */
    MIX
  }
}
