package doughtide.report.chart;

import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.day.OvenLoad;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Hours;
import doughtide.report.words.Words;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The chart of a day, over the clock: bars for what happens, bold marks where hands are needed;
 * hatched stretches are the hours at the bench. One dough has a lane for each thing that happens to
 * it, with a thin line for the window of time in which it is ready for shaping; of several doughs
 * each has a lane, and so have the oven and every person.
 *
 * <pre>{@code
 * PrintedChart chart = DayChart.of("Bread ready by Sun 12:00", day, names, zero, words);
 * }</pre>
 */
public final class DayChart {
  private static final double HALF_BAR = 0.26;
  private static final double BELOW_BAR = 0.38;
  private static final double EDGE_HOURS = 0.7;
  private static final double SHORTEST_BAR_HOURS = 0.05;
  private static final int MOST_TICKS = 13;

  private final DayPlan day;
  private final List<String> names;
  private final ZonedDateTime zero;
  private final Words words;
  private final List<Lane> lanes = new ArrayList<>();
  private final List<ChartPicture.Band> bars = new ArrayList<>();
  private final List<ChartPicture.Curve> marks = new ArrayList<>();
  private final List<ChartPicture.Span> windows = new ArrayList<>();

  private DayChart(DayPlan day, List<String> names, ZonedDateTime zero, Words words) {
    this.day = day;
    this.names = List.copyOf(names);
    this.zero = zero;
    this.words = words;
    if (isOneDough()) {
      addOneDough(day.plans().get(0));
    } else {
      addDoughs();
    }
  }

  /** Its name, and from when to when its one bar goes where it has only one. */
  private record Lane(String name, double from, double to) {}

  /**
   * The chart, ready to be written or put on a page.
   *
   * @param title over the chart
   * @param day what is shown
   * @param names of the doughs, in their order
   * @param zero the moment of hour 0 of the axis
   * @param words the language
   */
  public static PrintedChart of(
      String title, DayPlan day, List<String> names, ZonedDateTime zero, Words words) {
    return new PrintedChart(new DayChart(day, names, zero, words).picture(title));
  }

  /** Title and a description in a sentence. */
  public static ChartCaption caption(
      String title, DayPlan day, List<String> names, ZonedDateTime zero, Words words) {
    DayChart chart = new DayChart(day, names, zero, words);
    StringBuilder description = new StringBuilder(words.say(chart.key()));
    chart.lanes.forEach(lane -> description.append(' ').append(lane.name()).append('.'));
    return new ChartCaption(title, description.toString(), words.language());
  }

  private boolean isOneDough() {
    return day.plans().size() == 1;
  }

  private String key() {
    return isOneDough() ? "day.key" : "sharedDay.key";
  }

  private void addOneDough(BakePlan plan) {
    lane("day.starter", plan.feed().feedHour(), plan.mixHour());
    double bulk = plan.mixHour();
    if (plan.bulkColdFrom().isPresent()) {
      double cold = plan.bulkColdFrom().getAsDouble();
      double out = plan.bulkColdTo().orElseThrow();
      lane("day.bulk", bulk, cold);
      lane("day.bulkCold", cold, out);
      bulk = out;
    }
    laneWithWindow("day.bulk", bulk, plan.bulkEndHour(), plan.shapeWindow());
    lane("day.shape", plan.bulkEndHour(), plan.basketHour());
    String proof =
        switch (plan.proofKind()) {
          case COLD -> "day.proofCold";
          case ROOM -> "day.proofRoom";
        };
    lane(proof, plan.basketHour(), plan.ovenHour());
    double out = last(BakeStep.Kind.COOL);
    lane("day.oven", plan.ovenHour() - plan.day().oven().preheatHours(), out);
    lane("day.cool", out, last(BakeStep.Kind.READY));
    for (DayStep each : day.steps()) {
      if (each.step().kind().handsOn()) {
        addMark(each.step().fromHour(), laneAt(each.step().fromHour()));
      }
    }
  }

  private void lane(String key, double from, double to) {
    addLane(key, from, to);
    addBar(from, to, lanes.size() - 1, ChartPicture.Fill.GREY);
  }

  /** Grey as far as it is sure, white where the end may fall. */
  private void laneWithWindow(String key, double from, double to, TimeWindow end) {
    addLane(key, from, to);
    int lane = lanes.size() - 1;
    double sure = Math.max(Math.min(end.early().orElse(to), to), from + SHORTEST_BAR_HOURS);
    addBar(from, sure, lane, ChartPicture.Fill.GREY);
    double late = Math.max(end.late().orElse(to), to);
    if (late > sure + SHORTEST_BAR_HOURS) {
      addBar(sure, late, lane, ChartPicture.Fill.WHITE);
    }
    if (end.early().isPresent() && end.late().isPresent()) {
      double early = end.early().getAsDouble();
      double likely = end.likely().orElse(early);
      double below = -lane - BELOW_BAR;
      windows.add(new ChartPicture.Span(early, likely, end.late().getAsDouble(), below, ""));
    }
  }

