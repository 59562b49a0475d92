package doughtide.core.flourtrial;

import doughtide.core.Internal;
import doughtide.core.quantity.InputException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * How a bowl feels after its rest, from the driest to the wettest. More water moves a dough down
 * this list and never up; the places where one grade gives way to the next are the flour's cut
 * points (words and order: common practice, no source).
 */
@Internal
public enum Grade {
  /** Not enough water: dry, hard, cracks. */
  TOO_STIFF("too stiff", List.of("stiff", "cracks")),
  /** Holds together, springs back. */
  FIRM("firm", List.of("tight")),
  /** The range in which dough is easy to handle; of rye, a smooth paste. */
  THIN_WINDOW("thin window", List.of("window", "supple window", "supple")),
  /** Wetter than is comfortable, still dough. */
  TEARS_FAR("tears when stretched far", List.of("tears", "tears far")),
  /** More water than the flour can hold. */
  TORN("torn", List.of("runs", "torn or runs", "torn/runs", "soup"));

  private final String key;
  private final List<String> alsoCalled;

  Grade(String key, List<String> alsoCalled) {
    this.key = key;
    this.alsoCalled = alsoCalled;
  }

  /** The grade as written in a trial file. */
  public String key() {
    return key;
  }

  /**
   * Finds a grade by its words, upper or lower case.
   *
   * @param text for example {@code "thin window"}
   * @throws InputException if there is no such grade; the message lists them
   */
  public static Grade named(String text) {
    String wanted = text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
    return Arrays.stream(values())
        .filter(grade -> grade.key.equals(wanted) || grade.alsoCalled.contains(wanted))
        .findFirst()
        .orElseThrow(
            () ->
                InputException.unknown(
                    "grade", text, Arrays.stream(values()).map(Grade::key).toList()));
  }
}
