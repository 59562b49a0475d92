/** The rest of a day that has slipped, planned again from what has happened. */
@NullMarked
package doughtide.core.day.again;

import org.jspecify.annotations.NullMarked;
