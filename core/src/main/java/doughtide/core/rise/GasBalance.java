package doughtide.core.rise;

import doughtide.core.Internal;
import java.io.Serializable;

/**
 * Where the carbon dioxide is at one moment, mol per kg of all flour.
 *
 * @param madeMol made since mixing
 * @param dissolvedMol in the dough's water
 * @param inCellsMol in the gas cells
 * @param lostMol escaped
 */
@Internal
public record GasBalance(double madeMol, double dissolvedMol, double inCellsMol, double lostMol)
    implements Serializable {}
