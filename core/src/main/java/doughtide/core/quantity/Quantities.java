package doughtide.core.quantity;

import doughtide.core.Internal;
import java.io.Serializable;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads quantities as people write them: decimal point or comma, a space before the unit or none,
 * any digits Unicode knows. A number without its unit is refused with the line that would be right.
 */
@Internal
public final class Quantities {

  private static final int LONGEST = 60;
  private static final String QUOTES = "\"'“”„‟‘’‚«»`";

  private static final Pattern SPACES = Pattern.compile(" +");
  private static final Pattern DEGREE = Pattern.compile("[°º˚\uFFFD]|deg(rees?)? ?");
  private static final Pattern MEASURE =
      Pattern.compile("([+-]?[0-9]{1,9}(?:[.,][0-9]{1,18})?|[+-]?[.,][0-9]{1,18}) ?([^0-9+.,-]*)");
  private static final Pattern TWO_WAYS = Pattern.compile("[+-]?[1-9][0-9]{0,2},[0-9]{3}");
  private static final Pattern HOURS_MINUTES =
      Pattern.compile("([0-9]{1,4}) ?(?:h|hrs?|hours?|:) ?([0-9]{1,2}) ?(?:m|mins?|minutes?|h)?");
  private static final Pattern RATIO =
      Pattern.compile("([0-9.,]{1,12})([:/ –-])([0-9.,]{1,12})\\2([0-9.,]{1,12})");
  private static final Pattern POUNDS_OUNCES =
      Pattern.compile("([0-9]{1,3}) ?lbs? ([0-9]{1,3}(?:[.,][0-9]{1,3})?) ?oz");
  private static final Pattern COUNT = Pattern.compile("[0-9]{1,9}");

  private static final double GRAMS_PER_OUNCE = 28.349523125; // exact, international avoirdupois
  private static final double GRAMS_PER_POUND = 453.59237; // exact
  private static final double METRES_PER_FOOT = 0.3048; // exact

  private static final double MILLIMETRES_PER_INCH = 25.4; // exact
  private static final double LOWEST_MM = 5;
  private static final double HIGHEST_MM = 1000;

  /** Longest duration: 30 days; nothing here is planned further ahead. */
  private static final double MOST_HOURS = 720;

  /** Above this a bare number for a temperature is more likely meant in °F. */
  private static final double LIKELY_FAHRENHEIT = 45;

  private Quantities() {}

  /** A temperature: {@code 25C}, {@code 25 °C}, {@code 76F}. */
  public static Temperature temperature(String name, String text) {
    Measure given = measure(name, text, "a temperature", "25C (or 77F)");
    String unit = DEGREE.matcher(given.unit()).replaceAll("").strip();
    return switch (unit.toUpperCase(Locale.ROOT)) {
      case "C", "CELSIUS" -> named(name, text, () -> Temperature.ofCelsius(given.value()));
      case "F", "FAHRENHEIT" -> named(name, text, () -> Temperature.ofFahrenheit(given.value()));
      case "" -> throw noUnit(name, text, temperatureWithUnit(given));
      default -> throw unknownUnit(name, text, given, "C or F", "25C (or 77F)");
    };
  }

  private static String temperatureWithUnit(Measure given) {
    double celsius = given.value();
    if (!(celsius >= -60 && celsius <= 300)) {
      return "25C (or 77F)";
    }
    if (celsius > LIKELY_FAHRENHEIT) {
      return given.number() + "F (or " + round(Temperature.ofFahrenheit(celsius).celsius()) + "C)";
    }
    return given.number() + "C (or " + round(Temperature.ofCelsius(celsius).fahrenheit()) + "F)";
  }

  /** A share in per cent: {@code 20%}. */
  public static Share share(String name, String text) {
    return named(name, text, () -> Share.ofPercent(percent(name, text)));
  }

  /** A rise in per cent: {@code 75%}. */
  public static Rise rise(String name, String text) {
    return named(name, text, () -> Rise.ofPercent(percent(name, text)));
  }

