package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;

class LoafCausesTest {
  private static final Proof NIGHT = Proof.inCold(Temperature.ofCelsius(4), 12);
  private static final RiseForecast DOUGH =
      RiseForecaster.standard()
          .withMembers(256)
          .keepingCurves()
          .forecast(
              DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(25)));

  private static double share(List<LoafCauses.Likely> causes, LoafCauses.Cause cause) {
    return causes.stream()
        .filter(each -> each.cause() == cause)
        .mapToDouble(LoafCauses.Likely::share)
        .sum();
  }

  /** Of a starter that nobody knows, the starter is what is least known. */
  @Test
  void aStrangersStarterExplainsMostAndTheSharesAddUp() {
    for (List<LoafCauses.Likely> causes :
        List.of(LoafCauses.ofUnder(DOUGH, NIGHT, 3.5), LoafCauses.ofOver(DOUGH, NIGHT, 3.5))) {
      assertThat(causes.get(0).cause()).isEqualTo(LoafCauses.Cause.STARTER);
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

    assertThat(share(LoafCauses.ofOver(DOUGH, measured, 3.5), LoafCauses.Cause.COLD))
        .isLessThanOrEqualTo(share(LoafCauses.ofOver(DOUGH, NIGHT, 3.5), LoafCauses.Cause.COLD));
  }

  @Test
  void tellsNothingOfALoafThatCannotBe() {
    assertThat(LoafCauses.ofUnder(DOUGH, NIGHT, DOUGH.hours())).isEmpty();
    RiseForecast few = DOUGH.drawn(8, DOUGH.hours());
    assertThat(LoafCauses.ofUnder(few, NIGHT, 3.5)).isEmpty();
  }
}
