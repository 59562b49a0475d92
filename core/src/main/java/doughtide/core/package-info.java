/** The fermentation model. It reads no files and no clock; the same input gives the same output. */
@NullMarked
package doughtide.core;

import org.jspecify.annotations.NullMarked;
