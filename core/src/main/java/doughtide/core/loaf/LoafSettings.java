package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * How finely a loaf is worked out. Searches may be coarse; what is printed is {@link #FULL}.
 *
 * @param shells of one temperature each, 4…200
 * @param stepHours longest step in time, 0.01…1 h
 * @param members of a forecast that look for their shape point, 1…65536
 * @param followed members that are followed to the oven and beyond, 1…65536
 */
@Internal
public record LoafSettings(int shells, double stepHours, int members, int followed)
    implements Serializable {
  /** For figures that are printed. */
  public static final LoafSettings FULL = new LoafSettings(8, 0.25, 512, 64);

  /**
   * For searches: within 0.35 point of rise at the oven of one with 24 shells and steps of three
   * minutes, for loaves of 850 to 1500 g in the room and in the cold (measured).
   */
  public static final LoafSettings SEARCH = new LoafSettings(4, 0.5, 16, 16);

  /** Checks every range. */
  public LoafSettings {
    Checks.inRange("number of shells", shells, 4, 200, "");
    Checks.inRange("step", stepHours, 0.01, 1, "h");
    Checks.inRange("members that look for a shape point", members, 1, 65_536, "");
    Checks.inRange("members that are followed", followed, 1, 65_536, "");
  }

  /** The same with as many members for everything. */
  public LoafSettings withMembers(int number) {
    return new LoafSettings(shells, stepHours, number, number);
  }
}
