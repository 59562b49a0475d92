/**
 * The fermentation model. It reads no files and no clock; the same input gives the same output.
 *
 * <p>Everything given to it or got from it is a <em>value</em> unless said otherwise here:
 * immutable, equal to another one made of the same, with a true one-line text, serializable, so
 * that it can be the key of a cache or be sent to another machine. What is none:
 *
 * <ul>
 *   <li>what works things out: forecasters, planners, learners, fits, models, curves and bodies.
 *       They are immutable and may be used by many threads at once, but equal to themselves only.
 *       Of these the forecaster and the model of a rise are serializable, the others are not: send
 *       the values that they are made of;
 *   <li>answers that hold a forecast or a curve, to be asked further: those of a forecaster, of the
 *       shape of loaves, of feedings, of days and of mixing times; neither equal by value nor
 *       serializable. The windows, distributions and steps in them are values;
 *   <li>a day to be planned and the end of bulk fermentation: equal by their parts, not
 *       serializable;
 *   <li>builders and collectors, which change while they are used.
 * </ul>
 *
 * <p>What is given and cannot be used is refused by an {@link
 * doughtide.core.quantity.InputException}; an {@link doughtide.core.quantity.InnerFault} is a fault
 * of the program. Null is no value: where something is needed, nothing is refused by the same
 * exception with a key that ends in {@code .missing}, or by a {@link NullPointerException}, in the
 * constructor or factory it is given to.
 */
@NullMarked
package doughtide.core;

import org.jspecify.annotations.NullMarked;
