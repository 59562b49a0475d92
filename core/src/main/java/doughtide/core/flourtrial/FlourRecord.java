package doughtide.core.flourtrial;

import doughtide.core.Internal;
import doughtide.core.dough.Composition;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.SentRecord;
import doughtide.core.quantity.Share;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a baker keeps about one flour: flat, so that it maps to a plain file field by field.
 *
 * <pre>{@code
 * FlourRecord record = FlourRecord.named("Harrow strong white", FlourClass.STRONG_WHITE)
 *     .withProteinPercent(12.4)
 *     .withHydrationPercent(71);
 * Flour flour = record.toFlour();
 * }</pre>
 *
 * @param name name of the flour, 1…100 characters
 * @param lot lot printed on the bag
 * @param date day of the record
 * @param classes the class of flour it belongs to, or a mix of classes, without the figures below
 * @param proteinPercent protein of the flour as sold, 0…50 %
 * @param moisturePercent water in the flour as sold, 0…20 %
 * @param ashPercent minerals of the flour as sold, 0…10 %
 * @param bowls grades of all trials
 * @param hydrationPercent the hydration chosen, 45…200 %
 */
@Internal
public record FlourRecord(
    String name,
    Optional<String> lot,
    Optional<LocalDate> date,
    Flour classes,
    OptionalDouble proteinPercent,
    OptionalDouble moisturePercent,
    OptionalDouble ashPercent,
    List<GradedBowl> bowls,
    OptionalDouble hydrationPercent)
    implements Serializable {
  private static final int LONGEST_NAME = 100;

  /**
   * @throws InputException if a value is out of range
   */
  public FlourRecord {
    Checks.given("date", date);
    Checks.given("lot", lot);
    name = name.strip();
    if (name.isEmpty() || name.length() > LONGEST_NAME) {
      throw new InputException(
          "flour-name.length",
          "flour name must have 1 to " + LONGEST_NAME + " characters, it has " + name.length());
    }
    proteinPercent.ifPresent(value -> Checks.inRange("protein", value, 0, 50, "%"));
    moisturePercent.ifPresent(value -> Checks.inRange("flour moisture", value, 0, 20, "%"));
    ashPercent.ifPresent(value -> Checks.inRange("ash", value, 0, 10, "%"));
    hydrationPercent.ifPresent(value -> Checks.inRange("hydration", value, 45, 200, "%"));
    bowls = List.copyOf(bowls);
    flour(name, classes, moisturePercent, proteinPercent, ashPercent);
  }

  /** A record of a single class with nothing else known. */
  public static FlourRecord named(String name, FlourClass flourClass) {
    return new FlourRecord(
        name,
        Optional.empty(),
        Optional.empty(),
        flourClass.flour(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of(),
        OptionalDouble.empty());
  }

  /** The flour as the model uses it: the classes' mix with the figures of the bag put in. */
  public Flour toFlour() {
    return flour(name, classes, moisturePercent, proteinPercent, ashPercent);
  }

  private static Flour flour(
      String name,
      Flour classes,
      OptionalDouble moisture,
      OptionalDouble protein,
      OptionalDouble ash) {
    Flour usual = classes.withName(name);
    Composition dry = usual.composition();
    if (moisture.isPresent()) {
      dry = dry.withMoisture(moisture.getAsDouble() / 100);
    }
    Composition bag =
        Composition.ofParts(
            protein.isPresent() ? protein.getAsDouble() / 100 : dry.protein(),
            dry.fat(),
            dry.fibre(),
            ash.isPresent() ? ash.getAsDouble() / 100 : dry.ash(),
            dry.moisture());
    return usual.withComposition(bag);
  }

  /** The limit expected of this flour before any bowl. */
  public AbsorptionPrior prior() {
    return AbsorptionPrior.of(toFlour());
  }

  /** The fit of all bowls of this record, or empty if there are none. */
  public Optional<AbsorptionFit> fit() {
    return bowls.isEmpty() ? Optional.empty() : Optional.of(AbsorptionFit.of(bowls, prior()));
  }

  /** What to know before trusting a trial of this flour; none where there are no bowls. */
  public List<TrialNote> notes() {
    return fit().map(AbsorptionFit::notes).orElse(List.of());
  }

  /** The hydration chosen, if one was. */
  public Optional<Share> hydration() {
    return hydrationPercent.isPresent()
        ? Optional.of(Share.ofPercent(hydrationPercent.getAsDouble()))
        : Optional.empty();
  }

  /** The same record with a lot. */
  public FlourRecord withLot(String newLot) {
    return new FlourRecord(
        name,
        Optional.of(newLot),
        date,
        classes,
        proteinPercent,
        moisturePercent,
        ashPercent,
        bowls,
        hydrationPercent);
  }

  /** The same record with a day. */
  public FlourRecord withDate(LocalDate newDate) {
    return new FlourRecord(
        name,
        lot,
        Optional.of(newDate),
        classes,
        proteinPercent,
        moisturePercent,
        ashPercent,
        bowls,
        hydrationPercent);
  }

  /**
   * @param percent 0…50
   */
  public FlourRecord withProteinPercent(double percent) {
    return new FlourRecord(
        name,
        lot,
        date,
        classes,
        OptionalDouble.of(percent),
        moisturePercent,
        ashPercent,
        bowls,
        hydrationPercent);
  }

  /**
   * @param percent 0…20
   */
  public FlourRecord withMoisturePercent(double percent) {
    return new FlourRecord(
        name,
        lot,
        date,
        classes,
        proteinPercent,
        OptionalDouble.of(percent),
        ashPercent,
        bowls,
        hydrationPercent);
  }

  /**
   * @param percent 0…10
   */
  public FlourRecord withAshPercent(double percent) {
    return new FlourRecord(
        name,
        lot,
        date,
        classes,
        proteinPercent,
        moisturePercent,
        OptionalDouble.of(percent),
        bowls,
        hydrationPercent);
  }

  /** The same record with these grades in place of its own. */
  public FlourRecord withBowls(List<GradedBowl> newBowls) {
    return new FlourRecord(
        name,
        lot,
        date,
        classes,
        proteinPercent,
        moisturePercent,
        ashPercent,
        newBowls,
        hydrationPercent);
  }

  /**
   * @param percent 45…200
   */
  public FlourRecord withHydrationPercent(double percent) {
    return new FlourRecord(
        name,
        lot,
        date,
        classes,
        proteinPercent,
        moisturePercent,
        ashPercent,
        bowls,
        OptionalDouble.of(percent));
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
