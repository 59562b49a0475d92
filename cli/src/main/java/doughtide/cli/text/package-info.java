/** Words, lines and names as the program writes them. */
@NullMarked
package doughtide.cli.text;

import org.jspecify.annotations.NullMarked;
