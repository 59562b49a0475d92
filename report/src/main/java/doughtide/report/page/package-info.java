/** Building blocks of printed pages. */
@NullMarked
package doughtide.report.page;

import org.jspecify.annotations.NullMarked;
