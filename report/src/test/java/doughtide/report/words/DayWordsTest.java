package doughtide.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.report.SampleDays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class DayWordsTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ENGLISH | bake batch 2 | take out batch 2, leave to cool | fold 2",
        "GERMAN | Ofenladung 2 backen | Ofenladung 2 herausnehmen, abkühlen lassen | dehnen und"
            + " falten 2",
        "FRENCH | enfourner la fournée 2 | défourner la fournée 2, laisser ressuer | faire un rabat"
            + " 2",
        "SPANISH | hornear la hornada 2 | sacar la hornada 2 y dejar enfriar | plegar 2",
        "PORTUGUESE | cozer a fornada 2 | tirar a fornada 2 e deixar arrefecer | dobrar 2",
      })
  void aLoadOfTheOvenIsCountedAsABatch(Language language, String bake, String cool, String fold) {
    DayWords words = new DayWords(Words.in(language));

    assertThat(words.step(new BakeStep(BakeStep.Kind.BAKE, 1, 2, 2))).isEqualTo(bake);
    assertThat(words.step(new BakeStep(BakeStep.Kind.COOL, 1, 2, 2))).isEqualTo(cool);
    assertThat(words.step(new BakeStep(BakeStep.Kind.FOLD, 1, 2, 2))).isEqualTo(fold);
    assertThat(words.step(new BakeStep(BakeStep.Kind.BAKE, 1, 2, 0)))
        .isEqualTo(words.step(BakeStep.Kind.BAKE));
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void theWaterIsNamedWhereItIsPoured(Language language) {
    DayWords words = new DayWords(Words.in(language));
    DayPlan day = SampleDays.one();
    String water = words.detail(day, step(day, BakeStep.Kind.AUTOLYSE));
    String mix = words.detail(day, step(day, BakeStep.Kind.MIX));

    assertThat(water).containsPattern("[0-9].°C");
    assertThat(mix).contains("24").doesNotContain(water);
  }

  @Test
  void aFoldOfAPlanIsNamedByItsKindUnlessTheStepSaysItAlready() {
    DayPlan day = SampleDays.one(); // strong white at hydration 72: lamination after a stretch
    BakePlan plan = day.plans().get(0);
    DayWords english = new DayWords(Words.in(Language.ENGLISH));
    List<String> kinds =
        plan.strength().steps().stream()
            .map(new StrengthWords(Words.in(Language.ENGLISH))::kind)
            .toList();
    List<String> said =
        day.steps().stream()
            .filter(each -> each.step().kind() == BakeStep.Kind.FOLD)
            .map(each -> english.detail(day, each))
            .toList();

    assertThat(said).isEqualTo(kinds).isNotEmpty().doesNotContain("");
    assertThat(english.fold(plan, new BakeStep(BakeStep.Kind.FOLD, 1, 2, 12))).isEmpty();
    BakeStep first = new BakeStep(BakeStep.Kind.FOLD, 1, 2, 1);
    for (Language language : Language.values()) {
      DayWords words = new DayWords(Words.in(language));
      assertThat(words.fold(plan, first)).isNotEqualToIgnoringCase(words.step(first.kind()));
    }
  }

  private static DayStep step(DayPlan day, BakeStep.Kind kind) {
    return day.steps().stream()
        .filter(each -> each.step().kind() == kind)
        .findFirst()
        .orElseThrow();
  }
}
