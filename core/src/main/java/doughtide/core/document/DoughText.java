package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.dough.Additions;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterShare;
import doughtide.core.dough.WeighedDough;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Share;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;

/** A dough as typed, one value a key, in options and in the head of readings alike. */
@Internal
public final class DoughText {

  private static final String STARTER = "starter";
  private static final String PREFERMENTED = "prefermented";
  private static final String STARTER_HYDRATION = "starter-hydration";
  private static final String STARTER_CONDITION = "starter-condition";
  private static final String STARTER_FLOUR = "starter-flour";
  private static final String FLOUR = "flour";
  private static final String FLOUR_FILE = "flour-file";
  private static final String HYDRATION = "hydration";
  private static final String DOUGH_YIELD = "dough-yield";
  private static final String SALT = "salt";
  private static final String ALTITUDE = "altitude";
  private static final String GRAMS = "grams";
  private static final String INCLUSIONS = "inclusions";

  private static final String ALL_FLOUR = "all-flour";
  private static final String DOUGH_MASS = "dough-mass";
  private static final String LOAVES = "loaves";
  private static final String PIECE = "piece";
  private static final double USUAL_PIECE_G = 850;
  private static final int MOST_LOAVES = 500;

  private DoughText() {}

  /** The keys, in the order in which messages name them. */
  public static List<String> keys() {
    return List.of(
        STARTER,
        PREFERMENTED,
        STARTER_HYDRATION,
        STARTER_CONDITION,
        STARTER_FLOUR,
        FLOUR,
        FLOUR_FILE,
        HYDRATION,
        DOUGH_YIELD,
        SALT,
        ALTITUDE,
        GRAMS,
        INCLUSIONS);
  }

  /**
   * The dough. What is not said is as {@link DoughFormula#builder()} has it; a flour's record also
   * gives the hydration chosen for it.
   *
   * @param values as typed
   * @param catalogue what can be named
   * @param records finds the record of a flour by the name of its file
   * @throws InputException if a value cannot be used, or two say the same thing
   */
  public static DoughFormula formula(
      TypedValues values, Catalogue catalogue, Function<String, FlourRecord> records) {
    exclusive(values, FLOUR, FLOUR_FILE);
    exclusive(values, STARTER, PREFERMENTED);
    exclusive(values, HYDRATION, DOUGH_YIELD);
    for (String said : List.of(STARTER, PREFERMENTED, HYDRATION, DOUGH_YIELD, SALT)) {
      exclusive(values, GRAMS, said);
    }
    DoughFormula.Builder builder = DoughFormula.builder().starter(starter(values, catalogue));
    value(values, STARTER, StarterText::share)
        .flatMap(share -> share)
        .ifPresent(builder::starterShare);
    share(values, PREFERMENTED).map(StarterShare::prefermented).ifPresent(builder::starterShare);
    value(values, FLOUR, catalogue::flour).ifPresent(builder::flour);
    values.text(FLOUR_FILE).map(records).ifPresent(record -> take(record, builder));
    share(values, HYDRATION).ifPresent(builder::hydration);
    value(values, DOUGH_YIELD, DoughText::doughYield).ifPresent(builder::doughYield);
    share(values, SALT).ifPresent(builder::salt);
    value(values, ALTITUDE, Quantities::altitude).ifPresent(builder::altitude);
    Optional<WeighedDough> weighed = weighed(values, catalogue);
    Additions kneadedIn = additions(values, catalogue, weighed);
    builder.additions(kneadedIn);
    weighed.ifPresent(dough -> take(dough, kneadedIn, values, catalogue, builder));
    starterMass(values)
        .ifPresent(mass -> builder.starterShare(ofMass(mass, values, builder.build())));
    return builder.build();
  }

  /** The mass of the starter, where it is all that is said of it. */
  private static Optional<Mass> starterMass(TypedValues values) {
    return values
        .text(STARTER)
        .filter(StarterText::isMass)
        .map(text -> Quantities.mass(values.label(STARTER), text));
  }

