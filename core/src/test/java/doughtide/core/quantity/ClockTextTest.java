package doughtide.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ClockTextTest {
  private static final LocalDate DAY = LocalDate.of(2027, 3, 6);
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  @ParameterizedTest
  @CsvSource({
    "09:30, 09:30",
    "9.30, 09:30",
    "21h30, 21:30",
    "21 h, 21:00",
    "7am, 07:00",
    "1:30 pm, 13:30",
    "1.30 p.m., 13:30",
    "12am, 00:00",
    "12:05pm, 12:05",
    "12, 12:00",
    "7, 07:00",
    "0930, 09:30",
    "21 Uhr 30, 21:30",
    "9:30 Uhr, 09:30",
    "noon, 12:00",
    "Mittag, 12:00",
    "mediodía, 12:00",
    "midnight, 00:00",
    "Minuit, 00:00",
    "24:00, 00:00",
    "24 Uhr, 00:00",
    "07:00:15, 07:00:15"
  })
  void isReadAsItIsWritten(String text, LocalTime time) {
    assertThat(ClockText.isClock(text)).isTrue();
    assertThat(ClockText.time("--mixed-at", text)).isEqualTo(time);
  }

  @ParameterizedTest
  @CsvSource({
    "2027-03-07T12:00, 2027-03-07T12:00+01:00",
    "2027-03-07 7am, 2027-03-07T07:00+01:00",
    "2027-03-07T09:00Z, 2027-03-07T10:00+01:00",
    "2027-03-07T09:00:30.5+05:30, 2027-03-07T04:30:30+01:00",
    "2027-03-07T09:00-0300, 2027-03-07T13:00+01:00",
    "21h30, 2027-03-06T21:30+01:00",
    "24:00, 2027-03-07T00:00+01:00",
    "2027-03-06T24:00, 2027-03-07T00:00+01:00",
    "2027-03-06 noon, 2027-03-06T12:00+01:00"
  })
  void aDateMayStandBeforeIt(String text, String moment) {
    assertThat(ClockText.moment("--mixed-at", text, DAY, BERLIN).toOffsetDateTime())
        .hasToString(moment);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "9.3 | write 9:03 or 9:30",
        "9:5 | write 9:05 or 9:50",
        "2027-03-06 midnight | write 2027-03-06T00:00 or 2027-03-06T24:00",
        "6.3.2027 9.30 | write 2027-03-06 or 2027-06-03, and the clock time behind it"
      })
  void whatHasTwoReadingsIsRefusedWithBoth(String text, String both) {
    assertThatThrownBy(() -> ClockText.moment("--mixed-at", text, DAY, BERLIN))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("can be read two ways: " + both);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "25:00",
        "9:60",
        "13pm",
        "0am",
        "24",
        "24:01",
        "2027-02-30T12:00",
        "2027-03-06T12:00+30:00"
      })
  void noClockShowsIt(String text) {
    assertThatThrownBy(() -> ClockText.moment("--mixed-at", text, DAY, BERLIN))
        .hasMessageContaining("is no time on any clock or calendar");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "soon", "9:30:5", "h30", "2027-03-06", "12345", "9.30 zm"})
  void isNoTime(String text) {
    assertThat(ClockText.isClock(text)).isFalse();
    assertThatThrownBy(() -> ClockText.moment("--mixed-at", text, DAY, BERLIN))
        .isInstanceOf(InputException.class);
  }

  @Test
  void aTimeThatTheClocksSkipIsRefused() {
    assertThatThrownBy(
            () -> ClockText.moment("--bake-at", "2.30", LocalDate.of(2027, 3, 28), BERLIN))
        .hasMessage(
            "--bake-at 2.30 does not exist on Sun 28 Mar in Europe/Berlin: the clocks go from"
                + " 02:00 to 03:00, write 03:30 if that is meant");
  }
}
