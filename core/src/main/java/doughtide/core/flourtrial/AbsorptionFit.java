package doughtide.core.flourtrial;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * What the graded bowls say about a flour: where each grade gives way to the next, and the limit,
 * the hydration at which the middle judge finds half of all bowls torn.
 *
 * <pre>{@code
 * AbsorptionFit fit = AbsorptionFit.of(bowls, AbsorptionPrior.of(flour));
 * HydrationEstimate limit = fit.limit();
 * Share hydration = fit.workingHydration(Experience.BEGINNER);
 * }</pre>
 *
 * <p>Maximum a posteriori of a proportional-odds response with weak Gaussian priors; intervals by
 * Laplace's approximation. People differ: each has an offset, and so has each trial, both drawn
 * towards zero. Same bowls in any order, same answer.
 *
 * <p>A trial graded wetter throughout was never seen to have a higher limit. A single wetter grade
 * that does not fit the others also changes the blur of the cut points and can raise the limit, in
 * simulated trials by less than a third of its interval.
 */
@Internal
public final class AbsorptionFit {
  /** The most grades one fit takes. */
  public static final int MOST_BOWLS = 5000;

  private static final int MOST_NAMES = 100;

  /**
   * Usual distance between two cut points, points of hydration, with its spread on the log scale.
   * Starting values.
   */
  private static final double GAP_POINTS = 5;

  private static final double GAP_LOG_SD = 0.5;

  /**
   * Usual blur of a cut point, points of hydration, with its spread on the log scale. Starting
   * values.
   */
  private static final double BLUR_POINTS = 1;

  private static final double BLUR_LOG_SD = 0.5;

  /** How far people, and trials of one flour, lie apart, points of hydration. Starting values. */
  private static final double PERSON_SD_POINTS = 1.5;

  private static final double TRIAL_SD_POINTS = 1.0;

  private final List<GradedBowl> bowls;
  private final List<String> people;
  private final List<String> trials;
  private final AbsorptionPrior prior;
  private final OrderedLogit posterior;
  private final PosteriorMode mode;

  private AbsorptionFit(List<GradedBowl> sorted, AbsorptionPrior prior) {
    this.bowls = sorted;
    this.people = sorted.stream().map(GradedBowl::person).distinct().sorted().toList();
    this.trials = sorted.stream().map(GradedBowl::trial).distinct().sorted().toList();
    Checks.inRange("number of people", people.size(), 1, MOST_NAMES, "");
    Checks.inRange("number of trials", trials.size(), 1, MOST_NAMES, "");
    this.prior = prior;
    this.posterior = new OrderedLogit(observations(), priorMean(), priorSd());
    this.mode = PosteriorMode.of(posterior, startingLimits());
  }

  /**
   * Fits the grades.
   *
   * @param bowls 1 to 5000 grades of one flour, in any order
   * @param prior what was expected before
   * @throws InputException if there is no grade or there are too many
   */
  public static AbsorptionFit of(List<GradedBowl> bowls, AbsorptionPrior prior) {
    if (bowls.isEmpty()) {
      throw new InputException("trial.empty", "the trial has no graded bowl: grade at least one");
    }
    Checks.inRange("number of graded bowls", bowls.size(), 1, MOST_BOWLS, "");
    List<GradedBowl> sorted = new ArrayList<>(bowls);
    sorted.sort(
        Comparator.comparing(GradedBowl::trial)
            .thenComparing(GradedBowl::person)
            .thenComparingDouble(GradedBowl::hydrationPercent)
            .thenComparing(GradedBowl::grade));
    return new AbsorptionFit(List.copyOf(sorted), prior);
  }

  private OrderedLogit.Observation[] observations() {
    return bowls.stream()
        .map(
            bowl ->
                new OrderedLogit.Observation(
                    bowl.grade().ordinal(),
                    bowl.hydrationPercent(),
                    OrderedLogit.FIRST_OFFSET + people.indexOf(bowl.person()),
                    OrderedLogit.FIRST_OFFSET + people.size() + trials.indexOf(bowl.trial())))
        .toArray(OrderedLogit.Observation[]::new);
  }