  /** The share of a starter in a dough whose flour is known. */
  private static StarterShare ofMass(Mass starter, TypedValues values, DoughFormula others) {
    String name = values.label(STARTER);
    String text = values.text(STARTER).orElse("");
    double flour =
        flourGrams(values, others)
            .orElseThrow(
                () ->
                    new InputException(
                        "starter.flour-unknown",
                        Quantities.shown(name, text)
                            + " is a mass, and the flour is not known: write "
                            + name
                            + " \""
                            + text
                            + " in 1000g flour\", or say how much dough there is"));
    double added = flour - starter.grams() / (1 + others.starter().hydration().fraction());
    if (added <= 0) {
      throw new InputException(
          "starter.more-than-flour",
          Quantities.shown(name, text)
              + " holds more flour than the dough: give less starter or more dough");
    }
    return Quantities.named(
        name, text, () -> StarterShare.ofAddedFlour(Share.ofFraction(starter.grams() / added)));
  }

  /** All flour, by itself, by the dough or by its loaves. */
  private static Optional<Double> flourGrams(TypedValues values, DoughFormula formula) {
    Optional<Double> flour = value(values, ALL_FLOUR, Quantities::mass).map(Mass::grams);
    Optional<Double> dough =
        value(values, DOUGH_MASS, Quantities::mass).map(Mass::grams).or(() -> loaves(values));
    return flour.or(() -> dough.map(grams -> grams / formula.doughPerFlour()));
  }

  private static Optional<Double> loaves(TypedValues values) {
    double piece = value(values, PIECE, Quantities::mass).map(Mass::grams).orElse(USUAL_PIECE_G);
    return value(values, LOAVES, (name, text) -> Quantities.count(name, text, 1, MOST_LOAVES))
        .map(count -> count * piece);
  }

  /** The dough in grams, if it was given so. */
  public static Optional<WeighedDough> weighed(TypedValues values, Catalogue catalogue) {
    return value(values, GRAMS, (name, text) -> WeighedText.dough(name, text, catalogue));
  }

  private static void take(
      WeighedDough dough,
      Additions kneadedIn,
      TypedValues values,
      Catalogue catalogue,
      DoughFormula.Builder builder) {
    if (dough.namesFlours()) {
      exclusive(values, GRAMS, FLOUR);
      exclusive(values, GRAMS, FLOUR_FILE);
    }
    Starter starter = starter(values, catalogue);
    Quantities.named(
        values.label(GRAMS),
        values.text(GRAMS).orElse(""),
        () -> {
          dough.in(builder, starter, kneadedIn);
          return builder;
        });
  }

  /** What is kneaded in, beside what the grams name. */
  private static Additions additions(
      TypedValues values, Catalogue catalogue, Optional<WeighedDough> weighed) {
    Optional<Double> flour = weighed.map(dough -> dough.allFlourGrams(starter(values, catalogue)));
    return value(
            values, INCLUSIONS, (name, text) -> WeighedText.additions(name, text, flour, catalogue))
        .orElse(Additions.NONE);
  }

  /** A bare number of a document, with its unit where its key leaves one reading. */
  static String withUnit(String key, String text) {
    boolean one =
        switch (key) {
          case HYDRATION, STARTER_HYDRATION -> text.matches("[0-9]{2,3}(?:[.,][0-9]{1,2})?");
          case SALT -> text.matches("[1-4](?:[.,][0-9]{1,2})?");
          default -> false;
        };
    return one ? text + "%" : text;
  }

  /** What was not said of a fed starter and matters most, by key: it was assumed. */
  static List<String> assumedOfFeed(TypedValues values) {
    List<String> assumed = new ArrayList<>();
    addUnless(has(values, FLOUR_FILE) || has(values, FLOUR), FLOUR, assumed);
    return assumed;
  }

  /** What was not said and matters most, by key: it was assumed. */
  static List<String> assumed(TypedValues values) {
    boolean record = has(values, FLOUR_FILE);
    List<String> assumed = new ArrayList<>();
    boolean grams = has(values, GRAMS);
    addUnless(grams || has(values, STARTER) || has(values, PREFERMENTED), STARTER, assumed);
    boolean water = has(values, HYDRATION) || has(values, DOUGH_YIELD);
    addUnless(grams || record || water, HYDRATION, assumed);
    addUnless(grams || record || has(values, FLOUR), FLOUR, assumed);
    addUnless(grams || has(values, SALT), SALT, assumed);
    return assumed;
  }

