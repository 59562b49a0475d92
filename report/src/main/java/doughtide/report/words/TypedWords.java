package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.document.Catalogue;
import doughtide.core.dough.Flour;
import doughtide.core.quantity.Checks;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The words that a page tells a baker to type into a file: hers, and read back as the keys they
 * stand for.
 *
 * <pre>{@code
 * TypedWords typed = new TypedWords(Words.in(Language.GERMAN));
 * typed.key("dough-temp"); // Teigtemperatur
 * typed.columns("time", "height"); // Zeit;Höhe mm
 * }</pre>
 */
@Internal
public final class TypedWords {

  private final Words words;

  public TypedWords(Words words) {
    this.words = words;
  }

  /** The word for a key of a head, such as {@code starter-hydration}. */
  public String key(String key) {
    return first("read.key.", key);
  }

  /** The word for a column of a table, such as {@code time}, with its unit where it needs one. */
  public String column(String column) {
    String unit =
        switch (column) {
          case "height" -> " mm";
          case "rise" -> " %";
          case "dough-temp" -> " " + degrees();
          default -> "";
        };
    boolean isAcidity = column.equals("ph") && words.language() == Language.ENGLISH;
    return isAcidity ? "pH" : first("read.column.", column) + unit;
  }

  /** The line that begins a table. */
  public String columns(String... columns) {
    return List.of(columns).stream().map(this::column).collect(Collectors.joining(";"));
  }

  /** The letter behind a temperature. */
  public String degrees() {
    return words.degrees() == Words.Degrees.FAHRENHEIT ? "F" : "C";
  }

  /** A flour by its classes. */
  public String flour(Flour flour) {
    if (words.language() == Language.ENGLISH) {
      return Catalogue.text(flour).replace(",", ", ");
    }
    if (flour.parts().size() == 1) {
      return words.named("flour", flour.parts().keySet().iterator().next());
    }
    return flour.parts().entrySet().stream()
        .map(part -> words.named("flour", part.getKey()) + " " + percent(part.getValue().percent()))
        .collect(Collectors.joining(", "));
  }

  /** A share, to a tenth of a per cent. */
  public String percent(double percent) {
    return Checks.plain(Math.rint(percent * 10) / 10) + "%";
  }

  /** In English the keys are the words. */
  private String first(String group, String key) {
    return words.language() == Language.ENGLISH
        ? key.replace('-', ' ')
        : words.say(group + key).split(",", -1)[0];
  }
}
