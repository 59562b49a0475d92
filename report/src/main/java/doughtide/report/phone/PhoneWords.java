package doughtide.report.phone;

import doughtide.report.words.Words;
import java.util.Map;
import java.util.Set;

/**
 * The texts of a page, which the bundles have under {@code phone.}; those that name what the page
 * is about stand there once for a dough and once for a starter.
 *
 * @param words of the language
 * @param isStarter whether the page is about a starter
 */
record PhoneWords(Words words, boolean isStarter) {

  private static final Set<String> OF_STARTER =
      Set.of(
          "badStart",
          "badTime",
          "dashed",
          "dots",
          "doubt.OTHER_DOUGH",
          "eightOfTen",
          "left",
          "lookNow",
          "name",
          "never",
          "open",
          "start",
          "takeWhy",
          "temperature",
          "thin",
          "warmer",
          "what",
          "window");

  private static final Map<String, String> SHARED = Map.of("shape", "sheet.answer");

  String say(String key) {
    return words.say(key(key));
  }

  String say(String key, Map<String, String> values) {
    return words.say(key(key), values);
  }

  private String key(String key) {
    return isStarter && OF_STARTER.contains(key)
        ? "phone.starter." + key
        : SHARED.getOrDefault(key, "phone." + key);
  }
}
