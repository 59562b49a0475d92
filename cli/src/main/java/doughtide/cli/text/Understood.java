package doughtide.cli.text;

import java.util.ArrayList;
import java.util.List;

/** What the program took the input to mean, as labelled lines: the first thing a page shows. */
public final class Understood {

  private static final int GAP = 2;

  private record Entry(String label, String text) {}

  private final List<Entry> entries = new ArrayList<>();

  public Understood add(String label, String text) {
    entries.add(new Entry(label, text));
    return this;
  }

  /** The lines with the texts below each other, within the width of a page. */
  public List<String> lines() {
    int column = entries.stream().mapToInt(e -> e.label().length()).max().orElse(0) + GAP;
    return entries.stream()
        .flatMap(
            e ->
                Paragraph.lines(e.label() + " ".repeat(column - e.label().length()), e.text())
                    .stream())
        .toList();
  }
}