  private static double percent(String name, String text) {
    Measure given = measure(name, text, "a share in per cent", "20%");
    return switch (given.unit().toLowerCase(Locale.ROOT)) {
      case "%", "percent", "per cent" -> given.value();
      case "" -> throw noUnit(name, text, percentWithUnit(given));
      default -> throw unknownUnit(name, text, given, "%", "20%");
    };
  }

  /** 0.2 may be meant as a fraction, so both readings are shown. */
  private static String percentWithUnit(Measure given) {
    String asTyped = given.number() + "%";
    boolean fraction = given.value() > 0 && given.value() <= 1;
    return fraction ? round(given.value() * 100) + "% (or " + asTyped + ")" : asTyped;
  }

  /** A mass: {@code 850g}, {@code 1.2kg}, {@code 30oz}, {@code 2lb}. */
  public static Mass mass(String name, String text) {
    Matcher both = POUNDS_OUNCES.matcher(limited(name, text).toLowerCase(Locale.ROOT));
    if (both.matches()) {
      double ounces = Double.parseDouble(both.group(2).replace(',', '.'));
      double pounds = Integer.parseInt(both.group(1));
      return Mass.ofGrams(pounds * GRAMS_PER_POUND + ounces * GRAMS_PER_OUNCE);
    }
    Measure given = measure(name, text, "a mass", "850g");
    double gramsPerUnit =
        switch (given.unit().toLowerCase(Locale.ROOT)) {
          case "g", "gram", "grams" -> 1;
          case "kg" -> 1000;
          case "oz" -> GRAMS_PER_OUNCE;
          case "lb", "lbs" -> GRAMS_PER_POUND;
          case "" -> throw noUnit(name, text, given.number() + (given.value() < 10 ? "kg" : "g"));
          default -> throw unknownUnit(name, text, given, "g, kg, oz or lb", "850g");
        };
    if (!(given.value() > 0)) {
      throw new InputException("mass.none", shown(name, text) + " is no mass: give more than 0 g");
    }
    return named(name, text, () -> Mass.ofGrams(given.value() * gramsPerUnit));
  }

  /** A height above the sea: {@code 1500m}, {@code 5000ft}. */
  public static Altitude altitude(String name, String text) {
    Measure given = measure(name, text, "a height", "1500m (or 4921ft)");
    return switch (given.unit().toLowerCase(Locale.ROOT)) {
      case "m" -> named(name, text, () -> Altitude.ofMetres(given.value()));
      case "ft" -> named(name, text, () -> Altitude.ofMetres(given.value() * METRES_PER_FOOT));
      case "" ->
          throw noUnit(
              name,
              text,
              given.number() + "m (or " + Math.round(given.value() / METRES_PER_FOOT) + "ft)");
      default -> throw unknownUnit(name, text, given, "m or ft", "1500m");
    };
  }

  /** A height of dough in a jar, mm, 5…1000: {@code 52 mm}, {@code 5.2 cm}, {@code 2in}. */
  public static double millimetres(String name, String text) {
    Measure given = measure(name, text, "a height", "52 mm");
    double scale =
        switch (given.unit().toLowerCase(Locale.ROOT)) {
          case "mm" -> 1;
          case "cm" -> 10;
          case "in" -> MILLIMETRES_PER_INCH;
          default ->
              throw new InputException(
                  "height.unit",
                  shown(name, text) + " needs mm, cm or in: write for example 52 mm");
        };
    return Checks.inRange(name, given.value() * scale, LOWEST_MM, HIGHEST_MM, "mm");
  }

  /** A duration in hours, 0…720: {@code 90min}, {@code 12h}, {@code 1h30}, {@code 2d}. */
  public static double hours(String name, String text) {
    String clean = limited(name, text);
    Matcher both = HOURS_MINUTES.matcher(clean.toLowerCase(Locale.ROOT));
    double hours =
        both.matches()
            ? Integer.parseInt(both.group(1)) + minutes(name, text, both.group(2)) / 60.0
            : hoursInOneUnit(name, text);
    return Checks.inRange(shown(name, text) + ":", hours, 0, MOST_HOURS, "h");
  }

  private static int minutes(String name, String text, String digits) {
    int minutes = Integer.parseInt(digits);
    if (minutes > 59) {
      throw new InputException(
          "duration.minutes",
          shown(name, text) + " has " + minutes + " minutes, at most 59: write 90min or 1h30");
    }
    return minutes;
  }

