/**
 * The dough's own temperature: properties, traces, conduction, pouring water.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.core.thermal;

import org.jspecify.annotations.NullMarked;
