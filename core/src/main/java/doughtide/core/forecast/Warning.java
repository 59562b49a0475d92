package doughtide.core.forecast;

import doughtide.core.quantity.Checks;
import java.io.Serializable;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Something the user should know: what kind of thing it is, and its numbers. The sentence for it,
 * and what helps, stand in the language bundles of the module {@code report}.
 *
 * @param kind what it is about
 * @param numbers by the names that the kind lists; the end of a name is its unit
 */
public record Warning(Kind kind, Map<String, Double> numbers) implements Serializable {

  /** What a warning is about, with the names of its numbers. */
  public enum Kind {
    /** The dough is outside the temperatures at which the yeast grows: no hours are given. */
    OUTSIDE_GROWTH("celsius"),
    /** The dough freezes: no hours are given. */
    FREEZING("celsius"),
    /** The cold is not colder than the dough: no hours are given. */
    NOT_COOLING("celsius", "doughCelsius"),
    /** The cold is so warm that it slows a loaf but does not hold it. */
    BARELY_COOLING("celsius"),
    /** Few data lie behind the rates below a limit. */
    THIN_DATA_COLD("celsius", "limitCelsius"),
    /** So warm that the kind of yeast decides. */
    YEAST_KIND("celsius"),
    /** A temperature logger wrote nothing for a while. */
    LOGGER_GAP("hours", "fromLine", "toLine"),
    /** A temperature logger has further gaps, which are only counted. */
    LOGGER_GAPS("gaps"),
    /** A temperature logger was for minutes above where hours are given: taken as air. */
    LOGGER_SPIKE("celsius"),
    /** The loaf misses its target at the oven, whenever bulk fermentation ends. */
    NOT_REACHED("percent"),
    /** Even shaped at once, the loaf is past its target after the time in the cold. */
    PAST_TARGET_IN_COLD("percent"),
    /** Even shaped at once, the loaf is past its target after the proof in the room. */
    PAST_TARGET_IN_ROOM("percent"),
    /** Even shaped at once, the loaf has peaked and fallen before the oven. */
    PAST_BEST_BEFORE_OVEN,
    /** Shaped at the shape point, the likely loaf is past its target at the oven. */
    OVER_TARGET("percent", "targetPercent"),
    /** One loaf in ten has risen too far in the cold. */
    SOME_TOO_FAR_IN_COLD,
    /** One loaf in ten has risen too far in the room. */
    SOME_TOO_FAR_IN_ROOM,
    /** The starter is not at its best. */
    STARTER,
    /** The prefermented flour lies outside what is usual. */
    UNUSUAL_STARTER("percent", "lowPercent", "highPercent"),
    /** The salt lies outside what is usual. */
    UNUSUAL_SALT("percent", "lowPercent", "highPercent"),
    /** Most of the flour is rye, of which few doughs were measured. */
    RYE("percent"),
    /** A dough of wheat is so wet that it pours. */
    POURS("percent"),
    /** Part of the dough's volume does not ferment. */
    INCLUSIONS("percent"),
    /** What sugar does is not modelled; its share of all flour. */
    SUGAR("percent"),
    /** What fat does is not modelled. */
    FAT("percent"),
    /** What milk does, beside its water, is not modelled; it spoils in the warm. */
    MILK("percent"),
    /** What egg does, beside its water, is not modelled; it spoils in the warm. */
    EGG("percent"),
    /** Baker's yeast is another organism: the hours do not hold. */
    YEAST("percent");

    private final List<String> names;

    Kind(String... names) {
      this.names = List.of(names);
    }

    /** {@return the names of the numbers that come with it} */
    public List<String> names() {
      return names;
    }

    /**
     * {@return a warning of this kind, with its numbers in the order of their names}
     *
     * @param numbers in the order of {@link #names}
     */
    public Warning with(double... numbers) {
      if (numbers.length != names.size()) {
        throw new IllegalArgumentException(name() + " needs the numbers " + names);
      }
      Map<String, Double> named = new LinkedHashMap<>();
      for (int i = 0; i < numbers.length; i++) {
        named.put(names.get(i), numbers[i]);
      }
      return new Warning(this, named);
    }
  }

  /**
   * Keeps the numbers as they are now.
   *
   * @param kind what it is about
   * @param numbers by the names that the kind lists; the end of a name is its unit
   */
  public Warning {
    Checks.given("kind", kind);
    numbers = Map.copyOf(numbers);
  }

  /**
   * {@return one of its numbers, by its name}
   *
   * @param name one of {@link Kind#names}
   */
  public double number(String name) {
    return Objects.requireNonNull(numbers.get(name), name);
  }
}
