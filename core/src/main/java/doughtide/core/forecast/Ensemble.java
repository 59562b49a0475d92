package doughtide.core.forecast;

import doughtide.core.quantity.Checks;
import doughtide.core.rise.Unknowns;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * A set of draws from a belief that fills it evenly: a Sobol sequence (commons-math3) under a fixed
 * random digital shift, so that the same belief gives the same draws.
 */
public final class Ensemble {
  /** Members unless asked otherwise. */
  public static final int USUAL_SIZE = 512;

  private static final int DIMENSIONS = Unknown.values().length;
  private static final int SEED = 20_260_301;
  private static final double TWO_TO_52 = 0x1p52;
  private static final long MASK = (1L << 52) - 1;

  /**
   * Direction numbers of Joe &amp; Kuo 2008 (SIAM J Sci Comput 30:2635–2654), the lines of
   * commons-math3's own file for these dimensions; the file has a thousand, and to read it costs a
   * cold start more than all the draws.
   */
  private static final String DIRECTIONS =
      """
      d s a m_i
      2 1 0 1
      3 2 1 1 3
      4 3 1 1 3 1
      5 3 2 1 1 1
      6 4 1 1 1 3 3
      7 4 4 1 3 5 13
      """;

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  private final List<Unknowns> members;
  private final double[][] ranks;

  private Ensemble(List<Unknowns> members, double[][] ranks) {
    this.members = members;
    this.ranks = ranks;
  }

  /**
   * Draws an ensemble.
   *
   * @param belief what is believed
   * @param size number of members, 8…65536; powers of two fill best
   */
  public static Ensemble of(Belief belief, int size) {
    Checks.inRange("ensemble size", size, 8, 65_536, "members");
    long[] shift = shift();
    SobolSequenceGenerator sobol = sobol();
    List<Unknowns> members = new ArrayList<>(size);
    double[][] ranks = new double[DIMENSIONS][size];
    for (int m = 0; m < size; m++) {
      double[] point = shifted(sobol.nextVector(), shift);
      double[] normal = new double[Belief.SIZE];
      for (int i = 0; i < Belief.SIZE; i++) {
        normal[i] = NORMAL.inverseCumulativeProbability(point[i]);
      }
      for (int i = 0; i < DIMENSIONS; i++) {
        ranks[i][m] = point[i];
      }
      members.add(belief.unknowns(normal, point[Belief.SIZE]));
    }
    return new Ensemble(List.copyOf(members), ranks);
  }

  static SobolSequenceGenerator sobol() {
    byte[] directions = DIRECTIONS.getBytes(StandardCharsets.US_ASCII);
    try {
      return new SobolSequenceGenerator(DIMENSIONS, new ByteArrayInputStream(directions));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static long[] shift() {
    Well19937c random = new Well19937c(SEED);
    long[] shift = new long[DIMENSIONS];
    for (int i = 0; i < DIMENSIONS; i++) {
      shift[i] = random.nextLong() & MASK;
    }
    return shift;
  }

  private static double[] shifted(double[] point, long[] shift) {
    double[] moved = new double[point.length];
    for (int i = 0; i < point.length; i++) {
      long bits = (long) (point[i] * TWO_TO_52) ^ shift[i];
      moved[i] = (bits + 0.5) / TWO_TO_52;
    }
    return moved;
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
    double mean = mean(result);
    double variance = 0;
    for (double each : result) {
      variance += (each - mean) * (each - mean) / result.length;
    }
    for (int i = 0; i < DIMENSIONS && variance > 1e-18; i++) {
      shares[i] = Math.min(1, sliceVariance(ranks[i], result, mean, variance) / variance);
    }
    return shares;
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double each : values) {
      sum += each;
    }
    return sum / values.length;
  }

  private static double sliceVariance(
      double[] rank, double[] result, double mean, double variance) {
    int slices = Math.max(2, Math.min(16, result.length / 16));
    double[] sum = new double[slices];
    int[] count = new int[slices];
    for (int m = 0; m < result.length; m++) {
      int slice = Math.min((int) (rank[m] * slices), slices - 1);
      sum[slice] += result[m];
      count[slice]++;
    }
    double between = 0;
    for (int s = 0; s < slices; s++) {
      double off = count[s] == 0 ? 0 : sum[s] / count[s] - mean;
      between += count[s] * off * off / result.length;
    }
    double chance = variance * (slices - 1) / result.length;
    return Math.max(0, between - chance);
  }
}
