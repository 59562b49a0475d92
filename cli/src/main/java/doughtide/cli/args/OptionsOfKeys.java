package doughtide.cli.args;

import java.util.List;
import java.util.Map;

/** Which options give a quantity, by the key of the refusal of its values. */
final class OptionsOfKeys {
  private static final Map<String, List<String>> OPTIONS =
      Map.ofEntries(
          Map.entry("baking", List.of("bake")),
          Map.entry("bench-rest-and-shaping", List.of("rest")),
          Map.entry("bowls.order", List.of("driest", "wettest")),
          Map.entry("bowls.step-too-fine", List.of("step", "bowl-flour", "scale")),
          Map.entry("bowls.too-many", List.of("step", "driest", "wettest")),
          Map.entry("cooling", List.of("cool")),
          Map.entry("divide-rest-and-shape", List.of("rest")),
          Map.entry("dough-temperature", List.of("dough-temp")),
          Map.entry("dough.no-growth", List.of("room", "dough-temp", "starter-temp")),
          Map.entry("dough.starter-water", List.of("hydration", "starter-hydration", "starter")),
          Map.entry("driest-bowl", List.of("driest")),
          Map.entry("feeding.old-starter", List.of("ratio")),
          Map.entry("flour-moisture", List.of("moisture")),
          Map.entry("flour-per-bowl", List.of("bowl-flour")),
          Map.entry("hour-of-coming-back", List.of("back-at")),
          Map.entry("hour-of-leaving", List.of("leave-at")),
          Map.entry("hydration", List.of("hydration", "grams")),
          Map.entry("hours-from-feeding-to-ready", List.of("ready-at")),
          Map.entry("hours-from-mixing-to-the-oven", List.of("bake-at")),
          Map.entry("loaves-in-the-oven", List.of("oven-capacity")),
          Map.entry("mass-of-the-piece", List.of("piece", "dough-mass", "loaves")),
          Map.entry("mixer.batches", List.of("mixer-capacity")),
          Map.entry("number-of-refreshments", List.of("refreshments")),
          Map.entry("paper", List.of("paper", "pages-paper")),
          Map.entry("persons", List.of("hands")),
          Map.entry("prefermented-flour", List.of("prefermented", "starter", "grams")),
          Map.entry("preheating", List.of("preheat")),
          Map.entry("proof-in-the-room", List.of("proof")),
          Map.entry("proof-temperature", List.of("proof-temp")),
          Map.entry("refrigerator", List.of("cold")),
          Map.entry("rest", List.of("bowl-rest")),
          Map.entry("salt", List.of("salt", "grams")),
          Map.entry("scale-resolution", List.of("scale")),
          Map.entry("stage.no-growth", List.of("stage", "stages")),
          Map.entry("starter-share", List.of("starter", "prefermented", "grams")),
          Map.entry("tap-water", List.of("tap")),
          Map.entry("target-rise", List.of("target", "rise")),
          Map.entry("temperature-around-the-dough", List.of("room")),
          Map.entry("temperature-of-the-cold", List.of("cold")),
          Map.entry("temperature-of-the-flour", List.of("flour-temp")),
          Map.entry("time-in-the-cold", List.of("hold")),
          Map.entry("wanted-bulk-time", List.of("bulk")),
          Map.entry("wanted-dough-temperature", List.of("dough-temp")),
          Map.entry("warming-by-mixing", List.of("warming", "got")),
          Map.entry("water", List.of("pour")),
          Map.entry("wettest-bowl", List.of("wettest")));

  private OptionsOfKeys() {}

  /** The likeliest first; where nothing else is known, the option with the name of the key. */
  static List<String> of(String key) {
    return OPTIONS.getOrDefault(key, List.of(key));
  }
}
