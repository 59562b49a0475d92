package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.StarterCondition;
import doughtide.core.forecast.Belief;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Nearest;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.ShellWord;
import doughtide.core.quantity.Shorten;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.RiseParameters.RateCurves;
import doughtide.core.thermal.VesselForm;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What can be named in a document or an option: flours, forms and vessels, each known by its key,
 * and the words for them. Immutable; a program that knows a flour of its own adds it here.
 *
 * <pre>{@code
 * Catalogue catalogue = Catalogue.standard();
 * Flour flour = catalogue.flour("flour", "white:80%,rye:20%");
 * }</pre>
 *
 * @param vocabulary words in other languages for the keys
 * @param flours the classes of flour, each known by its name
 * @param forms the forms of a piece
 * @param vessels what a dough may stand in
 * @param curves rate curves beside those of the standard model; one is used only for a starter that
 *     was learned with it
 */
@Internal
public record Catalogue(
    Vocabulary vocabulary,
    List<Flour> flours,
    List<PieceForm> forms,
    List<VesselForm> vessels,
    List<RateCurves> curves) {

  private static final int SHOWN = 40;

  /** Copies the lists. */
  public Catalogue {
    flours = List.copyOf(flours);
    forms = List.copyOf(forms);
    vessels = List.copyOf(vessels);
    curves = List.copyOf(curves);
  }

  /** What comes with the library, by its keys alone. */
  public static Catalogue standard() {
    return new Catalogue(
        Vocabulary.KEYS_ONLY,
        Arrays.stream(FlourClass.values()).map(FlourClass::flour).toList(),
        PieceForm.standard(),
        VesselForm.standard(),
        List.of());
  }

  /** The same with words in other languages. */
  public Catalogue in(Vocabulary words) {
    return new Catalogue(words, flours, forms, vessels, curves);
  }

  /** The same with one more class of flour. */
  public Catalogue with(Flour flour) {
    return new Catalogue(vocabulary, more(flours, flour), forms, vessels, curves);
  }

  /** The same with one more form. */
  public Catalogue with(PieceForm form) {
    return new Catalogue(vocabulary, flours, more(forms, form), vessels, curves);
  }

  /** The same with one more vessel. */
  public Catalogue with(VesselForm vessel) {
    return new Catalogue(vocabulary, flours, forms, more(vessels, vessel), curves);
  }

  /** The same with one more pair of rate curves. */
  public Catalogue with(RateCurves pair) {
    return new Catalogue(vocabulary, flours, forms, vessels, more(curves, pair));
  }

  /**
   * The model for a belief: the standard one, with those of the rate curves known here that the
   * belief tells of.
   */
  public RiseParameters parameters(Belief belief) {
    RiseParameters standard = RiseParameters.standard();
    List<RateCurves> used = new ArrayList<>(standard.curves());
    curves.stream().filter(pair -> belief.curves().contains(pair.key())).forEach(used::add);
    return used.size() == standard.curves().size() ? standard : standard.with(used);
  }

  private static <T> List<T> more(List<T> known, T other) {
    List<T> more = new ArrayList<>(known);
    more.add(other);
    return more;
  }

  /** The classes of a flour as {@link #flour} reads them: {@code white:80%,rye:20%}. */
  public static String text(Flour flour) {
    if (flour.parts().size() == 1) {
      return flour.parts().keySet().iterator().next();
    }
    return flour.parts().entrySet().stream()
        .map(part -> part.getKey() + ":" + Checks.plain(part.getValue().percent()) + "%")
        .collect(Collectors.joining(","));
  }

  /**
   * A flour or a mix: {@code white}, {@code white:80%,rye:20%}, {@code 80% white, 20% rye}, or by
   * mass: {@code white 400g, rye 100g}.
   *
   * @param name what it is given for, for messages
   * @param text as typed
   * @throws InputException if a flour is not known, has no share, or the shares do not add up
   */
  public Flour flour(String name, String text) {
    return new FlourText(this, name, text).flour();
  }

  /**
   * A class of flour.
   *
   * @param name what it is given for, for messages
   * @param text its key or a word for it
   * @throws InputException if it is not known; the message lists the keys
   */
  public Flour flourClass(String name, String text) {
    List<String> keys = flours.stream().map(Flour::name).toList();
    return find(Vocabulary.Kind.FLOUR, text, flours, Flour::name)
        .or(() -> mixCalled(name, text))
        .orElseThrow(
            () ->
                new InputException(
                    "flour.unknown",
                    Quantities.shown(name, text)
                        + " is no flour known here: "
                        + Nearest.to(text.strip(), keys)
                            .map(near -> "did you mean " + near + "? ")
                            .orElse("")
                        + "use one of "
                        + String.join(", ", keys)));
  }

  /** A flour between two classes, which the vocabulary knows as a mix of them. */
  private Optional<Flour> mixCalled(String name, String text) {
    return vocabulary
        .key(Vocabulary.Kind.FLOUR, Vocabulary.plain(text))
        .filter(mix -> mix.indexOf(':') >= 0)
        .map(mix -> flour(name, mix));
  }

  /**
   * A form of a piece.
   *
   * @throws InputException if it is not known
   */
  public PieceForm form(String name, String text) {
    return known(Vocabulary.Kind.FORM, name, text, forms, PieceForm::key);
  }

  /**
   * A vessel.
   *
   * @throws InputException if it is not known
   */
  public VesselForm vessel(String name, String text) {
    return known(Vocabulary.Kind.VESSEL, name, text, vessels, VesselForm::key);
  }

  /**
   * The condition of a starter.
   *
   * @throws InputException if it is not known
   */
  public StarterCondition condition(String name, String text) {
    List<StarterCondition> all = Arrays.asList(StarterCondition.values());
    return known(Vocabulary.Kind.CONDITION, name, text, all, each -> Vocabulary.plain(each.name()));
  }

  private <T> T known(
      Vocabulary.Kind kind, String name, String text, List<T> all, Function<T, String> key) {
    return find(kind, text, all, key).orElseThrow(() -> unknown(name, text, all, key));
  }

  private <T> Optional<T> find(
      Vocabulary.Kind kind, String text, List<T> all, Function<T, String> key) {
    List<String> keys = all.stream().map(key).toList();
    return vocabulary.meant(kind, text, keys).map(found -> all.get(keys.indexOf(found)));
  }

  private static <T> InputException unknown(
      String name, String text, List<T> all, Function<T, String> key) {
    List<String> keys = all.stream().map(key).toList();
    return new InputException(
        "word.unknown",
        name
            + " "
            + ShellWord.of(Shorten.to(text, SHOWN))
            + " is not known: use "
            + String.join(", ", keys)
            + Nearest.to(Vocabulary.plain(text), keys)
                .map(near -> " (did you mean " + near + "?)")
                .orElse(""));
  }
}
