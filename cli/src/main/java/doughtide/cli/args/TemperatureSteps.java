package doughtide.cli.args;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.ShellWord;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.core.thermal.TemperatureTrace.Step;
import java.util.ArrayList;
import java.util.List;

/**
 * A temperature that holds until it changes at stated hours, as typed: {@code 25C,3h:22C} is 25 °C
 * for three hours and 22 °C from then on.
 *
 * @param steps the first from hour 0, each later than the one before
 */
public record TemperatureSteps(List<Step> steps) {

  private static final int MOST_STEPS = 48;

  public TemperatureSteps {
    steps = List.copyOf(steps);
  }

  /** Reads what was typed for an option. */
  public static TemperatureSteps parse(String name, String text) {
    String[] pieces = pieces(text);
    if (pieces.length > MOST_STEPS) {
      throw new InputException(
          name + " has " + pieces.length + " steps, at most " + MOST_STEPS + " are read");
    }
    if (pieces[0].contains(":")) {
      throw new InputException(
          Quantities.shown(name, text)
              + " must begin with the temperature at mixing: write for example "
              + name
              + " 25C,3h:22C");
    }
    List<Step> steps = new ArrayList<>();
    steps.add(new Step(0, Quantities.temperature(name, pieces[0])));
    for (int i = 1; i < pieces.length; i++) {
      steps.add(laterStep(name, text, pieces[i], steps.get(i - 1)));
    }
    return new TemperatureSteps(steps);
  }

  /** Between steps stands a comma behind a unit; one between digits is a decimal comma. */
  private static String[] pieces(String text) {
    return Quantities.clean(text).split("(?<=[A-Za-z]) ?[,;] ?", -1);
  }

  /** Whether what was typed changes with time. */
  public static boolean isSeveral(String text) {
    return pieces(text).length > 1;
  }

  private static Step laterStep(String name, String text, String piece, Step before) {
    int colon = piece.indexOf(':');
    if (colon < 0) {
      throw new InputException(
          Quantities.shown(name, text)
              + ": from when is it "
              + ShellWord.of(piece)
              + "? Write hours and temperature, for example 3h:22C");
    }
    double hours = Quantities.hours(name, piece.substring(0, colon));
    if (hours <= before.hours()) {
      throw new InputException(
          Quantities.shown(name, text)
              + ": hour "
              + Checks.plain(hours)
              + " does not come after hour "
              + Checks.plain(before.hours())
              + ": put the steps in order");
    }
    return new Step(hours, Quantities.temperature(name, piece.substring(colon + 1)));
  }

  /** The temperature at mixing. */
  public Temperature first() {
    return steps.get(0).temperature();
  }

  /** As a trace, for a dough, a room or a cold. */
  public TemperatureTrace trace() {
    return TemperatureTrace.steps(steps);
  }

  /**
   * As the dough's own temperature.
   *
   * @param name the option, for messages
   * @throws InputException if a step is outside the temperatures a dough may have
   */
  public DoughTemperature dough(String name) {
    for (Step step : steps) {
      String typed = Checks.plain(step.temperature().celsius()) + "C";
      Quantities.named(name, typed, () -> DoughTemperature.steady(step.temperature()));
    }
    return DoughTemperature.following(trace());
  }

  /** In words, for the page. */
  public String words() {
    return String.join(", ", steps.stream().map(TemperatureSteps::words).toList());
  }

  private static String words(Step step) {
    String degrees = Words.temperature(step.temperature());
    return step.hours() > 0 ? degrees + " from hour " + Checks.plain(step.hours()) : degrees;
  }
}
