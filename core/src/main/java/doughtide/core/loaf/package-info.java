/**
 * The shaped loaf: its proof, its cold, the point at which to shape it and the hours in which it is
 * good to bake.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.core.loaf;

import org.jspecify.annotations.NullMarked;
