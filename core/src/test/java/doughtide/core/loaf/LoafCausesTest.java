package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.Unknown;
import doughtide.core.loaf.LoafCauses.Cause;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LoafCausesTest {
  private static final Proof NIGHT = Proof.inCold(Temperature.ofCelsius(4), 12);
  private static final RiseForecast DOUGH =
      RiseForecaster.standard()
          .withMembers(256)
          .keepingCurves()
          .forecast(
              DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(25)));

  private static double share(List<LoafCauses.Likely> causes, Cause cause) {
    return causes.stream()
        .filter(each -> each.cause() == cause)
        .mapToDouble(LoafCauses.Likely::share)
        .sum();
  }

  @Test
  void aLoafThatWasNeverInTheColdDoesNotBlameTheCold() {
    Proof room = Proof.inRoom(Temperature.ofCelsius(24), 2);
    assertThat(LoafCauses.ofUnder(DOUGH, room, 3.5)).isNotEmpty();
    assertThat(share(LoafCauses.ofUnder(DOUGH, room, 3.5), Cause.COLD)).isZero();
    assertThat(share(LoafCauses.ofOver(DOUGH, room, 3.5), Cause.COLD)).isZero();
  }

  /** Of a starter that nobody knows, the starter is what is least known. */
  @Test
  void aStrangersStarterExplainsMostAndTheSharesAddUp() {
    for (List<LoafCauses.Likely> causes :
        List.of(LoafCauses.ofUnder(DOUGH, NIGHT, 3.5), LoafCauses.ofOver(DOUGH, NIGHT, 3.5))) {
      assertThat(causes.get(0).cause()).isEqualTo(Cause.STARTER);
      assertThat(causes.stream().mapToDouble(LoafCauses.Likely::share).sum())
          .isCloseTo(1, within(1e-9));
      assertThat(causes)
          .isSortedAccordingTo(Comparator.comparingDouble(LoafCauses.Likely::share).reversed());
    }
  }

  /** A refrigerator known from a probe explains less than one known from its dial. */
  @Test
  void whatIsKnownBetterExplainsLess() {
    Proof measured = NIGHT.withCold(NIGHT.coldPlace().orElseThrow().measured());

    assertThat(share(LoafCauses.ofOver(DOUGH, measured, 3.5), Cause.COLD))
        .isLessThanOrEqualTo(share(LoafCauses.ofOver(DOUGH, NIGHT, 3.5), Cause.COLD));
  }

  @Test
  void tellsNothingOfALoafThatCannotBe() {
    assertThat(LoafCauses.ofUnder(DOUGH, NIGHT, DOUGH.hours())).isEmpty();
    RiseForecast few = DOUGH.drawn(8, DOUGH.hours());
    assertThat(LoafCauses.ofUnder(few, NIGHT, 3.5)).isEmpty();
  }

  private static RiseForecast knownBut(Unknown least, double deviation) {
    Belief belief = Belief.standard();
    for (Unknown each : Unknown.values()) {
      if (each.isNormal()) {
        belief = belief.withStandardDeviation(each, each == least ? deviation : 0.001);
      }
    }
    return RiseForecaster.standard()
        .with(belief)
        .withMembers(256)
        .keepingCurves()
        .forecast(
            DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(25)), 12);
  }

  /** Where all but one thing are known, it explains the far ones, whichever way they went. */
  @Test
  void whatAloneIsUnknownExplainsNearlyAll() {
    Proof room = Proof.inRoom(Temperature.ofCelsius(25), 2);
    RiseForecast stated = knownBut(Unknown.TEMPERATURE, 3);
    RiseForecast lively = knownBut(Unknown.VIGOUR, 1);

    assertThat(share(LoafCauses.ofUnder(stated, room, 5), Cause.DOUGH_TEMPERATURE))
        .isGreaterThan(0.8);
    assertThat(share(LoafCauses.ofOver(stated, room, 2), Cause.DOUGH_TEMPERATURE))
        .isGreaterThan(0.8);
    assertThat(share(LoafCauses.ofUnder(lively, room, 5), Cause.STARTER)).isGreaterThan(0.8);
    assertThat(share(LoafCauses.ofOver(lively, room, 2), Cause.STARTER)).isGreaterThan(0.8);
  }

  /**
   * Log heights that are a sum of vigour and twice the temperature's error and of nothing else, so
   * that the fit finds 1 and 2 and each member's cause can be told by hand.
   */
  @Test
  void eachMemberIsExplainedByWhatMovedItMost() {
    double[][] vigourAndKelvin = {
      {-1, 0},
      {-0.2, -0.4},
      {-0.1, -0.3},
      {-0.3, 0.05},
      {1, 0},
      {0.2, 0.4},
      {0.1, 0.3},
      {0.3, -0.05}
    };
    double[][] unknowns = new double[8][10];
    double[] logHeight = new double[8];
    for (int i = 0; i < 8; i++) {
      unknowns[i][0] = vigourAndKelvin[i][0];
      unknowns[i][4] = vigourAndKelvin[i][1];
      unknowns[i][6] = 7; // as in all: no cause, and nothing to fit
      logHeight[i] = vigourAndKelvin[i][0] + 2 * vigourAndKelvin[i][1];
    }

    List<LoafCauses.Likely> under = LoafCauses.counted(logHeight, unknowns, -0.7, -1);
    assertThat(under).hasSize(2);
    assertThat(share(under, Cause.DOUGH_TEMPERATURE)).isCloseTo(2.0 / 3, within(1e-12));
    assertThat(share(under, Cause.STARTER)).isCloseTo(1.0 / 3, within(1e-12));
    assertThat(under.get(0).cause()).isEqualTo(Cause.DOUGH_TEMPERATURE);
    List<LoafCauses.Likely> over = LoafCauses.counted(logHeight, unknowns, 0.15, 1);
    assertThat(share(over, Cause.DOUGH_TEMPERATURE)).isCloseTo(0.5, within(1e-12));
    assertThat(share(over, Cause.STARTER)).isCloseTo(0.5, within(1e-12));
    assertThat(LoafCauses.counted(logHeight, unknowns, 2, 1)).isEmpty();
  }

  /** What is usual in a batch is no cause: only the difference from its middle is. */
  @Test
  void causesAreCountedFromTheMiddleOfAllMembers() {
    double[][] unknowns = new double[4][10];
    double[] logHeight = new double[4];
    double[] vigour = {5, 5.1, 5, 5.1};
    double[] kelvin = {1, 1, 2, 2};
    for (int i = 0; i < 4; i++) {
      unknowns[i][0] = vigour[i];
      unknowns[i][4] = kelvin[i];
      logHeight[i] = vigour[i] + kelvin[i];
    }

    assertThat(LoafCauses.counted(logHeight, unknowns, 6.5, 1))
        .containsExactly(new LoafCauses.Likely(Cause.DOUGH_TEMPERATURE, 1));
  }

  /** Under 85 % of the target, or over 120 %; the outer tenth where fewer are. */
  @Test
  void tooLittleAndTooMuchBeginWhereRightEnds() {
    Rise target = Rise.ofPercent(100);
    double[] spread = IntStream.rangeClosed(1, 40).mapToDouble(i -> Math.log(0.05 * i)).toArray();
    double[] all = IntStream.rangeClosed(0, 40).mapToDouble(i -> 0.001 * (i - 20)).toArray();

    assertThat(LoafCauses.limit(spread, target, -1)).isCloseTo(Math.log(0.85), within(1e-12));
    assertThat(LoafCauses.limit(spread, target, 1)).isCloseTo(Math.log(1.2), within(1e-12));
    assertThat(LoafCauses.limit(all, target, -1)).isCloseTo(-0.016, within(0.0011));
    assertThat(LoafCauses.limit(all, target, 1)).isCloseTo(0.016, within(0.0011));
  }
}
