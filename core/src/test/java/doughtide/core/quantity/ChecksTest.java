package doughtide.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ChecksTest {

  @ParameterizedTest
  @CsvSource({
    "0,0",
    "-0.00001,0",
    "25,25",
    "1200,1200",
    "24.50,24.5",
    "-2.25,-2.25",
    "0.12345,0.1235",
    "0.1,0.1",
    "999999999,999999999",
    "1e12,1.00e+12",
    "NaN,NaN",
    "Infinity,Infinity"
  })
  void numbersAreWrittenAsPeopleWriteThem(double value, String text) {
    assertThat(Checks.plain(value)).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-2, 0, 45})
  void theEndsOfARangeBelongToIt(double value) {
    assertThat(Checks.inRange("dough temperature", value, -2, 45, "°C")).isEqualTo(value);
  }

  @Test
  void aLostDecimalPointIsGuessed() {
    assertThatThrownBy(() -> Checks.inRange("dough temperature", 240, -2, 45, "°C"))
        .isInstanceOf(InputException.class)
        .hasMessage("dough temperature 240 °C is outside -2…45 °C (did you mean 24 °C?)");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 46, -3})
  void whatLiesOutsideIsRefused(double value) {
    assertThatThrownBy(() -> Checks.inRange("dough temperature", value, -2, 45, "°C"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("is outside -2…45 °C");
  }

  @Test
  void aRefusalCarriesWhatAProgramNeeds() {
    InputException refusal =
        catchThrowableOfType(
            InputException.class, () -> Checks.inRange("dough temperature", 46, -2, 45, "°C"));

    assertThat(refusal.key()).isEqualTo("dough-temperature");
    assertThat(refusal.quantity()).contains("dough temperature");
    assertThat(refusal.value()).hasValue(46);
    assertThat(refusal.limits()).contains(new InputException.Limits(-2, 45, "°C"));
  }

  @Test
  void aRefusalInOtherWordsKeepsWhatItCarries() {
    InputException refusal =
        catchThrowableOfType(InputException.class, () -> Checks.inRange("salt", 5, 0, 4, "%"));

    InputException inWords = refusal.inWords("line 3: " + refusal.getMessage());

    assertThat(inWords).hasMessage("line 3: salt 5 % is outside 0…4 %");
    assertThat(inWords.key()).isEqualTo("salt");
    assertThat(inWords.value()).hasValue(5);
    assertThat(inWords.limits()).contains(new InputException.Limits(0, 4, "%"));
  }

  @Test
  void aRefusalSurvivesSerialization() throws IOException, ClassNotFoundException {
    InputException refusal =
        catchThrowableOfType(InputException.class, () -> Checks.inRange("salt", 5, 0, 4, "%"));
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    new ObjectOutputStream(bytes).writeObject(refusal);

    Object read = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray())).readObject();

    assertThat(((InputException) read).limits()).isEqualTo(refusal.limits());
    assertThat(((InputException) read).quantity()).contains("salt");
  }

  @Test
  void aRefusalInASentenceHasItsKeyOnly() {
    InputException refusal = new InputException("trial.empty", "the trial has no bowl: grade one");

    assertThat(refusal.key()).isEqualTo("trial.empty");
    assertThat(refusal.quantity()).isEmpty();
    assertThat(refusal.value()).isEmpty();
    assertThat(refusal.limits()).isEmpty();
    assertThat(new InputException("no").key()).isEqualTo(InputException.UNNAMED);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      value = {
        "Heat capacity per kg of flour,heat-capacity-per-kg-of-flour",
        "pH,ph",
        "friction of mixer 'A 5',friction-of-mixer"
      })
  void theKeyOfAQuantityHoldsNoNames(String quantity, String key) {
    assertThat(InputException.keyOf(quantity)).isEqualTo(key);
  }

  @Test
  void anUnknownWordIsAnsweredWithTheKnownOnes() {
    InputException refusal = InputException.unknown("flour", " wite ", List.of("white", "rye"));

    assertThat(refusal).hasMessage("flour 'wite' is not known: use one of white, rye");
    assertThat(refusal.key()).isEqualTo("flour.unknown");
  }

  @Test
  void nothingAtAllIsRefused() {
    assertThat(Checks.given("flour", "rye")).isEqualTo("rye");
    assertThatThrownBy(() -> Checks.given("target rise", null))
        .isInstanceOf(InputException.class)
        .hasMessage("target rise is missing: give one")
        .extracting(e -> ((InputException) e).key())
        .isEqualTo("target-rise.missing");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, 30.0333, -0.1})
  void whatTheProgramWorkedOutWronglyIsItsOwnFault(double hour) {
    assertThat(Checks.inside("hour", 30, 0, 30, "h")).isEqualTo(30);
    assertThatThrownBy(() -> Checks.inside("hour", hour, 0, 30, "h"))
        .isInstanceOf(InnerFault.class)
        .isNotInstanceOf(IllegalArgumentException.class)
        .hasMessage("hour " + Checks.plain(hour) + " h is outside 0…30 h");
  }

  /** A tenth of what was given is a guess only where a temperature of a kitchen was meant. */
  @ParameterizedTest
  @CsvSource({
    "share,2000,0,500,%",
    "ensemble size,65537,8,65536,members",
    "altitude,9000,-430,5500,m",
    "temperature,572.1,-76,572,°F",
    "logged temperature,999,-60,300,°C",
    "minimum temperature,-60,-20,20,°C"
  })
  void noNonsenseIsGuessed(String name, double value, double low, double high, String unit) {
    assertThatThrownBy(() -> Checks.inRange(name, value, low, high, unit))
        .isInstanceOf(InputException.class)
        .hasMessageEndingWith(Checks.plain(high) + " " + unit);
  }
}
