package doughtide.core.quantity;

import doughtide.core.Internal;
import java.io.Serializable;

/**
 * A number and the unit written behind it.
 *
 * @param number the number as typed, with a decimal point
 * @param value its value
 * @param unit the unit as typed, empty if there is none
 */
@Internal
public record Measure(String number, double value, String unit) implements Serializable {}
