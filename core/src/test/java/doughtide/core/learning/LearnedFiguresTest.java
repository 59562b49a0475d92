package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.Unknown;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What is told of a learned starter, and how readings weigh members, by figures. */
class LearnedFiguresTest {
  private static final DoughFormula FORMULA = DoughFormula.builder().build();
  private static final DoughTemperature WARM = DoughTemperature.steady(Temperature.ofCelsius(25));
  private static final double Z = 1.2815515655446004; // nine in ten of a normal lie below

  private static LearnedParameter row(List<LearnedParameter> table, LearnedParameter.Kind kind) {
    return table.stream().filter(each -> each.kind() == kind).findFirst().orElseThrow();
  }

  private static Belief belief(Unknown unknown, double mean, double deviation) {
    double[] means = new double[Belief.SIZE];
    means[unknown.ordinal()] = mean;
    Belief standard = Belief.standard();
    return Belief.of(means, standard.covariance()).withStandardDeviation(unknown, deviation);
  }

  private static List<LearnedParameter> table(Belief after) {
    return ParameterTable.of(
        Belief.standard(), after, new JarError(0, 0.03), new JarError(0.02, 0.01));
  }

  /** Ranges in the unit of each, and by how much it is other than usual. */
  @Test
  void aTableTellsMiddlesEndsAndChanges() {
    LearnedParameter lag = row(table(belief(Unknown.LAG, 0.4, 0.2)), LearnedParameter.Kind.LAG);
    assertThat(lag.after().middle()).isCloseTo(Math.exp(0.4), within(1e-9));
    assertThat(lag.after().low()).isCloseTo(Math.exp(0.4 - Z * 0.2), within(1e-9));
    assertThat(lag.after().high()).isCloseTo(Math.exp(0.4 + Z * 0.2), within(1e-9));
    assertThat(lag.before().high()).isCloseTo(Math.exp(Z * 0.5), within(1e-9));
    assertThat(lag.change()).isCloseTo(100 * Math.expm1(0.4), within(1e-9));
    LearnedParameter warm =
        row(table(belief(Unknown.TEMPERATURE, 0.7, 0.5)), LearnedParameter.Kind.TEMPERATURE);
    assertThat(warm.change()).isCloseTo(0.7, within(1e-9));
    LearnedParameter holds =
        row(table(belief(Unknown.RETENTION, 0.03, 0.02)), LearnedParameter.Kind.RETENTION);
    assertThat(holds.change()).isCloseTo(3, within(1e-9));
    LearnedParameter air = row(table(belief(Unknown.AIR, 0.2, 0.1)), LearnedParameter.Kind.AIR);
    assertThat(air.change()).isCloseTo(100 * Math.expm1(0.2), within(1e-9));
    LearnedParameter jar = row(table(Belief.standard()), LearnedParameter.Kind.JAR);
    assertThat(jar.change()).isCloseTo(100 * Math.expm1(0.02), within(1e-9));
    assertThat(jar.after().low()).isCloseTo(Math.exp(0.02 - Z * 0.01), within(1e-9));
    assertThat(jar.isUsual()).isFalse();
    assertThat(row(table(Belief.standard()), LearnedParameter.Kind.LAG).isUsual()).isTrue();
  }

  /** Half a standard deviation of what is known now is a change. */
  @Test
  void aSmallChangeSaysNothing() {
    assertThat(row(table(belief(Unknown.LAG, 0.09, 0.2)), LearnedParameter.Kind.LAG).isUsual())
        .isTrue();
    assertThat(row(table(belief(Unknown.LAG, -0.11, 0.2)), LearnedParameter.Kind.LAG).isUsual())
        .isFalse();
    JarError little = new JarError(-0.004, 0.01);
    assertThat(
            row(
                    ParameterTable.of(
                        Belief.standard(), Belief.standard(), new JarError(0, 0.03), little),
                    LearnedParameter.Kind.JAR)
                .isUsual())
        .isTrue();
  }

  /** Bayes: before times likelihood, in sum one; a mixture keeps mean and variance. */
  @Test
  void evidenceWeighsWhatWasBelieved() {
    double[] weights =
        Evidence.weights(new double[] {-700, -700 + Math.log(3)}, new double[] {2, 1});
    assertThat(weights[0]).isCloseTo(0.4, within(1e-12));
    assertThat(weights[1]).isCloseTo(0.6, within(1e-12));
    JarError mixed =
        Evidence.mixed(
            List.of(new JarError(0.1, 0.03), new JarError(-0.1, 0.04)), new double[] {0.4, 0.6});
    assertThat(mixed.mean()).isCloseTo(-0.02, within(1e-12));
    double variance = 0.4 * (0.01 + 0.0009) + 0.6 * (0.01 + 0.0016) - 0.0004;
    assertThat(mixed.deviation()).isCloseTo(Math.sqrt(variance), within(1e-12));
  }

