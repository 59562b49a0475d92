/**
 * From a curve to an answer: ensembles and windows.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.core.forecast;

import org.jspecify.annotations.NullMarked;
