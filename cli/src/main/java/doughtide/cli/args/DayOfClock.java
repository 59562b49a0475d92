package doughtide.cli.args;

import doughtide.core.document.Vocabulary;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Turns a clock time whose day is told by a word into one with its date: {@code tomorrow 7:00},
 * {@code morgen um 7 Uhr} and {@code 7:00 demain} on 6 March are {@code 2027-03-07T07:00}.
 *
 * @param today the date on which it is typed, at the place whose clock is meant
 * @param vocabulary the words of other languages
 */
public record DayOfClock(LocalDate today, Vocabulary vocabulary) {

  private static final List<String> DAYS = List.of("yesterday", "today", "tomorrow");

  /** Small words between a day and its hour. */
  private static final Set<String> BETWEEN = Set.of("at", "um", "à", "a", "às", "as", "las", "la");

  /** Words for the next day that mean the morning as well. */
  private static final Set<String> MORNINGS = Set.of("morgen", "mañana", "manana");

  /** A day has a name of three letters or more. */
  private static final Pattern WORD = Pattern.compile("\\p{L}{3}");

  /** Whether a text may hold a word for a day. */
  public static boolean hasWord(String text) {
    return WORD.matcher(text).find();
  }

  /** Whether a word names one of the three days. */
  public static boolean isDay(String word, Vocabulary vocabulary) {
    return vocabulary.meant(Vocabulary.Kind.VALUE, word, DAYS).isPresent();
  }

  /** Whether it is a small word between a day and its hour. */
  public static boolean isBetween(String word) {
    return BETWEEN.contains(word);
  }

  /**
   * The text with dates instead of words for days; all else stays as it is.
   *
   * @param name what it is given for, for messages
   * @param text as typed: a time, what was done and when, or hours separated by commas
   * @throws InputException if there is a word for a day and no clock time
   */
  public String dated(String name, String text) {
    return Stream.of(text.split(",", -1))
        .map(piece -> datedPiece(name, piece))
        .collect(Collectors.joining(","));
  }

  private String datedPiece(String name, String piece) {
    List<String> words = Arrays.asList(Quantities.clean(piece).split(" "));
    for (int i = 0; i < words.size(); i++) {
      Optional<LocalDate> day = day(words.get(i));
      if (day.isPresent()) {
        return with(name, words, i, day.get());
      }
    }
    return piece;
  }

  private Optional<LocalDate> day(String word) {
    return Optional.of(word)
        .filter(DayOfClock::hasWord)
        .flatMap(each -> vocabulary.meant(Vocabulary.Kind.VALUE, each, DAYS))
        .map(key -> today.plusDays(DAYS.indexOf(key) - 1L));
  }

  private String with(String name, List<String> words, int place, LocalDate day) {
    String before = String.join(" ", words.subList(0, place));
    String after =
        words.stream()
            .skip(place + 1L)
            .dropWhile(DayOfClock::isBetween)
            .collect(Collectors.joining(" "));
    if (after.isEmpty() && ClockText.isClock(before)) {
      return at(day, before);
    }
    if (after.isEmpty()) {
      throw withoutClock(name, words.get(place), day);
    }
    String[] hours = after.split(" ?[-–] ?", -1);
    boolean span = hours.length == 2 && Arrays.stream(hours).allMatch(ClockText::isClock);
    return (before + " " + (span ? span(name, day, hours) : at(day, after))).strip();
  }

  private static String at(LocalDate day, String clock) {
    return day + "T" + clock;
  }

  /** Hours that end before they begin end on the next day. */
  private static String span(String name, LocalDate day, String[] hours) {
    LocalTime from = ClockText.time(name, hours[0]);
    LocalTime to = ClockText.time(name, hours[1]);
    LocalDate last = to.isAfter(from) ? day : day.plusDays(1);
    return day + "T" + from + "/" + last + "T" + to;
  }

  private InputException withoutClock(String name, String word, LocalDate day) {
    String typed = Quantities.shown(name, word);
    if (MORNINGS.contains(Vocabulary.plain(word))) {
      return new InputException(
          "time.two-ways",
          typed
              + " can be read two ways, the next day or the morning: write "
              + word
              + " 07:00 for an hour of "
              + day
              + ", or 07:00");
    }
    return new InputException(
        "time.day-alone",
        typed + " is a day without an hour: write for example " + word + " 07:00");
  }
}
