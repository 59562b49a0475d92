package doughtide.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.quantity.Hours;
import doughtide.report.SampleDays;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DayChartTest {

  /** What is written in the picture, its lines after one another. */
  private static String drawn(DayPlan day, List<String> names, Words words) {
    byte[] svg =
        ChartOutput.bytes(
            DayChart.of("Bread", day, names, SampleDays.ZERO, words),
            ChartFormat.SVG,
            ChartSize.A4_LANDSCAPE,
            DayChart.caption("Bread", day, names, SampleDays.ZERO, words));
    return Pattern.compile("<text[^>]*>([^<]*)</text")
        .matcher(new String(svg, StandardCharsets.UTF_8))
        .results()
        .map(each -> each.group(1))
        .collect(Collectors.joining(" "));
  }

  private static String time(BakePlan plan, Words words) {
    return words
        .dayAndClock(Hours.after(SampleDays.ZERO, Math.round(plan.bulkEndHour() * 60) / 60.0))
        .replace(' ', '\u00a0');
  }

  @ParameterizedTest
  @EnumSource
  void severalDoughsLeadWithWhenToShapeEach(Language language) {
    Words words = Words.in(language);
    String all = drawn(SampleDays.two(), SampleDays.TWO_NAMES, words);

    for (int i = 0; i < 2; i++) {
      BakePlan plan = SampleDays.two().plans().get(i);
      String jar = words.percent(Math.rint(plan.shapeRise().percent()), 0);
      String shape = words.say("chart.shapeAt", Map.of("time", time(plan, words), "rise", jar));
      assertThat(all).contains(SampleDays.TWO_NAMES.get(i) + " – " + shape + ".");
    }
  }

  @Test
  void manyDoughsLeadWithTheHoursAlone() {
    DayPlan two = SampleDays.two();
    DayPlan many =
        new DayPlan(
            Collections.nCopies(7, two.plans().get(0)),
            two.steps(),
            two.loads(),
            two.hands(),
            two.loosening());
    List<String> names = IntStream.range(0, 7).mapToObj(i -> "d" + i).toList();
    Words words = Words.in(Language.ENGLISH);
    String at = time(two.plans().get(0), words);

    assertThat(drawn(many, names, words)).contains("Shape – d0 " + at + ", d1 " + at + ", ");
  }

  /** Shaped loaves that stand in the room for an hour and a half before somebody carries them. */
  @Test
  void loavesThatGoIntoTheColdLaterStandInTheRoomBefore() {
    DayPlan day = SampleDays.one();
    BakePlan plan = day.plans().get(0);
    Words words = Words.in(Language.ENGLISH);
    String basket = words.clock(Hours.after(SampleDays.ZERO, plan.basketHour()));
    String carried = words.clock(Hours.after(SampleDays.ZERO, plan.basketHour() + 1.5));
    DayPlan late = day.with(day.steps().stream().map(DayChartTest::carriedLate).toList());

    assertThat(drawn(day, List.of("dough"), words))
        .contains("Proof, cold " + basket)
        .doesNotContain("Proof " + basket);
    assertThat(drawn(late, List.of("dough"), words))
        .contains("Proof " + basket + "–" + carried)
        .contains("Proof, cold " + carried);
  }

  private static DayStep carriedLate(DayStep each) {
    BakeStep step = each.step();
    return step.kind() == BakeStep.Kind.LOAVES_INTO_COLD
        ? new DayStep(
            new BakeStep(step.kind(), step.fromHour() + 1.5, step.toHour() + 1.5, step.number()),
            each.doughs(),
            each.person())
        : each;
  }
}
