package doughtide.cli.args;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.cli.TestEnvironment;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClockTimesTest {

  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  @Test
  void aTimeAloneIsOfTodayInItsZone() {
    Instant lateInLondon = Instant.parse("2027-03-06T23:30:00Z");
    assertThat(ClockTimes.parse("--mixed-at", "00:10", BERLIN, lateInLondon).startInWords())
        .isEqualTo("Sun 7 Mar 2027 00:10, Europe/Berlin");
  }

  @Test
  void theDateAppearsOnAnotherDayOnly() {
    ClockTimes times = berlin("2027-03-06T09:30");
    assertThat(times.at(0)).isEqualTo("Sat 09:30");
    assertThat(times.at(4.58)).isEqualTo("Sat 14:05");
    assertThat(times.at(16)).isEqualTo("Sun 7 Mar 01:30");
    assertThat(times.iso(16)).isEqualTo("2027-03-07T01:30+01:00");
    assertThat(times.clockChange(48)).isEmpty();
  }

  @Test
  void timesAreRoundedToTheMinute() {
    assertThat(berlin("2027-03-06T23:59").at(0.5 / 60 + 1e-3)).isEqualTo("Sun 7 Mar 00:00");
  }

  @Test
  void inSpringTheNightIsAnHourShorterOnTheClock() {
    ClockTimes times = berlin("2027-03-27T20:00");
    assertThat(times.at(5)).isEqualTo("Sun 28 Mar 01:00");
    assertThat(times.at(6)).isEqualTo("Sun 28 Mar 03:00");
    assertThat(times.at(12)).isEqualTo("Sun 28 Mar 09:00");
    assertThat(times.iso(12)).isEqualTo("2027-03-28T09:00+02:00");
    assertThat(times.clockChange(12).orElseThrow())
        .startsWith("the clocks go forward on Sun 28 Mar from 02:00 to 03:00");
    assertThat(times.clockChange(5.9)).isEmpty();
  }

  @Test
  void inAutumnAnHourComesTwice() {
    ClockTimes times = berlin("2027-10-30T20:00");
    assertThat(times.at(6.5)).isEqualTo("Sun 31 Oct 02:30 (before the clocks go back)");
    assertThat(times.at(7.5)).isEqualTo("Sun 31 Oct 02:30 (after the clocks went back)");
    assertThat(times.at(8)).isEqualTo("Sun 31 Oct 03:00");
    assertThat(times.clockChange(8).orElseThrow()).contains("go back", "from 03:00 to 02:00");
  }

  @Test
  void aTimeThatComesTwiceIsTheFirst() {
    assertThat(berlin("2027-10-31T02:30").startInWords())
        .isEqualTo("Sun 31 Oct 2027 02:30 (before the clocks go back), Europe/Berlin");
  }

  @Test
  void aTimeThatTheClocksSkipIsRefused() {
    assertThatThrownBy(() -> berlin("2027-03-28T02:30"))
        .isInstanceOf(InputException.class)
        .hasMessage(
            "--mixed-at 2027-03-28T02:30 does not exist on Sun 28 Mar in Europe/Berlin: the clocks"
                + " go from 02:00 to 03:00, write 03:30 if that is meant");
  }

  /** The next such time is refused like any other; of later ones those before that night count. */
  @Test
  void theNextSuchTimeThatTheClocksSkipIsRefused() {
    assertThatThrownBy(() -> berlin("2027-03-27T20:00").hoursUntil("--bake-at", "2.30"))
        .hasMessageContaining("--bake-at 2.30 does not exist on Sun 28 Mar in Europe/Berlin");
    assertThat(berlin("2027-03-26T20:00").hoursUntil("--bake-at", "2.30")).containsExactly(6.5);
    assertThat(berlin("2027-03-26T20:00").hoursUntil("--bake-at", "2027-03-28T05:00Z"))
        .containsExactly(34.0);
  }

  @ParameterizedTest
  @ValueSource(strings = {"Europe/Berlin", "europe/berlin", " Europe/Berlin ", "\"Europe/Berlin\""})
  void zonesAreReadInAnyCase(String text) {
    assertThat(Quantities.zone("--zone", text)).isEqualTo(BERLIN);
  }

  private static ClockTimes berlin(String text) {
    return ClockTimes.parse("--mixed-at", text, BERLIN, TestEnvironment.NOW);
  }
}
