package doughtide.core.feeding;

import doughtide.core.Internal;
import doughtide.core.dough.Flour;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.SentRecord;
import doughtide.core.quantity.Temperature;
import java.io.Serializable;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One stage in which a starter is built up.
 *
 * @param name as typed, for example {@code full sour}; empty for one without
 * @param ratio parts of what the stage before has made, flour and water; where a dough yield is
 *     given, its water does not count
 * @param doughYield of the whole stage, 145…300: gives the water
 * @param flour the flour given
 * @param temperature of what is in the tub, −2…45 °C
 * @param hours how long it stands, 0.5…120; empty: until it is ripe
 */
@Internal
public record BuildStage(
    Optional<String> name,
    FeedRatio ratio,
    OptionalDouble doughYield,
    Flour flour,
    Temperature temperature,
    OptionalDouble hours)
    implements Serializable {

  private static final int LONGEST_NAME = 40;

  /**
   * @throws InputException if the name is too long, or the hours or the temperature are out of
   *     range
   */
  public BuildStage {
    Checks.given("flour", flour);
    Checks.given("ratio", ratio);
    if (name.filter(text -> text.isBlank() || text.length() > LONGEST_NAME).isPresent()) {
      throw new InputException(
          "stage.name", "the name of a stage must have 1 to " + LONGEST_NAME + " characters");
    }
    Checks.inRange("temperature of a stage", temperature.celsius(), -2, 45, "°C");
    doughYield.ifPresent(value -> Checks.inRange("dough yield of a stage", value, 145, 300, ""));
    hours.ifPresent(value -> Checks.inRange("hours of a stage", value, 0.5, 120, "h"));
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
