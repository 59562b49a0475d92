package doughtide.core.dough;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DoughFormulaTest {
  private static Share percent(double value) {
    return Share.ofPercent(value);
  }

  @ParameterizedTest
  @CsvSource({"20, 100, 9.0909", "20, 50, 11.7647", "40, 100, 16.6667", "20, 125, 8.1633"})
  void bothConventionsOfTheStarterShareMeet(double ofAdded, double hydration, double prefermented) {
    StarterShare added = StarterShare.ofAddedFlour(percent(ofAdded));
    StarterShare flour = StarterShare.prefermented(percent(prefermented));

    assertThat(added.prefermentedFlour(percent(hydration)) * 100)
        .isCloseTo(prefermented, within(1e-4));
    assertThat(flour.starterOfAddedFlour(percent(hydration)) * 100)
        .isCloseTo(ofAdded, within(1e-3));
  }

  @Test
  void starterShareOutsideItsRangeIsRefused() {
    assertThatThrownBy(() -> StarterShare.prefermented(percent(61)).prefermentedFlour(percent(100)))
        .isInstanceOf(InputException.class)
        .hasMessage("prefermented flour 61 % is outside 0.1…60 %");
  }

  @Test
  void feedingIsADoughWithoutSalt() {
    DoughFormula fed = DoughFormula.feed(Starter.ripe(), 1, 5, 5, FlourClass.WHITE.flour());

    assertThat(fed.prefermentedFlour()).isCloseTo(0.5 / 5.5, within(1e-12));
    assertThat(fed.hydration().percent()).isCloseTo(100, within(1e-9));
    assertThat(fed.salt().percent()).isZero();
    DoughFormula stiff =
        DoughFormula.feed(Starter.ripe(percent(60)), 20, 100, 60, FlourClass.WHITE.flour());
    assertThat(stiff.hydration().percent()).isCloseTo(60, within(1e-9));
    assertThat(stiff.prefermentedFlour()).isCloseTo(12.5 / 112.5, within(1e-12));
  }

  @Test
  void ingredientsAddUpToTheDough() {
    DoughFormula formula =
        DoughFormula.builder()
            .starterShare(StarterShare.ofAddedFlour(percent(20)))
            .hydration(percent(72))
            .build();
    Ingredients grams = formula.forDough(Mass.ofGrams(1740));

    assertThat(grams.doughGrams()).isCloseTo(1740, within(1e-9));
    assertThat(grams.starterGrams() / grams.flourGrams()).isCloseTo(0.20, within(1e-12));
    double flour = grams.flourGrams() + grams.starterGrams() / 2;
    assertThat((grams.waterGrams() + grams.starterGrams() / 2) / flour)
        .isCloseTo(0.72, within(1e-12));
    assertThat(grams.saltGrams() / flour).isCloseTo(0.02, within(1e-12));
    assertThat(formula.starterOfAddedFlour()).isCloseTo(0.20, within(1e-12));
  }

  @Test
  void doughYieldIsHydrationAndAHundred() {
    DoughFormula formula = DoughFormula.builder().doughYield(168).build();

    assertThat(formula.hydration().percent()).isCloseTo(68, within(1e-9));
    assertThat(formula.doughYield()).isCloseTo(168, within(1e-9));
    assertThatThrownBy(() -> DoughFormula.builder().doughYield(70))
        .hasMessage("dough yield 70 is outside 145…300");
  }

  @Test
  void starterThatBringsTooMuchWaterIsNamed() {
    DoughFormula.Builder wet =
        DoughFormula.builder()
            .starter(Starter.ripe(percent(200)))
            .starterShare(StarterShare.prefermented(percent(40)))
            .hydration(percent(60));

    assertThatThrownBy(wet::build)
        .isInstanceOf(InputException.class)
        .hasMessageContaining(
            "the starter alone brings 80 % water, more than the hydration of 60 %");
  }

  @Test
  void builderStartsFromAFormulaWithoutChangingIt() {
    DoughFormula first = DoughFormula.builder().hydration(percent(70)).build();
    DoughFormula second = first.toBuilder().hydration(percent(80)).build();

    assertThat(first.hydration().percent()).isEqualTo(70);
    assertThat(second.hydration().percent()).isEqualTo(80);
    assertThat(second.prefermentedFlour()).isEqualTo(first.prefermentedFlour());
  }

  @Test
  void mixesAddUpLinearly() {
    Flour white = FlourClass.WHITE.flour();
    Flour rye = FlourClass.RYE.flour();
    Flour mix =
        Flour.mix(List.of(new Flour.Part(white, percent(70)), new Flour.Part(rye, percent(30))));

    assertThat(mix.name()).isEqualTo("70 % white, 30 % rye");
    assertThat(mix.cereals()).containsExactly("rye", "wheat");
    assertThat(mix.composition().ash())
        .isCloseTo(0.7 * white.composition().ash() + 0.3 * rye.composition().ash(), within(1e-12));
    assertThat(mix.retention())
        .isCloseTo(0.7 * white.retention() + 0.3 * rye.retention(), within(1e-12));
    assertThat(mix.targetRise().percent()).isCloseTo(0.7 * 85 + 0.3 * 45, within(1e-9));
  }

  @Test
  void mixThatIsNotWholeIsRefused() {
    List<Flour.Part> parts = List.of(new Flour.Part(FlourClass.WHITE.flour(), percent(90)));

    assertThatThrownBy(() -> Flour.mix(parts))
        .hasMessage("flour shares add up to 90 %, they must add up to 100 %: change one of them");
    assertThatThrownBy(() -> Flour.mix(List.of())).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> FlourClass.named("sawdust"))
        .hasMessageStartingWith("flour 'sawdust' is not known: use one of white, strong white,");
    assertThat(FlourClass.named(" Wholemeal_Wheat ")).isEqualTo(FlourClass.WHOLEMEAL_WHEAT);
  }

  @Test
  void compositionsKeepTheirSum() {
    Composition white = FlourClass.WHITE.flour().composition();
    Composition dry = white.withMoisture(0.10);

    assertThat(dry.protein() / white.protein()).isCloseTo(0.90 / 0.86, within(1e-12));
    assertThat(white.withProtein(0.13).protein()).isEqualTo(0.13);
    assertThatThrownBy(() -> new Composition(0.1, 0.01, 0.7, 0.03, 0.005, 0.2))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("adds up to 104.5 %");
    assertThatThrownBy(() -> white.withProtein(Double.NaN)).isInstanceOf(InputException.class);
  }
}
