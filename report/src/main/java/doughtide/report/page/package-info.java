/**
 * Building blocks of printed pages.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.report.page;

import org.jspecify.annotations.NullMarked;