  private void addLane(String key, double from, double to) {
    String span = words.clock(clock(from)) + "–" + words.clock(clock(to));
    lanes.add(new Lane(words.say(key) + " " + span, from, to));
  }

  private double last(BakeStep.Kind kind) {
    return day.steps().stream()
        .map(DayStep::step)
        .filter(step -> step.kind() == kind)
        .mapToDouble(BakeStep::fromHour)
        .max()
        .orElseThrow();
  }

  /** The last lane in whose bar an hour lies. */
  private int laneAt(double hour) {
    int best = 0;
    for (int i = 0; i < lanes.size(); i++) {
      if (hour >= lanes.get(i).from() - 1e-6 && hour <= lanes.get(i).to() + 1e-6) {
        best = i;
      }
    }
    return best;
  }

  private void addDoughs() {
    names.forEach(name -> lanes.add(new Lane(name, 0, 0)));
    int oven = lanes.size();
    lanes.add(new Lane(words.say("day.oven"), 0, 0));
    for (int person = 0; person < day.hands(); person++) {
      String who = day.hands() == 1 ? "" : " " + (char) ('A' + person);
      lanes.add(new Lane(words.say("sharedDay.hands") + who, 0, 0));
    }
    for (int i = 0; i < day.plans().size(); i++) {
      BakePlan plan = day.plans().get(i);
      addBar(plan.mixHour(), plan.bulkEndHour(), i, ChartPicture.Fill.GREY);
      addBar(plan.basketHour(), plan.ovenHour(), i, ChartPicture.Fill.WHITE);
    }
    for (OvenLoad load : day.loads()) {
      addBar(load.fromHour(), load.toHour(), oven, ChartPicture.Fill.GREY);
      load.portions()
          .forEach(
              each -> addBar(load.fromHour(), load.toHour(), each.dough(), ChartPicture.Fill.GREY));
    }
    day.steps().forEach(each -> addHands(each, oven));
  }

  private void addHands(DayStep each, int oven) {
    BakeStep step = each.step();
    if (step.kind().handsOn()) {
      each.doughs().forEach(dough -> addMark(step.fromHour(), dough));
    }
    if (each.person() >= 0) {
      int lane = oven + 1 + each.person();
      addBar(step.fromHour(), step.toHour(), lane, ChartPicture.Fill.GREY);
    }
  }

  private void addBar(double from, double to, int lane, ChartPicture.Fill fill) {
    double end = Math.max(to, from + SHORTEST_BAR_HOURS);
    bars.add(
        new ChartPicture.Band(
            "bar " + bars.size(),
            new double[] {from, end},
            new double[] {-lane - HALF_BAR, -lane - HALF_BAR},
            new double[] {-lane + HALF_BAR, -lane + HALF_BAR},
            fill));
  }

  private void addMark(double at, int lane) {
    marks.add(
        new ChartPicture.Curve(
            "hand " + marks.size(),
            new double[] {at, at},
            new double[] {-lane - HALF_BAR, -lane + HALF_BAR},
            ChartPicture.Pen.BOLD,
            false));
  }

  private ChartPicture picture(String title) {
    double first = day.steps().get(0).step().fromHour();
    double ready = day.plans().stream().mapToDouble(plan -> plan.day().readyHour()).max().orElse(0);
    double from = first - EDGE_HOURS;
    double to = Math.max(last(BakeStep.Kind.READY), isOneDough() ? ready : first) + EDGE_HOURS;
    return new ChartPicture(
        title,
        List.of(),
        clockAxis(from, to),
        new ChartAxis(0.2 - lanes.size(), 0.8, laneNames(), "", List.of()),
        Optional.empty(),
        bars,
        marks,
        windows,
        bench(from, to),
        List.of(),
        Optional.empty(),
        List.of(words.say(key())));
  }

  private List<ChartTick> laneNames() {
    List<ChartTick> ticks = new ArrayList<>();
    for (int lane = lanes.size() - 1; lane >= 0; lane--) {
      ticks.add(new ChartTick(-lane, lanes.get(lane).name()));
    }
    return ticks;
  }

  private List<ChartPicture.Zone> bench(double from, double to) {
    return day.plans().get(0).day().bench().intervals().stream()
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
    String before = "";
    ZonedDateTime at = clock(from).truncatedTo(ChronoUnit.HOURS).plusHours(1);
    for (; hour(at) <= to; at = at.plusHours(1)) {
      if (at.getHour() % step == 0) {
        String today = words.day(at);
        ticks.add(
            new ChartTick(hour(at), List.of(words.clock(at), today.equals(before) ? "" : today)));
        before = today;
      }
    }
    return new ChartAxis(from, to, ticks, "", List.of());
  }

  private ZonedDateTime clock(double hour) {
    return zero.plus(Duration.ofSeconds(Math.round(hour * 60) * 60));
  }

  private double hour(ZonedDateTime moment) {
    return Hours.between(zero, moment);
  }
}
