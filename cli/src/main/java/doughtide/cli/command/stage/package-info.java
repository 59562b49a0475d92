/** A starter built in stages, as an answer. */
@NullMarked
package doughtide.cli.command.stage;

import org.jspecify.annotations.NullMarked;
