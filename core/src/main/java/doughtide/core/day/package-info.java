/**
 * Days planned around the hours a baker is at the bench, and what a change of hours asks of a
 * dough.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.core.day;

import org.jspecify.annotations.NullMarked;
