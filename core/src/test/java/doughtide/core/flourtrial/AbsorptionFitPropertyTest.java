package doughtide.core.flourtrial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.Share;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class AbsorptionFitPropertyTest {
  private static final AbsorptionPrior PRIOR = new AbsorptionPrior(73, 5);
  private static final int TRIALS = 300;

  /**
   * A single grade that does not fit the others also tells how blurred and how far apart the cut
   * points are, and that can move the limit the other way: it did in 102 of 4847 changes tried, by
   * 1.4 points at most.
   */
  private static final double SLACK_OF_INTERVAL = 1.0 / 3;

  static LongStream seeds() {
    return LongStream.rangeClosed(1, 100);
  }

  @Test
  void knownLimitsLieInTheEightyPerCentIntervalAboutEightTimesInTen() {
    int inside = 0;
    double error = 0;
    double width = 0;
    for (int seed = 1; seed <= TRIALS; seed++) {
      Random random = new Random(7_000 + seed);
      SimulatedTrial truth = SimulatedTrial.random(random, PRIOR);
      HydrationEstimate limit =
          AbsorptionFit.of(truth.bowls(random, "one", "A", 0, 60, 4, 7), PRIOR).limit();
      inside += limit.contains(truth.limit()) ? 1 : 0;
      error += Math.abs(limit.likelyPercent() - truth.limit()) / TRIALS;
      width += limit.widthPoints() / TRIALS;
    }
    assertThat(inside).isBetween(210, 270);
    assertThat(error).as("mean distance from the truth, points").isLessThan(2);
    assertThat(width).as("mean width of the interval, points").isLessThan(7);
  }

  @Test
  void intervalsHoldWithSeveralPeopleAndTrialsToo() {
    int inside = 0;
    for (int seed = 1; seed <= TRIALS; seed++) {
      Random random = new Random(17_000 + seed);
      SimulatedTrial truth = SimulatedTrial.random(random, PRIOR);
      double[] person = centred(random, 3, 1.5);
      double[] trial = centred(random, 2, 1);
      List<GradedBowl> bowls = new ArrayList<>();
      for (int p = 0; p < 3; p++) {
        for (int t = 0; t < 2; t++) {
          double shift = person[p] + trial[t];
          bowls.addAll(truth.bowls(random, "day " + t, "P" + p, shift, 62, 4, 6));
        }
      }
      AbsorptionFit fit = AbsorptionFit.of(bowls, PRIOR);
      inside += fit.limit().contains(truth.limit()) ? 1 : 0;
    }
    assertThat(inside).isBetween(210, 270);
  }

  /** Offsets about the middle of the people at hand, which is what the fit reports. */
  private static double[] centred(Random random, int count, double sd) {
    double[] values = random.doubles(count).map(u -> sd * random.nextGaussian()).toArray();
    double mean = 0;
    for (double value : values) {
      mean += value / count;
    }
    for (int i = 0; i < count; i++) {
      values[i] -= mean;
    }
    return values;
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void wetterGradesThroughoutNeverRaiseTheLimit(long seed) {
    Random random = new Random(seed);
    SimulatedTrial truth = SimulatedTrial.random(random, PRIOR);
    List<GradedBowl> bowls = truth.bowls(random, "one", "A", 0, 60, 4, 7);
    double before = AbsorptionFit.of(bowls, PRIOR).limit().likelyPercent();
    double after =
        AbsorptionFit.of(bowls.stream().map(AbsorptionFitPropertyTest::wetter).toList(), PRIOR)
            .limit()
            .likelyPercent();
    assertThat(after).as("seed %d", seed).isLessThanOrEqualTo(before + 1e-6);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void oneWetterGradeDoesNotRaiseTheLimitBeyondItsUncertainty(long seed) {
    Random random = new Random(seed);
    SimulatedTrial truth = SimulatedTrial.random(random, PRIOR);
    List<GradedBowl> bowls = truth.bowls(random, "one", "A", 0, 60, 4, 7);
    HydrationEstimate before = AbsorptionFit.of(bowls, PRIOR).limit();
    for (int i = 0; i < bowls.size(); i++) {
      List<GradedBowl> changed = new ArrayList<>(bowls);
      changed.set(i, wetter(bowls.get(i)));
      double after = AbsorptionFit.of(changed, PRIOR).limit().likelyPercent();
      assertThat(after - before.likelyPercent())
          .as("seed %d, bowl %d made wetter", seed, i)
          .isLessThanOrEqualTo(SLACK_OF_INTERVAL * before.widthPoints());
    }
  }

  private static GradedBowl wetter(GradedBowl bowl) {
    int next = Math.min(Grade.values().length - 1, bowl.grade().ordinal() + 1);
    return new GradedBowl(
        bowl.trial(), bowl.person(), bowl.hydrationPercent(), Grade.values()[next]);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void theOrderOfTheBowlsDoesNotMatter(long seed) {
    Random random = new Random(seed);
    SimulatedTrial truth = SimulatedTrial.random(random, PRIOR);
    List<GradedBowl> bowls = truth.bowls(random, "one", "A", 0, 60, 4, 7);
    List<GradedBowl> shuffled = new ArrayList<>(bowls);
    Collections.shuffle(shuffled, random);
    assertThat(AbsorptionFit.of(shuffled, PRIOR).limit())
        .as("seed %d", seed)
        .isEqualTo(AbsorptionFit.of(bowls, PRIOR).limit());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void anyGradesGiveFiniteOrderedAnswers(long seed) {
    Random random = new Random(seed);
    List<GradedBowl> bowls = new ArrayList<>();
    int count = 1 + random.nextInt(12);
    for (int i = 0; i < count; i++) {
      Grade grade = Grade.values()[random.nextInt(5)];
      String person = "P" + random.nextInt(3);
      bowls.add(new GradedBowl("one", person, 30 + 120 * random.nextDouble(), grade));
    }
    AbsorptionFit fit = AbsorptionFit.of(bowls, PRIOR);
    assertThat(fit.limit().widthPoints()).as("seed %d", seed).isBetween(0.1, 40.0);
    assertThat(fit.comfortable().toPercent()).isEqualTo(fit.demanding().fromPercent());
    double sum = 0;
    for (Grade grade : Grade.values()) {
      sum += fit.probability(grade, Share.ofPercent(70));
    }
    assertThat(sum).as("seed %d", seed).isCloseTo(1, within(1e-12));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void movingEverythingMovesTheLimitAsFar(long seed) {
    Random random = new Random(seed);
    SimulatedTrial truth = SimulatedTrial.random(random, PRIOR);
    List<GradedBowl> bowls = truth.bowls(random, "one", "A", 0, 60, 4, 7);
    List<GradedBowl> moved =
        bowls.stream()
            .map(
                bowl ->
                    new GradedBowl(
                        bowl.trial(), bowl.person(), bowl.hydrationPercent() + 3, bowl.grade()))
            .toList();
    double before = AbsorptionFit.of(bowls, PRIOR).limit().likelyPercent();
    double after = AbsorptionFit.of(moved, new AbsorptionPrior(76, 5)).limit().likelyPercent();
    assertThat(after - before).as("seed %d", seed).isCloseTo(3, within(1e-5));
  }
}
