package doughtide.cli.command.again;

import doughtide.cli.args.Words;
import doughtide.core.day.BakePlan;
import doughtide.core.thermal.Mixing;
import doughtide.core.thermal.WaterAnswer;
import doughtide.report.words.WaterWords;
import java.util.Optional;

/** How the dough of a plan gets its temperature, in words. */
public final class MixText {
  private MixText() {}

  /** The water to pour where the dough is mixed by hand, °C. */
  public static double waterCelsius(BakePlan plan) {
    return answer(plan).waterCelsius();
  }

  private static WaterAnswer answer(BakePlan plan) {
    return plan.water(Mixing.BY_HAND);
  }

  /** The dough beside the step of mixing, and the water where it comes in then. */
  public static String mix(BakePlan plan) {
    return "dough at "
        + Words.temperature(plan.doughTemperature())
        + (plan.hasAutolyse() ? "" : "; " + water(plan));
  }

  /** The water beside the step in which it comes in. */
  public static String water(BakePlan plan) {
    double celsius = waterCelsius(plan);
    return celsius < 0
        ? "part of the water as ice (see water)"
        : "water at " + Words.rounded(celsius, 0) + " °C";
  }

  /** What to be careful with, if the water is very warm or cold. */
  public static Optional<String> note(BakePlan plan) {
    return WaterWords.english().cautions(answer(plan)).stream()
        .findFirst()
        .map(said -> "Note: " + said);
  }
}
