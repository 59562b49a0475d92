package doughtide.core.forecast;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InnerFault;
import doughtide.core.rise.RiseParameters.RateCurves;
import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A set of draws from a belief that fills it evenly: a Sobol sequence under a fixed random digital
 * shift, so that the same belief gives the same draws.
 */
@Internal
public final class Ensemble {
  /** Members unless asked otherwise. */
  public static final int USUAL_SIZE = 512;

  private static final int DIMENSIONS = Unknown.values().length;

  /**
   * The digital shift: of 256 drawn from commons-math3's Well19937c with the seed 20260301 the one
   * (the nineteenth) whose windows of 32 to 512 members lie nearest to those of 32,768, over four
   * doughs and feeds and the hours to 25 %, to 75 % and past their best. Those of 512 members are
   * off by 0.6 % (root mean square); with a shift taken blindly by 1.0 %, at worst by 2 %.
   */
  private static final long[] SHIFT = {
    0x82f8dce53f6aaL,
    0xaf209823efd67L,
    0x7482c57bdfb2fL,
    0xc754601293ab7L,
    0xd7e09a14f5383L,
    0x21c19d26bd788L,
    0x4c0d42904d815L,
    0x36f6e6ca7f615L,
    0x5e4a88feb716dL
  };

  private final List<Unknowns> members;
  private final double[][] ranks;
  private final double[] weights;

  private Ensemble(List<Unknowns> members, double[][] ranks, double[] weights) {
    this.members = members;
    this.ranks = ranks;
    this.weights = weights;
  }

  /**
   * Draws an ensemble.
   *
   * @param belief what is believed
   * @param curves rate curves of the model
   * @param size number of members, 8…65536; powers of two fill best
   */
  public static Ensemble of(Belief belief, List<RateCurves> curves, int size) {
    checkSize(size);
    CurveDraw draw = new CurveDraw(belief, curves);
    List<Unknowns> members = new ArrayList<>(size);
    double[][] ranks = new double[DIMENSIONS][size];
    for (int m = 0; m < size; m++) {
      double[] point = point(m);
      double[] normal = new double[Belief.SIZE];
      for (int i = 0; i < Belief.SIZE; i++) {
        normal[i] = SobolPoints.normalScore(point[i]);
      }
      for (int i = 0; i < DIMENSIONS; i++) {
        ranks[i][m] = point[i];
      }
      String key = draw.key(point[Unknown.KIND.ordinal()], point[Unknown.CURVE.ordinal()]);
      members.add(belief.unknowns(normal, key));
    }
    double[] alike = new double[size];
    Arrays.fill(alike, 1);
    return new Ensemble(List.copyOf(members), ranks, alike);
  }

  /** Refuses a number of members that is too small or too large. */
  static void checkSize(int size) {
    Checks.inRange("ensemble size", size, 8, 65_536, "members");
  }

  /**
   * The same draws, each counting as much as a weight says, for example its likelihood under
   * readings.
   *
   * @param newWeights one a member, 0 or more, not all 0
   * @throws InnerFault if they are otherwise
   */
  public Ensemble weighted(double[] newWeights) {
    if (newWeights.length != size()) {
      throw new InnerFault(
          "given " + newWeights.length + " weights for " + size() + " members: give one for each");
    }
    for (double each : newWeights) {
      Checks.inside("weight of a member", each, 0, 1e300, "");
    }
    double sum = Arrays.stream(newWeights).sum();
    Checks.inside("sum of the weights of the members", sum, 1e-300, 1e300, "");
    return new Ensemble(members, ranks, newWeights.clone());
  }

