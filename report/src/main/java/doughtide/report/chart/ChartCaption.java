package doughtide.report.chart;

import doughtide.core.Internal;
import doughtide.report.words.Language;

/**
 * What a reader, a screen reader or a search needs to know about a chart.
 *
 * @param title title of the document
 * @param description the chart in a sentence, for those who do not see it
 * @param language language of the text
 */
@Internal
public record ChartCaption(String title, String description, Language language) {}
