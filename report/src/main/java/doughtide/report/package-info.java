/** Charts and printable pages of what the model says. */
@NullMarked
package doughtide.report;

import org.jspecify.annotations.NullMarked;
