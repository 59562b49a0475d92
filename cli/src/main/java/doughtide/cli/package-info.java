/** The command line: it parses, calls the library and prints. */
@NullMarked
package doughtide.cli;

import org.jspecify.annotations.NullMarked;
