/**
 * One class a printed page.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.report.handout;

import org.jspecify.annotations.NullMarked;
