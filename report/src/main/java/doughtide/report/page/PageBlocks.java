package doughtide.report.page;

import doughtide.report.chart.PrintedChart;
import doughtide.report.type.Fonts;
import doughtide.report.type.PdfSheet;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.font.PDFont;

/** The kinds of {@link PageBlock}, one record each. */
final class PageBlocks {

  private PageBlocks() {}

  static void drawLines(
      PdfSheet sheet, PageType type, List<String> lines, double x, double top, PDFont font)
      throws IOException {
    double y = top;
    for (String line : lines) {
      sheet.text(line, x, y + type.baselinePt(), font, type.sizePt());
      y += type.lineHeightPt();
    }
  }

  /** A heading of level 1 or 2. */
  record Heading(String text, int level) implements PageBlock {

    private PageType own(PageType type) {
      return type.scaled(level == 1 ? 1.6 : 1.2);
    }

    @Override
    public String name() {
      return "heading";
    }

    @Override
    public double heightPt(PageType type, double width) {
      PageType own = own(type);
      return own.lines(text, width, type.fonts().bold()).size() * own.lineHeightPt()
          + type.sizePt() * (level == 1 ? 0.3 : 0.55);
    }

    @Override
    public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
        throws IOException {
      PageType own = own(type);
      sheet.begin("H" + level);
      drawLines(
          sheet,
          own,
          own.lines(text, width, type.fonts().bold()),
          x,
          top + (level == 1 ? 0 : type.sizePt() * 0.3),
          type.fonts().bold());
      sheet.end();
    }
  }

  /** Running text. */
  record Paragraph(String text) implements PageBlock {
    @Override
    public String name() {
      return "text";
    }

    @Override
    public double heightPt(PageType type, double width) {
      return type.lines(text, width, type.fonts().plain()).size() * type.lineHeightPt()
          + type.sizePt() * 0.4;
    }

    @Override
    public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
        throws IOException {
      sheet.begin("P");
      PDFont font = type.fonts().plain();
      drawLines(sheet, type, type.lines(text, width, font), x, top, font);
      sheet.end();
    }
  }

  /** Text that stands out. */
  record Strong(String text) implements PageBlock {
    @Override
    public String name() {
      return "text";
    }

    @Override
    public double heightPt(PageType type, double width) {
      return type.lines(text, width, type.fonts().bold()).size() * type.lineHeightPt()
          + type.sizePt() * 0.4;
    }

    @Override
    public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
        throws IOException {
      sheet.begin("P");
      PDFont font = type.fonts().bold();
      drawLines(sheet, type, type.lines(text, width, font), x, top, font);
      sheet.end();
    }
  }

  /** A framed line that warns. */
  record Caution(String word, String text) implements PageBlock {
    @Override
    public String name() {
      return "caution";
    }

    private List<String> lines(PageType type, double width) {
      return type.lines(word + " " + text, width - 1.6 * type.sizePt(), type.fonts().bold());
    }

    @Override
    public double heightPt(PageType type, double width) {
      return lines(type, width).size() * type.lineHeightPt() + type.sizePt() * 1.3;
    }

    @Override
    public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
        throws IOException {
      List<String> lines = lines(type, width);
      double pad = type.sizePt() * 0.35;
      sheet.box(x, top + 1, width, lines.size() * type.lineHeightPt() + 2 * pad, 1.4);
      sheet.begin("P");
      drawLines(sheet, type, lines, x + type.sizePt() * 0.8, top + pad + 1, type.fonts().bold());
      sheet.end();
    }
  }

  /** Lines to tick off. */
  record Ticks(List<String> items) implements PageBlock {
    Ticks {
      items = List.copyOf(items);
    }

    @Override
    public String name() {
      return "list to tick off";
    }

    private double indent(PageType type) {
      return type.sizePt() * 1.7;
    }

    @Override
    public double heightPt(PageType type, double width) {
      double tall = type.sizePt() * 0.4;
      for (String item : items) {
        tall +=
            type.lines(item, width - indent(type), type.fonts().plain()).size()
                    * type.lineHeightPt()
                + type.sizePt() * 0.25;
      }
      return tall;
    }

    @Override
    public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
        throws IOException {
      double y = top;
      sheet.begin("L");
      for (String item : items) {
        List<String> lines = type.lines(item, width - indent(type), type.fonts().plain());
        sheet.box(x + 1, y + type.sizePt() * 0.16, type.sizePt(), type.sizePt(), 1.1);
        sheet.begin("LI");
        sheet.begin("LBody");
        drawLines(sheet, type, lines, x + indent(type), y, type.fonts().plain());
        sheet.end();
        sheet.end();
        y += lines.size() * type.lineHeightPt() + type.sizePt() * 0.25;
      }
      sheet.end();
    }
  }

