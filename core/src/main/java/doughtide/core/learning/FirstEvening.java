package doughtide.core.learning;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.Starter;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.SentRecord;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One evening that makes the windows a baker's own: the same ripe starter fed 1:1:1 in one jar and
 * 1:10:10 in another, side by side, lids loose. In the first the cells that came with the starter
 * make the gas, in the second they must grow first, so the two times to half as high again tell the
 * gas of resting cells from growth. A third jar fed 1:1:1 and kept at 33 °C tells which kind of
 * yeast rules, because only one of them still rises fast there.
 *
 * <pre>{@code
 * FirstEvening evening = FirstEvening.of(Temperature.ofCelsius(24), 2.25, 6.5);
 * Learned learned = Learner.standard().learn(evening.bakes());
 * }</pre>
 *
 * @param starter the ripe starter that was fed
 * @param flour the flour given
 * @param temperature of the two jars side by side
 * @param smallFeedHours from feeding until the jar fed 1:1:1 stood half as high again, 0.1…48 h
 * @param largeFeedHours the same of the jar fed 1:10:10, 0.1…48 h
 * @param warmHours the same of the third jar, fed 1:1:1 at 33 °C, if there was one
 */
@Internal
public record FirstEvening(
    Starter starter,
    Flour flour,
    Temperature temperature,
    double smallFeedHours,
    double largeFeedHours,
    OptionalDouble warmHours)
    implements Serializable {

  /** Parts of flour and of water given to one of starter in the jar with the small feed. */
  public static final double SMALL_FEED = 1;

  /** Parts of flour and of water given to one of starter in the jar with the large feed. */
  public static final double LARGE_FEED = 10;

  /** Where the third jar is kept, °C. */
  public static final double WARM_CELSIUS = 33;

  /** The rise whose hour is noted. */
  public static final Rise MARK = Rise.ofPercent(50);

  /** Checks every range. */
  public FirstEvening {
    Checks.given("flour", flour);
    Checks.given("starter", starter);
    Checks.given("temperature", temperature);
    Checks.inRange("hours of the jar fed 1:1:1", smallFeedHours, 0.1, 48, "h");
    Checks.inRange("hours of the jar fed 1:10:10", largeFeedHours, 0.1, 48, "h");
    warmHours.ifPresent(hours -> Checks.inRange("hours of the warm jar", hours, 0.1, 48, "h"));
  }

  /** Two jars of a white starter of 100 % hydration. */
  public static FirstEvening of(
      Temperature temperature, double smallFeedHours, double largeFeedHours) {
    Starter starter = Starter.ripe();
    return new FirstEvening(
        starter,
        starter.flour(),
        temperature,
        smallFeedHours,
        largeFeedHours,
        OptionalDouble.empty());
  }

  /** The same with the third jar. */
  public FirstEvening withWarmHours(double hours) {
    return new FirstEvening(
        starter, flour, temperature, smallFeedHours, largeFeedHours, OptionalDouble.of(hours));
  }

  /** What to learn from, one bake a jar, all of one occasion: one starter fed them. */
  public List<Bake> bakes() {
    List<Bake> bakes = new ArrayList<>();
    bakes.add(jar("fed 1:1:1", SMALL_FEED, temperature, smallFeedHours));
    bakes.add(jar("fed 1:10:10", LARGE_FEED, temperature, largeFeedHours));
    Temperature warm = Temperature.ofCelsius(WARM_CELSIUS);
    warmHours.ifPresent(hours -> bakes.add(jar("fed 1:1:1, 33 °C", SMALL_FEED, warm, hours)));
    return List.copyOf(bakes);
  }

  private Bake jar(String name, double parts, Temperature at, double hours) {
    return new Bake(
        name,
        formula(parts),
        DoughTemperature.steady(at),
        List.of(Reading.ofRise(hours, MARK)),
        "first evening");
  }

  /**
   * What is in a jar.
   *
   * @param parts of flour and of water given to one of starter
   */
  public DoughFormula formula(double parts) {
    return DoughFormula.feed(starter, 1, parts, parts, flour);
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
