package doughtide.core.day;

import doughtide.core.Internal;

/** How long hands are busy, hours (common practice, no source; starting values). */
@Internal
public final class HandsOnTime {
  public static final double FEED_HOURS = 5.0 / 60;
  static final double AUTOLYSE_HOURS = 10.0 / 60;

  /** One batch in the mixer. */
  public static final double MIX_HOURS = 15.0 / 60;

  static final double FOLD_HOURS = 5.0 / 60;

  /** To carry a dough or its loaves into the cold or out of it. */
  public static final double CARRY_HOURS = 5.0 / 60;

  static final double SWITCH_HOURS = 2.0 / 60;
  static final double LOAD_HOURS = 5.0 / 60;

  /** To take a batch out of the oven. */
  public static final double UNLOAD_HOURS = 5.0 / 60;

  private HandsOnTime() {}
}
