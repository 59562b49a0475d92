/** Answers and how they are written. */
@NullMarked
package doughtide.cli.answer;

import org.jspecify.annotations.NullMarked;
