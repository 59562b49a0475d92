package doughtide.cli.command;

import doughtide.cli.options.WaterOptions;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.FactorRule;
import doughtide.core.thermal.Warming;
import doughtide.core.thermal.WaterAnswer;
import doughtide.core.thermal.WaterTerm;
import java.util.List;
import java.util.Optional;

/**
 * One of three questions answered: water for a dough, dough from a water, or what mixing did.
 *
 * @param options what is mixed
 * @param question which of the three
 */
record WaterAnswers(WaterOptions options, Question question) {

  /** What was asked, with its answer. */
  sealed interface Question {}

  /**
   * Water for a dough.
   *
   * @param wanted dough temperature
   * @param answer by the balance of heat
   * @param frictionOnceCelsius by the rule, friction subtracted once
   * @param warmingFirstCelsius by the rule, warming subtracted before multiplying
   * @param terms what makes balance and rule differ
   */
  record Water(
      Temperature wanted,
      WaterAnswer answer,
      double frictionOnceCelsius,
      double warmingFirstCelsius,
      List<WaterTerm> terms)
      implements Question {}

  /**
   * Dough from a water.
   *
   * @param pour the water
   * @param balanceCelsius the dough by the balance of heat
   * @param ruleCelsius the dough by the rule
   */
  record Dough(Temperature pour, double balanceCelsius, double ruleCelsius) implements Question {}

  /**
   * What mixing did.
   *
   * @param pour the water
   * @param got the dough as measured
   * @param mixing by the balance of heat: how much mixing warmed the dough
   * @param friction by the rule, to be subtracted once
   * @param warming by the rule, to be subtracted before multiplying
   */
  record Mixed(Temperature pour, Temperature got, Warming mixing, Warming friction, Warming warming)
      implements Question {}

  public static WaterAnswers of(
      WaterOptions options,
      Optional<Temperature> wanted,
      Optional<Temperature> pour,
      Optional<Temperature> got,
      Optional<Temperature> tap) {
    if (wanted.isPresent()) {
      return new WaterAnswers(options, water(options, wanted.get(), tap));
    }
    Temperature water = pour.orElseThrow();
    return new WaterAnswers(
        options, got.isPresent() ? mixed(options, water, got.get()) : dough(options, water));
  }

  private static Water water(WaterOptions options, Temperature wanted, Optional<Temperature> tap) {
    FactorRule once = options.factors().friction(options.friction());
    FactorRule first = options.factors().warmingFirst(options.warming());
    WaterAnswer answer =
        tap.map(at -> options.balance().waterFor(wanted, at))
            .orElseGet(() -> options.balance().waterFor(wanted));
    return new Water(
        wanted,
        answer,
        once.waterCelsius(wanted),
        first.waterCelsius(wanted),
        options.balance().compare(once, wanted));
  }

  private static Dough dough(WaterOptions options, Temperature pour) {
    FactorRule rule = options.factors().friction(options.friction());
    return new Dough(pour, options.balance().doughCelsius(pour), rule.doughCelsius(pour));
  }

  private static Mixed mixed(WaterOptions options, Temperature pour, Temperature got) {
    if (options.mixing().said() != WaterOptions.Said.NOTHING) {
      throw new InputException(
          "--got asks what mixing did, so --friction and --warming must not be given");
    }
    FactorRule once = options.factors().friction(Warming.NONE);
    FactorRule first = options.factors().warmingFirst(Warming.NONE);
    return new Mixed(
        pour,
        got,
        options.still().mixingFrom(pour, got),
        once.warmingFrom(pour, got),
        first.warmingFrom(pour, got));
  }
}
