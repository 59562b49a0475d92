package doughtide.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.DoughTemperature;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SmoothedTraceTest {
  private static final int MINUTES = 24 * 60;
  private static final Rise HALF = Rise.ofPercent(50);

  /** A dough that cools from 27 to 22 °C, read with the unevenness of a probe of a tenth. */
  private static double dough(double hours) {
    return 22 + 5 * Math.exp(-hours / 3);
  }

  private static double[] hoursEvery(int minutes) {
    double[] hours = new double[MINUTES / minutes + 1];
    for (int i = 0; i < hours.length; i++) {
      hours[i] = i * minutes / 60.0;
    }
    return hours;
  }

  private static double[] read(double[] hours) {
    double[] celsius = new double[hours.length];
    for (int i = 0; i < hours.length; i++) {
      celsius[i] = Math.rint(10 * (dough(hours[i]) + 0.15 * Math.sin(i * i))) / 10;
    }
    return celsius;
  }

  private static TemperatureTrace withSpike(int minutes, double celsius) {
    double[] hours = hoursEvery(1);
    double[] read = read(hours);
    for (int i = 200; i < 200 + minutes; i++) {
      read[i] = celsius;
    }
    return TemperatureTrace.logged(hours, read);
  }

  private static RiseForecast forecast(TemperatureTrace trace) {
    return RiseForecaster.standard()
        .withMembers(64)
        .onCallingThread()
        .forecast(DoughFormula.builder().build(), DoughTemperature.following(trace), 24);
  }

  @Test
  void followsTheDoughAndNotTheProbe() {
    TemperatureTrace trace = TemperatureTrace.logged(hoursEvery(1), read(hoursEvery(1))).ofDough();
    for (double hours = 0.5; hours < 24; hours += 0.1) {
      assertThat(trace.celsius(hours)).as("%s h", hours).isCloseTo(dough(hours), within(0.12));
    }
  }

  @Test
  void leavesReadingsThatAreFarApartAlone() {
    TemperatureTrace hourly = TemperatureTrace.logged(hoursEvery(60), read(hoursEvery(60)));
    assertThat(hourly.ofDough()).isSameAs(hourly);
  }

  @Test
  void minutesGiveTheHoursOfHourlyReadings() {
    TimeWindow close = forecast(withSpike(0, 0)).hoursToRise(HALF);
    double[] hours = hoursEvery(60);
    TimeWindow hourly = forecast(TemperatureTrace.logged(hours, read(hours))).hoursToRise(HALF);
    assertThat(close.likely().orElseThrow()).isCloseTo(hourly.likely().orElseThrow(), within(0.1));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 10, 30})
  void aSpikeOfMinutesIsAirAndGivesAWarning(int minutes) {
    RiseForecast spiked = forecast(withSpike(minutes, 48));

    assertThat(spiked.warnings()).contains(Warning.Kind.LOGGER_SPIKE.with(48));
    assertThat(spiked.hoursToRise(HALF).likely().orElseThrow())
        .isCloseTo(
            forecast(withSpike(0, 0)).hoursToRise(HALF).likely().orElseThrow(), within(0.05));
  }

  @Test
  void aDoughThatStaysTooWarmGivesNoHours() {
    assertThat(forecast(withSpike(120, 40)).isPossible()).isFalse();
    assertThat(forecast(withSpike(0, 0)).warnings())
        .extracting(Warning::kind)
        .doesNotContain(Warning.Kind.LOGGER_SPIKE);
  }

  /** Bytes stand for time and heap: they are the same on every machine. */
  @Test
  void aReadingAMinuteCostsNoMoreThanHalfAgainOfOneAnHour() {
    double[] hours = hoursEvery(60);
    TemperatureTrace hourly = TemperatureTrace.logged(hours, read(hours));
    long once = allocated(hourly); // the first run makes what later ones share

    long few = allocated(hourly);
    long many = allocated(withSpike(0, 0));

    assertThat(once).isPositive();
    assertThat(many).isLessThan(few * 3 / 2);
  }

  private static long allocated(TemperatureTrace trace) {
    var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    assertThat(forecast(trace).isPossible()).isTrue();
    return threads.getCurrentThreadAllocatedBytes() - before;
  }
}
