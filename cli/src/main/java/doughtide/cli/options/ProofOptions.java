package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Speech;
import doughtide.cli.args.Words;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.Cold;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.loaf.Shaping;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.Air;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * The options for what happens after bulk fermentation.
 *
 * @param ways the proof, once for each hour at which the oven may be hot; the first that leads to a
 */
public record ProofOptions(List<Proof> ways) {

  private static final String COLD = "cold";
  private static final String HOLD = "hold";
  private static final String BAKE_AT = "bake-at";
  private static final String PROOF_TEMP = "proof-temp";
  private static final String PROOF = "proof";
  private static final String REST = "rest";
  private static final String PIECE = "piece";
  private static final String FORM = "form";
  private static final String TARGET = "target";
  private static final String SHAPING = "shaping";
  private static final String COLD_MEASURED = "cold-measured";
  private static final String COLD_AIR = "cold-air";
  private static final List<String> OF_COLD = List.of(COLD_MEASURED, COLD_AIR);
  private static final String FAN = "fan";
  private static final double USUAL_PROOF_HOURS = 1.5;

  public ProofOptions {
    ways = List.copyOf(ways);
  }

  /** How well a cold is known, and how a loaf is handled: for every command with --cold. */
  public static List<OptionSpec> coldAndShaping() {
    return List.of(
        OptionSpec.flag(
            COLD_MEASURED,
            "With --cold: measured with a thermometer in a glass of water on that shelf, not read"
                + " from the dial: ± 0.5 °C instead of ± 2.5 °C."),
        OptionSpec.value(COLD_AIR, "WORD", "still", "With --cold: still air, or moved by a fan.")
            .withDefault("still"),
        OptionSpec.value(
                SHAPING,
                "WORD",
                "gentle",
                "How firmly it is handled from dividing to its final shape: gentle, firm or"
                    + " knocked-back.")
            .withDefault("gentle; firm for rye and in a tin"));
  }

  public static List<OptionSpec> specs() {
    List<OptionSpec> all = new ArrayList<>(ownSpecs());
    all.addAll(1, coldAndShaping());
    return all;
  }

  private static List<OptionSpec> ownSpecs() {
    return List.of(
        OptionSpec.value(
            COLD, "TEMP", "4C", "The loaf proofs in the cold, a refrigerator of this temperature."),
        OptionSpec.value(HOLD, "TIME", "12h", "With --cold: how long, then into the oven."),
        OptionSpec.value(
            BAKE_AT,
            "TIME",
            "07:00",
            "With --cold and --mixed-at, instead of --hold: when it goes into the oven, the next"
                + " such clock time that leaves time for bulk fermentation, tomorrow 07:00 or a"
                + " full date."),
        OptionSpec.value(
            PROOF_TEMP,
            "TEMP",
            "24C",
            "The loaf proofs in a room of this temperature; with --cold, before the cold."),
        OptionSpec.value(PROOF, "TIME", "90min", "With --proof-temp: how long.")
            .withDefault("90min"),
        OptionSpec.value(
                REST, "TIME", "30min", "Dividing, bench rest and shaping between bulk and proof.")
            .withDefault("30min"),
        OptionSpec.value(PIECE, "MASS", "850g", "The mass of one loaf.").withDefault("850g"),
        OptionSpec.value(
                FORM, "WORD", "round", "What it proofs as: round, oval, tin, baguette or tub.")
            .withDefault("round"),
        OptionSpec.value(
                TARGET,
                "RISE",
                "90%",
                "The loaf's rise wanted at the oven, over the dough after mixing.")
            .withDefault("by flour"));
  }

  /** The proof asked for, if any. */
  public static Optional<ProofOptions> read(Arguments arguments, Optional<ClockTimes> clock) {
    arguments.exclusive(HOLD, BAKE_AT);
    needs(arguments, PROOF, PROOF_TEMP);
    needs(arguments, HOLD, COLD);
    needs(arguments, BAKE_AT, COLD);
    needsCold(arguments);
    if (!arguments.has(COLD) && !arguments.has(PROOF_TEMP)) {
      for (String option : List.of(REST, FORM, SHAPING, TARGET)) {
        refuseAlone(arguments, option);
      }
      if (!FormulaOptions.asksLoaves(arguments)) {
        refuseAlone(arguments, PIECE);
      }
      return Optional.empty();
    }
    UnaryOperator<Proof> details = details(arguments);
    if (!arguments.has(COLD)) {
      return Optional.of(new ProofOptions(List.of(details.apply(room(arguments)))));
    }
    List<Proof> ways = cold(arguments, clock).stream().map(details).toList();
    return Optional.of(new ProofOptions(ways));
  }

  private static void needsCold(Arguments arguments) {
    OF_COLD.forEach(option -> needs(arguments, option, COLD));
  }

  private static void needs(Arguments arguments, String option, String other) {
    arguments.needs(option, other, other.equals(COLD) ? "4C" : "24C");
  }

  private static void refuseAlone(Arguments arguments, String option) {
    if (arguments.has(option)) {
      throw new InputException(
          "--"
              + option
              + " is about the loaf after shaping: add how it proofs, for example --cold 4C --hold"
              + " 12h or --proof-temp 24C");
    }
  }

  private static Proof room(Arguments arguments) {
    return Proof.inRoom(arguments.temperature(PROOF_TEMP).orElseThrow(), proofHours(arguments));
  }

  private static double proofHours(Arguments arguments) {
    return arguments.hours(PROOF).orElse(USUAL_PROOF_HOURS);
  }

