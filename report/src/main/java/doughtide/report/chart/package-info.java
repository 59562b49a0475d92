/**
 * Charts: layout, axes, labels, painter, and one class a chart.
 *
 * @serial exclude
 */
@NullMarked
package doughtide.report.chart;

import org.jspecify.annotations.NullMarked;