  /** The logarithms of the factors have the mean and the deviation that are believed. */
  @Test
  void jarsAreSpreadAsTheyAreBelieved() {
    double[] factors = new JarError(0.05, 0.1).factorsOfMembers(1330); // 11³ − 1: an even spread
    double[] logs = Arrays.stream(factors).map(Math::log).toArray();
    double mean = Arrays.stream(logs).average().orElseThrow();
    double square = Arrays.stream(logs).map(each -> (each - 0.05) * (each - 0.05)).sum();

    assertThat(mean).isCloseTo(0.05, within(1e-9));
    assertThat(Math.sqrt(square / 1330)).isCloseTo(0.1, within(0.001));
    assertThat(new JarError(0.05, 0).factorsOfMembers(3)).containsOnly(Math.exp(0.05));
  }

  private static Bake bake(String name, DoughFormula formula, Reading... readings) {
    return new Bake(name, formula, WARM, List.of(readings));
  }

  private static Reading rise(double hours, double percent) {
    return Reading.ofRise(hours, Rise.ofPercent(percent));
  }

  /** Whatever was noted is in the digest; the order of the bakes is not. */
  @Test
  void aDigestChangesWithEveryFigure() {
    Bake one = bake("one", FORMULA, rise(2, 10), rise(4, 50));
    Bake two = bake("two", FORMULA, rise(3, 20));
    assertThat(ReadingsDigest.sha256(List.of(one, two)))
        .isEqualTo(ReadingsDigest.sha256(List.of(two, one)))
        .matches("[0-9a-f]{64}");
    List<Bake> others =
        List.of(
            one,
            bake("other", FORMULA, rise(2, 10), rise(4, 50)),
            one.of("saturday"),
            bake("one", FORMULA, rise(2.5, 10), rise(4, 50)),
            bake("one", FORMULA, rise(2, 11), rise(4, 50)),
            bake("one", FORMULA, rise(2, 10), rise(4, 50).withCelsius(25)),
            bake("one", FORMULA, rise(2, 10), rise(4, 50).withPh(4)),
            bake("one", FORMULA, rise(2, 10)),
            bake("one", FORMULA.toBuilder().salt(Share.ofPercent(1)).build(), rise(2, 10)),
            bake("one", FORMULA.toBuilder().hydration(Share.ofPercent(80)).build(), rise(2, 10)),
            bake("one", FORMULA.toBuilder().altitude(Altitude.ofMetres(1000)).build(), rise(2, 10)),
            new Bake(
                "one",
                FORMULA,
                DoughTemperature.steady(Temperature.ofCelsius(24)),
                List.of(rise(2, 10))),
            new Bake(
                "one",
                FORMULA,
                DoughTemperature.following(
                    TemperatureTrace.logged(new double[] {0, 3}, new double[] {25, 22})),
                List.of(rise(2, 10))));
    Set<String> digests = new TreeSet<>();
    others.forEach(each -> digests.add(ReadingsDigest.sha256(List.of(each))));
    assertThat(digests).hasSameSizeAs(others);
  }

  private static RiseForecast forecast(int members) {
    return RiseForecaster.standard()
        .withMembers(members)
        .keepingCurves()
        .forecast(FORMULA, WARM, 8);
  }

  /** A jar exactly as one member has it weighs that member as the noise weighs no miss. */
  @Test
  void aReadingWeighsMembersByTheirJars() {
    RiseForecast forecast = forecast(32);
    Members members = Members.of(forecast, new JarError(0.03, 0.02));
    double height = (1 + forecast.curves().get(5).riseAt(4).fraction()) * members.factor(5);
    Reading reading = Reading.ofRise(4, new Rise(height - 1));
    double[] log = members.logLikelihoods(List.of(reading));
    ReadingNoise noise = ReadingNoise.standard();
    double off = (1 + forecast.curves().get(6).riseAt(4).fraction()) * members.factor(6) - height;
    double deviation = noise.riseDeviation(new Rise(height - 1));

    assertThat(log[5]).isCloseTo(0, within(1e-9));
    assertThat(log[6]).isCloseTo(noise.logLikelihood(off / deviation), within(1e-6));
    double[] many = members.logLikelihoods(Collections.nCopies(48, reading));
    assertThat(many[6])
        .as("readings beyond two dozen are not independent")
        .isCloseTo(48 * noise.logLikelihood(off / deviation / Math.sqrt(2)), within(1e-6));
    double[] weights = members.weighted(log).ensemble().weights();
    assertThat(weights[6] / weights[5]).isCloseTo(Math.exp(log[6]), within(1e-9));
    assertThat(
            members.logLikelihoods(
                List.of(
                    new Reading(
                        4, Optional.empty(), OptionalDouble.empty(), OptionalDouble.of(4.5)))))
        .containsOnly(0);
    assertThat(members.isDrawn()).isFalse();
  }

