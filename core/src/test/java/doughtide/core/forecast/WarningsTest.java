package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.dough.StarterShare;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WarningsTest {
  private static List<Warning> at(double celsius) {
    return TemperatureWarnings.of(DoughTemperature.steady(Temperature.ofCelsius(celsius)), 10);
  }

  private static List<Warning> with(double prefermentedPercent, double saltPercent) {
    return DoughWarnings.of(
        DoughFormula.builder()
            .starterShare(StarterShare.prefermented(Share.ofPercent(prefermentedPercent)))
            .salt(Share.ofPercent(saltPercent))
            .build());
  }

  @ParameterizedTest
  @CsvSource({
    "36, OUTSIDE_GROWTH, 36, ",
    "40.04, OUTSIDE_GROWTH, 40, ",
    "0, FREEZING, 0, ",
    "-1.5, FREEZING, -1.5, ",
    "1.9, THIN_DATA_COLD, 1.9, 2",
    "2, THIN_DATA_COLD, 2, 12",
    "11.9, THIN_DATA_COLD, 11.9, 12",
    "29.1, YEAST_KIND, 29.1, ",
    "35.9, YEAST_KIND, 35.9, "
  })
  void temperaturesWithoutDataAreNamed(
      double celsius, Warning.Kind kind, double shown, Double limit) {
    Warning expected = limit == null ? kind.with(shown) : kind.with(shown, limit);

    assertThat(at(celsius)).containsExactly(expected);
    assertThat(TemperatureWarnings.forbidsHours(expected))
        .isEqualTo(limit == null && kind != Warning.Kind.YEAST_KIND);
  }

  @Test
  void refusalNamesTheTemperatureAndWhatIsAllowed() {
    assertThat(TemperatureWarnings.refusal(TemperatureWarnings.tooWarm(36.04)))
        .hasMessageStartingWith("at 36 °C the dough is too warm for one kind of sourdough yeast")
        .hasMessageEndingWith(": cool the dough below 30 °C");
    assertThat(TemperatureWarnings.refusal(TemperatureWarnings.freezing(-2)))
        .hasMessage("at -2 °C the dough freezes and no hours are given: keep it above 0 °C");
  }

  @Test
  void aKindKeepsItsNumbersByName() {
    assertThat(Warning.Kind.NOT_COOLING.with(14, 13).numbers())
        .containsOnly(entry("celsius", 14.0), entry("doughCelsius", 13.0));
    assertThatThrownBy(() -> Warning.Kind.NOT_COOLING.with(14))
        .hasMessage("NOT_COOLING needs the numbers [celsius, doughCelsius]");
  }

  @ParameterizedTest
  @ValueSource(doubles = {12, 21, 29})
  void ordinaryTemperaturesAreNot(double celsius) {
    assertThat(at(celsius)).isEmpty();
  }

  @Test
  void doughThatGoesFromColdToWarmIsToldBoth() {
    DoughTemperature path =
        DoughTemperature.steady(Temperature.ofCelsius(8))
            .then(3, TemperatureTrace.steady(Temperature.ofCelsius(32)));

    assertThat(TemperatureWarnings.of(path, 10))
        .containsExactly(Warning.Kind.THIN_DATA_COLD.with(8, 12), Warning.Kind.YEAST_KIND.with(32));
  }

  @Test
  void unusualAmountsAreNamedWithTheirNumbers() {
    Warning much = Warning.Kind.UNUSUAL_STARTER.with(36, 1, 35);

    assertThat(with(36, 2)).containsExactly(much);
    assertThat(with(0.9, 2)).containsExactly(Warning.Kind.UNUSUAL_STARTER.with(0.9, 1, 35));
    assertThat(with(10, 3.1)).containsExactly(Warning.Kind.UNUSUAL_SALT.with(3.1, 0, 3));
    assertThat(with(36, 3.1)).containsExactly(much, Warning.Kind.UNUSUAL_SALT.with(3.1, 0, 3));
    assertThat(with(1.1, 3)).isEmpty();
    assertThat(with(34.9, 0)).isEmpty();
  }

  @Test
  void aDoughMostlyOfRyeIsNamedOnceWithItsShare() {
    Flour rye =
        Flour.mix(
            List.of(
                new Flour.Part(FlourClass.RYE.flour(), Share.ofPercent(40)),
                new Flour.Part(FlourClass.WHOLEMEAL_RYE.flour(), Share.ofPercent(30)),
                new Flour.Part(FlourClass.WHITE.flour(), Share.ofPercent(30))));
    Flour half =
        Flour.mix(
            List.of(
                new Flour.Part(FlourClass.RYE.flour(), Share.ofPercent(50)),
                new Flour.Part(FlourClass.WHITE.flour(), Share.ofPercent(50))));

    assertThat(DoughWarnings.of(DoughFormula.builder().flour(rye).build()))
        .containsExactly(Warning.Kind.RYE.with(70));
    assertThat(DoughWarnings.of(DoughFormula.builder().flour(rye.withName("Mine")).build()))
        .containsExactly(Warning.Kind.RYE.with(70));
    assertThat(DoughWarnings.of(DoughFormula.builder().flour(half).build())).isEmpty();
    assertThat(DoughWarnings.of(DoughFormula.feed(Starter.ripe(), 1, 5, 5, rye))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "WHITE, 95, 2, false",
    "WHITE, 95.5, 2, true",
    "STRONG_WHITE, 110, 2, true",
    "WHOLEMEAL_WHEAT, 104, 2, false",
    "WHOLEMEAL_WHEAT, 106, 2, true",
    "RYE, 120, 2, false",
    "WHITE, 150, 0, false"
  })
  void aDoughOfWheatThatPoursIsNamedAndAStarterIsNot(
      FlourClass flour, double hydration, double salt, boolean named) {
    DoughFormula formula =
        DoughFormula.builder()
            .flour(flour.flour())
            .hydration(Share.ofPercent(hydration))
            .salt(Share.ofPercent(salt))
            .build();

    assertThat(DoughWarnings.ofContents(formula))
        .isEqualTo(named ? List.of(Warning.Kind.POURS.with(hydration)) : List.of());
  }

  @Test
  void starterThatIsNotRipeIsNamed() {
    for (StarterCondition condition : StarterCondition.values()) {
      DoughFormula formula = DoughFormula.builder().starter(Starter.ripe().in(condition)).build();
      assertThat(DoughWarnings.of(formula))
          .as(condition.name())
          .hasSize(condition == StarterCondition.RIPE ? 0 : 1)
          .allSatisfy(w -> assertThat(w.kind()).isEqualTo(Warning.Kind.STARTER));
    }
  }
}
