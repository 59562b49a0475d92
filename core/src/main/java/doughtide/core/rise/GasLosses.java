package doughtide.core.rise;

import doughtide.core.Internal;
import java.io.Serializable;
import java.util.List;

/**
 * Shares of the gas in the cells that hands have taken out of a piece.
 *
 * @param foldHours hours of the folds, since mixing
 * @param foldShare of each fold, 0…1
 * @param shapeShare from dividing to the final shape, 0…1
 */
@Internal
public record GasLosses(List<Double> foldHours, double foldShare, double shapeShare)
    implements Serializable {
  /** Nothing taken out, as of an undisturbed jar. */
  public static final GasLosses NONE = new GasLosses(List.of(), 0, 0);

  /** Copies the hours. */
  public GasLosses {
    foldHours = List.copyOf(foldHours);
  }
}
