package doughtide.core.day;

import doughtide.core.loaf.LoafScores;
import doughtide.core.loaf.ShapeHour;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Finds the member of a belief that stands for all: its jar, and the hours at which its loaf must
 * be shaped for a night in the cold and for a short proof in the room, are nearest to the medians.
 */
final class LikelyMember {
  private static final double RUN_HOURS = 48;
  private static final double NIGHT_HOURS = 12;
  private static final double SHORT_PROOF_HOURS = 2;
  private static final double NEVER_HOURS = 2 * RUN_HOURS;
  private static final double LEAST_HOURS = 0.25;

  private final DayModel model;
  private final BakeRoute route;

  LikelyMember(DayModel model, BakeRoute route) {
    this.model = model;
    this.route = route;
  }

  /**
   * The number of the member.
   *
   * @param control the threads that follow them
   */
  int of(List<Unknowns> members, SearchControl control) {
    List<Integer> numbers = IntStream.range(0, members.size()).boxed().toList();
    List<double[]> logs = control.map(numbers, i -> logs(members, i));
    return nearestMedians(logs);
  }

  /**
   * The number of the member that is nearest to the medians of all.
   *
   * @param logs of each member, logarithms of hours
   */
  static int nearestMedians(List<double[]> logs) {
    double[] middle = new double[logs.get(0).length];
    for (int k = 0; k < middle.length; k++) {
      int which = k;
      middle[k] = ShapePoint.median(logs.stream().mapToDouble(each -> each[which]).toArray());
    }
    return IntStream.range(0, logs.size())
        .boxed()
        .min(Comparator.comparingDouble(i -> distance(logs.get(i), middle)))
        .orElseThrow();
  }

  private static double distance(double[] one, double[] other) {
    return IntStream.range(0, one.length).mapToDouble(k -> Math.abs(one[k] - other[k])).sum();
  }

  /** Logarithms of what matters to a plan, hours. */
  private double[] logs(List<Unknowns> members, int number) {
    RiseCurve curve = model.run(route, members.get(number), RUN_HOURS);
    DayModel.BulkRun bulk =
        new DayModel.BulkRun(curve, LoafScores.of(number), model.day().strength());
    List<Double> hours = new ArrayList<>();
    Rise half = new Rise(model.day().target().fraction() / 2);
    hours.add(curve.hoursToRise(half).orElse(NEVER_HOURS));
    hours.add(shaped(bulk, ProofKind.ROOM, SHORT_PROOF_HOURS));
    if (model.day().cold().isPresent()) {
      hours.add(shaped(bulk, ProofKind.COLD, NIGHT_HOURS));
    }
    return hours.stream().mapToDouble(LikelyMember::log).toArray();
  }

  static double log(double hours) {
    return Math.log(Math.max(hours, LEAST_HOURS));
  }

  private double shaped(DayModel.BulkRun bulk, ProofKind proof, double proofHours) {
    RiseCurve curve = bulk.curve();
    double high = curve.hoursToOver().orElse(curve.endHours());
    OptionalDouble found =
        ShapeHour.find(
            x -> model.riseAtOven(bulk, route.mixHour(), x, proof, x + proofHours),
            curve,
            model.day().target().fraction(),
            model.day().restHours(),
            high,
            high / 2);
    return found.orElse(NEVER_HOURS);
  }
}
