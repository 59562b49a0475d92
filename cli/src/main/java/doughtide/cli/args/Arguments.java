package doughtide.cli.args;

import doughtide.core.document.Catalogue;
import doughtide.core.document.TypedValues;
import doughtide.core.dough.Flour;
import doughtide.core.dough.StarterCondition;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Nearest;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.ShellWord;
import doughtide.core.quantity.Shorten;
import doughtide.core.quantity.Temperature;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.BinaryOperator;

/** What was given to a command: by option name, as text or as a quantity. */
public final class Arguments implements TypedValues {

  private static final String YES = "yes";

  private final CommandSpec spec;
  private final Map<String, List<String>> values;
  private final List<String> operands;
  private final Catalogue catalogue;
  private final Set<String> asked = new HashSet<>();
  private final Set<String> defaults = new HashSet<>();
  private final Set<String> notes;
  private final Set<String> ofParts = new LinkedHashSet<>();
  private boolean isKitchenTold;

  /**
   * @param spec what the command accepts
   * @param values as typed, by option
   * @param operands the words after the options
   * @param catalogue what can be named
   */
  public Arguments(
      CommandSpec spec,
      Map<String, List<String>> values,
      List<String> operands,
      Catalogue catalogue) {
    this(spec, values, operands, catalogue, new LinkedHashSet<>());
  }

  private Arguments(
      CommandSpec spec,
      Map<String, List<String>> values,
      List<String> operands,
      Catalogue catalogue,
      Set<String> notes) {
    this.spec = spec;
    this.values = Map.copyOf(values);
    this.operands = List.copyOf(operands);
    this.catalogue = catalogue;
    this.notes = notes;
  }

  /** The same, in which some of the values were not given but stand in for what was not. */
  Arguments withDefaults(Collection<String> options) {
    defaults.addAll(options);
    return this;
  }

  /**
   * The same, in which the values of a document stand as if they had been given, unless others
   * were; what stands in for options that were not given is looked for anew.
   *
   * @param document by key, the keys that are no options of the command are left out
   * @param standIns gives what stands in, by the command's options and what was given
   */
  public Arguments beside(
      Map<String, String> document,
      BiFunction<CommandSpec, Map<String, List<String>>, Map<String, List<String>>> standIns) {
    Map<String, List<String>> all = new LinkedHashMap<>();
    values.forEach(
        (option, texts) -> {
          if (!defaults.contains(option)) {
            all.put(option, texts);
          }
        });
    document.forEach(
        (key, text) -> {
          boolean takesValue = offers(key) && spec.option(key).takesValue();
          boolean meant = takesValue || (offers(key) && text.equals(YES));
          if (meant) {
            all.putIfAbsent(key, List.of(takesValue ? text : ""));
          }
        });
    Map<String, List<String>> added = standIns.apply(spec, all);
    all.putAll(added);
    Arguments beside = new Arguments(spec, all, operands, catalogue, notes);
    return beside.withDefaults(added.keySet());
  }

  /**
   * The same with other values.
   *
   * @param changed new values by option
   * @param without options that are taken as not given, unless they are changed
   */
  public Arguments with(Map<String, String> changed, Collection<String> without) {
    Map<String, List<String>> all = new LinkedHashMap<>(values);
    all.keySet().removeAll(without);
    changed.forEach((option, text) -> all.put(option, List.of(text)));
    return new Arguments(spec, all, operands, catalogue, notes);
  }

  /**
   * The same with the values of some options written otherwise.
   *
   * @param how gives the value, by option and as typed
   */
  public Arguments rewritten(Collection<String> options, BinaryOperator<String> how) {
    Map<String, List<String>> all = new LinkedHashMap<>(values);
    all.replaceAll(
        (option, texts) ->
            options.contains(option)
                ? texts.stream().map(text -> how.apply(option, text)).toList()
                : texts);
    return new Arguments(spec, all, operands, catalogue, notes).withDefaults(defaults);
  }

