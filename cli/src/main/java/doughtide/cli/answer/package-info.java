/**
 * Answers, and three ways to write them.
 *
 * <p>A command fills one {@link Section.Builder}, one line a quantity, and makes an {@link Answer}
 * of it. Each line says the key for other programs, the label for people, and the value with its
 * {@link Unit}; an empty key or label leaves the quantity out there.
 *
 * <pre>{@code
 * Section.Builder body = Section.loose(Timeline.sinceMixing(clock));
 * Section.Builder rise = body.listing("rises", "").row();
 * rise.number("risePercent", "", 50, Unit.PERCENT).window(Section.HERE, "risen 50 %", window);
 * body.section("shape", "When to shape")
 *     .window(Section.HERE, "end of bulk", hours)
 *     .range("risePercent", "watch for a rise of", low, likely, high, Unit.PERCENT)
 *     .number("targetPercent", "", 85, Unit.PERCENT);
 * body.cautions(List.of("raw flour and raw dough are not for eating."));
 * Answer.of("rise", 2, "Risen 50 % about 4 h 45 min after mixing.", body).text(out);
 * }</pre>
 *
 * <p>A window of time is everywhere {@code hoursEarly}, {@code hoursLikely}, {@code hoursLate} with
 * {@code reachedShare} and, where a clock is known, {@code clockEarly} and so on; any other window
 * is low, likely, high. A quantity without a label is no part of the page, one without a key no
 * part of the data. On the page a section with a heading, or with neither heading nor key, stands
 * between empty lines. The order is: tables, then why and warnings, then what was understood, then
 * cautions.
 */
@NullMarked
package doughtide.cli.answer;

import org.jspecify.annotations.NullMarked;
