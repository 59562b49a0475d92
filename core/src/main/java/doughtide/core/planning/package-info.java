/** Plans before the dough: feeding a starter, and the ratio for an hour. */
@NullMarked
package doughtide.core.planning;

import org.jspecify.annotations.NullMarked;
