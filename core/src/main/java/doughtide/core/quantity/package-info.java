/**
 * What a baker says, with its unit; range-checked once, here.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.core.quantity;

import org.jspecify.annotations.NullMarked;
