/** The students of a class: what each weighs and does, and what their jars have shown. */
@NullMarked
package doughtide.cli.command.roster;

import org.jspecify.annotations.NullMarked;