  private int dimension() {
    return OrderedLogit.FIRST_OFFSET + people.size() + trials.size();
  }

  private double[] priorMean() {
    double[] mean = new double[dimension()];
    Arrays.fill(mean, OrderedLogit.FIRST_GAP, OrderedLogit.LOG_SCALE, Math.log(GAP_POINTS));
    mean[OrderedLogit.LIMIT] = prior.limitPercent();
    mean[OrderedLogit.LOG_SCALE] = Math.log(BLUR_POINTS);
    return mean;
  }

  private double[] priorSd() {
    double[] sd = new double[dimension()];
    int firstTrial = OrderedLogit.FIRST_OFFSET + people.size();
    sd[OrderedLogit.LIMIT] = prior.sdPoints();
    Arrays.fill(sd, OrderedLogit.FIRST_GAP, OrderedLogit.LOG_SCALE, GAP_LOG_SD);
    sd[OrderedLogit.LOG_SCALE] = BLUR_LOG_SD;
    Arrays.fill(sd, OrderedLogit.FIRST_OFFSET, firstTrial, PERSON_SD_POINTS);
    Arrays.fill(sd, firstTrial, sd.length, TRIAL_SD_POINTS);
    return sd;
  }

  private double[] startingLimits() {
    double driest = bowls.stream().mapToDouble(GradedBowl::hydrationPercent).min().orElseThrow();
    double wettest = bowls.stream().mapToDouble(GradedBowl::hydrationPercent).max().orElseThrow();
    return new double[] {driest, (driest + wettest) / 2, wettest};
  }

  /** The limit, for the middle of the people and trials at hand, with its 80 % interval. */
  public HydrationEstimate limit() {
    return beginning(Grade.TORN);
  }

  /**
   * The limit as one person judges it.
   *
   * @param person a name that occurs in the bowls
   * @throws InputException if the name does not occur
   */
  public HydrationEstimate limitOf(String person) {
    double[] weights = weights(Grade.TORN);
    Arrays.fill(weights, OrderedLogit.FIRST_OFFSET, OrderedLogit.FIRST_OFFSET + people.size(), 0);
    weights[personAt(person)] = 1;
    double likely = OrderedLogit.cut(mode.theta(), OrderedLogit.CUTS - 1) + offset(weights);
    return estimate(likely, weights);
  }

  /**
   * How much later than the middle of all people one person calls a bowl torn, points of hydration;
   * negative for the strict.
   *
   * @param person a name that occurs in the bowls
   * @throws InputException if the name does not occur
   */
  public double leniencyPoints(String person) {
    double[] theta = mode.theta();
    double sum = 0;
    for (int i = 0; i < people.size(); i++) {
      sum += theta[OrderedLogit.FIRST_OFFSET + i];
    }
    return theta[personAt(person)] - sum / people.size();
  }

  private int personAt(String person) {
    int index = people.indexOf(person);
    if (index < 0) {
      throw new InputException(
          "trial.person-unknown",
          "'" + person + "' judged no bowl: use one of " + String.join(", ", people));
    }
    return OrderedLogit.FIRST_OFFSET + index;
  }

  /**
   * Where a grade begins: the hydration at which half of all bowls get this grade or a wetter one,
   * with its 80 % interval.
   *
   * @param grade any but the driest
   * @throws InputException for the driest grade, which has no beginning
   */
  public HydrationEstimate beginning(Grade grade) {
    if (grade.ordinal() == 0) {
      throw new InputException(
          "grade.no-beginning",
          "grade '" + grade.key() + "' has no beginning: ask for a wetter grade");
    }
    double[] weights = weights(grade);
    double likely = OrderedLogit.cut(mode.theta(), grade.ordinal() - 1) + offset(weights);
    return estimate(likely, weights);
  }

