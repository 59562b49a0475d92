package doughtide.cli.args;

import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Nearest;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Share;
import java.util.ArrayList;
import java.util.List;

/** Reads a flour or a mix as typed: {@code white}, {@code white:80%,wholemeal wheat:20%}. */
public final class FlourMix {

  private static final int MOST_FLOURS = 20;
  private static final String EXAMPLE = "\"white:80%,wholemeal wheat:20%\"";

  private FlourMix() {}

  /**
   * The flour meant.
   *
   * @param name the option, for messages
   * @param text as typed
   * @throws InputException if a flour is not known, has no share, or the shares do not add up
   */
  public static Flour parse(String name, String text) {
    String clean = Quantities.clean(text);
    if (clean.isEmpty()) {
      throw new InputException(name + " is empty: write for example " + name + " " + EXAMPLE);
    }
    if (clean.indexOf(':') < 0 && clean.indexOf(',') < 0 && clean.indexOf(';') < 0) {
      return known(name, clean);
    }
    String[] pieces = clean.split("(?<=%) ?[,;] ?", -1);
    if (pieces.length > MOST_FLOURS) {
      throw new InputException(
          name + " has " + pieces.length + " flours, at most " + MOST_FLOURS + " are read");
    }
    List<Flour.Part> parts = new ArrayList<>();
    for (String piece : pieces) {
      parts.add(part(name, text, piece));
    }
    return Quantities.named(name, text, () -> Flour.mix(parts));
  }

  private static Flour.Part part(String name, String text, String piece) {
    int colon = piece.indexOf(':');
    if (colon < 0 || colon != piece.lastIndexOf(':')) {
      throw new InputException(
          Quantities.shown(name, text)
              + ": each flour needs its share in per cent: write for example "
              + name
              + " "
              + EXAMPLE);
    }
    String flour = piece.substring(0, colon);
    Share share = Quantities.share(name, piece.substring(colon + 1));
    return new Flour.Part(known(name, flour), share);
  }

  private static Flour known(String name, String flour) {
    try {
      return FlourClass.named(flour).flour();
    } catch (InputException e) {
      List<String> names = List.of(FlourClass.names().split(", "));
      String hint =
          Nearest.to(flour.strip(), names).map(n -> "did you mean " + n + "? ").orElse("");
      throw new InputException(
          Quantities.shown(name, flour)
              + " is no flour known here: "
              + hint
              + "use one of "
              + FlourClass.names());
    }
  }
}
