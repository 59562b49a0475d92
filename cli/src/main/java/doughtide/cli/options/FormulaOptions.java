package doughtide.cli.options;

import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Words;
import doughtide.cli.file.FlourFile;
import doughtide.cli.session.Environment;
import doughtide.core.document.Catalogue;
import doughtide.core.document.DoughText;
import doughtide.core.document.TypedValues;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Enrichment;
import doughtide.core.dough.Inclusion;
import doughtide.core.dough.Ingredients;
import doughtide.core.dough.WeighedDough;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A dough by its percentages or by grams, and what is kneaded into it; from a command's own
 * options, whichever of them it has.
 */
public final class FormulaOptions {

  public static final String GRAMS = "grams";
  public static final String INCLUSIONS = "inclusions";
  private static final String LOAVES = "loaves";
  private static final String PIECE = "piece";
  private static final String DOUGH_MASS = "dough-mass";
  private static final Mass USUAL_PIECE = Mass.ofGrams(850);

  private FormulaOptions() {}

  /** The options, in the order of help. */
  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
            GRAMS,
            "LIST",
            "flour 900, water 640, starter 200, salt 18",
            "Instead of the percentages: what you weigh, in grams. Flours may be named, such as"
                + " white 700, rye 200."),
        OptionSpec.value(
            INCLUSIONS,
            "LIST",
            "seeds 8%, soaker 12% with 7% water",
            "What is kneaded in and does not ferment, in per cent of all flour, with --grams also"
                + " in grams; sugar, fat, milk, egg and yeast may stand there, too."));
  }

  /** Asks for the grams of some loaves. */
  public static OptionSpec loaves() {
    return OptionSpec.value(
        LOAVES, "COUNT", "2", "How many loaves of --piece, 1 to 500: says what to weigh.");
  }

  /** The dough that a command's options describe. */
  public static DoughFormula formula(Arguments arguments, Environment environment) {
    return DoughText.formula(
        offered(arguments),
        arguments.catalogue(),
        name -> FlourFile.read("--" + FlourFile.OPTION, name, environment));
  }

  /** The dough in grams, if it was given so. */
  public static Optional<WeighedDough> weighed(Arguments arguments) {
    return DoughText.weighed(offered(arguments), arguments.catalogue());
  }

  /** All the dough, inclusions as well, if it was given in grams. */
  public static Optional<Mass> weighedMass(Arguments arguments, DoughFormula formula) {
    return weighed(arguments)
        .map(
            dough ->
                Mass.ofGrams(dough.allFlourGrams(formula.starter()) * formula.doughPerFlour()));
  }

  /** Whether a list of grams names its flours. */
  static boolean namesFlours(String grams, Catalogue catalogue) {
    return DoughText.weighed(
            values(key -> key.equals(GRAMS) ? Optional.of(grams) : Optional.empty()), catalogue)
        .filter(WeighedDough::namesFlours)
        .isPresent();
  }

  private static TypedValues offered(Arguments arguments) {
    return values(key -> arguments.offers(key) ? arguments.text(key) : Optional.empty());
  }

  private static TypedValues values(Function<String, Optional<String>> texts) {
    return TypedValues.of(texts, key -> "--" + key);
  }

  /** Whether a command was asked for the grams of some loaves. */
  static boolean asksLoaves(Arguments arguments) {
    return arguments.offers(LOAVES) && arguments.has(LOAVES);
  }

  /** What to weigh for the loaves asked for, else for the grams given, else for the mass given. */
  public static Optional<Ingredients> weigh(Arguments arguments, DoughFormula formula) {
    Optional<Mass> mass =
        arguments.offers(DOUGH_MASS) ? arguments.mass(DOUGH_MASS) : Optional.empty();
    return loaves(arguments)
        .or(() -> weighedMass(arguments, formula))
        .or(() -> mass)
        .map(formula::forDough);
  }

  private static Optional<Mass> loaves(Arguments arguments) {
    if (!asksLoaves(arguments)) {
      return Optional.empty();
    }
    Mass piece = arguments.mass(PIECE).orElse(USUAL_PIECE);
    if (piece.grams() < 20 || piece.grams() > 5000) {
      throw new InputException(
          "--piece is the dough of one loaf, 20…5000 g: write for example --piece 850g");
    }
    return arguments.count(LOAVES, 1, 500).map(count -> Mass.ofGrams(count * piece.grams()));
  }

  /** Adds what is in a dough beside flour, water, starter and salt, if anything is. */
  static void describe(DoughFormula formula, Section.Builder to) {
    if (formula.additions().isEmpty()) {
      return;
    }
    Listing.Builder rows = to.listing("additions", "");
    List<String> said = new ArrayList<>();
    for (Inclusion each : formula.additions().inclusions()) {
      rows.row()
          .word("name", "", each.name())
          .number("percent", "", 100 * each.share(), Unit.PERCENT)
          .number("soakPercent", "", 100 * each.waterShare(), Unit.PERCENT);
      String soak =
          each.waterShare() > 0 ? " with " + Words.percent(100 * each.waterShare()) + " water" : "";
      said.add(each.name() + " " + Words.percent(100 * each.share()) + soak);
    }
    for (Enrichment each : formula.additions().enrichments()) {
      rows.row()
          .word("name", "", each.kind().key())
          .number("percent", "", 100 * each.share(), Unit.PERCENT)
          .number("soakPercent", "", 0, Unit.PERCENT);
      said.add(each.kind().key() + " " + Words.percent(100 * each.share()));
    }
    to.say("Kneaded in", String.join(", ", said) + " of all flour");
  }
}
