package doughtide.report.page;

import doughtide.report.chart.PictureKey;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Which marks and signs of English pages are neither named beside them nor in their text. */
public final class PageKey {
  private static final double BROAD_PT = 3;
  private static final double BOLD_PT = 2;
  private static final double THIN_PT = 1;

  private final List<PageBlock> blocks;
  private final String text;

  private PageKey(List<Page> pages) {
    this.blocks = pages.stream().flatMap(page -> page.blocks().stream()).toList();
    this.text =
        blocks.stream()
            .flatMap(PageKey::said)
            .collect(Collectors.joining(" "))
            .toLowerCase(Locale.ENGLISH);
  }

  public static List<String> missing(List<Page> pages) {
    PageKey key = new PageKey(pages);
    return key.blocks.stream().flatMap(key::missing).distinct().toList();
  }

  private static Stream<String> said(PageBlock block) {
    if (block instanceof PageBlocks.Paragraph paragraph) {
      return Stream.of(paragraph.text());
    }
    if (block instanceof PageBlocks.Strong strong) {
      return Stream.of(strong.text());
    }
    return tables(block).flatMap(table -> table.columns().stream()).map(Table.Column::head);
  }

  private static Stream<Table> tables(PageBlock block) {
    if (block instanceof PageBlocks.TableBlock one) {
      return Stream.of(one.table());
    }
    return block instanceof PageBlocks.LargestTable large ? Stream.of(large.table()) : Stream.of();
  }

  private Stream<String> missing(PageBlock block) {
    if (block instanceof PageBlocks.Picture picture) {
      return PictureKey.missing(picture.chart(), text).stream();
    }
    if (block instanceof PageBlocks.Pictures pictures) {
      return pictures.charts().stream().flatMap(chart -> PictureKey.missing(chart, text).stream());
    }
    if (block instanceof PlotBlock plot) {
      return plot.lines().stream().flatMap(line -> unlessSaid(code(line)));
    }
    if (block instanceof StripBlock strip) {
      return strip.marks().stream()
          .filter(mark -> mark.text().isBlank())
          .map(mark -> "a mark of the strip without a name at " + mark.mm() + " mm");
    }
    return tables(block)
        .flatMap(table -> table.rows().stream())
        .flatMap(List::stream)
        .flatMap(this::signs);
  }

  private static String code(PlotBlock.Line line) {
    if (line.thicknessPt() > BROAD_PT && line.grey() > 0.5) {
      return "broad grey line";
    }
    if (line.thicknessPt() > BOLD_PT && line.grey() == 0) {
      return "bold black";
    }
    return line.thicknessPt() <= THIN_PT ? "thin lines" : "a line of its own kind";
  }

  /** What a cell says without words. */
  private Stream<String> signs(String cell) {
    List<String> lacking = new ArrayList<>();
    if (cell.matches("(?s).*\\([^()]*–[^()]*\\).*")) {
      unlessSaid("early–late").forEach(lacking::add);
    }
    if (cell.contains("→")) {
      unlessSaid("arrow").forEach(lacking::add);
    }
    if (cell.matches("(?s).*[*†‡§±~≈≤≥<>↑↓←^#].*")) {
      lacking.add("a sign that no key tells of: " + cell);
    }
    return lacking.stream();
  }

  private Stream<String> unlessSaid(String mark) {
    return text.contains(mark) ? Stream.empty() : Stream.of("the page lacks: " + mark);
  }
}
