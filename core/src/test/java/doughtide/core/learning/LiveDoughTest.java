package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.correlation.Covariance;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class LiveDoughTest {
  private static final Rise HALF = Rise.ofPercent(50);
  private static final DoughFormula FORMULA = DoughFormula.builder().build();
  private static final DoughTemperature WARM = DoughTemperature.steady(Temperature.ofCelsius(25));

  private static LiveDough fresh() {
    return LiveDough.of(RiseForecaster.standard(), JarError.standard(), FORMULA, WARM);
  }

  private static LiveDough read(LiveDough dough, double hours, double percent) {
    return dough.with(Reading.ofRise(hours, Rise.ofPercent(percent)));
  }

  @Test
  void withoutReadingsItIsTheForecast() {
    TimeWindow expected = RiseForecaster.standard().forecast(FORMULA, WARM).hoursToRise(HALF);
    assertThat(fresh().forecast().hoursToRise(HALF)).isEqualTo(expected);
    assertThat(fresh().membersThatCarry()).isCloseTo(512, within(1e-6));
    assertThat(fresh().doubt()).isEmpty();
  }

  @Test
  void aReadingAsExpectedNarrowsAndAFastOneMovesItForward() {
    LiveDough dough = fresh();
    TimeWindow before = dough.forecast().hoursToRise(HALF);
    double hours = before.likely().orElseThrow() * 0.8;
    double expected = dough.forecast().bandAt(hours).riseLikelyPercent();
    TimeWindow as = read(dough, hours, expected).forecast().hoursToRise(HALF);
    assertThat(as.widthHours().orElseThrow()).isLessThan(0.7 * before.widthHours().orElseThrow());
    TimeWindow fast = read(dough, hours, expected + 15).forecast().hoursToRise(HALF);
    assertThat(fast.likely().orElseThrow()).isLessThan(as.likely().orElseThrow() - 0.2);
  }

  @Test
  void runsALargerEnsembleWhereFewMembersCarryTheWeightAndSaysSo() {
    LiveDough dough = fresh();
    double half = dough.forecast().hoursToRise(HALF).likely().orElseThrow();
    double percent = dough.forecast().bandAt(half * 0.6).riseEarlyPercent() + 4;
    for (double part = 0.6; part < 1; part += 0.1) {
      dough = read(dough, half * part, percent);
      percent *= 1.5;
    }
    assertThat(dough.isRefitted()).isTrue();
    assertThat(dough.membersThatCarry()).isGreaterThan(8);
  }

  @Test
  void saysWhyAReadingCanHardlyBeOfThisDough() {
    LiveDough dough = fresh();
    double half = dough.forecast().hoursToRise(HALF).likely().orElseThrow();
    for (double part : new double[] {0.5, 0.6, 0.7}) {
      double likely = dough.expected().bandAt(half * part).riseLikelyPercent();
      dough = read(dough, half * part, likely);
      assertThat(dough.doubt()).isEmpty();
    }
    double sunk = dough.expected().bandAt(half * 0.8).riseLikelyPercent() - 35;
    assertThat(read(dough, half * 0.8, sunk).doubt()).contains(ReadingDoubt.MARK_MOVED);
    assertThat(read(dough, half * 0.8, 400).doubt()).contains(ReadingDoubt.OTHER_DOUGH);
    double beforeNoon = dough.expected().bandAt(half * 0.8).riseLikelyPercent();
    assertThat(read(dough, half * 0.8 + 12, beforeNoon).doubt()).contains(ReadingDoubt.CLOCK_WRONG);
  }

  @Test
  void proposesALookBeforeTheDoughMayBeThere() {
    LiveDough dough = fresh();
    double look = dough.nextLookHours(HALF).orElseThrow();
    double early = dough.forecast().hoursToRise(HALF).early().orElseThrow();
    assertThat(look).isLessThanOrEqualTo(early + 1e-9);
    assertThat(look).isGreaterThan(1);
    assertThat(read(dough, 12, 60).nextLookHours(HALF)).isEmpty();
  }

  /**
   * The look is where a reading takes most off the variance of the hour: the covariance of hour and
   * height, squared, over the variance of the height with its noise. Of a jar without error.
   */
  @Test
  void theLookIsWhereAReadingTellsMost() {
    LiveDough dough = LiveDough.of(RiseForecaster.standard(), new JarError(0, 0), FORMULA, WARM);
    double look = dough.nextLookHours(HALF).orElseThrow();
    double early = dough.forecast().hoursToRise(HALF).early().orElseThrow();
    double best = taken(dough.forecast(), look);

    for (double hours = 0.5; hours <= early; hours += 0.25) {
      assertThat(taken(dough.forecast(), hours)).isLessThan(best * 1.02);
    }
    assertThat(taken(dough.forecast(), 0.5)).isLessThan(0.5 * best);
  }

  private static double taken(RiseForecast forecast, double at) {
    double[] hours = forecast.hoursOfMembers(HALF);
    double[] heights = forecast.risesOfMembers(at);
    int[] there = IntStream.range(0, hours.length).filter(i -> Double.isFinite(hours[i])).toArray();
    Covariance both = new Covariance();
    double[] x = Arrays.stream(there).mapToDouble(i -> hours[i]).toArray();
    double[] y = Arrays.stream(there).mapToDouble(i -> heights[i]).toArray();
    double across = both.covariance(x, y, false);
    double mean = Arrays.stream(y).average().orElseThrow();
    double noise = ReadingNoise.standard().riseDeviation(new Rise(mean));
    return across * across / (both.covariance(y, y, false) + noise * noise);
  }

  /** A jar that was higher before cannot have been read at a wrong hour: it sank. */
  @Test
  void aJarThatSankHadItsMarkMoved() {
    LiveDough dough = fresh();
    double half = dough.forecast().hoursToRise(HALF).likely().orElseThrow();
    double hours = half * 0.9;
    double height = 1 + dough.expected().bandAt(hours).riseLikelyPercent() / 100;
    LiveDough known = read(dough, hours - 0.5, 100 * (height - 1) - 6);

    assertThat(read(known, hours, 100 * (0.8 * height - 1)).doubt())
        .contains(ReadingDoubt.MARK_MOVED);
    assertThat(read(dough, hours, 100 * (height - 1)).doubt()).isEmpty();
    Reading cold =
        new Reading(hours, Optional.empty(), OptionalDouble.of(9), OptionalDouble.empty());
    assertThat(dough.with(cold).doubt()).as("a temperature is no height").isEmpty();
  }

  /** A bake whose last reading is late is followed for half a day more. */
  @Test
  void aLongBakeIsFollowedPastItsLastReading() {
    double usual = fresh().expected().hours();
    Bake late =
        new Bake("late", FORMULA, WARM, List.of(Reading.ofRise(usual - 1, Rise.ofPercent(60))));
    LiveDough dough =
        LiveDough.of(
            RiseForecaster.standard().withMembers(128), JarError.standard(), late, (a, b) -> {});

    assertThat(dough.expected().hours()).isCloseTo(usual - 1 + 12, within(1e-9));
    assertThat(fresh()).asString().endsWith("; 0 readings, 512 members");
    assertThat(read(fresh(), 2, 5)).asString().contains("; 1 reading, ");
    assertThat(fresh().isRefitted()).isFalse();
    assertThatThrownBy(() -> fresh().shape()).hasMessageContaining("give it a proof first");
    assertThatThrownBy(() -> read(fresh(), usual + 1, 60)).hasMessageContaining("start the dough");
  }

  @Test
  void aBakeIsReadFromItsStart() {
    double half = fresh().forecast().hoursToRise(HALF).likely().orElseThrow();
    List<Reading> readings =
        List.of(
            Reading.ofRise(half * 0.6, Rise.ofPercent(22)),
            Reading.ofRise(half * 0.8, Rise.ofPercent(400)));
    List<ReadingDoubt> doubts = new ArrayList<>();
    LiveDough all =
        LiveDough.of(
            RiseForecaster.standard(),
            JarError.standard(),
            new Bake("a", FORMULA, WARM, readings),
            (reading, doubt) -> doubts.add(doubt));

    LiveDough first = read(fresh(), half * 0.6, 22);
    assertThat(all.forecast().hoursToRise(HALF))
        .isEqualTo(read(first, half * 0.8, 400).forecast().hoursToRise(HALF));
    assertThat(doubts).containsExactly(ReadingDoubt.OTHER_DOUGH);
  }

  /** Equal doughs in the place of weighted ones, of which the first few stand for all. */
  @Test
  void equalDoughsTellWhatTheWeightedOnesTell() {
    LiveDough dough = fresh();
    double half = dough.forecast().hoursToRise(HALF).likely().orElseThrow();
    RiseForecast weighted = read(dough, half * 0.7, 34).forecast();
    RiseForecast drawn = weighted.drawn(512, weighted.hours());
    TimeWindow asked = weighted.hoursToRise(HALF);

    assertThat(drawn.hoursToRise(HALF).likely().orElseThrow())
        .isCloseTo(asked.likely().orElseThrow(), within(0.02));
    assertThat(drawn.hoursToRise(HALF).late().orElseThrow())
        .isCloseTo(asked.late().orElseThrow(), within(0.05));
    assertThat(weighted.drawn(64, weighted.hours()).hoursToRise(HALF).likely().orElseThrow())
        .isCloseTo(asked.likely().orElseThrow(), within(0.1));
    assertThat(drawn.ensemble().weights()).containsOnly(1);
  }

  @Test
  void refusesReadingsOutOfOrder() {
    LiveDough dough = read(fresh(), 3, 20);
    assertThatThrownBy(() -> read(dough, 3, 25)).isInstanceOf(InputException.class);
  }

  /** Likely hours to half of one history. */
  private record Likely(double live, double manyMembers) {
    static Likely of(int seed) {
      Bake all = new SimulatedBaker(seed, SimulatedBaker.Setting.PLAIN).bakes(1, 12).get(0).bake();
      Bake bake = all.until(all.lastHours() * 0.5);
      return new Likely(
          likely(bake, RiseForecaster.standard()),
          likely(bake, RiseForecaster.standard().withMembers(16_384)));
    }

    private static double likely(Bake bake, RiseForecaster forecaster) {
      LiveDough live =
          LiveDough.of(forecaster, JarError.standard(), bake.formula(), bake.temperature());
      for (Reading reading : bake.readings()) {
        live = live.with(reading);
      }
      return live.forecast().hoursToRise(HALF).likely().orElseThrow();
    }
  }

  private static double[] minutesOff(List<Likely> all, ToDoubleFunction<Likely> reference) {
    return all.stream()
        .mapToDouble(each -> 60 * Math.abs(each.live() - reference.applyAsDouble(each)))
        .sorted()
        .toArray();
  }

  @Test
  void agreesWithManyMoreMembers() {
    List<Likely> histories = IntStream.range(11, 14).mapToObj(Likely::of).toList();
    assertThat(minutesOff(histories, Likely::manyMembers)[2]).isLessThan(10);
  }

  /** The same reading model over 16,384 members. */
  @Test
  @Tag("long")
  void agreesWithManyMoreMembersOnSixtyHistories() {
    List<Likely> histories = IntStream.range(1000, 1060).mapToObj(Likely::of).toList();
    double[] members = minutesOff(histories, Likely::manyMembers);
    System.out.printf(
        "likely hour of a live dough, min off: 16384 members median %.1f, 95 of 100 %.1f, worst"
            + " %.1f%n",
        members[30], members[57], members[59]);
    assertThat(members[57]).isLessThan(10);
  }
}
