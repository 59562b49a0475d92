package doughtide.core.dough;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * A white dough of 70 % hydration and 2 % salt; its figures at 25 °C were worked out apart, in
 * another language, from the equations of Choi and Okos (1986) that {@link ComponentProperties}
 * names.
 */
class DoughPropertiesTest {
  private static final Flour WHITE = FlourClass.WHITE.flour();
  private static final Flour RYE = FlourClass.RYE.flour();
  private static final DoughFormula DOUGH =
      DoughFormula.builder().hydration(Share.ofPercent(70)).salt(Share.ofPercent(2)).build();
  private static final DoughProperties PROPERTIES = DoughProperties.of(DOUGH);

  @Test
  void densityHeatAndConductivityOfADough() {
    assertThat(PROPERTIES.densityKgPerM3(25)).isCloseTo(1216.563, within(0.001));
    assertThat(PROPERTIES.litresPerKgFlour(25)).isCloseTo(1.413819, within(1e-6));
    assertThat(PROPERTIES.heatCapacityJPerKgK(25)).isCloseTo(2882.720, within(0.001));
    assertThat(PROPERTIES.parallelConductivityWPerMK(25)).isCloseTo(0.457587, within(1e-6));
    assertThat(PROPERTIES.seriesConductivityWPerMK(25)).isCloseTo(0.364966, within(1e-6));
    assertThat(WHITE.composition().heatCapacityJPerKgK(20)).isCloseTo(2004.298, within(0.001));
  }

  @Test
  void gasInsulatesDownToTheConductivityOfAir() {
    assertThat(PROPERTIES.conductivityWPerMK(25, 0)).isCloseTo(0.457587, within(1e-6));
    assertThat(PROPERTIES.conductivityWPerMK(25, 0.5)).isCloseTo(0.201333, within(1e-6));
    assertThat(PROPERTIES.conductivityWPerMK(25, 1)).isCloseTo(0.0257, within(1e-9));
  }

  /** 11 % of seeds at 1.1 kg/l are a tenth of a litre for each kg of flour, water comes on top. */
  @Test
  void seedsDoNotRise() {
    Inclusion seeds = new Inclusion("seeds", 0.11, 0);
    DoughFormula formula =
        DOUGH.toBuilder().additions(new Additions(List.of(seeds), List.of())).build();
    double share = 0.1 / (0.1 + 1.413819);

    assertThat(new Inclusion("seeds", 0.11, 0.05).litresPerKgFlour()).isCloseTo(0.15, within(1e-9));
    assertThat(DoughProperties.of(formula).inertLitresPerKgFlour()).isCloseTo(0.1, within(1e-9));
    assertThat(DoughProperties.of(formula).inertVolumeShare()).isCloseTo(share, within(1e-6));
    assertThat(formula.targetRise().fraction())
        .isCloseTo(WHITE.targetRise().fraction() * (1 - share), within(1e-6));
    assertThat(DOUGH.targetRise()).isEqualTo(WHITE.targetRise());
    assertThat(Additions.NONE.isEmpty()).isTrue();
    assertThat(formula.additions().isEmpty()).isFalse();
  }

  /** 20 % of milk: 17.4 % of water, and 2.6 % of solids at 1.2 kg/l. */
  @Test
  void milkIsMostlyWater() {
    Enrichment milk = new Enrichment(Enrichment.Kind.MILK, 0.2);
    Additions both = new Additions(List.of(new Inclusion("seeds", 0.11, 0)), List.of(milk));

    assertThat(milk.waterPerFlour()).isCloseTo(0.174, within(1e-9));
    assertThat(both.litresPerKgFlour()).isCloseTo(0.1 + 0.026 / 1.2, within(1e-9));
    assertThat(both.massPerFlour()).isCloseTo(0.136, within(1e-9));
    assertThat(new Additions(List.of(), List.of(milk)).isEmpty()).isFalse();
    assertThat(Enrichment.Kind.EGG.key()).isEqualTo("egg");
  }

