/** Charts: layout, axes, labels, painter, and one class a chart. */
@NullMarked
package doughtide.report.chart;

import org.jspecify.annotations.NullMarked;
