package doughtide.cli.answer;

import doughtide.cli.args.Speech;
import doughtide.cli.text.OneLine;
import doughtide.cli.text.Paragraph;
import java.util.ArrayList;
import java.util.List;

/** A page of text of at most 80 columns. */
final class TextPage {

  private static final int GAP = 2;

  private final List<String> lines = new ArrayList<>();

  /** A line with plain spaces; what could command a terminal is taken out of it. */
  public TextPage line(String text) {
    lines.add(OneLine.harmless(Speech.plain(text)).stripTrailing());
    return this;
  }

  /** An empty line. */
  public TextPage gap() {
    return line("");
  }

  /** A sentence, broken between words where it gets too long. */
  public TextPage sentence(String text) {
    return sentence(text, 0);
  }

  /**
   * A sentence whose further lines are indented.
   *
   * @param hanging columns
   */
  public TextPage sentence(String text, int hanging) {
    int lead = Math.min(hanging, text.length());
    Paragraph.lines(text.substring(0, lead), text.substring(lead)).forEach(this::line);
    return this;
  }

  /** Rows whose cells stand below each other; the last cell of a row may be long. */
  public TextPage table(List<List<String>> rows) {
    List<Integer> widths = new ArrayList<>();
    for (List<String> row : rows) {
      for (int i = 0; i < row.size() - 1; i++) {
        int width = row.get(i).length();
        if (i < widths.size()) {
          widths.set(i, Math.max(widths.get(i), width));
        } else {
          widths.add(width);
        }
      }
    }
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < row.size(); i++) {
        String cell = row.get(i);
        boolean last = i == row.size() - 1;
        line.append(cell);
        if (!last) {
          line.append(" ".repeat(widths.get(i) - cell.length() + GAP));
        }
      }
      sentence(line.toString(), line.length() - row.get(row.size() - 1).length());
    }
    return this;
  }

  /** The lines so far. */
  public List<String> lines() {
    return List.copyOf(lines);
  }
}
