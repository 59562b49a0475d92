/**
 * From a baker's readings to what is believed about the next bake, and about the one in hand.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.core.learning;

import org.jspecify.annotations.NullMarked;
