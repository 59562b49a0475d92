package doughtide.core.dough;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.OverallFormula.Item;
import doughtide.core.dough.OverallFormula.Stage;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import java.util.List;
import org.junit.jupiter.api.Test;

class OverallFormulaTest {
  private static final OverallFormula WHOLE =
      new OverallFormula(
          List.of(
              new Stage("starter", List.of(Item.flour(75), Item.water(75))),
              new Stage(
                  "dough",
                  List.of(Item.flour(425), Item.water(325), Item.salt(10), Item.other(20)))));

  @Test
  void sharesAreOfAllFlour() {
    assertThat(WHOLE.flour().grams()).isCloseTo(500, within(1e-9));
    assertThat(WHOLE.hydration().percent()).isCloseTo(80, within(1e-9));
    assertThat(WHOLE.salt().percent()).isCloseTo(2, within(1e-9));
    assertThat(WHOLE.yeast().percent()).isZero();
    assertThat(WHOLE.prefermentedFlour().percent()).isCloseTo(15, within(1e-9));
    assertThat(WHOLE.total().grams()).isCloseTo(930, within(1e-9));
  }

  @Test
  void agreesWithTheDoughFormula() {
    DoughFormula dough =
        DoughFormula.builder()
            .starterShare(StarterShare.prefermented(WHOLE.prefermentedFlour()))
            .hydration(WHOLE.hydration())
            .salt(WHOLE.salt())
            .build();
    Ingredients byFormula = dough.forFlour(Mass.ofGrams(500));
    Ingredients byStages = WHOLE.withStarter(Mass.ofGrams(150), Share.ofPercent(100));
    assertThat(byStages.flourGrams()).isCloseTo(byFormula.flourGrams(), within(1e-9));
    assertThat(byStages.waterGrams()).isCloseTo(byFormula.waterGrams(), within(1e-9));
    assertThat(dough.doughYield()).isEqualTo(100 + WHOLE.hydration().percent());
  }

  @Test
  void refusesAStarterLargerThanTheFormula() {
    assertThatThrownBy(() -> WHOLE.withStarter(Mass.ofGrams(1100), Share.ofPercent(100)))
        .isInstanceOf(InputException.class)
        .hasMessage(
            "the starter brings 550 g of flour, the whole formula has 500 g: use less starter or"
                + " make more dough");
  }

  @Test
  void needsFlour() {
    assertThatThrownBy(() -> new OverallFormula(List.of()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no flour");
    assertThatThrownBy(() -> new Stage(" ", List.of())).isInstanceOf(InputException.class);
  }
}
