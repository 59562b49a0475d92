package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.report.chart.ChartCaption;
import doughtide.report.chart.PrintedChart;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.PageLayoutException;
import doughtide.report.words.Words;
import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import java.util.List;

/** Something to print: its pages, and the charts on them. */
public interface Handout {

  /**
   * {@return the pages in order: one side, or two where large print needs them}
   *
   * @param format paper, size of the text and whether it lies across
   * @param words of one language
   * @param date printed at the foot
   * @hidden
   */
  @Internal
  List<Page> pages(PageFormat format, Words words, LocalDate date);

  /**
   * {@return the charts of the pages, to be shown or written on their own}
   *
   * @param words of one language
   */
  default List<NamedChart> charts(Words words) {
    return List.of();
  }

  /**
   * {@return the pages as one PDF}
   *
   * @param format paper, size of the text and whether it lies across
   * @param words of one language
   * @param date printed at the foot
   * @throws PageLayoutException when something does not fit
   */
  default byte[] bytes(PageFormat format, Words words, LocalDate date) {
    return Page.together(pages(format, words, date));
  }

  /**
   * Writes the pages as one PDF into a stream, which stays open.
   *
   * @param format paper, size of the text and whether it lies across
   * @param words of one language
   * @param date printed at the foot
   * @param out where the bytes go
   * @throws PageLayoutException when something does not fit
   * @throws IOException when the stream fails
   */
  default void write(PageFormat format, Words words, LocalDate date, OutputStream out)
      throws IOException {
    out.write(bytes(format, words, date));
  }

  /**
   * A chart of a page.
   *
   * @param name short, lower case, for file names
   * @param chart the chart
   * @param caption its title and a description in a sentence
   */
  record NamedChart(String name, @Internal PrintedChart chart, @Internal ChartCaption caption) {}
}
