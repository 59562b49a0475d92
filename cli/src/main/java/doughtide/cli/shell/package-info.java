/** What a shell and a manual want to know of the commands, made from their specifications. */
@NullMarked
package doughtide.cli.shell;

import org.jspecify.annotations.NullMarked;
