/** One file for the telephone: a page that works without network and learns from readings. */
@NullMarked
package doughtide.report.phone;

import org.jspecify.annotations.NullMarked;
