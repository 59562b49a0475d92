package doughtide.core.loaf;

import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * When one dough is shaped, and what it shows then; infinite for never, 0 for too late from the
 * start.
 *
 * @param hours end of bulk fermentation, from mixing
 * @param jarPercent rise of its jar then
 * @param loafPercent rise of the loaf just shaped
 * @param missing why there is no such hour
 */
record MemberShape(double hours, double jarPercent, double loafPercent, ShapeSearch.Missing missing)
    implements Serializable {

  /**
   * Looks for it.
   *
   * @param guess of what the jar shows
   */
  static MemberShape of(
      RiseCurve curve, Proof proof, LoafModel loaf, LoafScores scores, Rise guess) {
    ShapeSearch search = new ShapeSearch(curve, proof, loaf, scores);
    double first = curve.hoursToRise(guess).orElse(curve.endHours() / 2) + proof.restHours();
    OptionalDouble found = search.find(first);
    if (found.isEmpty()) {
      double never = search.missingHours();
      return new MemberShape(never, never, never, search.missing());
    }
    double from = found.getAsDouble();
    double hours = from - proof.restHours();
    return new MemberShape(
        hours,
        curve.riseAt(hours).percent(),
        loaf.justShaped(curve, from, scores).percent(),
        ShapeSearch.Missing.NOTHING);
  }

  boolean isFound() {
    return missing == ShapeSearch.Missing.NOTHING;
  }
}