  private static double hoursInOneUnit(String name, String text) {
    Measure given = measure(name, text, "a duration", "12h (or 1h30, 90min)");
    return switch (given.unit().toLowerCase(Locale.ROOT)) {
      case "h", "hr", "hrs", "hour", "hours" -> given.value();
      case "m", "min", "mins", "minute", "minutes" -> given.value() / 60;
      case "s", "sec", "second", "seconds" -> given.value() / 3600;
      case "d", "day", "days" -> given.value() * 24;
      case "" -> throw noUnit(name, text, durationWithUnit(given));
      default -> throw unknownUnit(name, text, given, "h, min or d", "12h");
    };
  }

  private static String durationWithUnit(Measure given) {
    return given.value() <= 24
        ? given.number() + "h (or " + round(given.value() * 60) + "min)"
        : given.number() + "min (or " + round(given.value() / 60) + "h)";
  }

  /** A plain number without unit, such as a dough yield of 170. */
  public static double number(String name, String text, double low, double high) {
    Measure given = measure(name, text, "a number", Checks.plain((low + high) / 2));
    if (!given.unit().isEmpty()) {
      throw new InputException(
          "number.unit",
          shown(name, text) + " takes no unit: write " + name + " " + given.number());
    }
    return Checks.inRange(name, given.value(), low, high, "");
  }

  /** A day as ISO 8601 writes it: {@code 2027-03-06}. */
  public static LocalDate date(String name, String text) {
    try {
      return LocalDate.parse(clean(text));
    } catch (DateTimeException e) {
      throw new InputException(
          "date.none", shown(name, text) + " is not a date: write for example 2027-03-06");
    }
  }

  /**
   * Reads the name of a zone.
   *
   * @param name the option, for messages
   * @param text for example {@code Europe/Berlin}, {@code UTC} or {@code +01:00}
   */
  public static ZoneId zone(String name, String text) {
    String clean = clean(text);
    try {
      return ZoneId.of(clean);
    } catch (DateTimeException e) {
      String wanted = clean.replace(' ', '_');
      return zones().stream()
          .filter(id -> id.equalsIgnoreCase(wanted))
          .findFirst()
          .map(ZoneId::of)
          .orElseThrow(() -> unknownZone(name, text, clean));
    }
  }

  private static List<String> zones() {
    return ZoneId.getAvailableZoneIds().stream().sorted().toList();
  }

  private static InputException unknownZone(String name, String text, String clean) {
    String hint =
        Nearest.to(clean, zones())
            .map(near -> "did you mean " + near + "?")
            .orElse("write for example " + name + " Europe/Berlin or " + name + " UTC");
    return new InputException(
        "zone.unknown", shown(name, text) + " is no zone known here: " + hint);
  }

  /** A whole number. */
  public static int count(String name, String text, int least, int most) {
    String clean = limited(name, text);
    if (!COUNT.matcher(clean).matches()) {
      throw new InputException(
          "count.none",
          shown(name, text) + " is not a whole number: give one from " + least + " to " + most);
    }
    return (int) Checks.inRange(name, Integer.parseInt(clean), least, most, "");
  }

  /**
   * Parts of a feed.
   *
   * @param starter parts of starter kept, more than 0
   * @param flour parts of flour, more than 0
   * @param water parts of water, 0 or more
   */
  @Internal
  public record FeedRatio(double starter, double flour, double water) implements Serializable {}

  /** A feed as starter : flour : water, for example {@code 1:5:5}. */
  public static FeedRatio feedRatio(String name, String text) {
    Matcher parts = RATIO.matcher(limited(name, text).replaceAll(" ?([:/–-]) ?", "$1"));
    if (!parts.matches()) {
      throw new InputException(
          "feed.none",
          shown(name, text)
              + " is not a feed: write three numbers starter:flour:water, for example "
              + name
              + " 1:5:5");
    }
    return new FeedRatio(
        part(name, text, parts.group(1), 1e-3),
        part(name, text, parts.group(3), 1e-3),
        part(name, text, parts.group(4), 0));
  }

