/** Flour, starter and dough: composition and baker's arithmetic. */
@NullMarked
package doughtide.core.dough;

import org.jspecify.annotations.NullMarked;
