package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.dough.StarterShare;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Share;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How much starter as typed: a share or masses. */
@Internal
public final class StarterText {

  private static final Pattern MASS = Pattern.compile("(?i)[0-9.,]+ ?(g|grams?|kg|oz|lbs?)");

  /** {@code 100g in 500g flour}, {@code 100 g starter auf 500 g Mehl} or {@code 100g to 500g}. */
  private static final Pattern TWO_MASSES =
      Pattern.compile(
          "([0-9.,]+ ?(?:g|kg|oz|lbs?))(?: (?:of )?\\p{L}{5,12})?"
              + " ?(?:in|to|on|for|auf|zu|pour|para|dans|en|em|/) ?"
              + "([0-9][0-9.,]* ?(?:g|kg|oz|lbs?))(?: (?:of |de )?\\p{L}{4,8})?",
          Pattern.CASE_INSENSITIVE);

  private StarterText() {}

  /** Whether a starter is told by its mass alone. */
  public static boolean isMass(String text) {
    return MASS.matcher(Quantities.clean(text)).matches();
  }

  /**
   * A share of the flour added, or the mass of the starter in the mass of that flour; nothing for a
   * mass alone.
   */
  static Optional<StarterShare> share(String name, String text) {
    Matcher masses = TWO_MASSES.matcher(Quantities.clean(text));
    if (isMass(text)) {
      return Optional.empty();
    }
    if (!masses.matches()) {
      return Optional.of(StarterShare.ofAddedFlour(Quantities.share(name, text)));
    }
    Mass starter = Quantities.mass(name, masses.group(1));
    Mass flour = Quantities.mass(name, masses.group(2));
    return Quantities.named(
        name,
        text,
        () ->
            Optional.of(
                StarterShare.ofAddedFlour(Share.ofFraction(starter.grams() / flour.grams()))));
  }
}
