package doughtide.core.document;

import doughtide.core.dough.Flour;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Share;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A flour or a mix as typed.
 *
 * @param catalogue what can be named
 * @param name what it is given for, for messages
 * @param text as typed
 */
record FlourText(Catalogue catalogue, String name, String text) {

  private static final int MOST_FLOURS = 20;
  private static final String EXAMPLE = "\"white:80%,wholemeal wheat:20%\"";
  private static final String AMOUNT = "([0-9][0-9.,]* ?(?:%|g|kg|oz|lbs?)?)";
  private static final Pattern BETWEEN =
      Pattern.compile(
          " ?[;+] ?|, |(?<=[%a-z]),| (?:and|und|et|y|e) (?=[0-9])"
              + "|(?<=%|[0-9 ]g|kg|oz|lb) (?:and|und|et|y|e) ");
  private static final Pattern BARE = Pattern.compile("[0-9.,]+");
  private static final Pattern HAS_AMOUNT = Pattern.compile("[0-9] ?(?:%|(?:g|kg|oz|lbs?)\\b)");
  private static final Pattern AMOUNT_BEHIND =
      Pattern.compile("([^:]*[^: ])(?: +| ?: ?)" + AMOUNT, Pattern.DOTALL);
  private static final Pattern AMOUNT_BEFORE =
      Pattern.compile(AMOUNT + " +(?:of +)?([^:]*)", Pattern.DOTALL);

  /** The flour. */
  public Flour flour() {
    String clean = Quantities.clean(text);
    if (clean.isEmpty()) {
      throw new InputException(
          "flour.empty", name + " is empty: write for example " + name + " " + EXAMPLE);
    }
    if (clean.indexOf(':') < 0 && clean.indexOf(',') < 0 && !HAS_AMOUNT.matcher(clean).find()) {
      return catalogue.flourClass(name, clean);
    }
    String[] pieces = BETWEEN.split(clean, -1);
    if (pieces.length > MOST_FLOURS) {
      throw new InputException(
          "flour-mix.too-many",
          name + " has " + pieces.length + " flours, at most " + MOST_FLOURS + " are read");
    }
    List<Named> parts = new ArrayList<>();
    for (String piece : pieces) {
      parts.add(part(piece.strip()));
    }
    return Quantities.named(name, text, () -> Flour.mix(shares(parts)));
  }

  /** A flour and its amount as typed. */
  private record Named(Flour flour, String amount) {
    boolean isShare() {
      return amount.endsWith("%");
    }

    boolean isBare() {
      return BARE.matcher(amount).matches();
    }
  }

  /** Of bare numbers it is all the same whether they are grams or per cent. */
  private List<Flour.Part> shares(List<Named> parts) {
    long shares = parts.stream().filter(Named::isShare).count();
    long bare = parts.stream().filter(Named::isBare).count();
    boolean mixed = shares > 0 && shares < parts.size() || bare > 0 && bare < parts.size();
    if (mixed) {
      throw new InputException(
          "flour-mix.shares-and-masses",
          Quantities.shown(name, text)
              + " has shares and masses: write all in per cent or all in grams, for example "
              + EXAMPLE);
    }
    ToDoubleFunction<Named> amount =
        each ->
            each.isShare() || parts.size() == 1 && each.isBare()
                ? Quantities.share(name, each.amount()).fraction()
                : Quantities.mass(name, each.amount() + (each.isBare() ? "g" : "")).grams();
    double all = shares > 0 ? 1 : parts.stream().mapToDouble(amount).sum();
    return parts.stream()
        .map(
            each ->
                new Flour.Part(each.flour(), Share.ofFraction(amount.applyAsDouble(each) / all)))
        .toList();
  }

  private Named part(String piece) {
    Matcher behind = AMOUNT_BEHIND.matcher(piece);
    if (behind.matches()) {
      return new Named(catalogue.flourClass(name, behind.group(1)), behind.group(2));
    }
    Matcher before = AMOUNT_BEFORE.matcher(piece);
    if (before.matches()) {
      return new Named(catalogue.flourClass(name, before.group(2)), before.group(1));
    }
    throw new InputException(
        "flour-mix.amount",
        Quantities.shown(name, text)
            + ": each flour needs its share in per cent or its mass: write for example "
            + name
            + " "
            + EXAMPLE);
  }
}
