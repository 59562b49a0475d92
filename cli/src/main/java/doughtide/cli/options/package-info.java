/** Options that several commands share. */
@NullMarked
package doughtide.cli.options;

import org.jspecify.annotations.NullMarked;
