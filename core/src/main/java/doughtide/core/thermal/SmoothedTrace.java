package doughtide.core.thermal;

import java.util.Arrays;

/**
 * What a dough makes of a logger's close readings: a running median takes out what lasts up to half
 * an hour, which is air or a hand and not dough; the mean of each half hour is then joined as
 * {@link LoggedTrace} does it. Half an hour (starting value) is well below the time constant of a
 * dough of half a kilogram in still air, one to two hours by {@link RoomCooling}, so nothing of the
 * dough's own course is lost.
 *
 * @param trace the line through the means
 * @param highestSpikeCelsius the highest reading that was taken out, negative infinity for none
 */
record SmoothedTrace(LoggedTrace trace, double highestSpikeCelsius) implements TemperatureTrace {
  private static final long serialVersionUID = 1;

  private static final double DOUGH_HOURS = 0.5;
  private static final double MEDIAN_HALF_HOURS = 0.55; // just over half of it is the longest spike
  private static final double MINUTE_HOURS = 1.0 / 60;
  private static final double CLOSE_HOURS = 0.25;
  private static final double SPIKE_CELSIUS = 2;
  private static final double ROUNDING_HOURS = 1e-6;

  /** Whether readings are on average less than a quarter of an hour apart. */
  static boolean isClose(double[] hours) {
    double span = hours[hours.length - 1] - hours[0];
    return hours.length > 2 && span / (hours.length - 1) < CLOSE_HOURS;
  }

  /** Of readings in ascending order. */
  static SmoothedTrace of(double[] hours, double[] celsius) {
    double[][] minutes = means(hours, celsius, MINUTE_HOURS);
    double[] median = runningMedian(minutes[0], minutes[1]);
    double[][] means = means(minutes[0], median, DOUGH_HOURS);
    double spike = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < median.length; i++) {
      boolean isSpike = minutes[1][i] - median[i] > SPIKE_CELSIUS;
      spike = isSpike ? Math.max(spike, minutes[1][i]) : spike;
    }
    return new SmoothedTrace(new LoggedTrace(means[0], means[1]), spike);
  }

  /** Means of stretches of time, between the first and the last reading, which stay. */
  private static double[][] means(double[] hours, double[] celsius, double width) {
    double[][] means = new double[2][hours.length + 2];
    int last = hours.length - 1;
    int count = 0;
    means[0][count] = hours[0];
    means[1][count++] = celsius[0];
    for (int from = 1; from < last; ) {
      double end = hours[0] + width * (Math.floor((hours[from] - hours[0]) / width) + 1);
      int to = from;
      do {
        means[0][count] += hours[to];
        means[1][count] += celsius[to++];
      } while (to < last && hours[to] < end - ROUNDING_HOURS);
      means[0][count] /= to - from;
      means[1][count++] /= to - from;
      from = to;
    }
    means[0][count] = hours[last];
    means[1][count++] = celsius[last];
    return new double[][] {Arrays.copyOf(means[0], count), Arrays.copyOf(means[1], count)};
  }

  private static double[] runningMedian(double[] hours, double[] celsius) {
    double[] median = new double[hours.length];
    int from = 0;
    int to = 0;
    for (int i = 0; i < hours.length; i++) {
      while (hours[from] < hours[i] - MEDIAN_HALF_HOURS) {
        from++;
      }
      while (to < hours.length && hours[to] <= hours[i] + MEDIAN_HALF_HOURS) {
        to++;
      }
      double[] near = Arrays.copyOfRange(celsius, from, to);
      Arrays.sort(near);
      median[i] = (near[(near.length - 1) / 2] + near[near.length / 2]) / 2;
    }
    return median;
  }

  @Override
  public double celsius(double hours) {
    return trace.celsius(hours);
  }

  @Override
  public double[] breakpoints() {
    return trace.breakpoints();
  }
}