  private static List<Proof> cold(Arguments arguments, Optional<ClockTimes> clock) {
    Temperature cold = arguments.temperature(COLD).orElseThrow();
    if (arguments.has(HOLD)) {
      return List.of(Proof.inCold(cold, arguments.hours(HOLD).orElseThrow()));
    }
    String bakeAt =
        arguments
            .text(BAKE_AT)
            .orElseThrow(
                () ->
                    new InputException(
                        "--cold needs to know how long: add --hold 12h, or --bake-at 07:00"
                            + (clock.isPresent() ? "" : " with --mixed-at")));
    ClockTimes times =
        clock.orElseThrow(
            () ->
                new InputException(
                    "--bake-at needs the time of mixing: add for example --mixed-at 09:30"));
    List<Proof> ways = new ArrayList<>();
    for (double hours : times.hoursUntil("--" + BAKE_AT, bakeAt)) {
      ways.add(Proof.inColdUntil(cold, hours));
    }
    return ways;
  }

  private static UnaryOperator<Proof> details(Arguments arguments) {
    PieceForm form = arguments.form(FORM).orElse(PieceForm.ROUND);
    Optional<Mass> mass = arguments.mass(PIECE);
    Optional<Rise> target = arguments.rise(TARGET);
    Optional<Shaping> shaping = shaping(arguments);
    return plain -> {
      Proof proof = plain.withPiece(mass.orElse(plain.mass()), form);
      if (arguments.has(REST)) {
        proof = proof.withRest(arguments.hours(REST).orElseThrow());
      }
      if (arguments.has(COLD) && arguments.has(PROOF_TEMP)) {
        proof =
            proof.afterRoom(arguments.temperature(PROOF_TEMP).orElseThrow(), proofHours(arguments));
      }
      if (shaping.isPresent()) {
        proof = proof.shaped(shaping.get());
      }
      if (proof.coldPlace().isPresent()) {
        proof = proof.withCold(known(arguments, proof.coldPlace().get()));
      }
      return target.isPresent() ? proof.withTarget(target.get()) : proof;
    };
  }

  /** The cold of a temperature by the dial, with what else is said of it. */
  public static Optional<Cold> cold(Arguments arguments) {
    needsCold(arguments);
    return arguments.temperature(COLD).map(at -> known(arguments, Cold.byDial(at)));
  }

  private static Cold known(Arguments arguments, Cold cold) {
    Cold moved =
        FAN.equals(word(arguments, COLD_AIR, List.of("still", FAN)).orElse("still"))
            ? cold.moved(Air.MOVING)
            : cold;
    return arguments.has(COLD_MEASURED) ? moved.measured() : moved;
  }

  /** How firmly a loaf is handled, if that is said. */
  public static Optional<Shaping> shaping(Arguments arguments) {
    List<String> words = Arrays.stream(Shaping.values()).map(Shaping::key).toList();
    return word(arguments, SHAPING, words).map(word -> Shaping.values()[words.indexOf(word)]);
  }

  private static Optional<String> word(Arguments arguments, String option, List<String> words) {
    return arguments
        .text(option)
        .map(
            text ->
                words.stream()
                    .filter(word -> word.equals(text.strip().toLowerCase(Locale.ROOT)))
                    .findFirst()
                    .orElseThrow(
                        () ->
                            new InputException(
                                Quantities.shown("--" + option, text)
                                    + " is not known: use "
                                    + String.join(", ", words))));
  }

  /**
   * The proof that is meant: of several mornings the first at which a loaf can be ready.
   *
   * @param bulk the dough
   */
  public Proof chosen(RiseForecast bulk) {
    return ways.stream()
        .filter(way -> ways.size() == 1 || ShapeForecaster.of(bulk, way).isPossible())
        .findFirst()
        .orElse(ways.get(0));
  }

  /** A cold in words. */
  public static String words(Cold cold) {
    return words(cold, Speech.ENGLISH);
  }

  private static String words(Cold cold, Speech speech) {
    return speech.temperature(cold.stated()) + howWell(cold, speech);
  }

  /** How well the cold is known, and what its air likely is where that is not as stated. */
  private static String howWell(Cold cold, Speech speech) {
    double air = cold.stated().celsius() + cold.offsetCelsius();
    String known = " ± " + speech.rounded(cold.deviationCelsius(), 1) + " °C";
    return Math.abs(cold.offsetCelsius()) < 0.05
        ? known
        : ", " + speech.say("proof.air", Map.of("celsius", speech.rounded(air, 1))) + known;
  }

  /** The proof in English words, for the page. */
  public static String words(Proof proof) {
    return words(proof, Speech.ENGLISH);
  }

  /** The proof in words, for the page. */
  public static String words(Proof proof, Speech speech) {
    List<String> parts = new ArrayList<>();
    parts.add(
        speech.marked(Words.grams(proof.mass().grams()))
            + ", "
            + form(proof.form(), speech)
            + proof.shaping().map(how -> ", " + shaping(how, speech)).orElse(""));
    parts.add(speech.say("proof.rest", Map.of("hours", Words.duration(proof.restHours()))));
    proof
        .room()
        .map(
            room ->
                Map.of(
                    "hours", Words.duration(proof.roomHours()),
                    "temperature", speech.temperature(room)))
        .ifPresent(values -> parts.add(speech.say("proof.room", values)));
    proof
        .coldPlace()
        .map(
            cold -> Map.of("hours", Words.duration(proof.holdHours()), "cold", words(cold, speech)))
        .ifPresent(
            values ->
                parts.add(
                    speech.say(
                        proof.ovenHour().isEmpty() ? "proof.coldFor" : "proof.cold", values)));
    return speech.joined(parts);
  }

  /** In English as it is typed. */
  private static String form(PieceForm form, Speech speech) {
    return speech.equals(Speech.ENGLISH) ? form.key() : speech.words().named("form", form.key());
  }

  private static String shaping(Shaping how, Speech speech) {
    return speech.say("shaping." + how.name());
  }
}