  /** Ruled lines to write on; they fill the room that is left. */
  record WritingRoom(String label, int leastLines) implements PageBlock {
    @Override
    public String name() {
      return "room to write";
    }

    private double step(PageType type) {
      return Math.max(24, type.sizePt() * 2); // common practice for handwriting, no source
    }

    @Override
    public boolean grows() {
      return true;
    }

    @Override
    public double heightPt(PageType type, double width) {
      return leastLines * step(type) + type.sizePt() * 0.4;
    }

    @Override
    public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
        throws IOException {
      double y = top + step(type);
      if (y > top + tall - 1) {
        return;
      }
      sheet.begin("P");
      sheet.text(
          Fonts.printable(label), x, y - type.sizePt() * 0.25, type.fonts().plain(), type.sizePt());
      sheet.end();
      double start = type.width(label, type.fonts().plain()) + type.sizePt() * 0.4;
      while (y <= top + tall - 1) {
        sheet.line(x + start, y, x + width, y, 0.6);
        start = 0;
        y += step(type);
      }
    }
  }

  /** A label with a rule after it. */
  record WritingLine(String label) implements PageBlock {
    @Override
    public String name() {
      return "line to write on";
    }

    @Override
    public double heightPt(PageType type, double width) {
      List<String> lines = type.lines(label, width * 0.6, type.fonts().plain());
      return Math.max(24, lines.size() * type.lineHeightPt() + type.sizePt() * 0.5);
    }

    @Override
    public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
        throws IOException {
      PDFont font = type.fonts().plain();
      List<String> lines = type.lines(label, width * 0.6, font);
      double first = top + tall - type.sizePt() * 0.45 - lines.size() * type.lineHeightPt();
      sheet.begin("P");
      drawLines(sheet, type, lines, x, first, font);
      sheet.end();
      double start = type.width(lines.get(lines.size() - 1), font) + type.sizePt() * 0.4;
      double rule = top + tall - type.sizePt() * 0.5;
      sheet.line(x + start, rule, x + width, rule, 0.6);
    }
  }

  /** A chart as vectors; it fills the room that is left. */
  record Picture(PrintedChart chart, double leastPt, String description) implements PageBlock {
    @Override
    public String name() {
      return "chart";
    }

    @Override
    public boolean grows() {
      return true;
    }

    @Override
    public double heightPt(PageType type, double width) {
      return Math.max(leastPt, chart.withFontPt(type.sizePt()).leastTallPt(width));
    }

    @Override
    public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
        throws IOException {
      sheet.figure(
          chart.withFontPt(type.sizePt()), x, top, width, tall - type.sizePt() * 0.3, description);
    }
  }

  /** Several charts beside and under each other, all of one size. */
  record Pictures(List<PrintedChart> charts, List<String> descriptions, int across, double leastPt)
      implements PageBlock {
    Pictures {
      charts = List.copyOf(charts);
      descriptions = List.copyOf(descriptions);
    }

    @Override
    public String name() {
      return "charts";
    }

    private int down() {
      return (charts.size() + across - 1) / across;
    }

    @Override
    public boolean grows() {
      return true;
    }

    @Override
    public double heightPt(PageType type, double width) {
      double more = Math.max(0, titleLines(type, width) - 1) * type.sizePt();
      return down() * (leastPt + more * PrintedChart.TITLE_LINE);
    }

    private double each(PageType type, double width) {
      return (width - type.sizePt() * (across - 1)) / across;
    }

    /** As many lines as the longest title takes, so that all scales stand on one height. */
    private int titleLines(PageType type, double width) {
      return charts.stream()
          .mapToInt(chart -> chart.titleLines(each(type, width), type.sizePt()))
          .max()
          .orElse(0);
    }

    @Override
    public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
        throws IOException {
      double gap = type.sizePt();
      double w = each(type, width);
      int titleLines = titleLines(type, width);
      double h = tall / down();
      for (int i = 0; i < charts.size(); i++) {
        sheet.figure(
            charts.get(i).withTitleLines(titleLines).withFontPt(type.sizePt()),
            x + i % across * (w + gap),
            top + Math.floorDiv(i, across) * h,
            w,
            h,
            descriptions.get(i));
      }
    }
  }

  /** A table; its text can be larger than that of the page, never smaller. */
  record TableBlock(Table table, double scale) implements PageBlock {

    @Override
    public String name() {
      return "table";
    }

    @Override
    public int rows() {
      return table.rows().size();
    }

    @Override
    public PageBlock rows(int from, int to) {
      return new TableBlock(table.part(from, to), scale);
    }

