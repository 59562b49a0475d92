package doughtide.core.flourtrial;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/**
 * What to weigh for a trial in small bowls, driest bowl first.
 *
 * <pre>{@code
 * BowlPlan plan = BowlPlan.of(
 *     Mass.ofGrams(40), Share.ofPercent(65), Share.ofPercent(85), Share.ofPercent(5), Scale.ONE_GRAM);
 * double water = plan.bowls().get(0).waterGrams(); // 26
 * }</pre>
 *
 * @param bowls in the order they are mixed
 * @param scale the scale the amounts are rounded to
 * @param restMinutes from mixing a bowl to judging it, 5…240 min
 */
@Internal
public record BowlPlan(List<Bowl> bowls, Scale scale, double restMinutes) implements Serializable {
  /** The most bowls one plan may have: more cannot be judged after the same rest. */
  public static final int MOST_BOWLS = 24;

  /** Rest before judging, min (common practice, no source). */
  public static final double USUAL_REST_MINUTES = 30;

  private static final double SLACK = 1e-9;

  /**
   * One bowl.
   *
   * @param number 1 for the first one mixed
   * @param wantedPercent hydration asked for, per cent
   * @param flourGrams flour, rounded to the scale
   * @param waterGrams water, rounded to the scale
   */
  @Internal
  public record Bowl(int number, double wantedPercent, double flourGrams, double waterGrams)
      implements Serializable {
    /** Hydration after both amounts were rounded to the scale, per cent. */
    public double truePercent() {
      return 100 * waterGrams / flourGrams;
    }

    /** What the rounding does to the hydration, points; positive is wetter than asked for. */
    public double roundingPoints() {
      return truePercent() - wantedPercent;
    }
  }

  /**
   * @throws InputException if there is no bowl, there are more than 24, or the rest is out of range
   */
  public BowlPlan {
    Checks.given("scale", scale);
    bowls = List.copyOf(bowls);
    Checks.inRange("number of bowls", bowls.size(), 1, MOST_BOWLS, "");
    Checks.inRange("rest", restMinutes, 5, 240, "min");
  }

  /**
   * A plan with evenly spaced bowls. If the last step would go beyond {@code to}, the plan ends
   * before it.
   *
   * @param flourPerBowl 5…2000 g
   * @param from driest bowl, 30…150 %
   * @param to wettest bowl, 30…150 %, not below {@code from}
   * @param step between two bowls, more than 0 and not finer than the scale can weigh
   * @param scale the scale used
   * @throws InputException if a value is out of range, the step is too fine for the scale, or there
   *     would be more than 24 bowls
   */
  public static BowlPlan of(Mass flourPerBowl, Share from, Share to, Share step, Scale scale) {
    Checks.inRange("flour per bowl", flourPerBowl.grams(), 5, 2000, "g");
    Checks.inRange("driest bowl", from.percent(), 30, 150, "%");
    Checks.inRange("wettest bowl", to.percent(), 30, 150, "%");
    requireRising(from, to);
    double flourGrams = scale.nearestGrams(flourPerBowl.grams());
    requireWeighable(flourGrams, step, scale);
    int count = count(from, to, step);
    List<Bowl> bowls = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double wanted = Math.round((from.percent() + i * step.percent()) * 1e6) / 1e6;
      double water = scale.nearestGrams(flourGrams * wanted / 100);
      bowls.add(new Bowl(i + 1, wanted, flourGrams, water));
    }
    return new BowlPlan(bowls, scale, USUAL_REST_MINUTES);
  }

  private static void requireRising(Share from, Share to) {
    if (to.compareTo(from) < 0) {
      throw new InputException(
          "bowls.order",
          "the wettest bowl ("
              + Checks.plain(to.percent())
              + " %) is drier than the driest ("
              + Checks.plain(from.percent())
              + " %): swap the two");
    }
  }

  private static void requireWeighable(double flourGrams, Share step, Scale scale) {
    double stepGrams = flourGrams * step.fraction();
    if (flourGrams > 0 && stepGrams >= scale.resolutionGrams() * (1 - SLACK)) {
      return;
    }
    double finest = flourGrams > 0 ? 100 * scale.resolutionGrams() / flourGrams : 100;
    throw new InputException(
        "bowls.step-too-fine",
        "a step of "
            + Checks.plain(step.percent())
            + " % on "
            + Checks.plain(flourGrams)
            + " g of flour is "
            + Checks.plain(stepGrams)
            + " g of water, finer than a scale of "
            + Checks.plain(scale.resolutionGrams())
            + " g can weigh: use a step of at least "
            + Checks.plain(Math.ceil(finest * 100 - SLACK) / 100)
            + " %, more flour per bowl, or a finer scale");
  }

  private static int count(Share from, Share to, Share step) {
    double steps = Math.floor((to.percent() - from.percent()) / step.percent() + SLACK);
    if (steps + 1 > MOST_BOWLS) {
      throw new InputException(
          "bowls.too-many",
          "from "
              + Checks.plain(from.percent())
              + " % to "
              + Checks.plain(to.percent())
              + " % by "
              + Checks.plain(step.percent())
              + " % makes "
              + Checks.plain(steps + 1)
              + " bowls, at most "
              + MOST_BOWLS
              + " are allowed: use a larger step or a narrower range");
    }
    return (int) steps + 1;
  }

  /**
   * The same bowls with another rest.
   *
   * @param minutes 5…240
   */
  public BowlPlan withRest(double minutes) {
    return new BowlPlan(bowls, scale, minutes);
  }

  /** All flour the trial takes. */
  public Mass flour() {
    return Mass.ofGrams(bowls.stream().mapToDouble(Bowl::flourGrams).sum());
  }
}
