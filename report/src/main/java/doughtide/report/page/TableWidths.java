package doughtide.report.page;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * Shares the width of a table among its columns: by weight, but no word is cut while room is left.
 */
final class TableWidths {

  private static final double ROUNDING_PT = 0.05;
  private static final Pattern WORDS = Pattern.compile("[ \n]");

  /** What is left when a span is parted behind its dash, before any word is. */
  private static final Pattern PIECES = Pattern.compile("[ \n]|(?<=–)");

  private TableWidths() {}

  static double padPt(PageType type) {
    return type.sizePt() * 0.9;
  }

  /** Whether no word has to be broken. */
  static boolean keepsWords(Table table, PageType type, double widthPt) {
    double sum = 0;
    for (int i = 0; i < table.columns().size(); i++) {
      sum += longestWord(table, i, type, WORDS) + padPt(type);
    }
    return sum <= widthPt;
  }

  static double[] of(Table table, PageType type, double widthPt) {
    List<Table.Column> columns = table.columns();
    double[] weights = columns.stream().mapToDouble(Table.Column::weight).toArray();
    double[] whole = least(table, type, WORDS);
    if (Arrays.stream(whole).sum() <= widthPt) {
      return share(whole, weights, widthPt);
    }
    double[] parted = least(table, type, PIECES);
    return Arrays.stream(parted).sum() <= widthPt
        ? share(parted, weights, widthPt)
        : cut(parted, weights, type, widthPt);
  }

  private static double[] least(Table table, PageType type, Pattern between) {
    return IntStream.range(0, table.columns().size())
        .mapToDouble(i -> longestWord(table, i, type, between) + padPt(type) + ROUNDING_PT)
        .toArray();
  }

  private static double longestWord(Table table, int column, PageType type, Pattern between) {
    double longest = words(table.columns().get(column).head(), type, type.fonts().bold(), between);
    Table.Kind kind = table.columns().get(column).kind();
    if (kind == Table.Kind.TICK) {
      return Math.max(longest, type.sizePt());
    }
    if (kind == Table.Kind.WRITE) {
      longest = Math.max(longest, type.sizePt() * 3);
    }
    PDFont font = kind == Table.Kind.STRONG ? type.fonts().bold() : type.fonts().plain();
    for (List<String> row : table.rows()) {
      longest = Math.max(longest, words(row.get(column), type, font, between));
    }
    return longest;
  }

  private static double words(String text, PageType type, PDFont font, Pattern between) {
    return between.splitAsStream(text).mapToDouble(word -> type.width(word, font)).max().orElse(0);
  }

  /** By weight; a column that would cut a word takes what it needs first. */
  private static double[] share(double[] least, double[] weights, double widthPt) {
    boolean[] fixed = new boolean[least.length];
    double[] widths = new double[least.length];
    boolean changed = true;
    while (changed) {
      changed = false;
      double rest = widthPt;
      double weight = 0;
      for (int i = 0; i < least.length; i++) {
        rest -= fixed[i] ? least[i] : 0;
        weight += fixed[i] ? 0 : weights[i];
      }
      for (int i = 0; i < least.length; i++) {
        widths[i] = fixed[i] ? least[i] : rest * weights[i] / weight;
        if (!fixed[i] && widths[i] < least[i] - 1e-9) {
          fixed[i] = true;
          changed = true;
        }
      }
    }
    return widths;
  }

  /**
   * Too narrow for all words: the columns with the longest words give way, and these are broken.
   */
  private static double[] cut(double[] least, double[] weights, PageType type, double widthPt) {
    double floor = type.sizePt() * 2.6;
    double level = Arrays.stream(least).max().orElse(0);
    while (level > floor && capped(least, level) > widthPt) {
      level -= 0.5;
    }
    if (capped(least, level) > widthPt) {
      throw new PageLayoutException(
          String.format(
              Locale.ROOT,
              "the table has %d columns, too many for a sheet %.0f mm wide at %.0f pt: use fewer"
                  + " columns, smaller print or the sheet sideways",
              least.length,
              widthPt * 25.4 / 72,
              type.sizePt()));
    }
    double cap = level;
    return share(Arrays.stream(least).map(w -> Math.min(w, cap)).toArray(), weights, widthPt);
  }

  private static double capped(double[] least, double level) {
    return Arrays.stream(least).map(w -> Math.min(w, level)).sum();
  }
}
