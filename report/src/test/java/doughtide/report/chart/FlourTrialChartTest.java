package doughtide.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.FlourClass;
import doughtide.core.flourtrial.AbsorptionFit;
import doughtide.core.flourtrial.AbsorptionPrior;
import doughtide.core.flourtrial.BowlTest;
import doughtide.core.flourtrial.Experience;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Grades of an invented flour. */
class FlourTrialChartTest {

  private static AbsorptionFit fit() {
    return AbsorptionFit.of(
        List.of(
            new GradedBowl("a", "Ann", 60, Grade.FIRM),
            new GradedBowl("a", "Ann", 64, Grade.THIN_WINDOW),
            new GradedBowl("a", "Ann", 68, Grade.THIN_WINDOW),
            new GradedBowl("a", "Ben", 68, Grade.THIN_WINDOW),
            new GradedBowl("a", "Ann", 72, Grade.TEARS_FAR),
            new GradedBowl("a", "Ann", 76, Grade.TORN)),
        AbsorptionPrior.of(FlourClass.WHITE.flour()));
  }

  @ParameterizedTest
  @EnumSource
  void showsGradesAndBordersInEveryLanguage(Language language) {
    Words words = Words.in(language);
    byte[] bytes =
        ChartOutput.bytes(
            FlourTrialChart.of(
                "Harrow white", fit(), BowlTest.WINDOW, Experience.EXPERIENCED, words),
            ChartFormat.SVG,
            ChartSize.A5_LANDSCAPE,
            FlourTrialChart.caption("Harrow white", fit(), Experience.EXPERIENCED, words));

    assertThat(new String(bytes, StandardCharsets.UTF_8))
        .contains("Harrow white")
        .contains(words.say("chart.limit"))
        .contains(words.say("chart.comfortable"))
        .contains(words.say("grade.TORN"))
        .contains(words.say("grade.TOO_STIFF"))
        .contains(words.say("chart.hydration"));
  }

  /** The water to work at is as far below the limit as the baker's hands want it. */
  @Test
  void leadsWithTheWaterToWorkAt() {
    Words words = Words.in(Language.ENGLISH);
    double working = fit().limit().likelyPercent() - 2;

    assertThat(
            FlourTrialChart.of(
                    "Harrow white", fit(), BowlTest.WINDOW, Experience.EXPERIENCED, words)
                .picture()
                .answer())
        .singleElement()
        .asString()
        .startsWith("Work at " + words.percent(working, 1) + " water; comfortable from ")
        .satisfies(
            said ->
                assertThat(
                        FlourTrialChart.caption("x", fit(), Experience.EXPERIENCED, words)
                            .description())
                    .startsWith(said));
  }
}
