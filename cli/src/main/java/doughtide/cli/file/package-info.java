/** Reading files and replacing them whole. */
@NullMarked
package doughtide.cli.file;

import org.jspecify.annotations.NullMarked;