    @Override
    public double heightPt(PageType type, double width) {
      PageType own = type.scaled(scale);
      double[] widths = TableWidths.of(table, own, width);
      double tall = rowHeight(heads(), own, widths, true);
      for (List<String> row : table.rows()) {
        tall += rowHeight(row, own, widths, false);
      }
      return tall + own.sizePt() * 0.5;
    }

    private List<String> heads() {
      return table.columns().stream().map(Table.Column::head).toList();
    }

    private PDFont font(Table.Column column, PageType type, boolean isHead) {
      return isHead || column.kind() == Table.Kind.STRONG
          ? type.fonts().bold()
          : type.fonts().plain();
    }

    private List<String> lines(
        List<String> row, int i, PageType type, double[] widths, boolean isHead) {
      Table.Column column = table.columns().get(i);
      boolean isPrinted = isHead || column.kind() != Table.Kind.TICK;
      return isPrinted && !row.get(i).isBlank()
          ? type.lines(row.get(i), widths[i] - TableWidths.padPt(type), font(column, type, isHead))
          : List.of();
    }

    /** Nothing is filled in, or a unit behind room to write. */
    private static boolean isOpen(String cell) {
      return cell.isBlank() || cell.startsWith("\u00a0");
    }

    private double rowHeight(List<String> row, PageType type, double[] widths, boolean isHead) {
      int most = 1;
      boolean isWritten = false;
      for (int i = 0; i < widths.length; i++) {
        most = Math.max(most, lines(row, i, type, widths, isHead).size());
        isWritten |= table.columns().get(i).kind() == Table.Kind.WRITE && isOpen(row.get(i));
      }
      double least = isWritten && !isHead ? Math.max(22, type.sizePt() * 1.8) : 0;
      return Math.max(least, most * type.lineHeightPt() + type.sizePt() * 0.4);
    }

    @Override
    public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
        throws IOException {
      PageType own = type.scaled(scale);
      double[] widths = TableWidths.of(table, own, width);
      sheet.begin("Table");
      double y = row(sheet, heads(), own, widths, x, top, true);
      sheet.line(x, y, x + width, y, 1.4);
      for (List<String> row : table.rows()) {
        y = row(sheet, row, own, widths, x, y, false);
        sheet.line(x, y, x + width, y, 0.5);
      }
      uprights(sheet, widths, x, top, y);
      sheet.end();
    }

    private void uprights(PdfSheet sheet, double[] widths, double x, double top, double bottom)
        throws IOException {
      double at = x;
      for (int i = 0; i < widths.length - 1; i++) {
        at += widths[i];
        sheet.line(at, top, at, bottom, 0.5);
      }
    }

    private double row(
        PdfSheet sheet,
        List<String> row,
        PageType type,
        double[] widths,
        double x,
        double top,
        boolean isHead)
        throws IOException {
      sheet.begin("TR");
      double at = x;
      for (int i = 0; i < widths.length; i++) {
        sheet.begin(isHead ? "TH" : "TD");
        Table.Column column = table.columns().get(i);
        drawLines(
            sheet,
            type,
            lines(row, i, type, widths, isHead),
            at + (i == 0 ? 0 : TableWidths.padPt(type) / 2),
            top + type.sizePt() * 0.2,
            font(column, type, isHead));
        if (column.kind() == Table.Kind.TICK && !isHead) {
          sheet.box(
              at + TableWidths.padPt(type) / 2,
              top + type.sizePt() * 0.4,
              type.sizePt(),
              type.sizePt(),
              1.1);
        }
        sheet.end();
        at += widths[i];
      }
      sheet.end();
      return top + rowHeight(row, type, widths, isHead);
    }
  }

  /** A table in the largest type that the room allows, for reading from a distance. */
  record LargestTable(Table table, double mostScale) implements PageBlock {
    @Override
    public String name() {
      return "table";
    }

    @Override
    public int rows() {
      return table.rows().size();
    }

    @Override
    public PageBlock rows(int from, int to) {
      return new LargestTable(table.part(from, to), mostScale);
    }

    @Override
    public boolean grows() {
      return true;
    }

    @Override
    public double heightPt(PageType type, double width) {
      return new TableBlock(table, 1).heightPt(type, width);
    }

    @Override
    public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
        throws IOException {
      double scale = mostScale;
      while (scale > 1
          && !(TableWidths.keepsWords(table, type.scaled(scale), width)
              && new TableBlock(table, scale).heightPt(type, width) <= tall)) {
        scale = Math.max(1, scale - 0.05);
      }
      new TableBlock(table, scale).draw(sheet, type, x, top, width, tall);
    }
  }
}
