package doughtide.core.forecast;

import doughtide.core.forecast.RiseForecast.BandPoint;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What is kept of all runs of an ensemble, each with its weight. Immutable. */
final class RunSummaries implements Serializable {
  private static final long serialVersionUID = 1;

  private static final double STEP_HOURS = 0.125;
  private static final double PH_STEP_HOURS = 0.75;
  private static final int LOOKS = 12;

  private final SummaryGrid grid;
  private final List<MemberSummary> members;
  private final double[] weights;
  private final LikelyPh ph;

  private RunSummaries(
      SummaryGrid grid, List<MemberSummary> members, double[] weights, LikelyPh ph) {
    this.grid = grid;
    this.members = members;
    this.weights = weights;
    this.ph = ph;
  }

  /** The same runs with other weights; the likely pH stays that of all runs. */
  RunSummaries weighted(double[] newWeights) {
    return new RunSummaries(grid, members, newWeights, ph);
  }

  /** Some of the runs; the likely pH stays that of all runs. */
  RunSummaries at(int[] places, double[] newWeights) {
    List<MemberSummary> some = Arrays.stream(places).mapToObj(members::get).toList();
    return new RunSummaries(grid, some, newWeights, ph);
  }

  /** What is kept of a run. */
  @SuppressWarnings("ArrayRecordComponent")
  private record Run(MemberSummary summary, float[] phs) {}

  /**
   * Sums up runs one after the other, so that none of them has to be kept.
   *
   * @param hours length of the runs
   * @param weights one a run
   * @param curves the runs, none if no hours are given
   */
  static RunSummaries of(
      DoughTemperature temperature, double hours, double[] weights, Stream<RiseCurve> curves) {
    SummaryGrid grid = SummaryGrid.of(temperature, hours, STEP_HOURS);
    SummaryGrid phGrid = SummaryGrid.of(temperature, hours, PH_STEP_HOURS);
    List<Run> runs =
        curves.map(curve -> new Run(MemberSummary.of(curve, grid), phs(curve, phGrid))).toList();
    LikelyPh ph = new LikelyPh(phGrid, runs.stream().map(Run::phs).toList(), weights);
    return new RunSummaries(grid, runs.stream().map(Run::summary).toList(), weights, ph);
  }

  private static float[] phs(RiseCurve curve, SummaryGrid grid) {
    float[] phs = new float[grid.size()];
    for (int i = 0; i < phs.length; i++) {
      phs[i] = (float) curve.phAt(grid.hours(i));
    }
    return phs;
  }

  boolean isEmpty() {
    return members.isEmpty();
  }

  /** One value a member, in their order. */
  double[] each(ToDoubleFunction<MemberSummary> value) {
    return members.stream().mapToDouble(value).toArray();
  }

  double[] hoursTo(Rise rise) {
    return each(member -> member.hoursTo(rise, grid));
  }

  /** The distribution of what the members give. */
  Distribution distribution(double[] each) {
    return isEmpty() ? Distribution.NEVER : Distribution.of(each, weights);
  }

  BandPoint bandAt(double hours) {
    Distribution rises = risesAt(hours);
    return new BandPoint(
        hours,
        rises.quantile(0.9).orElseThrow(),
        rises.quantile(0.5).orElseThrow(),
        rises.quantile(0.1).orElseThrow(),
        ph.at(hours));
  }

  /** Place of the member whose height is nearest to the median at evenly spaced hours. */
  int nearestMedian(double hours) {
    double[] off = new double[members.size()];
    for (int i = 1; i <= LOOKS; i++) {
      double at = hours * i / LOOKS;
      double median = 1 + risesAt(at).quantile(0.5).orElseThrow() / 100;
      int after = grid.firstAfter(at);
      for (int m = 0; m < off.length; m++) {
        double height = 1 + grid.valueAt(at, members.get(m).rises(), after);
        off[m] += Math.pow(Math.log(height / median), 2);
      }
    }
    return IntStream.range(0, off.length)
        .filter(m -> weights[m] > 0)
        .reduce((best, each) -> off[each] < off[best] ? each : best)
        .orElseThrow();
  }

  /** Rises at an hour, percent. */
  Distribution risesAt(double hours) {
    return distribution(Arrays.stream(rises(hours)).map(rise -> 100 * rise).toArray());
  }

  /** Rise of each member at an hour, a fraction. */
  double[] rises(double hours) {
    int after = grid.firstAfter(hours);
    return each(member -> grid.valueAt(hours, member.rises(), after));
  }

  /**
   * The median of the highest rise each member had up to an hour: half of them passed that rise
   * before that hour, so a line through these points joins the median hours of all rises.
   *
   * @return hour and percent, one pair an hour of the grid
   */
  List<double[]> likelyHighest() {
    double[] highest = new double[members.size()];
    Arrays.fill(highest, Double.NEGATIVE_INFINITY);
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i < grid.size(); i++) {
      for (int m = 0; m < highest.length; m++) {
        highest[m] = Math.max(highest[m], members.get(m).highestAt(i, grid));
      }
      double median = distribution(highest).quantile(0.5).orElseThrow();
      points.add(new double[] {grid.hours(i), 100 * median});
    }
    return points;
  }

  /** The median of the highest rise each member had up to an hour, percent. */
  double likelyHighestBy(double hours) {
    double[] highest = each(member -> 100 * member.highestBy(hours, grid));
    return distribution(highest).quantile(0.5).orElseThrow();
  }

  /**
   * Height over a member's own greatest height, some hours after that, of the members followed so
   * far; never if they are fewer than half.
   */
  Distribution partOfTop(double hoursAfterPeak) {
    double[] parts = each(member -> partOfTop(member, member.peak() + hoursAfterPeak));
    if (distribution(parts).reached() < 0.5) {
      return Distribution.NEVER;
    }
    double[] followed = weights.clone();
    for (int m = 0; m < parts.length; m++) {
      followed[m] = Double.isInfinite(parts[m]) ? 0 : followed[m];
    }
    return Distribution.of(parts, followed);
  }

  private double partOfTop(MemberSummary member, double hours) {
    return hours <= grid.hours(grid.size() - 1)
        ? (1 + grid.valueAt(hours, member.rises())) / (1 + member.peakRise())
        : Double.POSITIVE_INFINITY;
  }
}
