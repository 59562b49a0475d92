/** The dough in hand: its file, its readings, and what they say. */
@NullMarked
package doughtide.cli.hand;

import org.jspecify.annotations.NullMarked;
