/**
 * What is kept and exchanged, as text: lines {@code key: value} for a kitchen, a flour, a starter
 * and a refrigerator, and the same with a table below them for readings, a logger and graded bowls.
 * Everything here reads text that it is given and gives back text; files are the caller's business.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.core.document;

import org.jspecify.annotations.NullMarked;
