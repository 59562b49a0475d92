package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TodayUpdateTest {
  private static final Rise HALF = Rise.ofPercent(50);
  private static final RiseForecaster BEFORE = RiseForecaster.standard();

  private static SimulatedBaker.TrueBake trueBake(long seed) {
    return new SimulatedBaker(seed, SimulatedBaker.Setting.PLAIN).bakes(1, 20).get(0);
  }

  private static TimeWindow before(Bake bake) {
    return BEFORE.forecast(bake.formula(), bake.temperature()).hoursToRise(HALF);
  }

  private static TimeWindow now(Bake bake) {
    return TodayUpdate.of(BEFORE, JarError.standard(), bake)
        .forecaster()
        .forecast(bake.formula(), bake.temperature())
        .hoursToRise(HALF);
  }

  private static double ahead(Bake bake) {
    return before(bake).likely().orElseThrow() - now(bake).likely().orElseThrow();
  }

  @Test
  void withoutReadingsNothingChanges() {
    Bake bake = trueBake(3).bake().until(0);
    assertThat(ahead(bake)).isCloseTo(0, within(0.05));
    assertThat(now(bake).widthHours().orElseThrow())
        .isCloseTo(before(bake).widthHours().orElseThrow(), within(0.1));
  }

  /**
   * The other way to update: members of a large ensemble weighted by the likelihood of the readings
   * (Student's t), the jar's misreading drawn with them.
   */
  @ParameterizedTest
  @ValueSource(longs = {11, 12})
  void agreesWithWeightingALargeEnsemble(long seed) {
    Bake all = trueBake(seed).bake();
    Bake bake = all.until(all.lastHours() * 0.45);
    TimeWindow laplace = now(bake);
    TimeWindow weighted = byWeights(bake);
    double width = weighted.widthHours().orElseThrow();
    assertThat(laplace.likely().orElseThrow())
        .as("seed %d likely", seed)
        .isCloseTo(weighted.likely().orElseThrow(), within(0.13 * width));
    assertThat(laplace.widthHours().orElseThrow())
        .as("seed %d width", seed)
        .isBetween(0.7 * width, 1.25 * width); // heavy tails and two kinds are rounded off
  }

  private record Weighted(double hours, double weight) {}

  private static TimeWindow byWeights(Bake bake) {
    RiseForecast forecast =
        BEFORE.withMembers(8192).forecast(bake.formula(), bake.temperature(), 30);
    Well19937c random = new Well19937c(1);
    List<Weighted> members = new ArrayList<>();
    for (RiseCurve curve : forecast.curves()) {
      double jar = Math.exp(JarError.standard().deviation() * random.nextGaussian());
      double hours = curve.hoursToRise(HALF).orElse(30);
      members.add(new Weighted(hours, likelihood(bake, curve, jar)));
    }
    members.sort(Comparator.comparingDouble(Weighted::hours));
    double sum = members.stream().mapToDouble(Weighted::weight).sum();
    return new TimeWindow(
        java.util.OptionalDouble.of(quantile(members, 0.1 * sum)),
        java.util.OptionalDouble.of(quantile(members, 0.5 * sum)),
        java.util.OptionalDouble.of(quantile(members, 0.9 * sum)),
        1);
  }

  private static double likelihood(Bake bake, RiseCurve curve, double jar) {
    ReadingNoise noise = ReadingNoise.standard();
    double log = 0;
    for (Reading reading : bake.readings()) {
      Rise given = reading.rise().orElseThrow();
      double height = curve.riseAt(reading.hours()).heightTimes() * jar;
      double r = (height - given.heightTimes()) / noise.riseDeviation(given);
      log -= 2.5 * Math.log1p(r * r / 4);
    }
    return Math.exp(log);
  }

  private static double quantile(List<Weighted> members, double mass) {
    double sum = 0;
    for (Weighted each : members) {
      sum += each.weight();
      if (sum >= mass) {
        return each.hours();
      }
    }
    return members.get(members.size() - 1).hours();
  }

  @Test
  void aFastDoughIsAheadAndASlowOneBehind() {
    DoughFormula formula = DoughFormula.builder().build();
    DoughTemperature warm = DoughTemperature.steady(Temperature.ofCelsius(25));
    Bake fast = new Bake("fast", formula, warm, List.of(Reading.ofRise(3, Rise.ofPercent(45))));
    Bake slow = new Bake("slow", formula, warm, List.of(Reading.ofRise(4, Rise.ofPercent(3))));
    assertThat(ahead(fast)).isBetween(0.1, 2.5);
    assertThat(ahead(slow)).isBetween(-4.0, -0.1);
  }

  @Test
  void readingsNarrowTodaysWindow() {
    SimulatedBaker.TrueBake today = trueBake(21);
    Bake soFar = today.bake().until(today.hoursTo(30));
    TimeWindow now = now(soFar);
    double width = now.widthHours().orElseThrow();
    assertThat(width).isLessThan(0.7 * before(soFar).widthHours().orElseThrow());
    assertThat(now.likely().orElseThrow()).isCloseTo(today.hoursTo(50), within(0.6 * width));
  }

  @Test
  void learnsThenUpdates() {
    SimulatedBaker baker = new SimulatedBaker(77, SimulatedBaker.Setting.PLAIN);
    Learned learned = Learner.standard().learn(SimulatedBaker.given(baker.bakes(5, 12)));
    SimulatedBaker.TrueBake today = baker.bake("today", 12);
    RiseForecaster mine = BEFORE.with(learned.belief());
    Belief updated =
        TodayUpdate.of(mine, learned.jar(), today.bake().until(today.hoursTo(30))).belief();
    double known = learned.belief().standardDeviation(doughtide.core.forecast.Unknown.VIGOUR);
    assertThat(updated.standardDeviation(doughtide.core.forecast.Unknown.VIGOUR))
        .isLessThanOrEqualTo(known + 1e-9);
  }
}
