/** Many doughs, one a row. */
@NullMarked
package doughtide.cli.batch;

import org.jspecify.annotations.NullMarked;
