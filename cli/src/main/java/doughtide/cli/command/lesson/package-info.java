/** A dough in which something is changed, to try out on a page. */
@NullMarked
package doughtide.cli.command.lesson;

import org.jspecify.annotations.NullMarked;
