package doughtide.core.dough;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.SentRecord;
import doughtide.core.quantity.Share;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A dough in grams as a baker has written it down, from which its percentages follow.
 *
 * <pre>{@code
 * WeighedDough dough = new WeighedDough(
 *     List.of(WeighedDough.Part.of(900)), 640, 200, 18, List.of(), List.of());
 * DoughFormula formula = dough.in(DoughFormula.builder(), Starter.ripe()).build();
 * double percent = formula.hydration().percent(); // 74
 * }</pre>
 *
 * @param flours flour added, the starter's not counted
 * @param waterGrams water poured, 0 or more
 * @param starterGrams starter, more than 0
 * @param saltGrams salt, 0 or more
 * @param enrichments what may change the fermentation in a way that is not modelled
 * @param inclusions what does not ferment
 */
@Internal
public record WeighedDough(
    List<Part> flours,
    double waterGrams,
    double starterGrams,
    double saltGrams,
    List<Enriched> enrichments,
    List<Included> inclusions)
    implements Serializable {

  private static final double MOST_GRAMS = 1e6;

  /**
   * One of the flours.
   *
   * @param flour empty where the flour is said elsewhere
   * @param grams of it
   */
  @Internal
  public record Part(Optional<Flour> flour, double grams) implements Serializable {
    /** Flour that is said elsewhere. */
    public static Part of(double grams) {
      return new Part(Optional.empty(), grams);
    }

    private Object writeReplace() {
      return SentRecord.of(this);
    }
  }

  /** So many grams of an enrichment. */
  @Internal
  public record Enriched(Enrichment.Kind kind, double grams) implements Serializable {}

  /** So many grams of an inclusion, and of water poured on it before. */
  @Internal
  public record Included(String name, double grams, double soakGrams) implements Serializable {}

  /**
   * @throws InputException if there is no flour or no starter, a mass is negative or more than a
   *     ton, or some flours are named and one is not
   */
  public WeighedDough {
    flours = List.copyOf(flours);
    enrichments = List.copyOf(enrichments);
    inclusions = List.copyOf(inclusions);
    flours.forEach(each -> check("flour", each.grams()));
    check("water", waterGrams);
    check("starter", starterGrams);
    check("salt", saltGrams);
    enrichments.forEach(each -> check(each.kind().key(), each.grams()));
    inclusions.forEach(each -> check("inclusions", each.grams() + each.soakGrams()));
    if (flours.stream().mapToDouble(Part::grams).sum() <= 0) {
      throw new InputException("grams.no-flour", "there is no flour: add for example flour 900");
    }
    if (starterGrams <= 0) {
      throw new InputException(
          "grams.no-starter",
          "there is no starter, and no other dough is known here: add for example starter 200");
    }
    boolean named = flours.stream().anyMatch(each -> each.flour().isPresent());
    if (named && flours.stream().anyMatch(each -> each.flour().isEmpty())) {
      throw new InputException(
          "grams.flour-twice",
          "some flours are named and one is just called flour: name each, for example white 700,"
              + " rye 200");
    }
  }

  private static void check(String what, double grams) {
    Checks.inRange("grams", "grams of " + what, grams, 0, MOST_GRAMS, "g");
  }

  /** Whether it names its flours. */
  public boolean namesFlours() {
    return flours.get(0).flour().isPresent();
  }

  /**
   * All flour, the starter's included, grams.
   *
   * @param starter the starter used
   */
  public double allFlourGrams(Starter starter) {
    return flours.stream().mapToDouble(Part::grams).sum() + starterFlourGrams(starter);
  }

  private double starterFlourGrams(Starter starter) {
    return starterGrams / (1 + starter.hydration().fraction());
  }

  /**
   * Puts flour, water, starter, salt and additions into a builder. The water of milk and egg counts
   * towards the hydration, beside the water that was weighed.
   *
   * @param builder takes them; its flour stays where none is named
   * @param starter the starter used
   * @param more what is kneaded in beside what was weighed, as shares of all flour
   */
  public DoughFormula.Builder in(DoughFormula.Builder builder, Starter starter, Additions more) {
    double all = allFlourGrams(starter);
    double starterFlour = starterFlourGrams(starter);
    Additions additions = additions(all).and(more);
    double water = waterGrams + starterGrams - starterFlour;
    double hydration = water / all + additions.waterPerFlour();
    DoughFormula.checkHydration(100 * hydration);
    if (namesFlours()) {
      builder.flour(mix(starter));
    }
    return builder
        .starter(starter)
        .starterShare(StarterShare.prefermented(Share.ofFraction(starterFlour / all)))
        .hydration(Share.ofFraction(hydration))
        .salt(Share.ofFraction(saltGrams / all))
        .additions(additions);
  }

  private Additions additions(double flourGrams) {
    return new Additions(
        inclusions.stream()
            .map(
                each ->
                    new Inclusion(
                        each.name(), each.grams() / flourGrams, each.soakGrams() / flourGrams))
            .toList(),
        enrichments.stream()
            .map(each -> new Enrichment(each.kind(), each.grams() / flourGrams))
            .toList());
  }

  /** The flours added and the starter's. */
  private Flour mix(Starter starter) {
    double all = allFlourGrams(starter);
    List<Flour.Part> parts = new ArrayList<>();
    for (Part each : flours) {
      parts.add(new Flour.Part(each.flour().orElseThrow(), Share.ofFraction(each.grams() / all)));
    }
    parts.add(new Flour.Part(starter.flour(), Share.ofFraction(starterFlourGrams(starter) / all)));
    return Flour.mix(parts);
  }

  /** Everything, grams. */
  public Mass total() {
    return Mass.ofGrams(
        flours.stream().mapToDouble(Part::grams).sum()
            + waterGrams
            + starterGrams
            + saltGrams
            + enrichments.stream().mapToDouble(Enriched::grams).sum()
            + inclusions.stream().mapToDouble(each -> each.grams() + each.soakGrams()).sum());
  }
}
