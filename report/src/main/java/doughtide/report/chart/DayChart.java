package doughtide.report.chart;

import static java.util.stream.Collectors.joining;

import doughtide.core.Internal;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.day.OvenLoad;
import doughtide.core.day.ProofKind;
import doughtide.core.forecast.TimeWindow;
import doughtide.report.words.ShapeWords;
import doughtide.report.words.Words;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The chart of a day, over the clock: bars for what happens, black where hands are needed, slanted
 * lines in the cold; a thick line along the top marks the hours at the bench. One dough has a lane
 * for each thing that happens to it, with a thin line for the window of time in which it is ready
 * for shaping; of several doughs each has a lane, and so have the oven and every person.
 *
 * <pre>{@code
 * PrintedChart chart = DayChart.of("Bread ready by Sun 12:00", day, names, zero, words);
 * }</pre>
 */
@Internal
public final class DayChart {
  private static final double HALF_BAR = 0.26;
  private static final double BELOW_BAR = 0.38;
  private static final double EDGE_HOURS = 0.7;
  private static final double SHORTEST_BAR_HOURS = 0.05;
  private static final double MARK_HOURS = 0.1;
  private static final int MOST_WITH_JAR = 6; // of more the lead tells the hours alone

  private final DayPlan day;
  private final List<String> names;
  private final ZonedDateTime zero;
  private final Words words;
  private final List<Lane> lanes = new ArrayList<>();
  private final List<ChartPicture.Band> bars = new ArrayList<>();
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
    return new DayChart(day, names, zero, words).picture(title);
  }

  /** Title and a description in a sentence. */
  public static ChartCaption caption(
      String title, DayPlan day, List<String> names, ZonedDateTime zero, Words words) {
    DayChart chart = new DayChart(day, names, zero, words);
    StringBuilder description = new StringBuilder(String.join(" ", chart.answers()));
    if (chart.isOneDough()) {
      chart.lanes.forEach(lane -> description.append(' ').append(lane.name()).append('.'));
    }
    description.append(' ').append(words.say(chart.key()));
    return new ChartCaption(title, description.toString(), words.language());
  }

  /** When each dough is shaped, and when it is in the oven. */
  private List<String> answers() {
    List<String> said = new ArrayList<>();
    for (int i = 0; i < day.plans().size(); i++) {
      BakePlan plan = day.plans().get(i);
      String whose = isOneDough() ? "" : names.get(i) + " – ";
      said.add(whose + (plan.isShaped() ? "" : toShape(plan)) + oven(plan.ovenHour()));
    }
    return said;
  }

  private String toShape(BakePlan plan) {
    ZonedDateTime time = clock(plan.bulkEndHour());
    return new ShapeWords(words).answer(words.dayAndClock(time), plan.shapeRise().percent()) + " ";
  }

  /**
   * The same of several doughs in few words, in the order of the clock, and the first oven; what is
   * shaped is left out.
   */
  private List<String> lead() {
    List<Integer> order =
        IntStream.range(0, names.size())
            .boxed()
            .filter(each -> !day.plans().get(each).isShaped())
            .sorted(Comparator.comparingDouble(each -> day.plans().get(each).bulkEndHour()))
            .toList();
    String shaped =
        order.size() > MOST_WITH_JAR
            ? order.stream()
                .map(each -> names.get(each) + " " + shapeTime(each))
                .collect(joining(", ", words.say("day.shape") + " – ", "."))
            : order.stream().map(this::shaped).collect(joining(" "));
    double oven = day.loads().stream().mapToDouble(OvenLoad::fromHour).min().orElseThrow();
    return List.of((shaped + " " + oven(oven)).strip());
  }

  private String shapeTime(int dough) {
    ZonedDateTime time = clock(day.plans().get(dough).bulkEndHour());
    return words.dayAndClock(time).replace(' ', '\u00a0');
  }

  private String shaped(int dough) {
    String rise = words.percent(Math.rint(day.plans().get(dough).shapeRise().percent()), 0);
    String told = words.say("chart.shapeAt", Map.of("time", shapeTime(dough), "rise", rise));
    return names.get(dough) + " – " + told + ".";
  }

  private String oven(double hour) {
    String oven = words.say("chart.oven", Map.of("time", words.dayAndClock(clock(hour))));
    return words.capitalized(oven) + ".";
  }

  private boolean isOneDough() {
    return day.plans().size() == 1;
  }

  private String key() {
    return isOneDough() ? "day.key" : "sharedDay.key";
  }

  private void addOneDough(BakePlan plan) {
    if (plan.day().starterInColdHours().isEmpty()) {
      lane("day.starter", ChartPicture.Fill.DOTTED, plan.feed().feedHour(), plan.mixHour());
    }
    double bulk = plan.mixHour();
    if (plan.bulkColdFrom().isPresent()) {
      double cold = plan.bulkColdFrom().getAsDouble();
      double out = plan.bulkColdTo().orElseThrow();
      lane("day.bulk", ChartPicture.Fill.DOTTED, bulk, cold);
      lane("day.bulkCold", ChartPicture.Fill.COLD, cold, out);
      bulk = out;
    }
    if (plan.isShaped()) {
      lane("day.bulk", ChartPicture.Fill.DOTTED, bulk, plan.bulkEndHour());
    } else {
      laneWithWindow("day.bulk", bulk, plan.bulkEndHour(), plan.shapeWindow());
    }
    lane("day.shape", ChartPicture.Fill.DOTTED, plan.bulkEndHour(), plan.basketHour());
    double carried = intoCold(plan, 0);
    if (carried > plan.basketHour() + SHORTEST_BAR_HOURS) {
      lane("day.proofRoom", ChartPicture.Fill.DOTTED, plan.basketHour(), carried);
    }
    if (carried < plan.ovenHour()) {
      lane("day.proofCold", ChartPicture.Fill.COLD, carried, plan.ovenHour());
    }
    double out = last(BakeStep.Kind.COOL);
    double preheated = plan.ovenHour() - plan.day().oven().preheatHours();
    lane("day.oven", ChartPicture.Fill.DOTTED, preheated, out);
    lane("day.cool", ChartPicture.Fill.DOTTED, out, last(BakeStep.Kind.READY));
    for (DayStep each : day.steps()) {
      if (each.step().kind().handsOn()) {
        addMark(each.step().fromHour(), laneAt(each.step().fromHour()));
      }
    }
  }

  /** When the loaves of a dough go into the cold; when they are baked where they never do. */
  private double intoCold(BakePlan plan, int dough) {
    return plan.proofKind() == ProofKind.ROOM
        ? plan.ovenHour()
        : day.steps().stream()
            .filter(each -> each.step().kind() == BakeStep.Kind.LOAVES_INTO_COLD)
            .filter(each -> each.doughs().contains(dough))
            .mapToDouble(each -> each.step().fromHour())
            .findFirst()
            .orElse(plan.basketHour());
  }

  private void lane(String key, ChartPicture.Fill fill, double from, double to) {
    addLane(key, from, to);
    addBar(from, to, lanes.size() - 1, fill);
  }

  /** Grey as far as it is sure, white where the end may fall. */
  private void laneWithWindow(String key, double from, double to, TimeWindow end) {
    addLane(key, from, to);
    int lane = lanes.size() - 1;
    double sure = Math.max(Math.min(end.early().orElse(to), to), from + SHORTEST_BAR_HOURS);
    addBar(from, sure, lane, ChartPicture.Fill.DOTTED);
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
      addBulk(plan, i);
      double carried = intoCold(plan, i);
      if (carried > plan.basketHour() + SHORTEST_BAR_HOURS) {
        addBar(plan.basketHour(), carried, i, ChartPicture.Fill.WHITE);
      }
      if (carried < plan.ovenHour()) {
        addBar(carried, plan.ovenHour(), i, ChartPicture.Fill.COLD);
      }
    }
    for (OvenLoad load : day.loads()) {
      addBar(load.fromHour(), load.toHour(), oven, ChartPicture.Fill.DOTTED);
      load.portions()
          .forEach(
              each ->
                  addBar(load.fromHour(), load.toHour(), each.dough(), ChartPicture.Fill.DOTTED));
    }
    day.steps().forEach(each -> addHands(each, oven));
  }

  private void addBulk(BakePlan plan, int lane) {
    double bulk = plan.mixHour();
    if (plan.bulkColdFrom().isPresent()) {
      double cold = plan.bulkColdFrom().getAsDouble();
      addBar(bulk, cold, lane, ChartPicture.Fill.DOTTED);
      bulk = plan.bulkColdTo().orElseThrow();
      addBar(cold, bulk, lane, ChartPicture.Fill.COLD);
    }
    addBar(bulk, plan.bulkEndHour(), lane, ChartPicture.Fill.DOTTED);
  }

  private void addHands(DayStep each, int oven) {
    BakeStep step = each.step();
    if (step.kind().handsOn()) {
      each.doughs().forEach(dough -> addMark(step.fromHour(), dough));
    }
    if (each.person() >= 0) {
      int lane = oven + 1 + each.person();
      addBar(step.fromHour(), step.toHour(), lane, ChartPicture.Fill.DOTTED);
    }
  }

  private void addBar(double from, double to, int lane, ChartPicture.Fill fill) {
    double end = Math.max(to, from + SHORTEST_BAR_HOURS);
    bars.add(bar(from, end, lane, fill));
  }

  private ChartPicture.Band bar(double from, double to, int lane, ChartPicture.Fill fill) {
    return new ChartPicture.Band(
        "bar " + bars.size(),
        new double[] {from, to},
        new double[] {-lane - HALF_BAR, -lane - HALF_BAR},
        new double[] {-lane + HALF_BAR, -lane + HALF_BAR},
        fill);
  }

  private void addMark(double at, int lane) {
    double half = MARK_HOURS / 2;
    bars.add(bar(at - half, at + half, lane, ChartPicture.Fill.BLACK));
  }

  private PrintedChart picture(String title) {
    double first = day.steps().get(0).step().fromHour();
    double ready = day.plans().stream().mapToDouble(plan -> plan.day().readyHour()).max().orElse(0);
    double from = first - EDGE_HOURS;
    double to = Math.max(last(BakeStep.Kind.READY), isOneDough() ? ready : first) + EDGE_HOURS;
    TimeAxes axes = new TimeAxes(from, to, Optional.empty(), words);
    return ChartPicture.on(
            axes.clock(zero), new ChartAxis(0.2 - lanes.size(), 0.8, laneNames(), "", List.of()))
        .title(title)
        .answer(isOneDough() ? answers() : lead())
        .bands(bars)
        .spans(windows)
        .bench(bench(from, to))
        .uprights(RiseChart.midnights(axes, zero))
        .uprights(deadlines(to))
        .notes(RiseChart.withMidnight(words.say(key()), RiseChart.midnights(axes, zero), words))
        .chart();
  }

  /** Until when each dough is to be ready; one line where they are the same. */
  private List<ChartPicture.Upright> deadlines(double to) {
    return day.plans().stream()
        .map(plan -> plan.day().readyHour())
        .distinct()
        .filter(at -> at <= to)
        .map(
            at ->
                new ChartPicture.Upright(
                    at,
                    words.say("day.readyBy", Map.of("time", words.clock(clock(at)))),
                    ChartPicture.Upright.Kind.MOMENT))
        .toList();
  }

  private List<ChartTick> laneNames() {
    List<ChartTick> ticks = new ArrayList<>();
    for (int lane = lanes.size() - 1; lane >= 0; lane--) {
      ticks.add(new ChartTick(-lane, lanes.get(lane).name()));
    }
    return ticks;
  }

  private List<ChartPicture.Bench> bench(double from, double to) {
    return day.plans().get(0).day().bench().intervals().stream()
        .filter(at -> at.toHour() > from && at.fromHour() < to)
        .map(at -> new ChartPicture.Bench(Math.max(from, at.fromHour()), Math.min(to, at.toHour())))
        .toList();
  }

  private ZonedDateTime clock(double hour) {
    return zero.plus(Duration.ofSeconds(Math.round(hour * 60) * 60));
  }
}