  private static void addUnless(boolean said, String key, List<String> assumed) {
    if (!said) {
      assumed.add(key);
    }
  }

  private static boolean has(TypedValues values, String key) {
    return values.text(key).isPresent();
  }

  private static void exclusive(TypedValues values, String first, String second) {
    if (has(values, first) && has(values, second)) {
      throw new InputException(
          "dough.exclusive",
          values.label(first)
              + " and "
              + values.label(second)
              + " exclude each other: give one of them");
    }
  }

  private static Starter starter(TypedValues values, Catalogue catalogue) {
    Starter usual = Starter.ripe();
    return new Starter(
        share(values, STARTER_HYDRATION).orElse(usual.hydration()),
        value(values, STARTER_FLOUR, catalogue::flour).orElse(usual.flour()),
        value(values, STARTER_CONDITION, catalogue::condition).orElse(usual.condition()));
  }

  /**
   * A starter just fed. Where nothing else is said it has no salt, and was kept on the flour it is
   * given.
   *
   * @param ratio parts of starter, flour and water
   * @throws InputException if a value cannot be used, or says again what the feed says
   */
  static DoughFormula feed(
      Quantities.FeedRatio ratio,
      TypedValues values,
      Catalogue catalogue,
      Function<String, FlourRecord> records) {
    for (String key : List.of(STARTER, PREFERMENTED, HYDRATION, DOUGH_YIELD)) {
      if (has(values, key)) {
        throw new InputException(
            "feed.said-twice",
            values.label(key) + " is said by the feed already: leave one of them out");
      }
    }
    DoughFormula told = formula(values, catalogue, records);
    Starter fed = told.starter();
    Starter starter =
        has(values, STARTER_FLOUR)
            ? fed
            : new Starter(fed.hydration(), told.flour(), fed.condition());
    return DoughFormula.feed(starter, ratio.starter(), ratio.flour(), ratio.water(), told.flour())
        .toBuilder()
        .salt(has(values, SALT) ? told.salt() : Share.ofPercent(0))
        .altitude(told.altitude())
        .build();
  }

  private static double doughYield(String name, String text) {
    return Quantities.number(name, text, 145, 300);
  }

  private static void take(FlourRecord record, DoughFormula.Builder builder) {
    Flour flour = record.toFlour();
    record
        .fit()
        .map(fit -> Share.ofPercent(fit.limit().likelyPercent()))
        .ifPresentOrElse(limit -> builder.flour(flour, limit), () -> builder.flour(flour));
    record.hydration().ifPresent(builder::hydration);
  }

  private static Optional<Share> share(TypedValues values, String key) {
    return value(values, key, Quantities::share);
  }

  private static <T> Optional<T> value(
      TypedValues values, String key, BiFunction<String, String, T> reader) {
    return values.text(key).map(text -> reader.apply(values.label(key), text));
  }

  /**
   * The dough as values by key, which {@link #formula} reads back; a flour is told by its classes,
   * shares to a ten-thousandth of a per cent.
   */
  static Map<String, String> values(DoughFormula formula) {
    Starter starter = formula.starter();
    Map<String, String> values = new LinkedHashMap<>();
    values.put(FLOUR, flour(formula.flour()));
    values.put(PREFERMENTED, percent(100 * formula.prefermentedFlour()));
    values.put(STARTER_HYDRATION, percent(starter.hydration().percent()));
    values.put(STARTER_CONDITION, Vocabulary.plain(starter.condition().name()));
    values.put(STARTER_FLOUR, flour(starter.flour()));
    values.put(HYDRATION, percent(formula.hydration().percent()));
    values.put(SALT, percent(formula.salt().percent()));
    if (!formula.altitude().equals(Altitude.SEA_LEVEL)) {
      values.put(ALTITUDE, Checks.plain(formula.altitude().metres()) + "m");
    }
    if (!formula.additions().isEmpty()) {
      values.put(INCLUSIONS, WeighedText.text(formula.additions()));
    }
    return values;
  }

  private static String flour(Flour flour) {
    return Catalogue.text(flour);
  }

  private static String percent(double percent) {
    return Checks.plain(percent) + "%";
  }
}
