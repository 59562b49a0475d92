/** One class a printed page. */
@NullMarked
package doughtide.report.handout;

import org.jspecify.annotations.NullMarked;
