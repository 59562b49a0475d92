package doughtide.core.forecast;

import doughtide.core.rise.RiseParameters.RateCurves;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** Draws rate curves by two ranks: first the kind of yeast, then the form among its kind. */
final class CurveDraw {
  private record Form(String key, double share) {}

  private final List<List<Form>> kinds;

  CurveDraw(Belief belief, List<RateCurves> curves) {
    double[] shares = belief.curveWeights(curves);
    Map<String, List<Form>> byKind = new LinkedHashMap<>();
    for (int k = 0; k < shares.length; k++) {
      Form form = new Form(curves.get(k).key(), shares[k]);
      byKind.computeIfAbsent(curves.get(k).kind(), kind -> new ArrayList<>()).add(form);
    }
    this.kinds = List.copyOf(byKind.values());
  }

  String key(double kindRank, double curveRank) {
    return at(at(kinds, CurveDraw::share, kindRank), Form::share, curveRank).key();
  }

  private static double share(List<Form> kind) {
    return kind.stream().mapToDouble(Form::share).sum();
  }

  private static <T> T at(List<T> parts, ToDoubleFunction<T> share, double rank) {
    double left = rank * parts.stream().mapToDouble(share).sum();
    int place = 0;
    while (place < parts.size() - 1 && left >= share.applyAsDouble(parts.get(place))) {
      left -= share.applyAsDouble(parts.get(place));
      place++;
    }
    return parts.get(place);
  }
}
