package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.StripBlock;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A strip for the sample jar, with the heights at which to look and to shape.
 *
 * @param title of the page
 * @param notes what the dough is, and how to use the strip
 * @param marks in mm above the top of the dough right after mixing, from the lowest up
 * @param cautions those that apply
 */
@Internal
public record JarStrip(
    String title, List<String> notes, List<StripBlock.Mark> marks, List<String> cautions)
    implements Handout {

  private static final double RULER_MM = 100;

  /** Copies the lists. */
  public JarStrip {
    notes = List.copyOf(notes);
    marks = List.copyOf(marks);
    cautions = List.copyOf(cautions);
  }

  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    Page page = new Page(format, words, title, date);
    notes.forEach(page::paragraph);
    String ruler = words.say("strip.ruler", Map.of("length", words.number(RULER_MM, 0)));
    page.add(new StripBlock(marks, RULER_MM, ruler, description(words)));
    cautions.forEach(page::caution);
    return page.sides();
  }

  /** The mark that matters most, then all from the lowest up. */
  private String description(Words words) {
    Stream<StripBlock.Mark> first = marks.stream().filter(StripBlock.Mark::isStrong);
    Stream<StripBlock.Mark> rest = marks.stream().filter(mark -> !mark.isStrong());
    return Stream.concat(first, rest)
        .map(mark -> words.number(mark.mm(), 0) + " mm: " + mark.text() + ".")
        .collect(Collectors.joining(" "));
  }
}
