package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.PlotBlock;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.util.List;

/**
 * A sheet on which the rise is plotted by hand and which says when to shape.
 *
 * @param title of the page
 * @param answer how to find the moment
 * @param notes what the dough is, and what the lines are
 * @param plot the squared paper
 * @param cautions those that apply
 */
@Internal
public record HandSheet(
    String title, String answer, List<String> notes, PlotBlock plot, List<String> cautions)
    implements Handout {

  /** Copies the lists. */
  public HandSheet {
    notes = List.copyOf(notes);
    cautions = List.copyOf(cautions);
  }

  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    Page page = new Page(format, words, title, date).strong(answer);
    notes.forEach(page::paragraph);
    page.add(plot);
    cautions.forEach(page::caution);
    return page.sides();
  }
}
