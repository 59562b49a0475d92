package doughtide.core.kinetics;

import doughtide.core.Internal;
import doughtide.core.dough.Flour;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Value;
import java.util.List;

/**
 * pH of a dough against the acid in it, by a charge balance: the dissociated part of the lactic and
 * acetic acid equals what the flour's own buffers have taken up, B·(pH0 − pH).
 *
 * <p>Two weak acids and a constant B follow the measured dough of Nutrients 2019, 11:2954, table 2
 * (pH 4.26, 3.89 and 3.55 at 55, 86 and 182 mmol of acid per kg of flour), where a straight line of
 * pH against acid cannot. B of white flour is fitted to those three lines; that it grows with ash
 * is published (Martínez-Anaya et al. 1994), by how much is a starting value. The pH of unfermented
 * dough, 6.0, is from memory. Uncertainty of a computed pH: about ±0.2.
 */
@Internal
public final class AcidBuffer extends Value {
  private static final long serialVersionUID = 1;

  /** pH of dough before any acid, from memory. */
  public static final double UNFERMENTED_PH = 6.0;

  /** Acetic acid as a share of the moles of acid; mean of the three measured doughs. */
  public static final double ACETIC_SHARE = 0.184;

  private static final double LACTIC_PKA = 3.86; // 25 °C, from memory
  private static final double ACETIC_PKA = 4.756; // 25 °C, from memory
  private static final double WHITE_BUFFER = 0.0197; // mol per kg flour per pH, fitted, see above
  private static final double WHITE_ASH = 0.0050;
  private static final double BUFFER_PER_ASH = 1.7; // starting value
  private static final double LOWEST_PH = 3.0;
  private static final int CELLS = 60;
  private static final double STEP = 1e-5;

  // The table for B = 1; acid over B does not depend on B.
  private static final double[] ACID = new double[CELLS + 1];
  private static final double[] PH = new double[CELLS + 1];
  private static final double[] WIDTH = new double[CELLS]; // from a node to the next
  private static final double[] SLOPE = new double[CELLS + 1]; // dpH/dA at the nodes

  // The cell in which each of many equal stretches of acid begins.
  private static final byte[] FIRST_CELL = new byte[512];
  private static final double STRETCHES_PER_ACID;

  static {
    for (int i = 0; i <= CELLS; i++) {
      double ph = phOfNode(i);
      PH[i] = ph;
      ACID[i] = unitAcidAt(ph);
      SLOPE[i] = 2 * STEP / (unitAcidAt(ph + STEP) - unitAcidAt(ph - STEP));
    }
    for (int i = 0; i < CELLS; i++) {
      WIDTH[i] = ACID[i + 1] - ACID[i];
    }
    STRETCHES_PER_ACID = FIRST_CELL.length / ACID[CELLS];
    for (int j = 0; j < FIRST_CELL.length; j++) {
      int cell = j == 0 ? 0 : FIRST_CELL[j - 1];
      while (cell + 1 < CELLS && ACID[cell + 1] <= j / STRETCHES_PER_ACID) {
        cell++;
      }
      FIRST_CELL[j] = (byte) cell;
    }
  }

  private final double bufferMolPerKgPh;

  private AcidBuffer(double bufferMolPerKgPh) {
    this.bufferMolPerKgPh = bufferMolPerKgPh;
  }

  /** Buffer of a flour by its ash content. */
  public static AcidBuffer of(Flour flour) {
    return of(WHITE_BUFFER + BUFFER_PER_ASH * (flour.composition().ash() - WHITE_ASH));
  }

  /**
   * Buffer of a given strength.
   *
   * @param bufferMolPerKgPh mol of charge per kg of flour per pH unit, 0.005…0.2
   */
  public static AcidBuffer of(double bufferMolPerKgPh) {
    return new AcidBuffer(Checks.inRange("buffering", bufferMolPerKgPh, 0.005, 0.2, "mol/(kg pH)"));
  }

  /** Buffering, mol per kg of flour per pH unit. */
  public double bufferMolPerKgPh() {
    return bufferMolPerKgPh;
  }

  /**
   * Acid that brings the dough to a pH: B·(pH0 − pH) over the dissociated share.
   *
   * @param ph 3.0…6.0
   * @return mol of lactic and acetic acid per kg of flour
   */
  public double acidAt(double ph) {
    return bufferMolPerKgPh * unitAcidAt(ph);
  }

  private static double unitAcidAt(double ph) {
    return (UNFERMENTED_PH - ph) / dissociated(ph);
  }

  private static double dissociated(double ph) {
    double lactic = 1 / (1 + Math.pow(10, LACTIC_PKA - ph));
    double acetic = 1 / (1 + Math.pow(10, ACETIC_PKA - ph));
    return (1 - ACETIC_SHARE) * lactic + ACETIC_SHARE * acetic;
  }

  private static double phOfNode(int i) {
    return UNFERMENTED_PH - (UNFERMENTED_PH - LOWEST_PH) * i / CELLS;
  }

  /**
   * pH with this much acid; the inverse of {@link #acidAt} through a table with cubic Hermite
   * pieces (error below 1e-5 pH).
   *
   * @param acidMolPerKg mol per kg of flour, 0 or more
   * @return 3.0…6.0
   */
  public double phAt(double acidMolPerKg) {
    if (acidMolPerKg <= 0) {
      return UNFERMENTED_PH;
    }
    double unit = acidMolPerKg / bufferMolPerKgPh;
    if (!(unit < ACID[CELLS])) {
      return LOWEST_PH;
    }
    int low = cellOf(unit);
    double width = WIDTH[low];
    double x = (unit - ACID[low]) / width;
    double rest = 1 - x;
    return rest * rest * ((1 + 2 * x) * PH[low] + x * width * SLOPE[low])
        + x * x * ((3 - 2 * x) * PH[low + 1] - rest * width * SLOPE[low + 1]);
  }

  private static int cellOf(double unit) {
    int stretch = Math.min((int) (unit * STRETCHES_PER_ACID), FIRST_CELL.length - 1);
    int cell = FIRST_CELL[stretch];
    while (cell + 1 < CELLS && ACID[cell + 1] <= unit) {
      cell++;
    }
    return cell;
  }

  @Override
  protected List<?> parts() {
    return List.of(bufferMolPerKgPh);
  }

  @Override
  public String toString() {
    return Checks.plain(bufferMolPerKgPh) + " mol/(kg pH)";
  }
}
