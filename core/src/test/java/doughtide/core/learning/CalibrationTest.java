package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Rise;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Are the windows right? Invented bakers with known truth; after 0, 1, 3, 5 and 10 bakes of 10
 * readings the time to 50 % of their next dough is forecast before it is mixed. Writes {@code
 * target/calibration.md}; run with {@code mvn -Plong -pl core verify}.
 */
@Tag("long")
class CalibrationTest {
  private static final int BAKERS = Integer.getInteger("doughtide.calibration.bakers", 100);
  private static final int READINGS = 10;
  private static final int MEMBERS = 512;
  private static final int DOUGHS = 5;
  private static final int[] BAKES = {0, 1, 3, 5, 10};
  private static final double LONGEST_HOURS = 40;

  private static final Map<String, SimulatedBaker.Setting> SETTINGS = new LinkedHashMap<>();

  static {
    SETTINGS.put("the prior", SimulatedBaker.Setting.PLAIN);
    SETTINGS.put("the prior, 10 % of readings wrong", new SimulatedBaker.Setting(0, 0, 0, 0.1));
    SETTINGS.put(
        "a wrong prior: vigour mean +0.4, rate −0.15",
        new SimulatedBaker.Setting(0.4, -0.15, 0, 0));
    SETTINGS.put(
        "thermometer off by 1 °C, 10 % of readings wrong",
        new SimulatedBaker.Setting(0, 0, 1, 0.1));
    SETTINGS.put(
        "wrong prior, thermometer off by 1 °C, 10 % of readings wrong",
        new SimulatedBaker.Setting(0.4, -0.15, 1, 0.1));
  }

  private record Score(boolean inside, double width, double crps) {}

  @Test
  void windowsAreWrittenDownAsTheyComeOut() throws IOException {
    StringBuilder page = new StringBuilder(heading());
    double narrowerAfterFive = 0;
    for (Map.Entry<String, SimulatedBaker.Setting> each : SETTINGS.entrySet()) {
      List<List<Score>> scores = scores(each.getValue());
      for (int k = 0; k < BAKES.length; k++) {
        page.append(row(each.getKey(), BAKES[k], scores.get(k), scores.get(0)));
      }
      write(page);
      if (each.getValue().equals(SimulatedBaker.Setting.PLAIN)) {
        narrowerAfterFive = 1 - medianWidth(scores.get(3)) / medianWidth(scores.get(0));
      }
    }
    assertThat(narrowerAfterFive).as("narrower after five bakes").isGreaterThan(0.4);
  }

  private static void write(StringBuilder page) throws IOException {
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target", "calibration.md"), page);
  }

  private static String heading() {
    return "Window for the hours to 50 % rise of the next dough, forecast before it is mixed. "
        + BAKERS
        + " invented bakers a row, "
        + DOUGHS
        + " next doughs each, "
        + READINGS
        + " readings a bake, "
        + MEMBERS
        + " members. Inside: share of doughs inside the 80 % window (target 77 to 83 %; chance alone has"
        + " one standard deviation of 2 to 4 points).\n\n"
        + "| bakers drawn from | bakes | inside | median width, h | narrower | CRPS, h |\n"
        + "|---|---|---|---|---|---|\n";
  }

  private static String row(String name, int bakes, List<Score> scores, List<Score> before) {
    double inside = 100.0 * scores.stream().filter(Score::inside).count() / scores.size();
    double crps = scores.stream().mapToDouble(Score::crps).average().orElseThrow();
    return String.format(
        Locale.ROOT,
        "| %s | %d | %.1f %% | %.2f | %.0f %% | %.3f |%n",
        name,
        bakes,
        inside,
        medianWidth(scores),
        100 * (1 - medianWidth(scores) / medianWidth(before)),
        crps);
  }

  private static double medianWidth(List<Score> scores) {
    double[] widths = scores.stream().mapToDouble(Score::width).sorted().toArray();
    return widths[widths.length / 2];
  }

  /** One list of scores for each number of bakes. */
  private static List<List<Score>> scores(SimulatedBaker.Setting setting) {
    List<List<List<Score>>> bakers =
        IntStream.range(0, BAKERS).parallel().mapToObj(b -> scores(b, setting)).toList();
    List<List<Score>> byBakes = new ArrayList<>();
    for (int k = 0; k < BAKES.length; k++) {
      int which = k;
      byBakes.add(bakers.stream().flatMap(each -> each.get(which).stream()).toList());
    }
    return byBakes;
  }

  /** For one baker, the scores of every next dough for each number of bakes. */
  private static List<List<Score>> scores(int baker, SimulatedBaker.Setting setting) {
    SimulatedBaker simulated = new SimulatedBaker(90_000 + baker, setting);
    List<SimulatedBaker.TrueBake> past = simulated.bakes(BAKES[BAKES.length - 1], READINGS);
    List<SimulatedBaker.TrueBake> next = simulated.bakes(DOUGHS, READINGS);
    List<List<Score>> scores = new ArrayList<>();
    for (int count : BAKES) {
      Learned learned = Learner.standard().learn(SimulatedBaker.given(past.subList(0, count)));
      scores.add(next.stream().map(dough -> score(learned, dough)).toList());
    }
    return scores;
  }

  private static Score score(Learned learned, SimulatedBaker.TrueBake next) {
    RiseForecast forecast =
        RiseForecaster.standard()
            .with(learned.belief())
            .withMembers(MEMBERS)
            .forecast(next.bake().formula(), next.bake().temperature(), LONGEST_HOURS);
    double[] hours =
        forecast.curves().stream()
            .mapToDouble(c -> c.hoursToRise(Rise.ofPercent(50)).orElse(LONGEST_HOURS))
            .sorted()
            .toArray();
    TimeWindow window = TimeWindow.of(hours);
    double truth = next.hoursTo(50);
    boolean inside = window.early().orElseThrow() <= truth && truth <= window.late().orElseThrow();
    return new Score(inside, window.widthHours().orElseThrow(), crps(hours, truth));
  }

  /**
   * Continuous ranked probability score of a sorted sample (Hersbach 2000, Weather Forecast
   * 15:559).
   */
  private static double crps(double[] sorted, double truth) {
    int n = sorted.length;
    double off = Arrays.stream(sorted).map(each -> Math.abs(each - truth)).average().orElseThrow();
    double spread = 0;
    for (int i = 0; i < n; i++) {
      spread += (2.0 * i - n + 1) * sorted[i];
    }
    return off - spread / n / n;
  }
}
