/** Batches at the bench: what it costs that loaves are shaped and baked one after another. */
@NullMarked
package doughtide.core.day.bench;

import org.jspecify.annotations.NullMarked;
