/** Feeding a starter: ratios, the hours in which it is ripe, and chains of feeds. */
@NullMarked
package doughtide.core.feeding;

import org.jspecify.annotations.NullMarked;
