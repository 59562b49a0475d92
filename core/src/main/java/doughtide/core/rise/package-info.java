/**
 * The rise model: the state, its derivatives, and the curve that a run gives back.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.core.rise;

import org.jspecify.annotations.NullMarked;
