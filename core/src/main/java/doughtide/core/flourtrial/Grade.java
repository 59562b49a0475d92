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
  TOO_STIFF(
      "too stiff",
      "hard to pull, cracks or snaps; a dry dough that breaks is this, not torn",
      List.of("stiff", "cracks")),
  /** Holds together, springs back. */
  FIRM("firm", "pulls with effort and springs back, the window stays thick", List.of("tight")),
  /** The range in which dough is easy to handle. */
  THIN_WINDOW(
      "thin window",
      "pulls smoothly to a thin, even window that light shines through",
      List.of("window", "supple window", "supple")),
  /** Wetter than is comfortable, still dough. */
  TEARS_FAR(
      "tears when stretched far",
      "makes a window while small, tears when pulled farther, sticks and spreads",
      List.of("tears", "tears far")),
  /** More water than the flour can hold. */
  TORN(
      "torn",
      "runs off the fingers or comes apart at once, water shines on its surface",
      List.of("runs", "torn or runs", "torn/runs", "soup"));

  private final String words;
  private final String lookFor;
  private final List<String> alsoCalled;

  Grade(String words, String lookFor, List<String> alsoCalled) {
    this.words = words;
    this.lookFor = lookFor;
    this.alsoCalled = alsoCalled;
  }

  /** The grade as printed and as written in a trial file. */
  public String words() {
    return words;
  }

  /** What to look for. */
  public String lookFor() {
    return lookFor;
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
        .filter(grade -> grade.words.equals(wanted) || grade.alsoCalled.contains(wanted))
        .findFirst()
        .orElseThrow(
            () ->
                InputException.unknown(
                    "grade", text, Arrays.stream(values()).map(Grade::words).toList()));
  }
}
