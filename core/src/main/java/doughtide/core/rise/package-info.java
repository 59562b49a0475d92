/** The rise model: the state, its derivatives, and the curve that a run gives back. */
@NullMarked
package doughtide.core.rise;

import org.jspecify.annotations.NullMarked;
