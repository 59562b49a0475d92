/**
 * Flour, starter and dough: composition and baker's arithmetic.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.core.dough;

import org.jspecify.annotations.NullMarked;
