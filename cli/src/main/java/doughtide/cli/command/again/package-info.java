/** A day that is planned again because it slipped: the plan as a file, its calendar, its answer. */
@NullMarked
package doughtide.cli.command.again;

import org.jspecify.annotations.NullMarked;
