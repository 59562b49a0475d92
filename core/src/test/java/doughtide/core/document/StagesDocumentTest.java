package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.FlourClass;
import doughtide.core.dough.StarterCondition;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.quantity.InputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StagesDocumentTest {

  private static StagedBuild read(String text) {
    return StagesDocument.read(text.lines().iterator(), Catalogue.standard());
  }

  private static BuildStage stage(String text) {
    return StagesDocument.stage("--stage", text, FlourClass.WHITE.flour(), Catalogue.standard());
  }

  @Test
  void readsARyeSour() {
    StagedBuild build =
        read(
            """
            # common practice
            starter flour: rye
            starter condition: from cold
            stage: fresh sour, 1:5, dough yield 200, 26C, 6h
            stage: 1:4, TA 165, 25 °C, 8h, basic sour
            stage: full sour, 1:1:1, rye:90%,wholemeal rye:10%, 30C, until ripe
            """);

    assertThat(build.stages()).hasSize(3);
    assertThat(build.seed().condition()).isEqualTo(StarterCondition.FROM_COLD);
    BuildStage fresh = build.stages().get(0);
    assertThat(fresh.name()).contains("fresh sour");
    assertThat(fresh.flour()).isEqualTo(FlourClass.RYE.flour());
    assertThat(fresh.hours()).hasValue(6);
    assertThat(build.feedings().get(0).hydration().percent()).isCloseTo(100, within(1e-9));
    assertThat(build.feedings().get(1).hydration().percent()).isCloseTo(65, within(1e-9));
    assertThat(build.stages().get(2).hours()).isEmpty();
    assertThat(build.stages().get(2).flour().parts()).containsKey("wholemeal rye");
  }

  @Test
  void aStageMayBePartsTemperatureAndHoursAlone() {
    BuildStage plain = stage("1:2:1, 28C, 90min");

    assertThat(plain.name()).isEmpty();
    assertThat(plain.hours()).hasValue(1.5);
    assertThat(plain.temperature().celsius()).isEqualTo(28);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "full sour,1:5:5,rye,26C,6h",
        "1:5:5,26C,6h,full sour,rye",
        "26C,6h,rye,full sour,1:5:5",
        "full sour, rye,26C,6h, 1:5:5",
        "full sour,rye:100%,1:5:5,26.0C,6h",
      })
  void commasMayStandWithoutSpaces(String text) {
    BuildStage stage = stage(text);

    assertThat(stage.name()).contains("full sour");
    assertThat(stage.ratio()).isEqualTo(new FeedRatio(1, 5, 5));
    assertThat(stage.flour().parts()).containsOnlyKeys("rye");
    assertThat(stage.temperature().celsius()).isEqualTo(26);
    assertThat(stage.hours()).hasValue(6);
  }

  @Test
  void aCommaBetweenDigitsIsADecimalOneWhereThatIsTheOnlyReading() {
    assertThat(stage("1:2,5:2,5, 26,5C, 1,5h").ratio()).isEqualTo(new FeedRatio(1, 2.5, 2.5));
    refuses("1:2:2,26,5C", "can be read as 1:2:2 and 26,5C or as 1:2:2,26 and 5C");
  }

  @Test
  void saysWhatCannotBeUsed() {
    refuses("1:2:2,3,5h, 26C", "can be read as 1:2:2 and 3,5h or as 1:2:2,3 and 5h: put a space");

    refuses("28C, 4h", "lacks its parts starter:flour:water");
    refuses("1:2:1, 4h", "lacks its temperature");
    refuses("1:2:1, 28C, 1:2, dough yield 180", "says its parts twice");
    refuses("1:2:1, 28C, 30C", "says its temperature twice");
    refuses("1:2:1, dough yield 180, 28C", "with a dough yield write two parts");
    refuses("1:2:1, 28C, 200h", "200 h is outside 0.5…120 h");
    refuses("1:2:1, 80C, 2h", "80 °C is outside -2…45 °C");
    refuses("1:2:1, 28C, first, second", "is no flour known here");
    assertThatThrownBy(() -> read("starter flour: rye"))
        .hasMessageContaining("there is no line 'stage: …'");
    assertThatThrownBy(() -> read("stage: 1:2:1, 28C\nstage: 1:1"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("line 2: ");
  }

  private static void refuses(String text, String sentence) {
    assertThatThrownBy(() -> stage(text))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(sentence);
  }
}