  /**
   * Two that share all of the weight are worth two; drawn members are worth no more than before.
   */
  @Test
  void membersAreWorthAsManyAsCountAlike() {
    RiseForecast forecast = forecast(32);
    double[] two = new double[32];
    two[3] = 1;
    two[9] = 1;
    assertThat(Members.worth(forecast)).isCloseTo(32, within(1e-9));
    assertThat(Members.worth(forecast.weighted(two))).isCloseTo(2, within(1e-9));
    Members members = Members.of(forecast, new JarError(0, 0.02));
    assertThat(members.worthOf(forecast.weighted(two))).isCloseTo(2, within(1e-9));
    Reading reading = rise(4, 100 * forecast.curves().get(5).riseAt(4).fraction());
    double[] log = members.logLikelihoods(List.of(reading));
    double worth = Members.worth(members.weighted(log));
    Members drawn = members.drawn(64, List.of(reading));
    double[] again = drawn.logLikelihoods(List.of(reading));

    assertThat(drawn.isDrawn()).isTrue();
    assertThat(again).hasSize(64);
    RiseForecast alike = drawn.weighted(again);
    double[] weights = alike.ensemble().weights();
    assertThat(IntStream.range(0, 64).mapToDouble(i -> weights[i] / weights[0]))
        .allMatch(each -> Math.abs(each - 1) < 1e-9);
    assertThat(drawn.worthOf(alike)).isCloseTo(worth, within(1e-6));
  }

  /** Of four bakes of one dough one jar goes up and down: it is named, the others are not. */
  @Test
  void aJarThatGoesUpAndDownIsNotExplained() {
    RiseCurve curve = RiseModel.of(FORMULA, WARM).run(8);
    List<Bake> bakes = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      bakes.add(
          bake(
              "quiet " + i,
              FORMULA,
              Reading.ofRise(3, curve.riseAt(3)),
              Reading.ofRise(5, curve.riseAt(5)),
              Reading.ofRise(6.5, curve.riseAt(6.5))));
    }
    bakes.add(
        bake("wild", FORMULA, rise(2, 90), rise(3, 5), rise(4, 120), rise(5, 10), rise(6, 150)));
    List<Outlier> outliers = Learner.standard().learn(bakes).outliers();

    assertThat(outliers).extracting(Outlier::bake).containsOnly("wild");
    assertThat(outliers).hasSize(1);
  }

  /** What is noted twice in a row under one occasion tells of one starter, not of two. */
  @Test
  void bakesOfOneOccasionShareTheirStarter() {
    Bake one = bake("one", FORMULA, rise(3, 30), rise(4, 75));
    Bake two = bake("two", FORMULA, rise(3, 31), rise(4, 76));
    Learned apart = Learner.standard().learn(List.of(one, two));
    Learned together = Learner.standard().learn(List.of(one.of("friday"), two.of("friday")));

    assertThat(together.belief()).isNotEqualTo(apart.belief());
    assertThat(together.belief().mean()[0])
        .as("two evenings are more evidence of a lively starter than one")
        .isLessThan(apart.belief().mean()[0]);
    assertThat(apart).asString().startsWith("bakes 2, readings 4, outliers []: ");
  }

  /** Nobody's jar is known no better than the jars of one baker differ from bake to bake. */
  @Test
  void aBakersJarIsKnownBetterThanAStrangers() {
    LearningPrior prior = LearningPrior.standard();
    int last = prior.mean().length - 1;
    Learned none = Learner.standard().learn(List.of());
    Learned some = Learner.standard().learn(List.of(bake("one", FORMULA, rise(2, 8), rise(4, 75))));

    assertThat(none.jar().deviation())
        .isCloseTo(
            Math.hypot(prior.bakerDeviation()[last], prior.bakeDeviation()[last]), within(1e-9));
    assertThat(some.jar().deviation())
        .isBetween(prior.bakeDeviation()[last], none.jar().deviation());
  }

  @Test
  void bakesAndPriorsAreValues() {
    Reading sour = new Reading(5, Optional.empty(), OptionalDouble.empty(), OptionalDouble.of(4.2));
    Bake bake = bake("one", FORMULA, rise(2, 8), rise(4, 75), sour);
    assertThat(bake.riseReadings()).isEqualTo(2);
    assertThat(bake.until(4).readings()).hasSize(2);
    assertThat(bake.until(3.99).readings()).hasSize(1);
    assertThat(bake.until(1).lastHours()).isZero();

    LearningPrior prior = LearningPrior.standard();
    double[] mean = prior.mean();
    LearningPrior same = LearningPrior.of(mean, prior.bakerDeviation(), prior.bakeDeviation());
    mean[0] = 0.5;
    LearningPrior other = LearningPrior.of(mean, prior.bakerDeviation(), prior.bakeDeviation());
    assertThat(same).isEqualTo(prior).isNotEqualTo(other);
    assertThat(other).asString().startsWith("mean [0.5, ").contains("between bakes [");
    LearnedStarter starter = Learner.standard().learn(List.of()).starter("1.0");
    assertThat(starter).asString().startsWith("version 1.0, bakes 0, readings 0, mixers {}: ");
  }
}