  /** The values of options that another command has as well, as if they were given to that. */
  public Arguments as(CommandSpec other) {
    Map<String, List<String>> shared = new LinkedHashMap<>();
    values.forEach(
        (option, texts) -> {
          if (other.has(option)) {
            shared.put(option, texts);
          }
        });
    Arguments as = new Arguments(other, shared, operands, catalogue, notes);
    return as.withDefaults(defaults.stream().filter(shared::containsKey).toList());
  }

  /** Keeps a line to be told beside the answer. */
  public void note(String line) {
    notes.add(line);
  }

  /** What is to be told beside the answer, each once. */
  public List<String> notes() {
    return List.copyOf(notes);
  }

  /**
   * What was not given, stands in for an option and was asked for, as {@code room 19C}; then the
   * same of the parts.
   */
  public List<String> fromKitchen() {
    Set<String> told = new LinkedHashSet<>();
    for (OptionSpec each : spec.options()) {
      String option = each.name();
      if (defaults.contains(option) && asked.contains(option)) {
        told.add((option + " " + String.join(", ", values.get(option))).strip());
      }
    }
    told.addAll(ofParts);
    return List.copyOf(told);
  }

  /** The same, for the one line of an answer in text that tells it; nothing once it was told. */
  public List<String> tellKitchen() {
    List<String> told = isKitchenTold ? List.of() : fromKitchen();
    isKitchenTold = isKitchenTold || !told.isEmpty();
    return told;
  }

  /** Takes over what a part, such as one dough of several, noted and has from the kitchen. */
  public void part(Arguments part) {
    notes.addAll(part.notes);
    ofParts.addAll(part.fromKitchen());
  }

  /** What can be named. */
  public Catalogue catalogue() {
    return catalogue;
  }

  /** The words after the options. */
  public List<String> operands() {
    return operands;
  }

  /** Whether the option was given. */
  public boolean has(String option) {
    asked.add(option);
    return values.containsKey(spec.option(option).name());
  }

  /** Whether the option was given, and not what stands in for it; that is not used by asking. */
  public boolean given(String option) {
    return !defaults.contains(option) && has(option);
  }

  /** Whether the command has the option at all. */
  public boolean offers(String option) {
    return spec.has(option);
  }

  /** All values of an option that may be repeated. */
  public List<String> all(String option) {
    asked.add(option);
    return values.getOrDefault(spec.option(option).name(), List.of());
  }