  /** Weights of the vector's entries in the cut point below a grade (first order). */
  private double[] weights(Grade grade) {
    double[] theta = mode.theta();
    double[] weights = new double[theta.length];
    weights[OrderedLogit.LIMIT] = 1;
    for (int gap = grade.ordinal() - 1; gap < OrderedLogit.CUTS - 1; gap++) {
      weights[OrderedLogit.FIRST_GAP + gap] = -Math.exp(theta[OrderedLogit.FIRST_GAP + gap]);
    }
    int firstTrial = OrderedLogit.FIRST_OFFSET + people.size();
    Arrays.fill(weights, OrderedLogit.FIRST_OFFSET, firstTrial, 1.0 / people.size());
    Arrays.fill(weights, firstTrial, weights.length, 1.0 / trials.size());
    return weights;
  }

  private double offset(double[] weights) {
    double[] theta = mode.theta();
    double sum = 0;
    for (int i = OrderedLogit.FIRST_OFFSET; i < theta.length; i++) {
      sum += weights[i] * theta[i];
    }
    return sum;
  }

  private HydrationEstimate estimate(double likely, double[] weights) {
    double reach = Quantiles.NINETY_PERCENT * Math.sqrt(mode.variance(weights));
    return new HydrationEstimate(likely - reach, likely, likely + reach);
  }

  /** From where a bowl makes a thin window to where it tears when stretched far. */
  public HydrationRange comfortable() {
    return between(Grade.THIN_WINDOW, Grade.TEARS_FAR);
  }

  /** From where a bowl tears when stretched far to the limit. */
  public HydrationRange demanding() {
    return between(Grade.TEARS_FAR, Grade.TORN);
  }

  /** Too wet from here on, per cent: the likely limit. */
  public double tooWetFromPercent() {
    return limit().likelyPercent();
  }

  private HydrationRange between(Grade first, Grade next) {
    return new HydrationRange(beginning(first).likelyPercent(), beginning(next).likelyPercent());
  }

  /**
   * The hydration to work at: the likely limit less the points that go with the experience.
   *
   * @param experience of the baker
   */
  public Share workingHydration(Experience experience) {
    return Share.ofPercent(limit().likelyPercent() - experience.pointsBelowLimit());
  }

  /**
   * How probable a grade is at a hydration, for the middle judge, 0…1; over all grades the
   * probabilities add up to 1.
   *
   * @param grade the grade
   * @param hydration water over flour
   */
  public double probability(Grade grade, Share hydration) {
    int last = OrderedLogit.CUTS;
    double wetterThanBefore = grade.ordinal() == 0 ? 0 : notAbove(grade.ordinal() - 1, hydration);
    double notWetter = grade.ordinal() == last ? 1 : notAbove(grade.ordinal(), hydration);
    return Math.max(0, notWetter - wetterThanBefore);
  }

  private double notAbove(int cut, Share hydration) {
    double[] theta = mode.theta();
    double middle = OrderedLogit.cut(theta, cut) + offset(weights(Grade.TORN));
    double away = middle - hydration.percent();
    return OrderedLogit.logistic(away * Math.exp(-theta[OrderedLogit.LOG_SCALE]));
  }

  /**
   * How much of the prior's uncertainty about the limit is left, 0…1: near 1 the bowls said
   * nothing, near 0 they decide.
   */
  public double priorWeight() {
    double[] weights = weights(Grade.TORN);
    weights[OrderedLogit.LIMIT] = 1;
    double before = posterior.priorVariance(weights);
    return Math.min(1, mode.variance(weights) / before);
  }

  /** The people who judged, in alphabetical order. */
  public List<String> people() {
    return people;
  }

  /** The trials, in alphabetical order. */
  public List<String> trials() {
    return trials;
  }

  /** The grades fitted, ordered by trial, person and hydration. */
  public List<GradedBowl> bowls() {
    return bowls;
  }

  /** The prior used. */
  public AbsorptionPrior prior() {
    return prior;
  }

  /** What to know before trusting the figures; empty when there is nothing to say. */
  public List<TrialNote> notes() {
    return TrialNotes.of(this);
  }
}
