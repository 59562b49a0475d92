package doughtide.cli.answer;

import java.util.List;
import java.util.function.Supplier;

/** A part of an answer. */
public sealed interface Item
    permits Item.Quantity, Item.Sentence, Item.Texts, Item.Later, Section, Listing {

  /**
   * A quantity.
   *
   * @param key in data; empty if it is for people only, {@link Section#HERE} for a window or range
   *     whose fields stand among those of the section
   * @param label on a page; empty if it is for other programs only
   * @param value what it is
   */
  record Quantity(String key, String label, Value value) implements Item {}

  /**
   * A sentence for people.
   *
   * @param text one paragraph
   * @param hanging columns by which its further lines are indented
   */
  record Sentence(String text, int hanging) implements Item {}

  /**
   * Sentences for people and other programs.
   *
   * @param key of the array; empty if they are for people only
   * @param lead before each on a page, such as {@code Caution:}; empty if they are not shown
   */
  record Texts(String key, String lead, List<String> texts) implements Item {
    public Texts {
      texts = List.copyOf(texts);
    }
  }

  /** A list that takes time to make and is for other programs only. */
  record Later(Supplier<Listing> listing) implements Item {}
}
