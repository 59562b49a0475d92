package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.JarRule;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.loaf.ShapeTable;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.util.MathArrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** When to shape the dough in hand, looked up in its table of loaves. */
class LiveShapeTest {
  private static final Proof NIGHT = Proof.inCold(Temperature.ofCelsius(4), 12);

  private static final LiveDough SHAPED = fresh().shapedFor(NIGHT);

  private static LiveDough fresh() {
    return LiveDough.of(
        RiseForecaster.standard(),
        JarError.standard(),
        DoughFormula.builder().build(),
        DoughTemperature.steady(Temperature.ofCelsius(25)));
  }

  private static LiveDough read(LiveDough dough, double hours, double percent) {
    return dough.with(Reading.ofRise(hours, Rise.ofPercent(percent)));
  }

  @Test
  void withoutReadingsItIsTheShapePointOfTheForecast() {
    LiveDough dough = SHAPED;
    LoafSettings model = LoafSettings.FULL.withMembers(dough.expected().ensemble().size());
    ShapeForecaster.Point point = ShapeForecaster.of(dough.expected(), NIGHT).with(model).point();
    assertThat(dough.shape().hours().likely().orElseThrow())
        .isCloseTo(point.hours().likely().orElseThrow(), within(5.0 / 60));
    assertThat(dough.shape().rise().likely().orElseThrow())
        .isCloseTo(point.rise().likely().orElseThrow(), within(2.0));
  }

  @Test
  void aFastDoughIsShapedEarlierAndALoafShapedLaterHasRisenFurther() {
    LiveDough dough = read(SHAPED, 2.5, 30);
    double shape = dough.shape().hours().likely().orElseThrow();
    assertThat(shape).isLessThan(dough.expected().hoursToRise(Rise.ofPercent(50)).late().orElse(0));
    double target = DoughFormula.builder().build().targetRise().percent();
    assertThat(dough.ovenPercentIfShapedAt(shape).quantile(0.5).orElseThrow())
        .isCloseTo(target, within(5.0));
    assertThat(dough.ovenPercentIfShapedAt(shape - 1).quantile(0.5).orElseThrow())
        .isLessThan(target - 5);
  }

  /** What the rule says of a height is what the dough says once that height is noted. */
  @Test
  void theRuleOfTheJarIsWhatAReadingSays() {
    List<JarRule.AtHour> looks = SHAPED.shapeForecast().rule().looks();

    assertThat(looks).hasSize(3);
    for (JarRule.AtHour look : looks) {
      for (JarRule.Wait wait : look.waits()) {
        LiveDough dough = read(SHAPED, look.hours(), wait.risePercent());
        assertThat(dough.shape().hours().likely().orElseThrow())
            .as("%s h, %s %%", look.hours(), wait.risePercent())
            .isCloseTo(look.hours() + wait.hours(), within(0.4));
      }
    }
  }

  @Test
  void itIsTheSameWhetherTheLoafIsToldBeforeOrAfterTheReadings() {
    LiveDough before = read(read(SHAPED, 2, 18), 3, 36);
    LiveDough after = read(read(fresh(), 2, 18), 3, 36).shapedFor(NIGHT);
    assertThat(before.shape().hours()).isEqualTo(after.shape().hours());
  }

  @Test
  void aDoughOfWhichNothingIsMadeHasNoShapePoint() {
    assertThatThrownBy(() -> fresh().shape()).isInstanceOf(InputException.class);
  }

  /**
   * One history, looked up and worked out anew: from so many members an eighth is drawn, and each
   * meets four loaves, shuffled.
   */
  private record Both(TimeWindow live, TimeWindow refit, boolean refitted) {

    static Both of(int seed, int members) {
      Bake all = new SimulatedBaker(seed, SimulatedBaker.Setting.PLAIN).bakes(1, 12).get(0).bake();
      Bake bake = all.until(all.lastHours() * (0.25 + 0.05 * (seed % 7)));
      LiveDough live =
          LiveDough.of(RiseForecaster.standard(), JarError.standard(), bake, Both::no)
              .shapedFor(NIGHT);
      RiseForecaster many = RiseForecaster.standard().withMembers(members);
      RiseForecast anew = LiveDough.of(many, JarError.standard(), bake, Both::no).forecast();
      int[] doughs = anew.placesDrawn(members / 8);
      int[] each = IntStream.range(0, members / 2).map(i -> doughs[i % doughs.length]).toArray();
      MathArrays.shuffle(each, new Well19937c(seed));
      double[] alike = DoubleStream.generate(() -> 1).limit(each.length).toArray();
      ShapeTable loaves = ShapeTable.of(anew.at(each, alike), NIGHT);
      double[] hours = loaves.hoursOf(IntStream.range(0, each.length).toArray());
      double likely = Distribution.of(hours).quantile(0.5).orElseThrow();
      Rise jar = Rise.ofPercent(anew.likelyPercentAt(likely));
      return new Both(live.shape().hours(), anew.hoursToRise(jar), live.isRefitted());
    }

    private static void no(Reading reading, ReadingDoubt doubt) {}

    double off(Function<TimeWindow, OptionalDouble> of) {
      return 60 * Math.abs(of.apply(live).orElse(0) - of.apply(refit).orElse(0));
    }
  }

  private static double[] sorted(List<Both> all, Function<TimeWindow, OptionalDouble> of) {
    return all.stream().mapToDouble(each -> each.off(of)).sorted().toArray();
  }

  @Test
  void agreesWithARefit() {
    Both one = Both.of(2002, 8192);
    assertThat(one.off(TimeWindow::likely)).isLessThan(10);
    assertThat(one.off(TimeWindow::late)).isLessThan(10);
  }

  @Test
  void fewDoughsThatExplainTheReadingsAreDrawnFromMoreAndReadOn() {
    LiveDough dough = read(read(read(SHAPED, 1.5, 25), 2, 45), 2.5, 70);
    assertThat(dough.isRefitted()).isTrue();
    assertThat(dough.membersThatCarry()).isBetween(40.0, 4000.0);
    assertThat(dough.expectedShape()).isEqualTo(SHAPED.shape());
    LiveDough later = read(dough, 3, 100);
    assertThat(later.membersThatCarry()).isLessThanOrEqualTo(dough.membersThatCarry());
    TimeWindow shape = later.shape().hours();
    assertThat(shape.likely().orElseThrow()).isLessThan(3);
  }

  /** Wanted are ten minutes in all of them; the calibration page says what is missed. */
  @Test
  @Tag("long")
  void agreesWithARefitOnTwoHundredHistories() {
    List<Both> all = IntStream.range(2000, 2200).mapToObj(seed -> Both.of(seed, 32_768)).toList();
    double[] early = sorted(all, TimeWindow::early);
    double[] likely = sorted(all, TimeWindow::likely);
    double[] late = sorted(all, TimeWindow::late);
    System.out.printf("refitted %d of 200%n", all.stream().filter(Both::refitted).count());
    for (double[] each : List.of(early, likely, late)) {
      System.out.printf(
          "min off the refit: median %.1f, 95 of 100 %.1f, worst %.1f; within ten %d%n",
          each[100], each[190], each[199], Arrays.stream(each).filter(m -> m <= 10).count());
    }
    assertThat(likely[190]).isLessThan(10);
    assertThat(late[100]).isLessThan(5);
  }
}
