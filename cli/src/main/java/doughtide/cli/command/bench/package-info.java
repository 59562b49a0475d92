/** Batches at the bench, as part of the answer about a day. */
@NullMarked
package doughtide.cli.command.bench;

import org.jspecify.annotations.NullMarked;
