package doughtide.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.FlourClass;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Share;
import doughtide.core.thermal.WaterAnswer;
import doughtide.core.thermal.WaterTerm;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class StrengthWordsTest {
  private static StrengthPlan plan(FlourClass flour, double hydrationPercent) {
    return StrengthPlan.of(flour.flour(), Share.ofPercent(hydrationPercent), Share.ofPercent(73));
  }

  @ParameterizedTest
  @EnumSource
  void everyPlanIsSaidInFullInEveryLanguage(Language language) {
    StrengthWords words = new StrengthWords(Words.in(language));
    for (double percent = 60; percent <= 80; percent += 5) {
      StrengthPlan wanted = plan(FlourClass.STRONG_WHITE, percent);
      assertThat(words.sentences(wanted, wanted.within(0.5), Share.ofPercent(percent)))
          .hasSizeGreaterThan(2)
          .allSatisfy(sentence -> assertThat(sentence).doesNotContain("{").endsWith("."));
      assertThat(words.kinds(wanted)).isNotBlank();
    }
  }

  @ParameterizedTest
  @EnumSource
  void everythingAboutWaterHasWords(Language language) {
    WaterWords words = new WaterWords(Words.in(language));
    WaterAnswer answer =
        new WaterAnswer(48, 1, Optional.empty(), List.of(WaterAnswer.Caution.values()));
    assertThat(words.cautions(answer)).hasSize(2).allMatch(said -> said.contains("48"));
    for (WaterTerm.Kind term : WaterTerm.Kind.values()) {
      assertThat(words.why(term)).as(term.name()).isNotBlank();
    }
  }

  @Test
  void saysWhyAndWhatWouldChangeIt() {
    StrengthPlan wanted = plan(FlourClass.STRONG_WHITE, 69);
    assertThat(StrengthWords.english().sentences(wanted, wanted, Share.ofPercent(69)))
        .startsWith(
            "Folds: 3, because hydration is 69% and the dough of this flour tears from about 73%"
                + " on.",
            "One more from 71% hydration on.",
            "One less up to 65% hydration, or where a mixer has built the dough.");
    StrengthPlan rye = plan(FlourClass.RYE, 80);
    assertThat(StrengthWords.english().sentences(rye, rye, Share.ofPercent(80)))
        .containsExactly("No folds: too little gluten. Mix until even.");
  }
}
