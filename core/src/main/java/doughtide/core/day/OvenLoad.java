package doughtide.core.day;

import java.io.Serializable;
import java.util.List;

/**
 * What is in the oven together, of one dough or of several.
 *
 * @param fromHour loading begins, on the plan's axis
 * @param toHour all of it is out
 * @param portions whose loaves, in the order of the doughs
 */
public record OvenLoad(double fromHour, double toHour, List<Portion> portions)
    implements Serializable {
  /**
   * The loaves of one dough.
   *
   * @param dough its number, from 0
   * @param batch which of its batches, from 1
   * @param loaves how many
   */
  public record Portion(int dough, int batch, int loaves) implements Serializable {}

  /**
   * Keeps its own copy.
   *
   * @param fromHour loading begins, on the plan's axis
   * @param toHour all of it is out
   * @param portions whose loaves, in the order of the doughs
   */
  public OvenLoad {
    portions = List.copyOf(portions);
  }

  /** {@return loaves in the oven} */
  public int loaves() {
    return portions.stream().mapToInt(Portion::loaves).sum();
  }
}
