/** The dough's own temperature: properties, traces, conduction, pouring water. */
@NullMarked
package doughtide.core.thermal;

import org.jspecify.annotations.NullMarked;