  @Test
  void starterWaterMayBeAllTheWaterButNotMore() {
    StarterShare third = StarterShare.prefermented(Share.ofPercent(50));
    DoughFormula.Builder builder =
        DoughFormula.builder().starter(Starter.ripe(Share.ofPercent(100))).starterShare(third);

    assertThat(builder.hydration(Share.ofPercent(50)).build().hydration().percent()).isEqualTo(50);
    assertThatThrownBy(() -> builder.starter(Starter.ripe(Share.ofPercent(102))).build())
        .isInstanceOf(InputException.class)
        .hasMessageContaining("the starter alone brings 51 % water");
  }

  @Test
  void aPartOfADoughIsAPartOfEverything() {
    Ingredients whole =
        new Ingredients(900, 650, 200, 20, List.of(new Ingredients.Addition("seeds", 100, 50)));

    assertThat(whole.times(0.5))
        .isEqualTo(
            new Ingredients(450, 325, 100, 10, List.of(new Ingredients.Addition("seeds", 50, 25))));
    assertThat(whole.doughGrams()).isEqualTo(1920);
  }

  private static Flour mix(double white, double rye, double ownWhite) {
    return Flour.mix(
        List.of(
            new Flour.Part(WHITE, Share.ofPercent(white)),
            new Flour.Part(RYE, Share.ofPercent(rye)),
            new Flour.Part(WHITE, Share.ofPercent(ownWhite))));
  }

  /** A mix has the mean of its parts; a flour twice in it is one class. */
  @Test
  void aMixLiesBetweenItsParts() {
    Flour mixed = mix(50, 25, 25);

    assertThat(mixed.name()).isEqualTo("75 % white, 25 % rye");
    assertThat(mixed.hasOwnName()).isFalse();
    assertThat(mixed.gluten()).isCloseTo(0.75, within(1e-9));
    assertThat(mixed.retention()).isCloseTo(0.75 * 0.75 + 0.25 * 0.60, within(1e-9));
    assertThat(mixed.targetRise().percent()).isCloseTo(0.75 * 85 + 0.25 * 45, within(1e-9));
    assertThat(mixed.composition().protein()).isCloseTo(0.75 * 0.103 + 0.25 * 0.085, within(1e-9));
    assertThat(mixed.cereals()).containsExactly("rye", "wheat");
    assertThat(mix(50, 0, 50).parts()).containsOnlyKeys("white", "rye");
    assertThat(mix(0, 100, 0).gluten()).isZero();
    assertThatThrownBy(() -> mix(50, 25, 24.8))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("99.8 %");
    assertThat(mix(50, 25, 24.95).gluten()).isCloseTo(0.75, within(1e-3));
  }

  @Test
  void aFlourFromABagKeepsItsNameInAMix() {
    Flour bag = WHITE.withName("Bag of March");
    Flour mixed =
        Flour.mix(
            List.of(
                new Flour.Part(bag, Share.ofPercent(80)),
                new Flour.Part(RYE, Share.ofPercent(20))));

    assertThat(bag.hasOwnName()).isTrue();
    assertThat(mixed.name()).isEqualTo("80 % Bag of March, 20 % rye");
    assertThat(Flour.mix(List.of(new Flour.Part(bag, Share.ofPercent(100))))).isEqualTo(bag);
  }

  @Test
  void aNameTooLongIsCounted() {
    Flour bag = WHITE.withName("x".repeat(190));
    List<Flour.Part> parts =
        List.of(new Flour.Part(bag, Share.ofPercent(80)), new Flour.Part(RYE, Share.ofPercent(20)));

    assertThat(Flour.mix(parts).name()).isEqualTo("2 flours");
    assertThatThrownBy(() -> WHITE.withName("x".repeat(201))).isInstanceOf(InputException.class);
    assertThat(WHITE.withName("x".repeat(200)).name()).hasSize(200);
  }

  @Test
  void startersHaveTheirLagAndGas() {
    assertThat(StarterCondition.RIPE.lagHours()).isEqualTo(0.5);
    assertThat(StarterCondition.FROM_COLD.lagHours()).isEqualTo(3);
    assertThat(StarterCondition.YOUNG.gasSaturation()).isEqualTo(0.5);
    assertThat(StarterCondition.RIPE.gasSaturation()).isEqualTo(1);
  }

