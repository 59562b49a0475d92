/** Carbon dioxide: solubility, gas cells, retention. */
@NullMarked
package doughtide.core.gas;

import org.jspecify.annotations.NullMarked;
