package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.StarterShare;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.report.chart.LinesChart;
import java.util.List;

/**
 * What a comparison page changes, and to what.
 *
 * <pre>{@code
 * Comparison warmer = Comparison.ofTemperatures(dough,
 *     List.of(Temperature.ofCelsius(20), Temperature.ofCelsius(24)));
 * }</pre>
 *
 * @param subject what is changed
 * @param base the dough they have in common
 * @param doughs those compared, one to six
 */
@Internal
public record Comparison(Subject subject, HandoutDough base, List<HandoutDough> doughs) {

  /** What is changed. */
  enum Subject {
    /** The dough's temperature. */
    TEMPERATURE,
    /** How much starter. */
    STARTER,
    /** How much water. */
    HYDRATION,
    /** Which flour. */
    FLOUR
  }

  /**
   * Checks the number before anything is computed.
   *
   * @throws doughtide.core.quantity.InputException for none or more than six doughs
   */
  public Comparison {
    doughs = List.copyOf(doughs);
    LinesChart.check(doughs.size());
  }

  /** The same dough at several temperatures. */
  public static Comparison ofTemperatures(HandoutDough base, List<Temperature> temperatures) {
    LinesChart.check(temperatures.size());
    return new Comparison(Subject.TEMPERATURE, base, temperatures.stream().map(base::at).toList());
  }

  /** The same dough with several amounts of starter. */
  public static Comparison ofStarterShares(HandoutDough base, List<StarterShare> shares) {
    LinesChart.check(shares.size());
    return of(
        Subject.STARTER,
        base,
        shares.stream().map(s -> base.formula().toBuilder().starterShare(s).build()).toList());
  }

  /** The same dough with several amounts of water. */
  public static Comparison ofHydrations(HandoutDough base, List<Share> hydrations) {
    LinesChart.check(hydrations.size());
    return of(
        Subject.HYDRATION,
        base,
        hydrations.stream().map(h -> base.formula().toBuilder().hydration(h).build()).toList());
  }

  /** The same dough of several flours. */
  public static Comparison ofFlours(HandoutDough base, List<Flour> flours) {
    LinesChart.check(flours.size());
    return of(
        Subject.FLOUR,
        base,
        flours.stream().map(f -> base.formula().toBuilder().flour(f).build()).toList());
  }

  private static Comparison of(Subject subject, HandoutDough base, List<DoughFormula> formulas) {
    return new Comparison(subject, base, formulas.stream().map(base::with).toList());
  }
}
