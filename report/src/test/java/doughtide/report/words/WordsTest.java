package doughtide.report.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.quantity.InputException;
import doughtide.report.type.Fonts;
import doughtide.report.type.TextWrap;
import java.math.RoundingMode;
import java.text.NumberFormat;
import java.time.ZonedDateTime;
import java.util.Map;
import java.util.Random;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class WordsTest {

  private static final Pattern PLACEHOLDER = Pattern.compile("\\{[^}]*}");

  @ParameterizedTest
  @EnumSource
  void everyLanguageSaysEverythingWithTheSamePlaceholders(Language language) {
    Words english = Words.in(Language.ENGLISH);
    Words words = Words.in(language);
    assertThat(words.keys()).isEqualTo(english.keys());
    for (String key : english.keys()) {
      assertThat(words.say(key)).as(key).isNotBlank();
      assertThat(placeholders(words.say(key))).as(key).isEqualTo(placeholders(english.say(key)));
      assertThat(Fonts.printable(words.say(key))).as(key).isEqualTo(printed(key, words.say(key)));
    }
  }

  /**
   * Where a browser may part a heading of the page a soft hyphen stands, which print leaves out.
   */
  private static String printed(String key, String text) {
    return key.startsWith("phone.") ? text.replace("\u00ad", "") : text;
  }

  private static SortedSet<String> placeholders(String text) {
    SortedSet<String> found = new TreeSet<>();
    Matcher matcher = PLACEHOLDER.matcher(text);
    while (matcher.find()) {
      found.add(matcher.group());
    }
    return found;
  }

  @Test
  void valuesAreNotReadAsPlaceholders() {
    assertThat(Words.in(Language.ENGLISH).say("chart.notBefore", Map.of("time", "{time}")))
        .isEqualTo("not before {time}");
  }

  @Test
  void missingKeyOrValueIsRefused() {
    Words words = Words.in(Language.FRENCH);
    assertThatThrownBy(() -> words.say("nothing.here")).hasMessageContaining("nothing.here");
    assertThatThrownBy(() -> words.say("chart.notBefore", Map.of())).hasMessageContaining("{time}");
  }

  @Test
  void numbersFollowTheLanguage() {
    assertThat(Words.in(Language.GERMAN).number(1234.5, 1)).isEqualTo("1.234,5");
    assertThat(Words.in(Language.ENGLISH).percent(2.5, 1)).isEqualTo("2.5%");
    assertThat(Words.in(Language.GERMAN).percent(2.5, 1)).isEqualTo("2,5\u00a0%");
    assertThat(Words.in(Language.ENGLISH).temperature(24)).isEqualTo("24\u00a0°C (75\u00a0°F)");
    assertThat(Words.in(Language.ENGLISH).number(-0.0, 0)).isEqualTo("0");
  }

  @Test
  void fahrenheitComesFirstForThoseWhoChoseIt() {
    Words words = Words.in(Language.ENGLISH).with(Words.Degrees.FAHRENHEIT);
    double celsius = (75 - 32) / 1.8;
    assertThat(words.temperature(celsius)).isEqualTo("75\u00a0°F (24\u00a0°C)");
    assertThat(words.say("page.caution")).isEqualTo("Caution:");
  }

  @Test
  void clocksOfTwelveHoursSayMorningOrAfternoon() {
    ZonedDateTime time = ZonedDateTime.parse("2026-03-28T13:04:00+01:00[Europe/Berlin]");
    Words words = Words.in(Language.ENGLISH).with(Words.ClockStyle.HOURS_12);
    assertThat(words.clock(time)).isEqualTo("1:05\u00a0pm");
    assertThat(words.clock(time.minusHours(12))).isEqualTo("1:05\u00a0am");
  }

  @Test
  void timesAreRoundedToFiveMinutes() {
    Words words = Words.in(Language.GERMAN);
    assertThat(words.hours(4.59)).isEqualTo("4\u00a0h\u00a035\u00a0min");
    assertThat(words.hours(0.99)).isEqualTo("1\u00a0h");
    assertThat(words.hours(0.5)).isEqualTo("30\u00a0min");
    assertThat(words.hours(0)).isEqualTo("0\u00a0min");
    assertThat(words.hoursSpan(4.6, 6.3))
        .isEqualTo("4\u00a0h\u00a035\u00a0min–6\u00a0h\u00a020\u00a0min");
    ZonedDateTime time = ZonedDateTime.parse("2026-03-28T23:58:00+01:00[Europe/Berlin]");
    assertThat(words.clock(time)).isEqualTo("00:00");
    assertThat(words.day(time)).startsWith("So");
  }

  @Test
  void unknownLanguageIsRefused() {
    assertThat(Language.of("DE")).isEqualTo(Language.GERMAN);
    assertThatThrownBy(() -> Language.of("xx"))
        .isInstanceOf(InputException.class)
        .hasMessage("language \"xx\" is not known: use en, de, fr, es or pt");
  }

  @Test
  void aSpanTooLongForItsLineIsBrokenBehindTheDash() {
    String span = Words.in(Language.GERMAN).hoursSpan(2.8, 5.6);
    assertThat(TextWrap.lines(span, 15, String::length))
        .containsExactly("2\u00a0h\u00a050\u00a0min–", "5\u00a0h\u00a035\u00a0min");
    assertThat(TextWrap.lines("abcdefgh", 3, String::length)).containsExactly("abc", "def", "gh");
  }

  /** As the Java at hand writes them, on which a language's marks were looked up. */
  @ParameterizedTest
  @EnumSource
  void numbersAreWrittenAsJavaDoes(Language language) {
    NumberFormat format = NumberFormat.getNumberInstance(language.locale());
    format.setRoundingMode(RoundingMode.HALF_UP);
    Random random = new Random(7);
    for (int i = 0; i < 3000; i++) {
      double value = Math.pow(10, random.nextInt(9) - 2) * (random.nextDouble() - 0.3) + 0.5;
      int decimals = i % 4;
      format.setMinimumFractionDigits(decimals);
      format.setMaximumFractionDigits(decimals);
      String java = format.format(value);
      boolean nothing = !java.matches(".*[1-9].*"); // Java writes -0
      assertThat(Words.in(language).number(value, decimals))
          .isEqualTo(nothing ? java.replace("-", "") : java);
    }
  }
}
