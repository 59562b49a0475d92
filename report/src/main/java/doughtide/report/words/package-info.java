/**
 * Words by language.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.report.words;

import org.jspecify.annotations.NullMarked;
