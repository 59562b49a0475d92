package doughtide.core.dough;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import java.io.Serializable;
import java.util.List;

/**
 * A formula made in stages (a preferment and a dough, say) taken together, in baker's per cent:
 * every share is of all flour in all stages.
 *
 * <pre>{@code
 * OverallFormula formula = new OverallFormula(List.of(
 *     new OverallFormula.Stage("starter", List.of(
 *         OverallFormula.Item.flour(75), OverallFormula.Item.water(75))),
 *     new OverallFormula.Stage("dough", List.of(
 *         OverallFormula.Item.flour(425),
 *         OverallFormula.Item.water(325),
 *         OverallFormula.Item.salt(10)))));
 * double hydration = formula.hydration().percent(); // 80
 * }</pre>
 *
 * @param stages in the order they are made; the last one is the final dough
 */
@Internal
public record OverallFormula(List<Stage> stages) implements Serializable {

  /** What an ingredient counts as. */
  @Internal
  public enum Kind {
    /** Flour or meal of any cereal: the 100 % of baker's per cent. */
    FLOUR,
    /** Water. */
    WATER,
    /** Salt. */
    SALT,
    /** Baker's yeast. */
    YEAST,
    /** Anything else; counts in the total mass only. */
    OTHER
  }

  /**
   * An amount of one ingredient.
   *
   * @param kind what it counts as
   * @param amount how much
   */
  @Internal
  public record Item(Kind kind, Mass amount) implements Serializable {
    /**
     * @param grams more than 0
     */
    public static Item flour(double grams) {
      return new Item(Kind.FLOUR, Mass.ofGrams(grams));
    }

    /**
     * @param grams more than 0
     */
    public static Item water(double grams) {
      return new Item(Kind.WATER, Mass.ofGrams(grams));
    }

    /**
     * @param grams more than 0
     */
    public static Item salt(double grams) {
      return new Item(Kind.SALT, Mass.ofGrams(grams));
    }

    /**
     * @param grams more than 0
     */
    public static Item other(double grams) {
      return new Item(Kind.OTHER, Mass.ofGrams(grams));
    }
  }

  /**
   * One stage. What an earlier stage brings is not listed again.
   *
   * @param name as printed, for example {@code "starter"}
   * @param items what is weighed for this stage
   */
  @Internal
  public record Stage(String name, List<Item> items) implements Serializable {
    /**
     * @throws InputException if the name is blank
     */
    public Stage {
      if (name.isBlank()) {
        throw new InputException(
            "formula.stage-name", "a stage needs a name: call it starter or dough, for example");
      }
      items = List.copyOf(items);
    }

    private double grams(Kind kind) {
      return items.stream()
          .filter(item -> item.kind() == kind)
          .mapToDouble(item -> item.amount().grams())
          .sum();
    }
  }

  /**
   * @throws InputException if there is no flour in any stage
   */
  public OverallFormula {
    stages = List.copyOf(stages);
    if (grams(stages, Kind.FLOUR) <= 0) {
      throw new InputException(
          "formula.no-flour",
          "the formula has no flour in any stage: baker's per cent need at least one flour");
    }
  }

  private static double grams(List<Stage> stages, Kind kind) {
    return stages.stream().mapToDouble(stage -> stage.grams(kind)).sum();
  }

  /** All flour of all stages. */
  public Mass flour() {
    return Mass.ofGrams(grams(stages, Kind.FLOUR));
  }

  /** All water over all flour. */
  public Share hydration() {
    return share(Kind.WATER);
  }

  /** All salt over all flour. */
  public Share salt() {
    return share(Kind.SALT);
  }

  /** All baker's yeast over all flour. */
  public Share yeast() {
    return share(Kind.YEAST);
  }

  private Share share(Kind kind) {
    return Share.ofFraction(grams(stages, kind) / flour().grams());
  }

  /** Flour of every stage before the last, over all flour; 0 for a single stage. */
  public Share prefermentedFlour() {
    double finalFlour = stages.get(stages.size() - 1).grams(Kind.FLOUR);
    double early = Math.max(0, flour().grams() - finalFlour);
    return Share.ofFraction(early / flour().grams());
  }

  /** Everything weighed, in all stages. */
  public Mass total() {
    return Mass.ofGrams(
        stages.stream()
            .flatMap(stage -> stage.items().stream())
            .mapToDouble(item -> item.amount().grams())
            .sum());
  }

  /**
   * What to add to a starter so that both together are this formula: the starter's flour and water
   * are taken off.
   *
   * @param starter mass of starter used
   * @param starterHydration water over flour in the starter
   * @return flour, water, starter and salt to weigh
   * @throws InputException if the starter alone brings more flour or water than the formula has
   */
  public Ingredients withStarter(Mass starter, Share starterHydration) {
    double starterFlour = starter.grams() / (1 + starterHydration.fraction());
    double starterWater = starter.grams() - starterFlour;
    return new Ingredients(
        left("flour", flour().grams(), starterFlour),
        left("water", grams(stages, Kind.WATER), starterWater),
        starter.grams(),
        grams(stages, Kind.SALT));
  }

  private static double left(String what, double inFormula, double inStarter) {
    if (inStarter > inFormula + 1e-9 * inFormula) {
      throw new InputException(
          "formula.starter-too-much",
          "the starter brings "
              + Checks.plain(inStarter)
              + " g of "
              + what
              + ", the whole formula has "
              + Checks.plain(inFormula)
              + " g: use less starter or make more dough");
    }
    return Math.max(0, inFormula - inStarter);
  }
}
