package doughtide.cli.hand;

import doughtide.cli.args.DayOfClock;
import doughtide.core.document.Vocabulary;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Nearest;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import doughtide.report.words.TradeVocabulary;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;

/** What is noted of a dough, in the words that were typed. */
public final class NoteWords {

  /** What a word is. */
  private enum Kind {
    NOW,
    TIME,
    RISE,
    HEIGHT,
    TEMPERATURE,
    CORE,
    PH,
    SHAPED,
    COLD,
    FOLD,
    RESULT,
    NUMBER
  }

  private static final Set<Kind> HAPPENS = EnumSet.of(Kind.FOLD, Kind.SHAPED, Kind.COLD);

  private static final String NUMBER = "[0-9]{1,4}(?:[.,][0-9]{1,3})?";
  private static final Pattern UNIT =
      Pattern.compile("(?i)%|percent|mm|cm|in|°?[cf]|am|pm|a\\.m\\.|p\\.m\\.|uhr|o'clock");
  private static final Pattern BEFORE_UNIT =
      Pattern.compile("(core ?|(yesterday|today|tomorrow) )?[0-9][0-9.,:h]*");
  private static final List<String> WORDS =
      List.of(
          "now",
          "fold",
          "shaped",
          "core",
          "into-cold",
          "cold",
          "result",
          "yesterday",
          "today",
          "tomorrow");

  private final Optional<String> name;
  private final Map<Kind, String> given;
  private final List<String> rest;

  private NoteWords(Optional<String> name, Map<Kind, String> given, List<String> rest) {
    this.name = name;
    this.given = given;
    this.rest = List.copyOf(rest);
  }

  /** A word in the words of this program that alone says something to note, so names no dough. */
  public static Optional<String> understood(String word) {
    return Optional.of(word(word)).filter(meant -> kind(meant).isPresent());
  }

  /** A word of another language in the words of this program. */
  private static String word(String typed) {
    String clean = Quantities.clean(typed);
    return kind(clean).isPresent()
        ? clean
        : TradeVocabulary.ofAllLanguages().meant(Vocabulary.Kind.VALUE, clean, WORDS).orElse(clean);
  }

  /**
   * Reads the words.
   *
   * @throws InputException if one cannot be used, or says the same as another
   */
  public static NoteWords of(List<String> typed) {
    List<String> words = joined(typed);
    boolean named = !words.isEmpty() && kind(words.get(0)).isEmpty();
    Optional<String> name = named ? Optional.of(words.get(0)) : Optional.empty();
    List<String> said = words.subList(named ? 1 : 0, words.size());
    Map<Kind, String> given = new EnumMap<>(Kind.class);
    for (int i = 0; i < said.size(); i++) {
      String wrong = named && Nearest.to(words.get(0), WORDS).isPresent() ? words.get(0) : "";
      boolean behindWhat = i == 1 && given.keySet().stream().anyMatch(HAPPENS::contains);
      Kind kind = kind(i, said.get(i), wrong, behindWhat);
      if (given.put(kind, said.get(i)) != null) {
        throw new InputException(
            shown(said.get(i)) + " says a thing that was said before: say each once");
      }
      if (kind == Kind.RESULT) {
        return new NoteWords(name, given, typed.subList(afterResult(typed), typed.size()));
      }
    }
    return new NoteWords(name, given, List.of());
  }

  private static int afterResult(List<String> typed) {
    int at = 0;
    while (!kind(word(typed.get(at))).equals(Optional.of(Kind.RESULT))) {
      at++;
    }
    return at + 1;
  }

  /** A number and its unit may be typed apart. */
  private static List<String> joined(List<String> typed) {
    List<String> words = new ArrayList<>();
    for (String word : typed) {
      String clean = word(word);
      int last = words.size() - 1;
      boolean unit =
          last >= 0
              && UNIT.matcher(clean).matches()
              && BEFORE_UNIT.matcher(words.get(last)).matches();
      boolean ph = last >= 0 && words.get(last).equalsIgnoreCase("ph") && clean.matches(NUMBER);
      boolean core = last >= 0 && words.get(last).equalsIgnoreCase("core");
      if (core && clean.matches("(?i)" + NUMBER + " ?(°?[cf])?")) {
        words.set(last, "core " + clean);
      } else if (last >= 0 && isDay(words.get(last)) && isHour(clean)) {
        words.set(last, words.get(last) + (DayOfClock.isBetween(clean) ? "" : " " + clean));
      } else if (last >= 0 && words.get(last).equalsIgnoreCase("into") && clean.equals("cold")) {
        words.set(last, "into-cold");
      } else if (unit || ph) {
        words.set(last, words.get(last) + (clean.startsWith("o") ? " " : "") + clean);
      } else {
        words.add(clean);
      }
    }
    return words;
  }

  private static boolean isDay(String word) {
    return DayOfClock.isDay(word, Vocabulary.KEYS_ONLY);
  }

  /** Whether it tells the hour of the day before it. */
  private static boolean isHour(String word) {
    return DayOfClock.isBetween(word) || ClockText.isClock(word);
  }

