package doughtide.cli.answer;

import doughtide.core.dough.Ingredients;

/** What to weigh for a dough, as it stands in every answer. */
public final class IngredientItems {
  private IngredientItems() {}

  /** What to weigh, for other programs. */
  public static void add(Ingredients weigh, Section.Builder to) {
    Section.Builder all = to.section("ingredients", "");
    grams(weigh, all);
    if (!weigh.additions().isEmpty()) {
      additions(weigh, all);
    }
  }

  /** Flour, water, starter and salt. */
  public static void grams(Ingredients weigh, Section.Builder to) {
    to.number("flourGrams", "", weigh.flourGrams(), Unit.GRAMS)
        .number("waterGrams", "", weigh.waterGrams(), Unit.GRAMS)
        .number("starterGrams", "", weigh.starterGrams(), Unit.GRAMS)
        .number("saltGrams", "", weigh.saltGrams(), Unit.GRAMS);
  }

  /** What is kneaded in, a row each. */
  public static void additions(Ingredients weigh, Section.Builder to) {
    Listing.Builder additions = to.listing("additions", "");
    for (Ingredients.Addition each : weigh.additions()) {
      additions
          .row()
          .word("name", "", each.name())
          .number("grams", "", each.grams(), Unit.GRAMS)
          .number("soakGrams", "", each.soakGrams(), Unit.GRAMS);
    }
  }
}
