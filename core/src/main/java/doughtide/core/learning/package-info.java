/** From a baker's readings to what is believed about the next bake, and about the one in hand. */
@NullMarked
package doughtide.core.learning;

import org.jspecify.annotations.NullMarked;
