package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Belief;
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

  @Test
  void withoutReadingsNothingChanges() {
    Bake bake = trueBake(3).bake().until(0);
    TodayUpdate.Outlook outlook = TodayUpdate.of(BEFORE, JarError.standard(), bake).outlook(HALF);
    assertThat(outlook.aheadHours().orElseThrow()).isCloseTo(0, within(0.05));
    assertThat(outlook.now().widthHours().orElseThrow())
        .isCloseTo(outlook.before().widthHours().orElseThrow(), within(0.1));
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
    TimeWindow laplace = TodayUpdate.of(BEFORE, JarError.standard(), bake).outlook(HALF).now();
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

  private static double ahead(Bake bake) {
    return TodayUpdate.of(BEFORE, JarError.standard(), bake)
        .outlook(HALF)
        .aheadHours()
        .orElseThrow();
  }

  @Test
  void readingsNarrowTodaysWindow() {
    SimulatedBaker.TrueBake today = trueBake(21);
    Bake soFar = today.bake().until(today.hoursTo(30));
    TodayUpdate.Outlook outlook = TodayUpdate.of(BEFORE, JarError.standard(), soFar).outlook(HALF);
    assertThat(outlook.now().widthHours().orElseThrow())
        .isLessThan(0.7 * outlook.before().widthHours().orElseThrow());
    double width = outlook.now().widthHours().orElseThrow();
    assertThat(outlook.now().likely().orElseThrow())
        .isCloseTo(today.hoursTo(50), within(0.6 * width));
  }

  /** A reading just as expected at the proposed hour narrows more than one at other hours. */
  @Test
  void theProposedLookIsWorthMost() {
    SimulatedBaker.TrueBake today = trueBake(22);
    Bake soFar = today.bake().until(1.2);
    TodayUpdate update = TodayUpdate.of(BEFORE, JarError.standard(), soFar);
    TodayUpdate.Outlook outlook = update.outlook(HALF);
    double look = outlook.nextLookHours().orElseThrow();
    assertThat(look).isBetween(1.2, outlook.now().early().orElseThrow());
    double best = widthAfterLook(update, soFar, look);
    for (double other = 1.6; other < look - 0.3; other += 0.5) {
      assertThat(best).as("against %s h", other).isLessThan(widthAfterLook(update, soFar, other));
    }
  }

  private static double widthAfterLook(TodayUpdate update, Bake soFar, double hours) {
    RiseCurve expected =
        update.forecaster().typical(soFar.formula(), soFar.temperature()).runFast(30);
    List<Reading> readings = new ArrayList<>(soFar.readings());
    readings.add(Reading.ofRise(hours, expected.riseAt(hours)));
    Bake longer = new Bake("longer", soFar.formula(), soFar.temperature(), readings);
    return TodayUpdate.of(BEFORE, JarError.standard(), longer)
        .outlook(HALF)
        .now()
        .widthHours()
        .orElseThrow();
  }

  @Test
  void noLookIsProposedOnceTheDoughMayBeThere() {
    SimulatedBaker.TrueBake today = trueBake(23);
    TodayUpdate.Outlook outlook =
        TodayUpdate.of(BEFORE, JarError.standard(), today.bake()).outlook(Rise.ofPercent(20));
    assertThat(outlook.nextLookHours()).isEmpty();
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
