package doughtide.report.chart;

import doughtide.core.day.BakePlan;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.OvenLoad;
import doughtide.core.day.SharedAnswer;
import doughtide.core.day.SharedStep;
import doughtide.report.words.Words;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The chart of a day with several doughs, over the clock: a lane for each dough with its bulk
 * fermentation, its proof and bold marks where hands are needed, a lane for the oven and one for
 * each person. Hatched stretches are the hours at the bench.
 *
 * <pre>{@code
 * PrintedChart chart = SharedDayChart.of("Class", answer, names, zero, words);
 * }</pre>
 */
public final class SharedDayChart {
  private static final double HALF_BAR = 0.26;
  private static final double EDGE_HOURS = 0.7;
  private static final double SHORTEST_BAR_HOURS = 0.05;
  private static final int MOST_TICKS = 13;

  private final SharedAnswer answer;
  private final List<String> names;
  private final ZonedDateTime zero;
  private final Words words;
  private final List<ChartPicture.Band> bars = new ArrayList<>();
  private final List<ChartPicture.Curve> marks = new ArrayList<>();

  private SharedDayChart(SharedAnswer answer, List<String> names, ZonedDateTime zero, Words words) {
    this.answer = answer;
    this.names = List.copyOf(names);
    this.zero = zero;
    this.words = words;
  }

  /**
   * The chart, ready to be written.
   *
   * @param title over the chart
   * @param answer a day that is possible
   * @param names of the doughs, in their order
   * @param zero the moment of hour 0 of the axis
   * @param words the language
   */
  public static PrintedChart of(
      String title, SharedAnswer answer, List<String> names, ZonedDateTime zero, Words words) {
    return new PrintedChart(
        new SharedDayChart(answer, names, zero, words).picture(title), OptionalDouble.empty());
  }

  /** Title and a description in a sentence. */
  public static ChartCaption caption(String title, List<String> names, Words words) {
    return new ChartCaption(
        title, words.say("sharedDay.key") + " " + String.join(", ", names), words.language());
  }

  private ChartPicture picture(String title) {
    double from = answer.steps().get(0).step().fromHour() - EDGE_HOURS;
    double to =
        answer.steps().stream().mapToDouble(each -> each.step().toHour()).max().orElse(from)
            + EDGE_HOURS;
    addDoughs();
    answer
        .loads()
        .forEach(load -> addBar(load.fromHour(), load.toHour(), ovenY(), ChartPicture.Fill.GREY));
    addHands();
    return new ChartPicture(
        title,
        List.of(),
        clockAxis(from, to),
        new ChartAxis(0.2, lanes() + 0.8, laneNames(), "", List.of()),
        Optional.empty(),
        bars,
        marks,
        List.of(),
        bench(from, to),
        List.of(),
        Optional.empty(),
        List.of(words.say("sharedDay.key")));
  }

  private int lanes() {
    return names.size() + 1 + answer.hands();
  }

  private double doughY(int number) {
    return lanes() - number;
  }

  private double ovenY() {
    return answer.hands() + 1;
  }

  private double personY(int person) {
    return answer.hands() - person;
  }

  private void addDoughs() {
    for (int i = 0; i < answer.plans().size(); i++) {
      BakePlan plan = answer.plans().get(i);
      double y = doughY(i);
      addBar(plan.mixHour(), plan.bulkEndHour(), y, ChartPicture.Fill.GREY);
      addBar(plan.basketHour(), plan.ovenHour(), y, ChartPicture.Fill.WHITE);
      for (OvenLoad load : answer.loads()) {
        int dough = i;
        if (load.portions().stream().anyMatch(each -> each.dough() == dough)) {
          addBar(load.fromHour(), load.toHour(), y, ChartPicture.Fill.GREY);
        }
      }
    }
    for (SharedStep step : answer.steps()) {
      if (step.step().kind().handsOn()) {
        step.doughs().forEach(dough -> addMark(step.step().fromHour(), doughY(dough)));
      }
    }
  }

  private void addHands() {
    for (SharedStep step : answer.steps()) {
      if (step.person() >= 0) {
        addBar(
            step.step().fromHour(),
            step.step().toHour(),
            personY(step.person()),
            ChartPicture.Fill.GREY);
      }
    }
  }

  private void addBar(double from, double to, double y, ChartPicture.Fill fill) {
    double end = Math.max(to, from + SHORTEST_BAR_HOURS);
    bars.add(
        new ChartPicture.Band(
            "bar " + bars.size(),
            new double[] {from, end},
            new double[] {y - HALF_BAR, y - HALF_BAR},
            new double[] {y + HALF_BAR, y + HALF_BAR},
            fill));
  }

  private void addMark(double at, double y) {
    marks.add(
        new ChartPicture.Curve(
            "hand " + marks.size(),
            new double[] {at, at},
            new double[] {y - HALF_BAR, y + HALF_BAR},
            ChartPicture.Pen.BOLD,
            false));
  }

  private List<ChartTick> laneNames() {
    List<ChartTick> ticks = new ArrayList<>();
    for (int person = answer.hands() - 1; person >= 0; person--) {
      String who = answer.hands() == 1 ? "" : " " + (char) ('A' + person);
      ticks.add(new ChartTick(personY(person), words.say("sharedDay.hands") + who));
    }
    ticks.add(new ChartTick(ovenY(), words.say("day.oven")));
    for (int i = names.size() - 1; i >= 0; i--) {
      ticks.add(new ChartTick(doughY(i), names.get(i)));
    }
    return ticks;
  }

  private List<ChartPicture.Zone> bench(double from, double to) {
    List<BenchInterval> hours = answer.plans().get(0).day().bench().intervals();
    return hours.stream()
        .filter(at -> at.toHour() > from && at.fromHour() < to)
        .map(
            at ->
                new ChartPicture.Zone(Math.max(from, at.fromHour()), Math.min(to, at.toHour()), ""))
        .toList();
  }

  /** Marks at full hours of the clock, which need not be full hours of the axis. */
  private ChartAxis clockAxis(double from, double to) {
    int step = (int) ChartAxis.step(to - from, MOST_TICKS, 1, 2, 3, 4, 6, 12);
    List<ChartTick> ticks = new ArrayList<>();
    String day = "";
    ZonedDateTime at =
        zero.plusSeconds(Math.round(from * 3600)).truncatedTo(ChronoUnit.HOURS).plusHours(1);
    for (; hour(at) <= to; at = at.plusHours(1)) {
      if (at.getHour() % step == 0) {
        String today = words.day(at);
        ticks.add(
            new ChartTick(hour(at), List.of(words.clock(at), today.equals(day) ? "" : today)));
        day = today;
      }
    }
    return new ChartAxis(from, to, ticks, "", List.of());
  }

  private double hour(ZonedDateTime moment) {
    return Duration.between(zero, moment).toSeconds() / 3600.0;
  }
}
