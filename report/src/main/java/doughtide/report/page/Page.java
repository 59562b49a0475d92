package doughtide.report.page;

import doughtide.core.Internal;
import doughtide.report.chart.PrintedChart;
import doughtide.report.type.PdfFile;
import doughtide.report.type.PdfFonts;
import doughtide.report.type.PdfSheet;
import doughtide.report.words.Words;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * One printable side, filled from top to bottom. Left-aligned, sans serif, never smaller than the
 * text size of its format; what does not fit is refused, never squeezed. Charts and room to write
 * grow into the height that is left.
 *
 * <pre>{@code
 * byte[] pdf = new Page(PageFormat.a4(), Words.in(Language.ENGLISH), "Country dough", date)
 *     .paragraph("Harrow strong white 80 %")
 *     .caution("Do not eat raw dough.")
 *     .bytes();
 * }</pre>
 */
@Internal
public final class Page {

  private static final double MARGIN_PT = 42.5; // 15 mm: home printers leave up to 6 mm blank

  private static final double MOSTLY_EMPTY = 0.5;

  private final PageFormat format;
  private final Words words;
  private final String title;
  private final LocalDate date;
  private final List<PageBlock> blocks = new ArrayList<>();

  /**
   * An empty page with its title.
   *
   * @param date printed at the foot
   */
  public Page(PageFormat format, Words words, String title, LocalDate date) {
    this.format = format;
    this.words = words;
    this.title = title;
    this.date = date;
    blocks.add(new PageBlocks.Heading(title, 1));
  }

  /** What stands on it, the title first. */
  List<PageBlock> blocks() {
    return List.copyOf(blocks);
  }

  /** Size of its text, points. */
  public double sizePt() {
    return format.text().sizePt();
  }

  /** Adds a heading. */
  public Page heading(String text) {
    return add(new PageBlocks.Heading(text, 2));
  }

  /** Adds running text. */
  public Page paragraph(String text) {
    return add(new PageBlocks.Paragraph(text));
  }

  /** Adds text that stands out. */
  public Page strong(String text) {
    return add(new PageBlocks.Strong(text));
  }

  /** Adds a framed caution. */
  public Page caution(String text) {
    return add(new PageBlocks.Caution(words.say("page.caution"), text));
  }

  /** Adds lines with boxes to tick. */
  public Page ticks(List<String> items) {
    return add(new PageBlocks.Ticks(items));
  }

  /** Adds a table in the size of the text. */
  public Page table(Table table) {
    return add(new PageBlocks.TableBlock(table, 1));
  }

  /**
   * Adds a table in the largest type that the page has room for, for reading from a distance.
   *
   * @param mostScale at most so many times the size of the text, 1 to 4
   */
  public Page largeTable(Table table, double mostScale) {
    if (!(mostScale >= 1 && mostScale <= 4)) {
      throw new IllegalArgumentException("scale must be 1 to 4, was " + mostScale);
    }
    return add(new PageBlocks.LargestTable(table, mostScale));
  }

  /**
   * Adds ruled lines to write on.
   *
   * @param label stands before the first line; may be empty
   * @param leastLines at least so many, from 0; more when the page has room
   */
  public Page writingRoom(String label, int leastLines) {
    return add(new PageBlocks.WritingRoom(label, leastLines));
  }

  /** Adds one ruled line to write on after a label. */
  public Page writingLine(String label) {
    return add(new PageBlocks.WritingLine(label));
  }

  /**
   * Adds a chart as vector graphics with text of the size of the page.
   *
   * @param leastHeightPt least height in points; taller when the page has room
   * @param description the chart in a sentence, for those who do not see it
   */
  public Page chart(PrintedChart chart, double leastHeightPt, String description) {
    return add(new PageBlocks.Picture(chart, leastHeightPt, description));
  }

  /**
   * Adds charts side by side.
   *
   * @param descriptions one for each chart
   * @param across how many in a row
   * @param leastHeightPt least height of each, in points
   */
  public Page charts(
      List<PrintedChart> charts, List<String> descriptions, int across, double leastHeightPt) {
    if (charts.isEmpty() || charts.size() != descriptions.size() || across < 1) {
      throw new IllegalArgumentException("each chart needs a description");
    }
    return add(new PageBlocks.Pictures(charts, descriptions, across, leastHeightPt));
  }

  /** Adds a block of any kind. */
  public Page add(PageBlock block) {
    blocks.add(block);
    return this;
  }

  /**
   * The page as a PDF; the same content gives the same bytes.
   *
   * @throws PageLayoutException when the content does not fit on one side
   */
  public byte[] bytes() {
    return together(List.of(this));
  }

