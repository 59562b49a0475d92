package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.Adjustment.Kind;
import doughtide.core.day.DayAnswer.Reason;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Small days without a plan, weighed by few doughs of the belief: of each is known what change
 * makes one, that one dough alone has one when its day is planned anew, and that less of the change
 * does not help.
 */
class SmallDayChangesTest {
  private static final RiseForecaster FEW = RiseForecaster.standard().withMembers(8);
  private static final Temperature FOUR = Temperature.ofCelsius(4);
  private static final int ALL = Adjustment.EVERY_DOUGH;

  /**
   * A day, and what is said of it.
   *
   * @param reason why it has no plan
   * @param changes what makes one
   * @param doughs of the day, made by one person
   */
  record Day(Reason reason, int dough, List<Adjustment> changes, List<BakeDay> doughs) {}

  /** Held at 24 °C; a little or some starter, a cool or a warm dough. */
  private static BakeDay.Builder day(double ready, double... edges) {
    return BakeDay.builder()
        .readyAt(ready)
        .bench(new BenchHours(BenchHoursTest.intervals(edges)))
        .room(TemperatureTrace.steady(Temperature.ofCelsius(24)))
        .bulkPlace(BakeDay.BulkPlace.HELD)
        .starterPercents(List.of(15.0, 25.0))
        .doughCelsius(List.of(23.0, 25.0))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND)
        .forecaster(FEW)
        .plans(1);
  }

  private static BakeDay.Builder unfed(double ready, double... edges) {
    return day(ready, edges).starterInCold(24);
  }

  private static UnaryOperator<BakeDay.Builder> fourLoaves(int oven) {
    return day ->
        day.loaves(4, Mass.ofGrams(850), PieceForm.ROUND).oven(Oven.usual().withLoaves(oven));
  }

  private static UnaryOperator<BakeDay.Builder> ovenFor(int loaves) {
    return day -> day.oven(Oven.usual().withLoaves(loaves));
  }

  private static Adjustment of(Kind kind, double value, double atHour) {
    return new Adjustment(kind, value, atHour, ALL);
  }

  private static Adjustment ofDough(int dough, Kind kind, double value) {
    return new Adjustment(kind, value, 0, dough);
  }

  private static final Adjustment COLD = of(Kind.COLD, 4, 0);
  private static final Adjustment UNFED = of(Kind.STARTER_IN_COLD, 24, 0);
  private static final Adjustment EVENING = of(Kind.EVENING_BEFORE, 4, -6);

  private static Day alone(Reason reason, BakeDay.Builder day, Adjustment... changes) {
    return new Day(reason, 0, List.of(changes), List.of(day.build()));
  }

  static Stream<Day> days() {
    return Stream.of(
        alone(
            Reason.BENCH,
            ovenFor(4).apply(unfed(37, 6, 10.5, 14.5, 18.5, 34, 36).cold(FOUR)),
            of(Kind.BENCH_EARLIER, 0.5, 34)),
        alone(
            Reason.BENCH,
            fourLoaves(2).apply(unfed(35, 11, 13.5, 16.5, 18.5, 30, 34).cold(FOUR)),
            of(Kind.BENCH_EARLIER, 1, 30)),
        alone(
            Reason.BENCH,
            ovenFor(2).apply(unfed(32, 9, 13, 18, 21, 30, 32).cold(FOUR)),
            of(Kind.BENCH_LONGER, 1, 21)),
        alone(
            Reason.BENCH, fourLoaves(4).apply(day(37, 11, 11.5, 20.5, 22.5, 33, 36)), COLD, UNFED),
        alone(
            Reason.BENCH,
            fourLoaves(2).apply(unfed(26, 11, 25).doughCelsius(List.of(24.0))),
            ofDough(0, Kind.DOUGH_TEMPERATURE, 26)),
        alone(
            Reason.BENCH,
            fourLoaves(2)
                .apply(
                    unfed(22.5, 9, 21.5)
                        .doughCelsius(List.of(24.0))
                        .starterPercents(List.of(20.0))),
            ofDough(0, Kind.STARTER_SHARE, 40),
            ofDough(0, Kind.DOUGH_TEMPERATURE, 26)),
        alone(
            Reason.BENCH,
            fourLoaves(4).apply(unfed(39, 10, 16, 19, 22, 34, 39).starterPercents(List.of(20.0))),
            ofDough(0, Kind.STARTER_SHARE, 16)),
        alone(
            Reason.BENCH,
            ovenFor(2).apply(day(21.5, 7, 20.5).cold(FOUR).starterPercents(List.of(20.0))),
            ofDough(0, Kind.STARTER_SHARE, 25)),
        alone(Reason.BENCH, fourLoaves(2).apply(unfed(17.5, 8, 16.5)), EVENING),
        alone(Reason.STARTER, fourLoaves(4).apply(day(11.5, 6, 10.5).cold(FOUR)), EVENING, UNFED),
        alone(
            Reason.BENCH,
            fourLoaves(4).apply(unfed(41, 11, 18, 34, 40)),
            of(Kind.EVERY_TIME_LONGER, 0.5, 18),
            COLD),
        alone(
            Reason.BENCH,
            ovenFor(4).apply(day(41, 11, 18.5, 34, 40).cold(FOUR).starterPercents(List.of(20.0))),
            of(Kind.EVERY_TIME_LONGER, 1, 18.5)),
        alone(
            Reason.STARTER,
            ovenFor(4).apply(day(41, 9, 12.5, 34, 40)),
            of(Kind.EVERY_TIME_LONGER, 2, 12.5),
            new Adjustment(Kind.READY, 2, 43, 0)),
        alone(
            Reason.BENCH,
            fourLoaves(2).apply(unfed(25, 11, 24).cold(FOUR)),
            of(Kind.OVEN_CAPACITY, 4, 0)),
        alone(Reason.DOUGH, fourLoaves(2).apply(unfed(35, 7, 13, 22, 26, 31, 34)), COLD),
        several(
            Reason.BENCH,
            0,
            fourLoaves(4).apply(unfed(35, 7, 10.5, 30, 35)),
            "equal equal",
            COLD,
            EVENING,
            of(Kind.HANDS, 3, 0)),
        several(
            Reason.STARTER,
            0,
            fourLoaves(2).apply(day(14, 7, 14).cold(FOUR)),
            "equal equal",
            EVENING,
            UNFED,
            of(Kind.HANDS, 2, 0),
            of(Kind.OVEN_CAPACITY, 4, 0)),
        several(
            Reason.BENCH,
            0,
            fourLoaves(2).apply(day(33, 10, 15.5, 18.5, 21.5, 30, 32).cold(FOUR)),
            "small",
            EVENING,
            of(Kind.OVEN_CAPACITY, 6, 0)),
        several(
            Reason.OTHER_DOUGHS,
            0,
            ovenFor(4).apply(unfed(36, 7, 10.5, 14.5, 17.5, 30, 35)),
            "small equal",
            COLD,
            of(Kind.HANDS, 2, 0)),
        several(
            Reason.OTHER_DOUGHS,
            2,
            ovenFor(2).apply(unfed(24.5, 8, 23.5)),
            "small small",
            of(Kind.HANDS, 2, 0)),
        several(
            Reason.OTHER_DOUGHS,
            1,
            fourLoaves(4)
                .apply(
                    day(28.5, 11, 27.5)
                        .cold(FOUR)
                        .starterPercents(List.of(20.0))
                        .doughCelsius(List.of(24.0))),
            "equal",
            ofDough(1, Kind.STARTER_SHARE, 16)),
        several(
            Reason.OTHER_DOUGHS,
            1,
            ovenFor(4)
                .apply(
                    unfed(37, 11, 12.5, 20.5, 24.5, 30, 36).cold(FOUR).doughCelsius(List.of(24.0))),
            "equal",
            ofDough(1, Kind.DOUGH_TEMPERATURE, 23)),
        several(
            Reason.DOUGH,
            0,
            fourLoaves(2).apply(unfed(24, 6, 24)),
            "small small",
            of(Kind.OVEN_CAPACITY, 4, 0)));
  }

  /** The first dough and more: others like it, or two small loaves each. */
  private static Day several(
      Reason reason, int dough, BakeDay.Builder first, String more, Adjustment... changes) {
    List<BakeDay> doughs = new ArrayList<>(List.of(first.build()));
    for (String each : more.split(" ")) {
      doughs.add(
          each.equals("small")
              ? first.build().toBuilder().loaves(2, Mass.ofGrams(600), PieceForm.ROUND).build()
              : first.build());
    }
    return new Day(reason, dough, List.of(changes), doughs);
  }

  private static DayAnswer plan(int hands, List<BakeDay> doughs, SearchControl control) {
    return DayPlanner.plan(doughs, hands, control);
  }

  private static boolean isPossible(int hands, List<BakeDay> doughs) {
    return !plan(hands, doughs, SearchControl.none().withoutChange()).days().isEmpty();
  }

  @ParameterizedTest
  @MethodSource("days")
  void theSmallestChangeIsSaidAndMakesAPlan(Day day) {
    DayAnswer answer = plan(1, day.doughs(), SearchControl.none());

    assertThat(answer.days()).isEmpty();
    assertThat(answer.complete()).isTrue();
    DayAnswer.Obstacle obstacle = answer.obstacle().orElseThrow();
    assertThat(obstacle.reason()).isEqualTo(day.reason());
    assertThat(obstacle.dough()).isEqualTo(day.dough());
    DayAnswer.Remedy remedy = obstacle.remedy().orElseThrow();
    assertThat(remedy.adjustments()).isEqualTo(day.changes());
    int hands = hands(day.changes());
    List<BakeDay> then = changed(day.doughs(), day.changes());
    assertThat(remedy.day().plans()).extracting(BakePlan::day).isEqualTo(then);
    assertThat(remedy.day().hands()).isEqualTo(hands);
    DayPlannerTest.checkHands(remedy.day(), then.get(0).bench(), hands);
    DayPlannerTest.checkOven(remedy.day());
    if (then.size() == 1) {
      assertThat(isPossible(hands, then)).isTrue();
    }
    for (int i = 0; i < day.changes().size(); i++) {
      List<Adjustment> less = less(day.changes(), i);
      assertThat(isPossible(hands(less), changed(day.doughs(), less))).as("%s", less).isFalse();
    }
  }

  /** Of what is tried together a starter that waits in the cold is not needed. */
  @Test
  void ofSeveralChangesThoseThatAreNeededAreSaid() {
    Day day =
        several(
            Reason.BENCH,
            0,
            ovenFor(2).apply(day(22, 8, 21)),
            "small small",
            COLD,
            EVENING,
            of(Kind.HANDS, 2, 0));
    DayAnswer answer = plan(1, day.doughs(), SearchControl.none());

    assertThat(answer.obstacle().orElseThrow().remedy().orElseThrow().adjustments())
        .isEqualTo(day.changes());
  }

  private static List<Adjustment> saidAt(double hour, BakeDay.Builder day) {
    return plan(1, List.of(day.build()), SearchControl.none().changingFrom(hour))
        .obstacle()
        .orElseThrow()
        .remedy()
        .map(DayAnswer.Remedy::adjustments)
        .orElse(List.of());
  }

  /** Of an evening what is left of it, an hour at least; nobody comes before now. */
  @Test
  void whatHasPassedIsNotAskedFor() {
    BakeDay.Builder evening = fourLoaves(2).apply(unfed(17.5, 8, 16.5));
    assertThat(saidAt(-6, evening)).containsExactly(EVENING);
    assertThat(saidAt(-5.4, evening)).containsExactly(of(Kind.EVENING_BEFORE, 3, -5));
    assertThat(saidAt(-3.4, evening))
        .extracting(Adjustment::kind)
        .doesNotContain(Kind.BENCH_EARLIER);
    assertThat(saidAt(-2.9, evening))
        .extracting(Adjustment::kind)
        .doesNotContain(Kind.EVENING_BEFORE, Kind.BENCH_EARLIER);
    BakeDay.Builder morning = ovenFor(4).apply(unfed(37, 6, 10.5, 14.5, 18.5, 34, 36).cold(FOUR));
    assertThat(saidAt(33.5, morning)).containsExactly(of(Kind.BENCH_EARLIER, 0.5, 34));
    assertThat(saidAt(33.6, morning))
        .extracting(Adjustment::kind)
        .doesNotContain(Kind.BENCH_EARLIER);
  }

  private static int hands(List<Adjustment> changes) {
    return changes.stream()
        .filter(each -> each.kind() == Kind.HANDS)
        .mapToInt(each -> (int) each.value())
        .findFirst()
        .orElse(1);
  }

  private static List<BakeDay> changed(List<BakeDay> doughs, List<Adjustment> changes) {
    return IntStream.range(0, doughs.size())
        .mapToObj(
            i -> {
              BakeDay.Builder day = doughs.get(i).toBuilder();
              changes.stream()
                  .filter(each -> each.dough() == ALL || each.dough() == i)
                  .forEach(each -> change(day, doughs.get(i), each));
              return day.build();
            })
        .toList();
  }

  private static void change(BakeDay.Builder day, BakeDay now, Adjustment by) {
    List<BenchInterval> bench = now.bench().intervals();
    switch (by.kind()) {
      case COLD -> day.cold(Temperature.ofCelsius(by.value()));
      case STARTER_IN_COLD -> day.starterInCold(by.value());
      case READY -> day.readyAt(by.atHour());
      case STARTER_SHARE -> day.starterPercents(List.of(by.value()));
      case DOUGH_TEMPERATURE -> day.doughCelsius(List.of(by.value()));
      case OVEN_CAPACITY -> day.oven(now.oven().withLoaves((int) by.value()));
      case EVENING_BEFORE ->
          bench(
              day,
              Stream.concat(
                  Stream.of(new BenchInterval(by.atHour(), by.atHour() + by.value())),
                  bench.stream()));
      case EVERY_TIME_LONGER -> bench(day, bench.stream().map(at -> longer(at, by.value())));
      case BENCH_LONGER ->
          bench(
              day,
              bench.stream().map(at -> at.toHour() == by.atHour() ? longer(at, by.value()) : at));
      case BENCH_EARLIER ->
          bench(
              day,
              bench.stream()
                  .map(
                      at ->
                          at.fromHour() == by.atHour()
                              ? new BenchInterval(at.fromHour() - by.value(), at.toHour())
                              : at));
      case HANDS -> {}
      default -> throw new AssertionError(by);
    }
  }

  private static BenchInterval longer(BenchInterval at, double hours) {
    return new BenchInterval(at.fromHour(), at.toHour() + hours);
  }

  private static void bench(BakeDay.Builder day, Stream<BenchInterval> intervals) {
    day.bench(new BenchHours(intervals.toList()));
  }

  /** One of the changes a step smaller or left out; without a cold no starter waits in it. */
  private static List<Adjustment> less(List<Adjustment> changes, int number) {
    Adjustment all = changes.get(number);
    double step =
        switch (all.kind()) {
          case BENCH_EARLIER, BENCH_LONGER -> 0.5;
          case EVERY_TIME_LONGER -> all.value() > 2 ? 1 : 0.5;
          case HANDS -> all.value() > 2 ? 1 : 2;
          default -> all.value();
        };
    Adjustment[] less = changes.toArray(Adjustment[]::new);
    less[number] = new Adjustment(all.kind(), all.value() - step, all.atHour(), all.dough());
    boolean warm = all.kind() == Kind.COLD;
    return Arrays.stream(less)
        .filter(each -> each.value() > 0 && !(warm && each.kind() == Kind.STARTER_IN_COLD))
        .toList();
  }
}
