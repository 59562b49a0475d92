/** The commands. */
@NullMarked
package doughtide.cli.command;

import org.jspecify.annotations.NullMarked;
