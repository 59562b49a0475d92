/** Reading options and quantities from the command line. */
@NullMarked
package doughtide.cli.args;

import org.jspecify.annotations.NullMarked;
