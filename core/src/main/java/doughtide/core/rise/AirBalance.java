package doughtide.core.rise;

import doughtide.core.Internal;
import java.io.Serializable;

/**
 * Where the air is that was beaten in while mixing, mol per kg of flour; mixed in = in the cells +
 * lost.
 *
 * @param mixedInMol when the dough was mixed
 * @param inCellsMol in the gas cells
 * @param lostMol taken out by hands
 */
@Internal
public record AirBalance(double mixedInMol, double inCellsMol, double lostMol)
    implements Serializable {}
