/** What a change of hours or of the wanted bread asks of one dough. */
@NullMarked
package doughtide.core.day.question;

import org.jspecify.annotations.NullMarked;
