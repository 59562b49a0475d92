/**
 * Rate of growth against temperature, and growth itself, in published forms.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.core.kinetics;

import org.jspecify.annotations.NullMarked;
