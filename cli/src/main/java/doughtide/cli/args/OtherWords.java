package doughtide.cli.args;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Other words of the kitchen for the options, for the hint after an unknown option. */
final class OtherWords {
  private static final Map<String, List<String>> OPTIONS =
      Map.ofEntries(
          Map.entry("fridge", List.of("cold")),
          Map.entry("refrigerator", List.of("cold")),
          Map.entry("retard", List.of("cold", "hold")),
          Map.entry("kitchen", List.of("room")),
          Map.entry("ambient", List.of("room", "starter-temp", "dough-temp")),
          Map.entry("room", List.of("starter-temp", "dough-temp")),
          Map.entry("temp", List.of("starter-temp", "dough-temp", "room")),
          Map.entry("temperature", List.of("starter-temp", "dough-temp", "room")),
          Map.entry("bulk-temp", List.of("dough-temp", "room")),
          Map.entry("target", List.of("dough-temp", "rise")),
          Map.entry("target-temp", List.of("dough-temp")),
          Map.entry("vessel", List.of("bowl")),
          Map.entry("held", List.of("proofer")),
          Map.entry("from", List.of("driest")),
          Map.entry("to", List.of("wettest")),
          Map.entry("flour-per-bowl", List.of("bowl-flour")),
          Map.entry("water", List.of("hydration", "pour")),
          Map.entry("levain", List.of("starter", "amount")),
          Map.entry("leaven", List.of("starter", "amount")),
          Map.entry("sourdough", List.of("starter", "amount")),
          Map.entry("inoculation", List.of("starter")),
          Map.entry("flour-mass", List.of("all-flour", "dough-mass")),
          Map.entry("loaf", List.of("piece", "loaves")),
          Map.entry("size", List.of("piece", "dough-mass")),
          Map.entry("weight", List.of("piece", "dough-mass", "amount")),
          Map.entry("shape", List.of("form", "shaping", "shape-at")),
          Map.entry("wanted-at", List.of("ready-at", "shape-at")),
          Map.entry("eat-at", List.of("ready-at")),
          Map.entry("oven-at", List.of("bake-at", "ready-at")),
          Map.entry("oven", List.of("bake-at", "oven-capacity")),
          Map.entry("start-at", List.of("mixed-at", "fed-at")),
          Map.entry("start", List.of("mixed-at", "fed-at")),
          Map.entry("mix-at", List.of("mixed-at")),
          Map.entry("feed-at", List.of("fed-at")),
          Map.entry("away", List.of("at-the-bench", "leave-at")),
          Map.entry("output", List.of("out", "chart")),
          Map.entry("pdf", List.of("out", "chart")),
          Map.entry("print", List.of("chart", "page")),
          Map.entry("json", List.of("format")),
          Map.entry("csv", List.of("format")),
          Map.entry("lang", List.of("language")));

  private OtherWords() {}

  /**
   * The option of a command that a word of the kitchen may stand for.
   *
   * @param word as typed, without dashes
   * @param options those that the command has
   */
  static Optional<String> meant(String word, List<String> options) {
    return OPTIONS.getOrDefault(word.toLowerCase(Locale.ROOT), List.of()).stream()
        .filter(options::contains)
        .findFirst();
  }
}