  private static WeighedDough weighed(
      double flour, double water, double starter, double salt, double sugar, double seeds) {
    return new WeighedDough(
        List.of(WeighedDough.Part.of(flour)),
        water,
        starter,
        salt,
        List.of(new WeighedDough.Enriched(Enrichment.Kind.SUGAR, sugar)),
        List.of(new WeighedDough.Included("seeds", seeds, 1)));
  }

  @Test
  void gramsThatCannotBeAreRefusedByName() {
    assertRefused("flour", () -> weighed(-1, 600, 200, 20, 0, 0));
    assertRefused("water", () -> weighed(900, -1, 200, 20, 0, 0));
    assertRefused("starter", () -> weighed(900, 600, -1, 20, 0, 0));
    assertRefused("salt", () -> weighed(900, 600, 200, -1, 0, 0));
    assertRefused("sugar", () -> weighed(900, 600, 200, 20, -1, 0));
    assertRefused("inclusions", () -> weighed(900, 600, 200, 20, 0, -2));
    assertThat(weighed(900, 600, 200, 20, 0, -1).total().grams()).isEqualTo(1720);
    assertThatThrownBy(() -> weighed(0, 600, 200, 20, 0, 0)).hasMessageContaining("no flour");
    assertThatThrownBy(() -> weighed(900, 600, 0, 20, 0, 0)).hasMessageContaining("no starter");
  }

  private static void assertRefused(String what, Runnable making) {
    assertThatThrownBy(making::run)
        .isInstanceOf(InputException.class)
        .hasMessageContaining("grams of " + what);
  }

  private static WeighedDough flours(WeighedDough.Part... parts) {
    return new WeighedDough(List.of(parts), 600, 200, 20, List.of(), List.of());
  }

  private static WeighedDough.Part part(Flour flour, double grams) {
    return new WeighedDough.Part(Optional.of(flour), grams);
  }

  /** 700 g of white and 200 g of rye, with 200 g of a white starter that is half water. */
  @Test
  void namedFloursAreMixedWithTheStarters() {
    DoughFormula formula =
        flours(part(WHITE, 700), part(RYE, 200))
            .in(DoughFormula.builder(), Starter.ripe(Share.ofPercent(100)), Additions.NONE)
            .build();

    assertThat(formula.flour().gluten()).isCloseTo(0.8, within(1e-9));
    assertThat(formula.hydration().percent()).isCloseTo(70, within(1e-9));
    assertThatThrownBy(() -> flours(part(WHITE, 700), WeighedDough.Part.of(200)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("name each");
    DoughFormula plain =
        flours(WeighedDough.Part.of(900))
            .in(
                DoughFormula.builder().flour(RYE),
                Starter.ripe(Share.ofPercent(100)),
                Additions.NONE)
            .build();
    assertThat(plain.flour()).isEqualTo(RYE);
    assertThatThrownBy(
            () ->
                new WeighedDough(
                        List.of(WeighedDough.Part.of(300)), 2000, 50, 5, List.of(), List.of())
                    .in(DoughFormula.builder(), Starter.ripe(), Additions.NONE))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("hydration");
  }

  @Test
  void aFormulaIsToldInALineAndIsAKey() {
    assertThat(DOUGH.toString())
        .startsWith("white; hydration 70 %, prefermented flour 9.0909 % (starter hydration 100 %")
        .contains("salt 2 %")
        .endsWith(" m");
    DoughFormula with =
        DOUGH.toBuilder()
            .additions(new Additions(List.of(new Inclusion("seeds", 0.11, 0)), List.of()))
            .build();
    assertThat(with.toString()).contains("seeds");
    assertThat(DOUGH.toBuilder().build()).isEqualTo(DOUGH).hasSameHashCodeAs(DOUGH);
    assertThat(with).isNotEqualTo(DOUGH);
  }
}
