/** How much water a flour takes: small bowls at several hydrations, graded by hand after a rest. */
@NullMarked
package doughtide.core.flourtrial;

import org.jspecify.annotations.NullMarked;
