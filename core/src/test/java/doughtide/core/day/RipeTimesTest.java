package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RipeTimesTest {
  /** A plan goes by one starter, which must be ripe when half of all are: within a twentieth. */
  @ParameterizedTest
  @CsvSource({"18, 5", "21, 1", "21, 20", "21, 100", "24, 10", "28, 50"})
  void theLikelyStarterIsRipeWhenHalfOfAllAre(double celsius, double parts) {
    BakeDay day =
        BakeDay.builder()
            .readyAt(60)
            .bench(new BenchHours(BenchHoursTest.intervals(6, 8, 18, 22)))
            .starterPercents(List.of(20.0))
            .doughCelsius(List.of(24.0))
            .room(TemperatureTrace.steady(Temperature.ofCelsius(celsius)))
            .build();
    RipeTimes times = new DayModel(day).ripeTimes();
    List<Unknowns> members = day.forecaster().withMembers(256).ensemble().members();
    FeedChoice feed = times.choice(7, 24, parts);
    double median =
        ShapePoint.median(
            times.members(feed, members).stream().mapToDouble(RipeTimes.RipeTime::ripe).toArray());

    assertThat(feed.ripeHours() / median).isCloseTo(1, within(0.05));
  }
}
