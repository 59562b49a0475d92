package doughtide.core.learning;

/**
 * One thing learned, before and after, for the next bake, in units a baker can read.
 *
 * @param name in a baker's words
 * @param unit for example {@code "× typical"} or {@code "°C"}
 * @param before without any reading
 * @param after with the readings
 * @param meaning one sentence
 */
public record LearnedParameter(
    String name, String unit, Range before, Range after, String meaning) {
  /**
   * Eight in ten lie between low and high.
   *
   * @param low 10 % quantile
   * @param middle median
   * @param high 90 % quantile
   */
  public record Range(double low, double middle, double high) {}
}
