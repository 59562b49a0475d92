/** Fonts, the wrapping of text, and PDF files. */
@NullMarked
package doughtide.report.type;

import org.jspecify.annotations.NullMarked;
