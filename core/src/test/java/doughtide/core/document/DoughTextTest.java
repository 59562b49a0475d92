package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Enrichment;
import doughtide.core.dough.FlourClass;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DoughTextTest {
  private static final String GRAMS = "flour 900, water 640, starter 200, salt 18";

  private static DoughFormula formula(Map<String, String> values) {
    return formula(values, null);
  }

  private static DoughFormula formula(Map<String, String> values, @Nullable FlourRecord record) {
    TypedValues typed =
        new TypedValues() {
          @Override
          public Optional<String> text(String key) {
            return Optional.ofNullable(values.get(key));
          }

          @Override
          public String label(String key) {
            return "--" + key;
          }
        };
    return DoughText.formula(
        typed,
        Catalogue.standard(),
        file -> {
          if (record == null) {
            throw new InputException("no records here");
          }
          return record;
        });
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        GRAMS,
        "Flour 900g; Water 640 g; Starter 0.2kg; Salt 18",
        "900 g flour, 640 water, 200 g of starter, 18g salt",
        "flour: 900, water: 640, starter: 200, salt: 18,0",
        "flour 400,flour 500,water 640,starter 200,salt 18",
      })
  void percentagesFollowFromGramsHoweverTheyAreWritten(String grams) {
    DoughFormula formula = formula(Map.of("grams", grams));

    assertThat(formula.hydration().percent()).isCloseTo(74, within(1e-9));
    assertThat(100 * formula.prefermentedFlour()).isCloseTo(10, within(1e-9));
    assertThat(formula.salt().percent()).isCloseTo(1.8, within(1e-9));
    assertThat(formula.flour()).isEqualTo(FlourClass.WHITE.flour());
  }

  @Test
  void namedFloursAreMixedWithTheStartersOwn() {
    DoughFormula formula =
        formula(
            Map.of("grams", "white 700, rye 200, water 640, starter 200", "starter-flour", "rye"));

    assertThat(formula.flour().parts().get("rye").percent()).isCloseTo(30, within(1e-9));
  }

  /** Water that was weighed stays what is weighed; that of milk and egg comes on top of it. */
  @Test
  void milkIsTheSameAmongTheGramsAndBesideThem() {
    String dough = "flour 800, starter 200, water 260, salt 16";

    DoughFormula among = formula(Map.of("grams", dough + ", milk 150, egg 100"));
    DoughFormula beside = formula(Map.of("grams", dough, "inclusions", "milk 150g, egg 100g"));

    assertThat(beside.hydration().percent()).isCloseTo(among.hydration().percent(), within(1e-9));
    assertThat(beside.forFlour(Mass.ofGrams(900)).waterGrams()).isCloseTo(260, within(0.01));
    assertThat(beside.additions().waterPerFlour())
        .isCloseTo(among.additions().waterPerFlour(), within(1e-12));
  }

  @Test
  void inclusionsMayBeGramsBesideGramsAndPerCentBesidePerCent() {
    DoughFormula grams =
        formula(Map.of("grams", GRAMS, "inclusions", "seeds 80, soaker 120 with 70 water"));
    DoughFormula percent = formula(Map.of("inclusions", "seeds 8%, soaker 12% with 7% water"));

    assertThat(grams.additions()).isEqualTo(percent.additions());
    assertThat(percent.doughPerFlour()).isCloseTo(1.72 + 0.27, within(1e-9));
  }

  @Test
  void milkAndEggBringTheirWater() {
    DoughFormula formula = formula(Map.of("grams", GRAMS + ", milk 100, egg 50, sugar 60, fat 40"));

    assertThat(formula.hydration().percent()).isCloseTo(74 + 8.7 + 3.75, within(1e-9));
    assertThat(formula.additions().enrichments())
        .extracting(Enrichment::kind)
        .containsExactly(
            Enrichment.Kind.MILK, Enrichment.Kind.EGG, Enrichment.Kind.SUGAR, Enrichment.Kind.FAT);
  }

  @Test
  void whatIsKneadedInIsReadBackFromItsText() {
    DoughFormula formula =
        formula(Map.of("inclusions", "seeds 8%, soaker 12% with 7% water, sugar 5%"));

    String text = DoughText.values(formula).getOrDefault("inclusions", "");

    assertThat(formula(Map.of("inclusions", text)).additions()).isEqualTo(formula.additions());
  }

  /** Of two loaves of 860 g, 70 % water and 2 % salt, 1000 g are flour: 100 g of it in 200 g. */
  @Test
  void aStartersMassIsAShareOfTheFlourHoweverTheFlourIsTold() {
    Map<String, String> each = Map.of("starter", "200g");
    for (Map<String, String> known :
        List.of(
            Map.of("loaves", "2", "piece", "860g"),
            Map.of("dough-mass", "1720g"),
            Map.of("all-flour", "1000g"))) {
      Map<String, String> values = new HashMap<>(each);
      values.putAll(known);
      assertThat(formula(values).prefermentedFlour()).isCloseTo(0.1, within(1e-9));
    }
    assertThat(formula(Map.of("starter", "180g in 900g")).prefermentedFlour())
        .isCloseTo(90 / 990.0, within(1e-9));
    double usual = formula(Map.of("starter", "200g", "loaves", "2")).prefermentedFlour();
    assertThat(usual).isCloseTo(100 / (2 * 850 / 1.72), within(1e-9));
    assertThatThrownBy(() -> formula(Map.of("starter", "400g", "all-flour", "200g")))
        .hasMessageContaining("holds more flour than the dough");
    assertThatThrownBy(() -> formula(Map.of("starter", "400g", "loaves", "501")))
        .hasMessageContaining("outside 1…500");
  }

  /** A dough yield of 170 is 170 parts of flour and water to 100 of flour. */
  @Test
  void aDoughYieldIsTheWaterInAnotherWay() {
    assertThat(formula(Map.of("dough-yield", "172")).hydration().percent())
        .isCloseTo(72, within(1e-9));
    refuses("dough-yield", "301", "outside 145…300");
  }

  /** The record's own flour, the water chosen for it and the limit that its bowls gave. */
  @Test
  void aFlourRecordGivesFlourAndWaterUnlessTheWaterIsSaid() {
    FlourRecord record =
        FlourRecord.named("Harrow white", FlourClass.WHITE)
            .withHydrationPercent(76)
            .withBowls(
                List.of(
                    new GradedBowl("a", "Ann", 76, Grade.THIN_WINDOW),
                    new GradedBowl("a", "Ann", 80, Grade.TORN)));
    DoughFormula formula = formula(Map.of("flour-file", "harrow.txt"), record);

    assertThat(formula.flour().name()).isEqualTo("Harrow white");
    assertThat(formula.hydration().percent()).isCloseTo(76, within(1e-9));
    assertThat(formula)
        .isNotEqualTo(formula(Map.of("flour-file", "harrow.txt"), record.withBowls(List.of())));
    assertThat(
            formula(Map.of("flour-file", "harrow.txt", "hydration", "70%"), record)
                .hydration()
                .percent())
        .isCloseTo(70, within(1e-9));
  }

  /** What is said in two ways is said in one too many. */
  @ParameterizedTest
  @CsvSource({
    "flour,white,flour-file,a.txt",
    "starter,20%,prefermented,8%",
    "hydration,70%,dough-yield,170",
    "grams,GRAMS,starter,20%",
    "grams,GRAMS,prefermented,8%",
    "grams,GRAMS,dough-yield,170",
    "grams,GRAMS,salt,2%",
    "grams,NAMED,flour,white",
    "grams,NAMED,flour-file,a.txt"
  })
  void waysThatExcludeEachOther(String one, String text, String other, String again) {
    String given =
        text.equals("GRAMS")
            ? GRAMS
            : text.equals("NAMED") ? "white 700, rye 200, water 640, starter 200" : text;

    assertThatThrownBy(
            () ->
                formula(
                    Map.of(one, given, other, again),
                    FlourRecord.named("Harrow white", FlourClass.WHITE)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("--" + one + " and --" + other + " exclude each other");
  }

  @Test
  void anAltitudeAndAShareOfPrefermentedFlourAreReadBack() {
    DoughFormula formula =
        formula(Map.of("prefermented", "12%", "altitude", "1500m", "salt", "1.5%"));

    assertThat(formula.prefermentedFlour()).isCloseTo(0.12, within(1e-9));
    assertThat(formula.altitude().metres()).isEqualTo(1500);
    assertThat(formula.salt().percent()).isEqualTo(1.5);
    assertThat(formula(DoughText.values(formula))).isEqualTo(formula);
  }

  @Test
  void saysWhatCannotBeUsed() {
    refuses("grams", "flour 900, water 640", "there is no starter");
    refuses("grams", "water 640, starter 200", "there is no flour");
    refuses("grams", "flour 900, sand 20, starter 200", "'sand' is not known: use flour, water");
    refuses("grams", "flour 900 water 640 starter 200", "is not known: put a comma between");
    refuses("grams", GRAMS + ", egg 2", "may be eggs or grams: give grams without the shell, as");
    refuses("grams", "flour 900, water 6400, starter 200", "hydration 650 % is outside 45…200 %");
    refuses("grams", "flour, water 640", "'flour' is no ingredient with its amount");
    refuses("grams", "flour 90%, starter 200", "90% is no mass");
    refuses("grams", "flour 900, rye 100, water 700, starter 200", "some flours are named");
    refuses("grams", "flour 900, water 5, starter 20", "hydration 1.6484 % is outside 45…200 %");
    refuses("inclusions", "seeds 80", "without the grams of the dough give per cent");
    refuses("inclusions", "seeds 8% with 7% milk", "write the water of a soaker as");
    refuses("inclusions", "flour 8%", "flour ferments or is the dough's own");
    refuses("inclusions", "seeds 500%", "is outside 0…200 %");
    assertThatThrownBy(() -> formula(Map.of("grams", GRAMS, "hydration", "70%")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("--grams and --hydration exclude each other");
  }

  private static void refuses(String key, String text, String sentence) {
    assertThatThrownBy(() -> formula(Map.of(key, text)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(sentence);
  }
}
