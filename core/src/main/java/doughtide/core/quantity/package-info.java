/** What a baker says, with its unit; range-checked once, here. */
@NullMarked
package doughtide.core.quantity;

import org.jspecify.annotations.NullMarked;
