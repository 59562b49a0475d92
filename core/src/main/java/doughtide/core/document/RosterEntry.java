package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.dough.Flour;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.SentRecord;
import java.io.Serializable;
import java.util.Optional;

/**
 * One student of a class. The name is data: whoever prints it must write it as text, never as
 * markup or a formula.
 *
 * @param name as the roster writes it, 1 to 40 characters, none of them a control character
 * @param dough which dough of the day she makes, 1 to 40 characters
 * @param flour the flour she brings; empty where it is that of the dough
 * @param loaves how many loaves she makes, 1…50
 * @param language two letters of the language of her pages, such as {@code en}; empty where it is
 *     that of the class
 */
@Internal
public record RosterEntry(
    String name, String dough, Optional<Flour> flour, int loaves, Optional<String> language)
    implements Serializable {

  /** Most loaves of one student. */
  public static final int MOST_LOAVES = 50;

  private static final int LONGEST = 40;

  /**
   * @throws InputException if a text is empty, too long or holds a control character, the loaves
   *     are out of range, or the language is not two letters
   */
  public RosterEntry {
    checkText("name", name);
    checkText("dough", dough);
    Checks.inRange("loaves of a student", loaves, 1, MOST_LOAVES, "");
    language.ifPresent(RosterEntry::checkLanguage);
  }

  private static void checkText(String what, String text) {
    boolean control = text.codePoints().anyMatch(RosterEntry::isControl);
    if (text.isBlank() || text.length() > LONGEST || control) {
      throw new InputException(
          "roster." + what,
          "the "
              + what
              + " of a student must have 1 to "
              + LONGEST
              + " characters and none that controls a printer or a screen, it has "
              + text.strip().length());
    }
  }

  private static boolean isControl(int c) {
    int type = Character.getType(c);
    return type == Character.CONTROL
        || type == Character.FORMAT
        || type == Character.LINE_SEPARATOR
        || type == Character.PARAGRAPH_SEPARATOR;
  }

  private static void checkLanguage(String tag) {
    if (!tag.matches("[a-z]{2}")) {
      throw new InputException(
          "roster.language", "'" + tag + "' is no language: write its two letters, for example en");
    }
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
