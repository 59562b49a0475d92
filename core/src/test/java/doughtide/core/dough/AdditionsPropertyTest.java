package doughtide.core.dough;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Over random formulas: no gram is lost, and what does not ferment only dilutes. */
class AdditionsPropertyTest {

  private static WeighedDough dough(Random random) {
    return new WeighedDough(
        List.of(WeighedDough.Part.of(600 + random.nextInt(400))),
        500 + random.nextInt(300),
        60 + random.nextInt(300),
        random.nextInt(20),
        List.of(
            new WeighedDough.Enriched(Enrichment.Kind.MILK, random.nextInt(100)),
            new WeighedDough.Enriched(Enrichment.Kind.SUGAR, random.nextInt(80))),
        List.of(
            new WeighedDough.Included("seeds", random.nextInt(150), random.nextInt(80)),
            new WeighedDough.Included("nuts", random.nextInt(150), 0)));
  }

  private static Starter starter(Random random) {
    return Starter.ripe(Share.ofPercent(50 + random.nextInt(100)));
  }

  @Test
  void theGramsOfADoughComeBackFromItsPercentages() {
    Random random = new Random(20261125);
    for (int i = 0; i < 300; i++) {
      WeighedDough weighed = dough(random);
      Starter starter = starter(random);
      DoughFormula formula = weighed.in(DoughFormula.builder(), starter, Additions.NONE).build();

      Ingredients grams = formula.forDough(weighed.total());

      assertThat(grams.doughGrams()).isCloseTo(weighed.total().grams(), within(1e-9));
      assertThat(grams.flourGrams()).isCloseTo(weighed.flours().get(0).grams(), within(1e-9));
      assertThat(grams.waterGrams()).isCloseTo(weighed.waterGrams(), within(1e-9));
      assertThat(grams.starterGrams()).isCloseTo(weighed.starterGrams(), within(1e-9));
      assertThat(grams.saltGrams()).isCloseTo(weighed.saltGrams(), within(1e-9));
      assertThat(grams.additions().get(0).grams())
          .isCloseTo(weighed.inclusions().get(0).grams(), within(1e-9));
      assertThat(grams.additions().get(2).grams())
          .isCloseTo(weighed.enrichments().get(0).grams(), within(1e-9));
    }
  }

  @Test
  void aDoughOfAnySizeAddsUp() {
    Random random = new Random(7);
    for (int i = 0; i < 300; i++) {
      DoughFormula formula =
          dough(random).in(DoughFormula.builder(), starter(random), Additions.NONE).build();
      double size = 100 + random.nextInt(50_000);

      assertThat(formula.forDough(Mass.ofGrams(size)).doughGrams())
          .isCloseTo(size, within(1e-9 * size));
    }
  }

  @Test
  void whatDoesNotFermentDilutesTheRiseByItsVolumeAndNothingElse() {
    Random random = new Random(11);
    DoughTemperature warm = DoughTemperature.steady(Temperature.ofCelsius(25));
    for (int i = 0; i < 20; i++) {
      Inclusion seeds = new Inclusion("seeds", random.nextDouble() / 2, random.nextDouble() / 4);
      DoughFormula plain = DoughFormula.builder().build();
      DoughFormula with =
          plain.toBuilder().additions(new Additions(List.of(seeds), List.of())).build();
      RiseCurve alone = RiseModel.of(plain, warm).runFast(9);
      RiseCurve diluted = RiseModel.of(with, warm).runFast(9);
      double gasFree = DoughProperties.of(plain).litresPerKgFlour(25);
      double start = gasFree / (1 - alone.gasShareAt(0));
      double inert = seeds.litresPerKgFlour();

      for (double hours : new double[] {2, 4, 6, 9}) {
        assertThat(diluted.riseAt(hours).fraction())
            .isCloseTo(alone.riseAt(hours).fraction() * start / (start + inert), within(1e-9));
        assertThat(diluted.phAt(hours)).isEqualTo(alone.phAt(hours));
        assertThat(diluted.yeastAt(hours)).isEqualTo(alone.yeastAt(hours));
      }
    }
  }
}