  private static double part(String name, String text, String digits, double least) {
    Measure given = measure(name, digits, "a number", "1:5:5");
    return Checks.inRange(shown(name, text) + ": part", given.value(), least, 1000, "");
  }

  /**
   * Splits a number from its unit.
   *
   * @param name the option or column, for messages
   * @param text as typed
   * @param kind what is expected, in words
   * @param example a value that is right
   */
  public static Measure measure(String name, String text, String kind, String example) {
    Matcher parts = MEASURE.matcher(limited(name, text));
    if (!parts.matches()) {
      throw new InputException(
          "value.none",
          shown(name, text) + " is not " + kind + ": write for example " + name + " " + example);
    }
    String number = parts.group(1);
    String unit = parts.group(2).strip();
    if (TWO_WAYS.matcher(number).matches()) {
      throw twoWays(name, text, number, unit);
    }
    String pointed = number.replace(',', '.');
    return new Measure(pointed, Double.parseDouble(pointed), unit);
  }

  private static InputException twoWays(String name, String text, String number, String unit) {
    return new InputException(
        "number.two-ways",
        shown(name, text)
            + " can be read two ways: write "
            + number.replace(",", "")
            + unit
            + " or "
            + number.replace(',', '.')
            + unit);
  }

  private static String limited(String name, String text) {
    String clean = clean(text);
    if (clean.isEmpty()) {
      throw new InputException("value.empty", name + " is empty: give a value");
    }
    if (clean.length() > LONGEST) {
      throw new InputException(
          "value.too-long",
          shown(name, text) + " is too long: at most " + LONGEST + " characters are read");
    }
    return clean;
  }

  /**
   * The text with plain digits, plain spaces, a plain minus and percent sign, and without quotes
   * around it.
   *
   * @param text as typed
   */
  public static String clean(String text) {
    StringBuilder clean = new StringBuilder(text.length());
    text.codePoints().forEach(c -> appendPlain(clean, c));
    String stripped = SPACES.matcher(clean).replaceAll(" ").strip();
    while (stripped.length() > 1 && quoted(stripped)) {
      stripped = stripped.substring(1, stripped.length() - 1).strip();
    }
    return stripped;
  }

  private static boolean quoted(String text) {
    return QUOTES.indexOf(text.charAt(0)) >= 0
        && QUOTES.indexOf(text.charAt(text.length() - 1)) >= 0;
  }

  private static void appendPlain(StringBuilder clean, int c) {
    if (c < 0x80) {
      clean.append(c == '\t' ? ' ' : (char) c);
    } else if (Character.isDigit(c)) {
      clean.append((char) ('0' + Character.digit(c, 10)));
    } else if (Character.isSpaceChar(c)) {
      clean.append(' ');
    } else if (Character.getType(c) != Character.FORMAT) {
      clean.append(plainSign(c));
    }
  }

  private static String plainSign(int c) {
    return switch (c) {
      case '℃' -> "°C";
      case '℉' -> "°F";
      case '％', '٪' -> "%";
      case '−', '–', '－' -> "-";
      case '：' -> ":";
      case '，', '٫' -> ",";
      default -> Character.toString(c);
    };
  }

  /** Adds the option to what the library says. */
  public static <T> T named(String name, String text, Supplier<T> quantity) {
    try {
      return quantity.get();
    } catch (InputException e) {
      String message = String.valueOf(e.getMessage());
      throw message.startsWith(name) ? e : e.inWords(shown(name, text) + ": " + message);
    }
  }

  private static InputException noUnit(String name, String text, String right) {
    return new InputException(
        "value.no-unit", shown(name, text) + " has no unit: write " + name + " " + right);
  }

  private static InputException unknownUnit(
      String name, String text, Measure given, String units, String example) {
    return new InputException(
        "value.unit-unknown",
        shown(name, text)
            + ": the unit '"
            + given.unit()
            + "' is not known here: use "
            + units
            + ", for example "
            + name
            + " "
            + example);
  }

  /** The option and its value as typed. */
  public static String shown(String name, String text) {
    return name + " " + ShellWord.of(Shorten.to(text, LONGEST));
  }

  private static String round(double value) {
    return Checks.plain(Math.round(value * 10) / 10.0);
  }
}
