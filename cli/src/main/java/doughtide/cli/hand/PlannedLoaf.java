package doughtide.cli.hand;

import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;

/**
 * A loaf after its bulk fermentation.
 *
 * @param proof what was asked
 * @param shape when to shape for it
 */
public record PlannedLoaf(Proof proof, ShapeForecast shape) {}
