package doughtide.core.dough;

import java.io.Serializable;
import java.util.List;
import java.util.stream.Stream;

/**
 * What is in a dough beside flour, water, starter and salt.
 *
 * @param inclusions what does not ferment and only dilutes
 * @param enrichments what may change the fermentation in a way that is not modelled
 */
public record Additions(List<Inclusion> inclusions, List<Enrichment> enrichments)
    implements Serializable {

  /** Nothing. */
  public static final Additions NONE = new Additions(List.of(), List.of());

  /**
   * Copies the lists.
   *
   * @param inclusions what does not ferment and only dilutes
   * @param enrichments what may change the fermentation in a way that is not modelled
   */
  public Additions {
    inclusions = List.copyOf(inclusions);
    enrichments = List.copyOf(enrichments);
  }

  /** {@return whether there is nothing} */
  public boolean isEmpty() {
    return inclusions.isEmpty() && enrichments.isEmpty();
  }

  /**
   * {@return these and others}
   *
   * @param more added after these
   */
  public Additions and(Additions more) {
    return new Additions(
        Stream.concat(inclusions.stream(), more.inclusions.stream()).toList(),
        Stream.concat(enrichments.stream(), more.enrichments.stream()).toList());
  }

  /** {@return their mass over all flour, without the water that counts as the dough's own} */
  public double massPerFlour() {
    return isEmpty()
        ? 0
        : inclusions.stream().mapToDouble(Inclusion::massPerFlour).sum()
            + enrichments.stream().mapToDouble(Enrichment::solidsPerFlour).sum();
  }

  /** {@return water of milk and egg over all flour, which counts as the dough's own} */
  public double waterPerFlour() {
    return isEmpty() ? 0 : enrichments.stream().mapToDouble(Enrichment::waterPerFlour).sum();
  }

  /** {@return volume that does not ferment, litres per kg of all flour} */
  public double litresPerKgFlour() {
    return isEmpty()
        ? 0
        : inclusions.stream().mapToDouble(Inclusion::litresPerKgFlour).sum()
            + enrichments.stream().mapToDouble(Enrichment::litresPerKgFlour).sum();
  }

  /** What to weigh of them. */
  List<Ingredients.Addition> forFlour(double flourGrams) {
    return Stream.concat(
            inclusions.stream()
                .map(
                    each ->
                        new Ingredients.Addition(
                            each.name(),
                            each.share() * flourGrams,
                            each.waterShare() * flourGrams)),
            enrichments.stream()
                .map(
                    each ->
                        new Ingredients.Addition(each.kind().key(), each.share() * flourGrams, 0)))
        .toList();
  }
}
