package doughtide.cli.args;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.quantity.InputException;
import doughtide.report.words.TradeVocabulary;
import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DayOfClockTest {
  private static final DayOfClock DAYS =
      new DayOfClock(LocalDate.of(2027, 2, 28), TradeVocabulary.ofAllLanguages());

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "tomorrow 7:00 | 2027-03-01T7:00",
        "Tomorrow at 7am | 2027-03-01T7am",
        "7:00 tomorrow | 2027-03-01T7:00",
        "yesterday 22:30 | 2027-02-27T22:30",
        "TODAY noon | 2027-02-28Tnoon",
        "Morgen um 7 Uhr | 2027-03-01T7 uhr",
        "gestern 21.30 | 2027-02-27T21.30",
        "demain à 7h30 | 2027-03-01T7h30",
        "aujourd’hui 18h | 2027-02-28T18h",
        "mañana a las 7:00 | 2027-03-01T7:00",
        "amanhã às 7:00 | 2027-03-01T7:00",
        "ontem 22:00 | 2027-02-27T22:00",
        "shape yesterday 22:40 | shape 2027-02-27T22:40",
        "today 17:00-22:30,06:00-08:00 | 2027-02-28T17:00/2027-02-28T22:30,06:00-08:00",
        "tomorrow 22:00-01:00 | 2027-03-01T22:00/2027-03-02T01:00",
        "07:00 | 07:00",
        "mañanas 7:00 | mañanas 7:00",
      })
  void aWordForADayBecomesItsDate(String typed, String dated) {
    assertThat(DAYS.dated("--bake-at", typed)).isEqualToIgnoringCase(dated);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Morgen | two ways, the next day or the morning: write Morgen 07:00 for an hour of"
            + " 2027-03-01, or 07:00",
        "mañana | two ways, the next day or the morning",
        "tomorrow | is a day without an hour: write for example tomorrow 07:00",
        "amanhã | is a day without an hour",
      })
  void aDayAloneIsRefused(String typed, String message) {
    assertThatThrownBy(() -> DAYS.dated("--bake-at", typed))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(message);
  }
}
