package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.document.DocumentReader.Use;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The record of one flour as text: one {@code key: value} a line, one line for each graded bowl.
 *
 * <pre>{@code
 * name: Harrow strong white
 * flour: strong white:100%
 * protein: 12.4%
 * hydration: 71%
 * bowl: 6 March; Ann; 72%; thin window
 * }</pre>
 */
@Internal
public final class FlourDocument {

  private static final String NAME = "name";
  private static final String LOT = "lot";
  private static final String DATE = "date";
  private static final String FLOUR = "flour";
  private static final String PROTEIN = "protein";
  private static final String MOISTURE = "moisture";
  private static final String ASH = "ash";
  private static final String HYDRATION = "hydration";
  private static final String BOWL = "bowl";

  private FlourDocument() {}

  /**
   * Reads a record.
   *
   * @param lines the text, without line endings
   * @param catalogue the classes of flour and words for them
   * @throws InputException with the number of the line if a line cannot be used, or if name or
   *     flour is missing
   */
  public static FlourRecord read(Iterator<String> lines, Catalogue catalogue) {
    DocumentReader reader = new DocumentReader(lines, keys(), catalogue.vocabulary()).whole();
    List<GradedBowl> bowls =
        reader.all(BOWL).stream()
            .map(entry -> entry.read(text -> BowlsDocument.bowl(text, catalogue.vocabulary())))
            .toList();
    return new FlourRecord(
        reader.required(NAME, "name: Harrow white", text -> text),
        reader.value(LOT, text -> text),
        reader.value(DATE, text -> Quantities.date(DATE, text)),
        reader.required(FLOUR, "flour: white", text -> catalogue.flour(FLOUR, text)),
        percent(reader, PROTEIN),
        percent(reader, MOISTURE),
        percent(reader, ASH),
        bowls,
        percent(reader, HYDRATION));
  }

  private static Map<String, Use> keys() {
    Map<String, Use> keys = new LinkedHashMap<>();
    for (String key : List.of(NAME, LOT, DATE, FLOUR, PROTEIN, MOISTURE, ASH, HYDRATION)) {
      keys.put(key, Use.ONCE);
    }
    keys.put(BOWL, Use.REPEATED);
    keys.put("note", Use.REMARK);
    return keys;
  }

  private static OptionalDouble percent(DocumentReader reader, String key) {
    Optional<Double> percent = reader.value(key, text -> Quantities.share(key, text).percent());
    return percent.isPresent() ? OptionalDouble.of(percent.get()) : OptionalDouble.empty();
  }

  /** The record as text, which {@link #read} reads back. */
  public static String text(FlourRecord record) {
    DocumentText text =
        new DocumentText("flour record")
            .line(NAME, record.name())
            .line(LOT, record.lot())
            .line(DATE, record.date().map(Object::toString))
            .line(FLOUR, Catalogue.text(record.classes()))
            .line(PROTEIN, percent(record.proteinPercent()))
            .line(MOISTURE, percent(record.moisturePercent()))
            .line(ASH, percent(record.ashPercent()))
            .line(HYDRATION, percent(record.hydrationPercent()));
    record.bowls().forEach(bowl -> text.line(BOWL, BowlsDocument.text(bowl)));
    return text.toString();
  }

  private static Optional<String> percent(OptionalDouble value) {
    return value.isPresent()
        ? Optional.of(Checks.plain(value.getAsDouble()) + "%")
        : Optional.empty();
  }
}