  /**
   * A clock time stands first, or behind what happened then; a bare number elsewhere lacks its
   * unit.
   */
  private static Kind kind(int place, String word, String wrong, boolean behindWhat) {
    Kind kind = kind(word).orElseThrow(() -> notUnderstood(wrong.isEmpty() ? word : wrong));
    if (kind == Kind.NUMBER && place == 0 && Double.parseDouble(word.replace(',', '.')) <= 24) {
      ClockText.time("TIME", word); // tells the two ways in which it can be read
    }
    if (kind == Kind.NUMBER || (kind == Kind.TIME && place > 0 && !behindWhat)) {
      throw new InputException(
          shown(word)
              + (kind == Kind.TIME && !word.matches(NUMBER)
                  ? " is a time: it stands first, for example 13:30 44% 24C"
                  : " needs its unit: write for example 44% risen, 78mm high or 24C warm"));
    }
    return kind;
  }

  private static InputException notUnderstood(String word) {
    return new InputException(
        shown(word)
            + " is not understood: "
            + Nearest.to(word.toLowerCase(Locale.ROOT), WORDS)
                .map(near -> "did you mean " + near + "?")
                .orElse(
                    "write for example 13:30 44% 24C, 78mm, fold, shaped, core 12C or result"
                        + " under"));
  }

  private static Optional<Kind> kind(String word) {
    String lower = word.toLowerCase(Locale.ROOT);
    switch (lower) {
      case "now":
        return Optional.of(Kind.NOW);
      case "fold", "folded":
        return Optional.of(Kind.FOLD);
      case "shaped", "shape":
        return Optional.of(Kind.SHAPED);
      case "into-cold", "cold":
        return Optional.of(Kind.COLD);
      case "result":
        return Optional.of(Kind.RESULT);
      default:
        break;
    }
    if (isDay(lower.split(" ", 2)[0])) {
      return Optional.of(Kind.TIME);
    }
    if (lower.matches(NUMBER + " ?(%|percent)")) {
      return Optional.of(Kind.RISE);
    }
    if (lower.matches(NUMBER + " ?(mm|cm|in)")) {
      return Optional.of(Kind.HEIGHT);
    }
    if (lower.matches(NUMBER + " ?°?[cf]")) {
      return Optional.of(Kind.TEMPERATURE);
    }
    if (lower.matches("core( ?" + NUMBER + " ?°?[cf])?")) {
      return Optional.of(Kind.CORE);
    }
    if (lower.matches("ph ?[:=]?" + NUMBER)) {
      return Optional.of(Kind.PH);
    }
    return time(lower);
  }

  /** Digits that are no hour of the clock are a number whose unit is missing. */
  private static Optional<Kind> time(String word) {
    if (word.matches(NUMBER) && Double.parseDouble(word.replace(',', '.')) > 24) {
      return Optional.of(word.matches("[0-9]{4}") ? Kind.TIME : Kind.NUMBER);
    }
    boolean time = ClockText.isClock(word) || ClockText.isDated(word);
    return time
        ? Optional.of(Kind.TIME)
        : word.matches(NUMBER) ? Optional.of(Kind.NUMBER) : Optional.empty();
  }

  private static String shown(String word) {
    return "'" + Shorten.to(word, 40) + "'";
  }

  /** The dough, if one was named. */
  public Optional<String> name() {
    return name;
  }

  /** Whether nothing is noted. */
  public boolean isEmpty() {
    return given.keySet().stream().allMatch(kind -> kind == Kind.TIME || kind == Kind.NOW);
  }

  /** Whether it tells how the loaf came out. */
  public boolean isResult() {
    return given.containsKey(Kind.RESULT);
  }

  /** When, as typed but with its day in English; nothing for now. */
  public Optional<String> time() {
    return text(Kind.TIME);
  }

  /** The rise, as typed. */
  public Optional<String> rise() {
    return text(Kind.RISE);
  }

  /** The height of the sample, as typed. */
  public Optional<String> height() {
    return text(Kind.HEIGHT);
  }

  /** The dough's temperature, °C. */
  public OptionalDouble celsius() {
    Optional<String> text = text(Kind.TEMPERATURE);
    return text.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(Quantities.temperature("dough temp", text.get()).celsius());
  }

  /** The temperature in the middle of the loaf, °C. */
  public OptionalDouble core() {
    Optional<String> text = text(Kind.CORE);
    return text.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            Quantities.temperature("core", text.get().substring("core".length())).celsius());
  }

  /** Whether the loaf was shaped. */
  public boolean shaped() {
    return given.containsKey(Kind.SHAPED);
  }

  /** Whether the loaf went into the cold. */
  public boolean intoCold() {
    return given.containsKey(Kind.COLD);
  }

  /** The pH. */
  public OptionalDouble ph() {
    Optional<String> text = text(Kind.PH);
    return text.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            Quantities.number("pH", text.get().replaceFirst("(?i)^ph ?[:=]?", ""), 3, 7.5));
  }

  /** Whether the dough was folded. */
  public boolean folded() {
    return given.containsKey(Kind.FOLD);
  }

  /** The words after {@code result}. */
  public List<String> result() {
    return rest;
  }

  private Optional<String> text(Kind kind) {
    return Optional.ofNullable(given.get(kind));
  }
}
