package doughtide.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.document.BowlsDocument;
import doughtide.core.document.Catalogue;
import doughtide.core.document.DoughText;
import doughtide.core.document.Kitchen;
import doughtide.core.document.ReadingsDocument;
import doughtide.core.document.ReadingsDocument.Setting;
import doughtide.core.document.Vocabulary;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.flourtrial.Grade;
import doughtide.core.learning.Reading;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
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
    String heading =
        new TypedWords(Words.in(language)).columns("trial", "person", "hydration", "grade");
    for (Grade grade : Grade.values()) {
      String line = "first;Ann;70;" + Words.in(language).say("grade." + grade.name());
      assertThat(BowlsDocument.read(List.of(heading, line).iterator(), VOCABULARY).get(0).grade())
          .isEqualTo(grade);
    }
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void aLogIsReadBackInTheWordsThatThePagesPrint(Language language) {
    TypedWords typed = new TypedWords(Words.in(language));
    Flour flour = CATALOGUE.flour("flour", "strong white:80%,wholemeal rye:20%");
    String log =
        String.join(
            "\n",
            typed.key("feed") + ": 1:10:10",
            typed.key("occasion") + ": 6.3.",
            typed.key("flour") + ": " + typed.flour(flour),
            typed.key("starter-hydration") + ": 60%",
            typed.key("dough-temp") + ": 24" + typed.degrees(),
            typed.key("mixed-at") + ": 19:00",
            typed.key("start-height") + ": 40 mm",
            typed.columns("time", "height", "dough-temp", "ph", "note"),
            "01:30;60;24.5;4.5;-");
    Setting usual = Setting.of("jar 2");
    ReadingsDocument read =
        ReadingsDocument.read(
            log.lines().iterator(), new Setting("jar 2", usual.zone(), CATALOGUE, usual.records()));
    Starter starter = new Starter(Share.ofPercent(60), flour, StarterCondition.RIPE);
    assertThat(read.bake().formula()).isEqualTo(DoughFormula.feed(starter, 1, 10, 10, flour));
    assertThat(read.bake().occasion()).isEqualTo("6.3.");
    assertThat(read.bake().readings())
        .containsExactly(Reading.ofRise(6.5, Rise.ofPercent(50)).withCelsius(24.5).withPh(4.5));
    assertThat(read.assumed()).isEmpty();
    assertThat(read.refused().count()).isZero();
  }
}