  /**
   * Places of draws that count alike, each as often as its weight says. They are mixed so that the
   * first few of them stand for all, as those of an ensemble that was never weighted do.
   *
   * @param size 8…65536
   * @param result one number a member, of which the first few draws have the quantiles of all
   */
  int[] drawn(int size, double[] result) {
    checkSize(size);
    int[] order =
        IntStream.range(0, size())
            .boxed()
            .sorted(Comparator.comparingDouble(member -> result[member]))
            .mapToInt(Integer::intValue)
            .toArray();
    double[] scaled = scaled(weights);
    double[] upTo = Arrays.stream(order).mapToDouble(member -> scaled[member]).toArray();
    Arrays.parallelPrefix(upTo, Double::sum);
    int[] from = new int[size];
    for (int i = 0; i < size; i++) {
      int found = Arrays.binarySearch(upTo, RadicalInverse.of(i, 2) + 0.5 / size);
      from[i] = order[Math.min(found >= 0 ? found : -found - 1, size() - 1)];
    }
    return from;
  }

  /**
   * Some of these draws, all alike.
   *
   * @param places of them; one may stand there more than once
   */
  Ensemble at(int[] places) {
    double[][] picked = new double[DIMENSIONS][];
    for (int i = 0; i < DIMENSIONS; i++) {
      double[] all = ranks[i];
      picked[i] = Arrays.stream(places).mapToDouble(member -> all[member]).toArray();
    }
    double[] alike = new double[places.length];
    Arrays.fill(alike, 1);
    return new Ensemble(Arrays.stream(places).mapToObj(members::get).toList(), picked, alike);
  }

  /** How much each member counts, a copy; all 1 unless weighted. */
  public double[] weights() {
    return weights.clone();
  }

  static long[] shift() {
    return SHIFT.clone();
  }

  private static double[] point(int number) {
    double[] ranks = new double[DIMENSIONS];
    for (int i = 0; i < DIMENSIONS; i++) {
      ranks[i] = SobolPoints.rank(number, i, SHIFT[i]);
    }
    return ranks;
  }

  /** The draws. */
  public List<Unknowns> members() {
    return members;
  }

  /** Number of draws. */
  public int size() {
    return members.size();
  }

  /**
   * Share of the variance of a result that each unknown explains alone (first-order index, by the
   * variance of the mean in sixteen slices of the unknown's rank; what is left is chance and joint
   * effects).
   *
   * @param result one finite number a member, in the members' order
   * @return one share for each {@link Unknown}, 0…1
   */
  public double[] varianceShares(double[] result) {
    double[] shares = new double[DIMENSIONS];
    double[] weight = scaled(weights);
    double mean = 0;
    for (int m = 0; m < result.length; m++) {
      mean += weight[m] * result[m];
    }
    double variance = 0;
    for (int m = 0; m < result.length; m++) {
      variance += weight[m] * (result[m] - mean) * (result[m] - mean);
    }
    for (int i = 0; i < DIMENSIONS && variance > 1e-18; i++) {
      double between = sliceVariance(ranks[i], result, weight, mean, variance);
      shares[i] = Math.min(1, between / variance);
    }
    return shares;
  }

  private static double[] scaled(double[] weights) {
    double sum = Arrays.stream(weights).sum();
    return Arrays.stream(weights).map(each -> each / sum).toArray();
  }

  private static double sliceVariance(
      double[] rank, double[] result, double[] weight, double mean, double variance) {
    double members = 1 / Arrays.stream(weight).map(each -> each * each).sum(); // that count
    int slices = Math.max(2, Math.min(16, (int) (members / 16)));
    double[] sum = new double[slices];
    double[] share = new double[slices];
    for (int m = 0; m < result.length; m++) {
      int slice = Math.min((int) (rank[m] * slices), slices - 1);
      sum[slice] += weight[m] * result[m];
      share[slice] += weight[m];
    }
    double between = 0;
    for (int s = 0; s < slices; s++) {
      double off = share[s] == 0 ? 0 : sum[s] / share[s] - mean;
      between += share[s] * off * off;
    }
    double chance = variance * (slices - 1) / members;
    return Math.max(0, between - chance);
  }
}
