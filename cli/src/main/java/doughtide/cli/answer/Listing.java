package doughtide.cli.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Things of one kind: an array of objects in data, the rows of a table on a page. A row's
 * quantities with a label are the columns; a window with a label is a row of a time table.
 *
 * @param key of the array; empty if it is for people only
 * @param heading above the table, or empty
 * @param rows one section each
 * @param like a row that is none, for the columns of a table without rows
 */
public record Listing(String key, String heading, List<Section> rows, Optional<Section> like)
    implements Item {

  public Listing {
    rows = List.copyOf(rows);
  }

  /** Puts a list together, row by row. */
  public static final class Builder implements ItemBuilder {
    private final String key;
    private final String heading;
    private final Timeline timeline;
    private final List<Section.Builder> rows = new ArrayList<>();
    private Optional<Section.Builder> like = Optional.empty();

    public Builder(String key, String heading, Timeline timeline) {
      this.key = key;
      this.heading = heading;
      this.timeline = timeline;
    }

    /** One more row, to be filled. */
    public Section.Builder row() {
      return row("", timeline);
    }

    /** One more row under a heading of its own, whose hours count otherwise. */
    public Section.Builder row(String heading, Timeline own) {
      Section.Builder row = new Section.Builder("", heading, own);
      rows.add(row);
      return row;
    }

    /** A row that only tells which columns a table without rows has. */
    public Section.Builder like() {
      Section.Builder row = new Section.Builder("", "", timeline);
      like = Optional.of(row);
      return row;
    }

    @Override
    public Listing build() {
      return new Listing(
          key,
          heading,
          rows.stream().map(Section.Builder::build).toList(),
          like.map(Section.Builder::build));
    }
  }
}
