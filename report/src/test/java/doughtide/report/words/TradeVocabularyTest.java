package doughtide.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.document.BowlsDocument;
import doughtide.core.document.Catalogue;
import doughtide.core.document.DoughText;
import doughtide.core.document.Kitchen;
import doughtide.core.document.Vocabulary;
import doughtide.core.flourtrial.Grade;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class TradeVocabularyTest {

  private static final Vocabulary VOCABULARY = TradeVocabulary.ofAllLanguages();
  private static final Catalogue CATALOGUE = Catalogue.standard().in(VOCABULARY);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "whole wheat | wholemeal wheat",
        "bread flour | strong white",
        "all-purpose | white",
        "T65 | white",
        "Type 1050 | white:50%,wholemeal wheat:50%",
        "Roggenmehl | rye",
        "farine de seigle 20%, T65 80% | rye:20%,white:80%",
        "centeno: 10%, trigo: 90% | rye:10%,white:90%",
        "espelta integral | wholemeal spelt",
        "Weizen 812 50%, rye 50% | white:37.5%,wholemeal wheat:12.5%,rye:50%",
      })
  void floursAreUnderstoodInTheWordsOfSeveralCountries(String text, String classes) {
    assertThat(Catalogue.text(CATALOGUE.flour("flour", text)).replace(", ", ","))
        .isEqualTo(classes);
  }

  @ParameterizedTest
  @CsvSource({"active, RIPE", "bubbly, RIPE", "überreif, PAST_BEST", "from the fridge, FROM_COLD"})
  void conditionsAreUnderstood(String word, String condition) {
    assertThat(CATALOGUE.condition("starter condition", word).name()).isEqualTo(condition);
  }

  @Test
  void aKitchenMayBeWrittenInGerman() {
    String text = "Raum: 19C\nGefäß: Schüssel\nMehl: Dinkel\nForm: Kastenform\nTeigeinlage: 850g\n";
    assertThat(Kitchen.read(text.lines().iterator(), CATALOGUE).text())
        .isEqualTo(
            "# doughtide kitchen\nroom: 19C\nvessel: bowl\nflour: Dinkel\nform: tin\n"
                + "piece: 850g\n");
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void everyKeyOfAKitchenAndADoughHasAWord(Language language) {
    for (List<String> keys : List.of(Kitchen.keys(), DoughText.keys())) {
      for (String key : keys) {
        for (String word : Words.in(language).say("read.key." + key).split(",", -1)) {
          assertThat(VOCABULARY.meant(Vocabulary.Kind.KEY, word, keys)).as(word).contains(key);
        }
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void gradesAreReadInTheWordsThatThePagesPrint(Language language) {
    for (Grade grade : Grade.values()) {
      String line = "first;Ann;70;" + Words.in(language).say("grade." + grade.name());
      assertThat(BowlsDocument.read(List.of(line).iterator(), VOCABULARY).get(0).grade())
          .isEqualTo(grade);
    }
  }
}
