package doughtide.core.planning;

import doughtide.core.forecast.Proof;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.ShapeForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Follows every member of a running bulk through each way out. */
final class LeaveOptions {
  private static final double FOLLOW_HOURS = 24;
  private static final double STEP_HOURS = 0.25;
  private static final int MOST_MEMBERS = 128;

  private final RiseForecast bulk;
  private final double nowHours;
  private final double leaveHours;
  private final double backHours;
  private final Proof proof;
  private final Rise target;

  LeaveOptions(
      RiseForecast bulk, double nowHours, double leaveHours, double backHours, Proof proof) {
    this.bulk = bulk;
    this.nowHours = Checks.inRange("hours since mixing", nowHours, 0, bulk.hours(), "h");
    this.leaveHours = Checks.inRange("hour of leaving", leaveHours, nowHours, 240, "h");
    this.backHours = Checks.inRange("hour of coming back", backHours, leaveHours, 240, "h");
    this.proof = proof;
    this.target = proof.target().orElse(bulk.typical().formula().flour().targetRise());
  }

  List<LeaveOption> all() {
    double rest = proof.restHours();
    List<LeaveOption> options = new ArrayList<>();
    add(options, LeaveOption.Kind.SHAPE_NOW, nowHours);
    if (leaveHours - rest > nowHours) {
      add(options, LeaveOption.Kind.SHAPE_BEFORE_LEAVING, leaveHours - rest);
    }
    add(options, LeaveOption.Kind.SHAPE_WHEN_BACK, backHours);
    options.sort(Comparator.comparingDouble((LeaveOption each) -> -each.goodShare()));
    return List.copyOf(options);
  }

  private void add(List<LeaveOption> options, LeaveOption.Kind kind, double bulkEnd) {
    double shaped = bulkEnd + proof.restHours();
    double oven = proof.ovenHour().orElse(shaped + proof.roomHours() + proof.holdHours());
    if (shaped > bulk.hours() || oven <= shaped || bulk.curves().isEmpty()) {
      return;
    }
    LoafProof loaves = LoafProof.of(bulk.typical(), proof, oven - shaped + FOLLOW_HOURS);
    List<PieceCurve> pieces = new ArrayList<>();
    List<Double> rises = new ArrayList<>();
    for (RiseCurve curve : bulk.curves().subList(0, Math.min(MOST_MEMBERS, bulk.curves().size()))) {
      pieces.add(
          PieceCurve.of(
              curve, shaped, loaves.temperature(), 0, oven - shaped + FOLLOW_HOURS, STEP_HOURS));
      rises.add(curve.riseAt(bulkEnd).percent());
    }
    options.add(
        new LeaveOption(
            kind,
            shaped,
            range(rises.stream().mapToDouble(Double::doubleValue).toArray()),
            oven,
            range(pieces.stream().mapToDouble(each -> each.riseAt(oven).percent()).toArray()),
            when(pieces, this::from),
            when(pieces, this::until),
            share(pieces, oven)));
  }

  private double share(List<PieceCurve> pieces, double oven) {
    long good = pieces.stream().filter(each -> from(each) <= oven && until(each) >= oven).count();
    return (double) good / pieces.size();
  }

  private double from(PieceCurve piece) {
    return piece.hoursToRise(part(PlanScales.LEAST_PART)).orElse(Double.POSITIVE_INFINITY);
  }

  private double until(PieceCurve piece) {
    double high = piece.hoursToRise(part(PlanScales.MOST_PART)).orElse(Double.POSITIVE_INFINITY);
    return Math.min(high, piece.hoursToOver().orElse(Double.POSITIVE_INFINITY));
  }

  private Rise part(double share) {
    return new Rise(target.fraction() * share);
  }

  private static TimeWindow when(List<PieceCurve> pieces, ToDoubleFunction<PieceCurve> event) {
    return TimeWindow.of(pieces.stream().mapToDouble(event).toArray());
  }

  private static ShapeForecast.RiseRange range(double[] percents) {
    TimeWindow window = TimeWindow.of(percents);
    return new ShapeForecast.RiseRange(window.early(), window.likely(), window.late());
  }
}
