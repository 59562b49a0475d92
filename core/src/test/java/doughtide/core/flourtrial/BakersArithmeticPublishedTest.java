package doughtide.core.flourtrial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Ingredients;
import doughtide.core.dough.OverallFormula;
import doughtide.core.dough.OverallFormula.Item;
import doughtide.core.dough.OverallFormula.Kind;
import doughtide.core.dough.OverallFormula.Stage;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Worked examples; every line of the file names its source. */
class BakersArithmeticPublishedTest {
  record Case(
      String check,
      Map<String, Double> inputs,
      String quantity,
      double expected,
      double tolerance,
      String source) {
    static Case of(String line) {
      String[] fields = line.split(",", -1);
      assertThat(fields).as(line).hasSize(6);
      Map<String, Double> inputs = new LinkedHashMap<>();
      for (String input : fields[1].split(" ")) {
        String[] pair = input.split("=");
        inputs.put(pair[0], Double.valueOf(pair[1]));
      }
      return new Case(
          fields[0],
          inputs,
          fields[2],
          Double.parseDouble(fields[3]),
          Double.parseDouble(fields[4]),
          fields[5]);
    }

    double in(String name) {
      return inputs.get(name);
    }

    Share share(String name) {
      return Share.ofPercent(in(name));
    }

    @Override
    public String toString() {
      return check + " " + quantity + " (" + source + ")";
    }
  }

  static Stream<Case> cases() throws IOException {
    Path folder = Path.of(System.getProperty("doughtide.testdata"));
    return Files.readAllLines(folder.resolve("bakers-arithmetic.csv")).stream()
        .filter(line -> !line.startsWith("#"))
        .skip(1)
        .map(Case::of);
  }

  @ParameterizedTest
  @MethodSource("cases")
  void reproducesThePrintedFigure(Case each) {
    assertThat(computed(each))
        .as(each.toString())
        .isCloseTo(each.expected(), within(each.tolerance()));
  }

  private static double computed(Case each) {
    return switch (each.quantity()) {
      case "doughYield" ->
          DoughFormula.builder().hydration(each.share("hydration")).build().doughYield();
      case "absorptionAt14" ->
          Absorption.to14PercentBasis(each.share("absorption"), each.share("moisture")).percent();
      case "absorption" ->
          Absorption.from14PercentBasis(each.share("absorptionAt14"), each.share("moisture"))
              .percent();
      case "flour" -> overall(each).flour().grams();
      case "hydration" -> overall(each).hydration().percent();
      case "salt" -> overall(each).salt().percent();
      case "yeast" -> overall(each).yeast().percent();
      case "total" -> overall(each).total().grams();
      case "flourToAdd" -> toAdd(each).flourGrams();
      case "waterToAdd" -> toAdd(each).waterGrams();
      case "saltToAdd" -> toAdd(each).saltGrams();
      case "bowlWater" -> bowl(each).waterGrams();
      default -> throw new AssertionError("unknown quantity " + each.quantity());
    };
  }

  private static OverallFormula overall(Case each) {
    List<Stage> stages = new ArrayList<>();
    for (String number : List.of("1", "2")) {
      List<Item> items = new ArrayList<>();
      for (Kind kind : Kind.values()) {
        Double amount = each.inputs().get(kind.name().toLowerCase(Locale.ROOT) + number);
        if (amount != null) {
          items.add(new Item(kind, Mass.ofGrams(amount)));
        }
      }
      if (!items.isEmpty()) {
        stages.add(new Stage("stage " + number, items));
      }
    }
    return new OverallFormula(stages);
  }

  private static Ingredients toAdd(Case each) {
    return overall(each)
        .withStarter(Mass.ofGrams(each.in("starter")), each.share("starterHydration"));
  }

  private static BowlPlan.Bowl bowl(Case each) {
    Share hydration = each.share("hydration");
    return BowlPlan.of(
            Mass.ofGrams(each.in("flour")),
            hydration,
            hydration,
            Share.ofPercent(5),
            Scale.ONE_GRAM)
        .bowls()
        .get(0);
  }

  /**
   * F3, American Institute of Baking: soft wheat flour absorbs 50–60 %, hard wheat flour above 60
   * %.
   */
  @Test
  void comfortableRangeOfThePriorBeginsWhereSoftAndHardWheatAbsorb() {
    Flour soft = FlourClass.WHITE.flour().withProtein(Share.ofPercent(9));
    Flour hard = FlourClass.STRONG_WHITE.flour().withProtein(Share.ofPercent(12.5));
    assertThat(usualStart(soft)).isBetween(50.0, 60.0);
    assertThat(usualStart(hard)).isBetween(60.0, 70.0);
  }

  /**
   * Common practice, no source: a wholemeal wheat flour of about 13 % protein takes about 75–80 %.
   */
  @Test
  void wholemealOfThirteenPerCentProteinIsExpectedToTakeSeventyFiveToEighty() {
    Flour flour = FlourClass.WHOLEMEAL_WHEAT.flour().withProtein(Share.ofPercent(13));
    assertThat(AbsorptionPrior.of(flour).limitPercent()).isBetween(75.0, 80.0);
  }

  /** Two usual gaps of 5 points below the limit. */
  private static double usualStart(Flour flour) {
    return AbsorptionPrior.of(flour).limitPercent() - 10;
  }
}