  /** The value as typed. */
  @Override
  public Optional<String> text(String option) {
    List<String> all = all(option);
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(0));
  }

  public Optional<Temperature> temperature(String option) {
    return text(option).map(text -> Quantities.temperature(typed(option), text));
  }

  public Optional<TemperatureSteps> temperatureSteps(String option) {
    return text(option).map(text -> TemperatureSteps.parse(typed(option), text));
  }

  public Optional<Share> share(String option) {
    return text(option).map(text -> Quantities.share(typed(option), text));
  }

  public Optional<Rise> rise(String option) {
    return text(option).map(text -> Quantities.rise(typed(option), text));
  }

  public Optional<Mass> mass(String option) {
    return text(option).map(text -> Quantities.mass(typed(option), text));
  }

  /** A flour or a mix. */
  public Optional<Flour> flour(String option) {
    return text(option).map(text -> catalogue.flour(typed(option), text));
  }

  public Optional<PieceForm> form(String option) {
    return text(option).map(text -> catalogue.form(typed(option), text));
  }

  public Optional<StarterCondition> condition(String option) {
    return text(option).map(text -> catalogue.condition(typed(option), text));
  }

  public Optional<Altitude> altitude(String option) {
    return text(option).map(text -> Quantities.altitude(typed(option), text));
  }

  /** A duration in hours. */
  public OptionalDouble hours(String option) {
    Optional<String> text = text(option);
    return text.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(Quantities.hours(typed(option), text.get()));
  }

  /** A whole number inside a range. */
  public Optional<Integer> count(String option, int least, int most) {
    return text(option).map(text -> Quantities.count(typed(option), text, least, most));
  }

  /**
   * One of several words, upper or lower case, with a space, dash or underscore between words.
   *
   * @param option its name
   * @param choices the enum whose constants are the words
   */
  public <E extends Enum<E>> Optional<E> choice(String option, Class<E> choices) {
    return text(option).map(text -> chosen(option, text, choices));
  }

  private <E extends Enum<E>> E chosen(String option, String text, Class<E> choices) {
    String wanted = Quantities.clean(text).toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
    E[] constants = choices.getEnumConstants();
    List<String> words = Arrays.stream(constants).map(Arguments::word).toList();
    int index = words.indexOf(wanted);
    if (index >= 0) {
      return constants[index];
    }
    String hint = Nearest.to(wanted, words).map(near -> " (did you mean " + near + "?)").orElse("");
    throw new InputException(
        typed(option)
            + " "
            + ShellWord.of(Shorten.to(text, 40))
            + " is not known: use "
            + String.join(", ", words)
            + hint);
  }

  /** A constant as a person types it. */
  public static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** Refuses two options that say the same thing. */
  public void exclusive(String first, String second) {
    if (has(first) && has(second)) {
      throw new InputException(
          typed(first) + " and " + typed(second) + " exclude each other: give one of them");
    }
  }

  /**
   * Refuses an option that says nothing without another.
   *
   * @param example of the other's value
   */
  public void needs(String option, String other, String example) {
    if (has(option) && !has(other)) {
      throw alone(option, other, example);
    }
  }

  /** The refusal of an option that says nothing without another. */
  public static InputException alone(String option, String other, String example) {
    return new InputException(
        "--%s says nothing without --%s: add for example --%s %s"
            .formatted(option, other, other, example));
  }

  /** The value of an option without which the command makes no sense. */
  public InputException missing(String option) {
    OptionSpec missing = spec.option(option);
    return new InputException(
        missing.typed() + " is missing: write for example " + missing.typedExample());
  }

  /**
   * A refusal with the option before it that gave its quantity, if one did and the sentence names
   * neither an option nor a file.
   *
   * @param refusal from the library
   */
  public InputException about(InputException refusal) {
    String sentence = String.valueOf(refusal.getMessage());
    if (sentence.startsWith("'") || sentence.contains("--")) {
      return refusal;
    }
    return OptionsOfKeys.of(refusal.key()).stream()
        .filter(values::containsKey)
        .findFirst()
        .map(option -> refusal.inWords(shown(option) + ": " + sentence))
        .orElse(refusal);
  }

  /**
   * A sentence behind the options it is about, each as it was given; those not given are left out.
   */
  public String behind(List<String> options, String sentence) {
    List<String> given = options.stream().filter(values::containsKey).map(this::shown).toList();
    return given.isEmpty() ? sentence : String.join(", ", given) + ": " + sentence;
  }

  private String shown(String option) {
    String value = String.join(" ", values.getOrDefault(option, List.of()));
    return typed(option) + " " + ShellWord.of(Shorten.to(value, 40));
  }

  /**
   * Refuses options that were given and that nothing has asked for: they would change nothing, and
   * their values have not been checked.
   *
   * @param what to which they say nothing
   * @throws InputException if there is one
   */
  public void refuseUnasked(String what) {
    for (OptionSpec option : spec.options()) {
      boolean given = values.containsKey(option.name()) && !defaults.contains(option.name());
      if (given && !asked.contains(option.name())) {
        throw new InputException(option.typed() + " says nothing to " + what + ": leave it out");
      }
    }
  }

  @Override
  public String label(String option) {
    return typed(option);
  }

  private String typed(String option) {
    return spec.option(option).typed();
  }
}
