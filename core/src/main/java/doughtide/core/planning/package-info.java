/**
 * Plans: feeding a starter, the ratio for an hour, a whole day backward from the bread, several
 * doughs on one day, and questions turned round.
 */
@NullMarked
package doughtide.core.planning;

import org.jspecify.annotations.NullMarked;
