/** Words by language. */
@NullMarked
package doughtide.report.words;

import org.jspecify.annotations.NullMarked;
