package doughtide.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import org.assertj.core.api.AbstractThrowableAssert;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of a value that was meant well: the hint is right, and can be typed. */
class HintsTest {
  private static AbstractThrowableAssert<?, ?> refused(ThrowingCallable reading) {
    return assertThatThrownBy(reading).isInstanceOf(InputException.class);
  }

  /** A number above 45 is a temperature in °F; beyond what a kitchen has it is nothing. */
  @ParameterizedTest
  @CsvSource({
    "24,24C (or 75.2F)",
    "45,45C (or 113F)",
    "77,77F (or 25C)",
    "300,300F (or 148.9C)",
    "301,25C (or 77F)",
    "-60,-60C (or -76F)",
    "-61,25C (or 77F)"
  })
  void temperatures(String text, String right) {
    refused(() -> Quantities.temperature("--room", text))
        .hasMessageEndingWith("write --room " + right);
  }

  @ParameterizedTest
  @CsvSource({"20,20%", "0.2,20% (or 0.2%)", "1,100% (or 1%)", "0,0%", "1.5,1.5%"})
  void shares(String text, String right) {
    refused(() -> Quantities.share("--salt", text)).hasMessageEndingWith("write --salt " + right);
  }

  @ParameterizedTest
  @CsvSource({"12,12h (or 720min)", "24,24h (or 1440min)", "90,90min (or 1.5h)"})
  void durations(String text, String right) {
    refused(() -> Quantities.hours("--hold", text)).hasMessageEndingWith("write --hold " + right);
  }

  @ParameterizedTest
  @CsvSource({"9,9kg", "10,10g", "850,850g"})
  void masses(String text, String right) {
    refused(() -> Quantities.mass("--piece", text)).hasMessageEndingWith("write --piece " + right);
  }

  @Test
  void heights() {
    refused(() -> Quantities.altitude("--altitude", "1500"))
        .hasMessageEndingWith("write --altitude 1500m (or 4921ft)");
    refused(() -> Quantities.millimetres("--jar", "52")).hasMessageContaining("52 mm");
    assertThat(Quantities.millimetres("--jar", "5.2 cm")).isCloseTo(52, within(1e-9));
    assertThat(Quantities.millimetres("--jar", "2in")).isCloseTo(50.8, within(1e-9));
    refused(() -> Quantities.millimetres("--jar", "4mm")).hasMessageContaining("5…1000 mm");
  }

  @Test
  void massesInPoundsAndOunces() {
    assertThat(Quantities.mass("--piece", "1lb 8oz").grams()).isCloseTo(680.388555, within(1e-6));
    refused(() -> Quantities.mass("--piece", "0g")).hasMessageContaining("more than 0 g");
  }

  @Test
  void secondsAreTimeToo() {
    assertThat(Quantities.hours("--hold", "5400s")).isCloseTo(1.5, within(1e-9));
    assertThat(Quantities.hours("--hold", "1h59")).isCloseTo(1 + 59 / 60.0, within(1e-9));
    refused(() -> Quantities.hours("--hold", "1h60")).hasMessageContaining("60 minutes");
  }

  @Test
  void plainNumbers() {
    assertThat(Quantities.number("--yield", "170", 100, 240)).isEqualTo(170);
    refused(() -> Quantities.number("--yield", "170g", 100, 240))
        .hasMessageContaining("takes no unit: write --yield 170");
    refused(() -> Quantities.number("--yield", "much", 100, 240))
        .hasMessageContaining("write for example --yield 170");
  }

  @Test
  void zones() {
    assertThat(Quantities.zone("--zone", "europe/berlin")).isEqualTo(ZoneId.of("Europe/Berlin"));
    assertThat(Quantities.zone("--zone", "america/new york"))
        .isEqualTo(ZoneId.of("America/New_York"));
    refused(() -> Quantities.zone("--zone", "Europe/Berlim"))
        .hasMessageContaining("did you mean Europe/Berlin?");
    refused(() -> Quantities.zone("--zone", "the kitchen"))
        .hasMessageContaining("write for example --zone Europe/Berlin");
  }

  @Test
  void whatIsTooLongIsShortenedAndNoCharacterIsCutInTwo() {
    assertThat(Shorten.to("abc", 3)).isEqualTo("abc");
    assertThat(Shorten.to("abcd", 3)).isEqualTo("abc…");
    assertThat(Shorten.to("ab\uD83C\uDF5E", 3)).isEqualTo("ab…");
    assertThat(Quantities.clean("x".repeat(61))).hasSize(61);
    refused(() -> Quantities.mass("--piece", "1".repeat(61)))
        .hasMessageContaining("at most 60 characters");
    refused(() -> Quantities.mass("--piece", "1".repeat(60))).hasMessageContaining("not a mass");
  }

  @Test
  void aWordIsQuotedWhereAPromptAsksForIt() {
    assertThat(ShellWord.of("a_b-1.5%")).isEqualTo("a_b-1.5%");
    assertThat(ShellWord.of("a b")).isEqualTo("\"a b\"");
    assertThat(ShellWord.of("a\"b")).isEqualTo("\"a\\\"b\"");
    assertThat(ShellWord.of("")).isEqualTo("\"\"");
  }

  @Test
  void hoursAreToTheSecondOnTheClock() {
    ZonedDateTime mixed = ZonedDateTime.of(2027, 3, 6, 9, 0, 0, 0, ZoneId.of("UTC"));
    assertThat(Hours.of(Duration.ofMinutes(90))).isEqualTo(1.5);
    assertThat(Hours.duration(1.5)).isEqualTo(Duration.ofMinutes(90));
    assertThat(Hours.after(mixed, 0.5)).isEqualTo(mixed.plusMinutes(30));
    assertThat(Hours.between(mixed, mixed.plusMinutes(90))).isEqualTo(1.5);
  }

  @Test
  void unitsOfTheSameThing() {
    assertThat(Mass.ofGrams(1250).kilograms()).isEqualTo(1.25);
    assertThat(Rise.ofPercent(85).percent()).isCloseTo(85, within(1e-9));
    assertThat(Checks.inRange("x", 1, 1, 2, "")).isEqualTo(1);
    assertThat(Checks.inRange("key", "x", 2, 1, 2, "")).isEqualTo(2);
    assertThat(Checks.inside("x", 2, 1, 2, "")).isEqualTo(2);
    assertThat(Checks.inside("x", 1, 1, 2, "")).isEqualTo(1);
    assertThatThrownBy(() -> Checks.inside("x", 3, 1, 2, "")).isInstanceOf(InnerFault.class);
    assertThat(Checks.plain(1e9)).isNotEqualTo("1000000000");
  }
}
