package doughtide.core.forecast;

import doughtide.core.rise.RiseParameters.RateCurves;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Draws rate curves by two ranks: first the kind of yeast, then the form among its kind. */
final class CurveDraw {
  /** Curves with the share of each, of one kind, or kinds with the share of each. */
  private static final class Shares<T> {
    private final List<T> parts = new ArrayList<>();
    private final List<Double> shares = new ArrayList<>();
    private double sum;

    void add(T part, double share) {
      parts.add(part);
      shares.add(share);
      sum += share;
    }

    T at(double rank) {
      double left = rank * sum;
      int place = 0;
      while (place < parts.size() - 1 && left >= shares.get(place)) {
        left -= shares.get(place);
        place++;
      }
      return parts.get(place);
    }
  }

  private final Shares<Shares<String>> kinds = new Shares<>();

  CurveDraw(Belief belief, List<RateCurves> curves) {
    double[] shares = belief.curveWeights(curves);
    Map<String, Shares<String>> byKind = new LinkedHashMap<>();
    for (int k = 0; k < shares.length; k++) {
      String kind = curves.get(k).kind();
      byKind.computeIfAbsent(kind, each -> new Shares<>()).add(curves.get(k).key(), shares[k]);
    }
    for (Shares<String> kind : byKind.values()) {
      kinds.add(kind, kind.sum);
    }
  }

  String key(double kindRank, double curveRank) {
    return kinds.at(kindRank).at(curveRank);
  }
}
