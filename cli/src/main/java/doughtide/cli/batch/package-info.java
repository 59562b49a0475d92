/**
 * Many doughs, one a row.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.cli.batch;

import org.jspecify.annotations.NullMarked;