  /**
   * Several pages as one PDF, numbered in order; title and language are those of the first.
   *
   * @param pages at least one
   * @throws PageLayoutException when the content of one does not fit on its side
   */
  public static byte[] together(List<Page> pages) {
    Page first = pages.get(0);
    try (PdfFile file = new PdfFile(first.title, first.words.language())) {
      for (int i = 0; i < pages.size(); i++) {
        pages.get(i).draw(file, i + 1, pages.size());
      }
      return file.bytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The page on as many sides as its content needs, each under the title; no side ends with a
   * heading. A table that is too tall for a side, or would leave the better part of one empty, is
   * parted between two rows. What cannot be parted is left to be refused.
   */
  public List<Page> sides() {
    List<Page> sides = new ArrayList<>();
    Deque<PageBlock> left = new ArrayDeque<>(blocks.subList(1, blocks.size()));
    Page side = empty();
    while (!left.isEmpty()) {
      PageBlock block = left.removeFirst();
      if (side.with(block).fits()) {
        side.add(block);
        continue;
      }
      int rows =
          side.filled() < MOSTLY_EMPTY || !empty().with(block).fits() ? side.rowsOf(block) : 0;
      if (rows > 0) {
        left.addFirst(block.rows(rows, block.rows()));
        sides.add(side.with(block.rows(0, rows)));
        side = empty();
      } else if (side.blocks.size() > 1) {
        left.addFirst(block);
        takeHeadings(side, left);
        sides.add(side);
        side = empty();
      } else {
        side.add(block);
      }
    }
    sides.add(side);
    return sides;
  }

  /** As many rows of a block as there is room for, and none left alone on either side. */
  private int rowsOf(PageBlock block) {
    int rows = 0;
    while (rows < block.rows() - 1 && with(block.rows(0, rows + 1)).fits()) {
      rows++;
    }
    int most = block.rows() > 3 ? Math.min(rows, block.rows() - 2) : rows;
    return most > 1 || blocks.size() == 1 ? most : 0;
  }

  /**
   * The sides of several pages in order; what one leaves over stands on the first side of the next
   * where there is room for it.
   */
  public static List<Page> sidesOf(Page... pages) {
    List<Page> sides = new ArrayList<>();
    for (Page page : pages) {
      for (Page side : page.sides()) {
        int last = sides.size() - 1;
        Page both = last < 0 ? side : sides.get(last).with(side);
        if (last >= 0 && both.fits()) {
          sides.set(last, both);
        } else {
          sides.add(side);
        }
      }
    }
    return sides;
  }

  /** What stands at the end of a side and belongs to what follows; a heading alone stays. */
  private static void takeHeadings(Page side, Deque<PageBlock> next) {
    int last = side.blocks.size() - 1;
    if (last > 1 && side.blocks.get(last) instanceof PageBlocks.Heading) {
      next.addFirst(side.blocks.remove(last));
    }
  }

  private Page empty() {
    return new Page(format, words, title, date);
  }

  private Page with(PageBlock block) {
    Page longer = empty();
    longer.blocks.addAll(blocks.subList(1, blocks.size()));
    return longer.add(block);
  }

  private Page with(Page next) {
    Page longer = this;
    for (PageBlock block : next.blocks.subList(1, next.blocks.size())) {
      longer = longer.with(block);
    }
    return longer;
  }

  /** The part of a side that its content needs at least. */
  private double filled() {
    PageType type = new PageType(PdfFonts.forMeasuring(), format.text().sizePt());
    return 1 - spareHeight(type, width(), room(type)) / room(type);
  }

  /** Whether the content fits on one side. */
  public boolean fits() {
    try {
      PageType type = new PageType(PdfFonts.forMeasuring(), format.text().sizePt());
      spareHeight(type, width(), room(type));
      return true;
    } catch (PageLayoutException e) {
      return false;
    }
  }

  private double width() {
    return format.widthPt() - 2 * MARGIN_PT;
  }

  private double room(PageType type) {
    return format.heightPt() - 2 * MARGIN_PT - type.lineHeightPt() * 1.4;
  }

  private void draw(PdfFile file, int number, int count) throws IOException {
    PageType type = new PageType(file.fonts(), format.text().sizePt());
    double width = width();
    double spare = spareHeight(type, width, room(type));
    PdfSheet sheet = file.sheet(format.widthPt(), format.heightPt());
    long growing = blocks.stream().filter(PageBlock::grows).count();
    double y = MARGIN_PT;
    sheet.begin("Sect");
    sheet.speak(words.language());
    for (PageBlock block : blocks) {
      double tall =
          block.heightPt(type, width) + (block.grows() ? spare / Math.max(1, growing) : 0);
      block.draw(sheet, type, MARGIN_PT, y, width, tall);
      y += tall;
    }
    foot(sheet, type, number, count);
    sheet.end();
  }

  private double spareHeight(PageType type, double width, double room) {
    double used = 0;
    PageBlock tallest = blocks.get(0);
    for (PageBlock block : blocks) {
      double tall = block.heightPt(type, width);
      used += tall;
      tallest = tall > tallest.heightPt(type, width) ? block : tallest;
    }
    if (used > room) {
      throw new PageLayoutException(
          String.format(
              Locale.ROOT,
              "the page does not fit on one side: it needs %.0f mm and has %.0f mm, most of it for"
                  + " the %s; leave something out, shorten names or use smaller print",
              Math.ceil(used * 25.4 / 72),
              Math.floor(room * 25.4 / 72),
              tallest.name()));
    }
    return room - used;
  }

  private void foot(PdfSheet sheet, PageType type, int number, int count) throws IOException {
    double y = format.heightPt() - MARGIN_PT;
    String page =
        words.say(
            "page.number", Map.of("page", words.number(number, 0), "of", words.number(count, 0)));
    sheet.begin("P");
    sheet.text(words.date(date), MARGIN_PT, y, type.fonts().plain(), type.sizePt());
    sheet.text(
        page,
        format.widthPt() - MARGIN_PT - type.width(page, type.fonts().plain()),
        y,
        type.fonts().plain(),
        type.sizePt());
    sheet.end();
  }
}
