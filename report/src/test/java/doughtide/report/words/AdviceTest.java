package doughtide.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.document.BowlsDocument;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.StarterPhase;
import doughtide.core.flourtrial.BowlTest;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.flourtrial.TrialNote;
import doughtide.core.forecast.Unknown;
import doughtide.core.forecast.Warning;
import doughtide.core.learning.LearnedParameter;
import doughtide.core.learning.OutlierReason;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class AdviceTest {
  private static final LearnedParameter.Range RANGE = new LearnedParameter.Range(0.8, 1, 1.25);
  private static final Map<String, Double> TRIAL_NUMBERS =
      Map.of(
          "limitPercent", 75.25,
          "sdPoints", 4.0,
          "wettestPercent", 80.0,
          "driestPercent", 60.0,
          "pairs", 5.0,
          "points", 2.5);
  private static final List<GradedBowl> TWO_BOWLS =
      List.of(
          new GradedBowl("first", "A", 65, Grade.TORN),
          new GradedBowl("first", "A", 69, Grade.THIN_WINDOW));

  private static Warning some(Warning.Kind kind) {
    double[] numbers = new double[kind.names().size()];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = 11.5 + i;
    }
    return kind.with(numbers);
  }

  @ParameterizedTest
  @EnumSource
  void everyWarningHasItsSentenceRemedyAndNumbersInEveryLanguage(Language language) {
    Words words = Words.in(language);
    for (Warning.Kind kind : Warning.Kind.values()) {
      Advice advice = Advice.of(words, some(kind));
      assertThat(advice.text()).as(kind.name()).isNotBlank().doesNotContain("{", "|").endsWith(".");
      assertThat(advice.remedy()).as(kind.name()).isNotBlank().doesNotContain("{", "|");
      if (!kind.names().isEmpty()) {
        assertThat(advice.text()).as(kind.name()).containsPattern("11[.,]5|11\u00a0h");
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void everyUnknownAndEveryReasonSaysWhatItIsAndWhatHelps(Language language) {
    Words words = Words.in(language);
    for (Unknown unknown : Unknown.values()) {
      Advice advice = Advice.of(words, unknown);
      assertThat(advice.remedy()).as(unknown.name()).isNotBlank().isNotEqualTo(advice.text());
    }
    for (OutlierReason reason : OutlierReason.values()) {
      Advice advice = Advice.of(words, reason);
      assertThat(advice.remedy()).as(reason.name()).isNotBlank().isNotEqualTo(advice.text());
    }
  }

  @ParameterizedTest
  @EnumSource
  void everythingLearnedIsToldForMoreForLessAndForTheUsual(Language language) {
    Words words = Words.in(language);
    for (LearnedParameter.Kind kind : LearnedParameter.Kind.values()) {
      List<String> meanings =
          List.of(
              LearnedWords.of(words, learned(kind, 12, false)).meaning(),
              LearnedWords.of(words, learned(kind, -12, false)).meaning(),
              LearnedWords.of(words, learned(kind, 12, true)).meaning());
      assertThat(meanings).as(kind.name()).doesNotHaveDuplicates().noneMatch(String::isBlank);
      assertThat(LearnedWords.of(words, learned(kind, 12, true)).unit()).isNotBlank();
    }
  }

  private static LearnedParameter learned(
      LearnedParameter.Kind kind, double change, boolean isUsual) {
    return new LearnedParameter(kind, RANGE, RANGE, change, isUsual);
  }

  @Test
  void aFeedIsNamedPartByPart() {
    assertThat(FeedWords.english().parts(new FeedRatio(1, 5, 4.5)))
        .isEqualTo("1 part starter, 5 parts flour, 4.5 parts water");
    assertThat(new FeedWords(Words.in(Language.GERMAN)).parts(new FeedRatio(1, 5, 4.5)))
        .isEqualTo("1 Teil Anstellgut, 5 Teile Mehl, 4,5 Teile Wasser");
  }

  @ParameterizedTest
  @EnumSource
  void everyGradeAndPhaseHasWords(Language language) {
    Words words = Words.in(language);
    for (BowlTest test : BowlTest.values()) {
      List<String> looks =
          Arrays.stream(Grade.values()).map(grade -> TrialWords.look(words, test, grade)).toList();
      assertThat(looks).doesNotHaveDuplicates();
      for (Grade grade : Grade.values()) {
        String typed = TrialWords.grade(words, test, grade);
        List<String> file = List.of("trial;person;hydration;grade", "a;b;85;" + typed);
        assertThat(
                BowlsDocument.read(file.iterator(), TradeVocabulary.ofAllLanguages())
                    .get(0)
                    .grade())
            .isEqualTo(grade);
      }
    }
    for (StarterPhase phase : StarterPhase.values()) {
      assertThat(new FeedWords(words).phase(phase)).isNotBlank();
      assertThat(new FeedWords(words).look(phase)).isNotBlank();
    }
  }

  @ParameterizedTest
  @EnumSource
  void everyTrialNoteHasWords(Language language) {
    for (TrialNote.Kind kind : TrialNote.Kind.values()) {
      TrialNote note = new TrialNote(kind, TRIAL_NUMBERS, "Ada", TWO_BOWLS);
      assertThat(TrialWords.of(Words.in(language), BowlTest.PASTE, note))
          .as(kind.name())
          .doesNotContain("{");
    }
  }

  @Test
  void englishNamesTheNumbersAsTheyAreTyped() {
    assertThat(Advice.english(Warning.Kind.OUTSIDE_GROWTH.with(40.04)).text())
        .startsWith("At 40 °C the dough is too warm for one kind of sourdough yeast");
    assertThat(Advice.english(Warning.Kind.THIN_DATA_COLD.with(1.9, 2)).text())
        .isEqualTo("At 1.9 °C the window is wide: few measurements of rates exist below 2 °C.");
    assertThat(Advice.english(Warning.Kind.UNUSUAL_SALT.with(3.1, 0, 3)).sentences())
        .isEqualTo(
            "3.1 % salt lies outside the usual 0 to 3 %; the hours are less certain."
                + " Check the figure, or note your readings.");
    assertThat(Advice.english(Warning.Kind.LOGGER_GAP.with(4, 3, 1205)).text())
        .startsWith("The logger is silent for 4 h between line 3 and line 1205;");
    assertThat(
            LearnedWords.english(learned(LearnedParameter.Kind.TEMPERATURE, -0.52, false))
                .meaning())
        .isEqualTo("your doughs are 0.5 °C colder than you note");
    assertThat(
            TrialWords.english(
                BowlTest.WINDOW,
                new TrialNote(TrialNote.Kind.CONTRADICTION, Map.of("pairs", 5.0), "A", TWO_BOWLS)))
        .contains("pairs: 5, the first in first, A: 65 % torn, 69 % thin window");
  }

  @Test
  void onePointIsNoPoints() {
    TrialNote one =
        new TrialNote(TrialNote.Kind.PERSON_HIGHER, Map.of("points", 0.96), "Ada", List.of());
    assertThat(TrialWords.english(BowlTest.WINDOW, one)).startsWith("Ada sets the limit 1 point h");
    assertThat(TrialWords.of(Words.in(Language.GERMAN), BowlTest.WINDOW, one))
        .startsWith("Ada setzt die Grenze 1 Punkt höher");
  }
}
