package doughtide.core.loaf;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import java.util.OptionalDouble;

/**
 * Looks for the hours between which one dough is right to be shaped. All hours are moved by what
 * parts its own shape point from the likely one.
 */
final class StageSearch {
  private static final int HALVINGS = 8; // to a few minutes of a day

  private final DoughFormula formula;
  private final Proof proof;
  private final LoafSettings settings;
  private final RiseCurve bulk;
  private final LoafScores scores;

  StageSearch(
      DoughFormula formula, Proof proof, LoafSettings settings, RiseCurve bulk, LoafScores scores) {
    this.formula = formula;
    this.proof = proof;
    this.settings = settings;
    this.bulk = bulk;
    this.scores = scores;
  }

  /**
   * The stages.
   *
   * @param likely hour of the likely shape point
   * @param target rise wanted at the oven
   */
  ShapeStages stages(double likely, Rise target) {
    double shift = likely - hourFor(target).orElse(likely);
    LoafLimits right = LoafLimits.right(target);
    double from = hourFor(right.from()).orElse(0);
    OptionalDouble until = hourFor(new Rise(right.until().orElseThrow()));
    OptionalDouble spoiled = pastBest(likely - shift);
    double rightFrom = Math.max(0, Math.min(from + shift, likely));
    double last = spoiled.isPresent() ? spoiled.getAsDouble() + shift : Double.POSITIVE_INFINITY;
    double rightUntil = until.isPresent() ? until.getAsDouble() + shift : Double.POSITIVE_INFINITY;
    last = Math.max(last, likely);
    rightUntil = Math.min(Math.max(rightUntil, likely), last);
    return new ShapeStages(rightFrom, known(rightUntil), known(last));
  }

  private static OptionalDouble known(double hour) {
    return Double.isInfinite(hour) ? OptionalDouble.empty() : OptionalDouble.of(hour);
  }

  /** The end of bulk from which the loaf has a rise at the oven. */
  private OptionalDouble hourFor(Rise wanted) {
    double percent =
        Math.min(Math.max(wanted.percent(), Proof.LEAST_TARGET_PERCENT), Proof.MOST_TARGET_PERCENT);
    LoafModel loaf = model(Rise.ofPercent(percent));
    double guess = bulk.hoursToRise(Rise.ofPercent(percent / 2)).orElse(bulk.endHours() / 2);
    OptionalDouble found = new ShapeSearch(bulk, proof, loaf, scores).find(guess);
    return found.isPresent()
        ? OptionalDouble.of(found.getAsDouble() - proof.restHours())
        : OptionalDouble.empty();
  }

  private LoafModel model(Rise target) {
    return LoafModel.of(formula, proof.withTarget(target), settings);
  }

  /** The end of bulk from which the loaf is past its best at the oven. */
  private OptionalDouble pastBest(double from) {
    LoafModel loaf = LoafModel.of(formula, proof, settings);
    double over = bulk.hoursToOver().orElse(Double.POSITIVE_INFINITY);
    double low = from;
    double high = Math.min(over, bulk.endHours() - proof.restHours());
    if (!(high > low)) {
      return known(Math.max(over, from));
    }
    if (!isOver(loaf, high)) {
      return known(over);
    }
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (isOver(loaf, middle)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return OptionalDouble.of(high);
  }

  private boolean isOver(LoafModel loaf, double bulkEnd) {
    double from = bulkEnd + proof.restHours();
    double hours = proof.hoursToOven(from);
    return hours <= 0 || loaf.run(bulk, from, scores, hours).hoursToOver().isPresent();
  }
}
