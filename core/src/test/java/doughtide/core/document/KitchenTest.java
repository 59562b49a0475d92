package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KitchenTest {

  private static final Catalogue CATALOGUE = Catalogue.standard();

  private static Kitchen read(String text) {
    return Kitchen.read(text.lines().iterator(), CATALOGUE);
  }

  @Test
  void everyKeyIsReadAndWritten() {
    Map<String, String> values =
        Map.ofEntries(
            Map.entry("room", "19C"),
            Map.entry("vessel", "bowl"),
            Map.entry("vessel-material", "wood"),
            Map.entry("cold", "39F"),
            Map.entry("cold-measured", "yes"),
            Map.entry("cold-air", "fan"),
            Map.entry("cold-file", "cold.txt"),
            Map.entry("altitude", "1500m"),
            Map.entry("zone", "Europe/Lisbon"),
            Map.entry("language", "pt"),
            Map.entry("degrees", "fahrenheit"),
            Map.entry("paper", "A5"),
            Map.entry("flour", "white 80%, rye 20%"),
            Map.entry("flour-file", "harrow, new; white.txt"),
            Map.entry("starter-file", " \"mine\".txt".strip()),
            Map.entry("starter-hydration", "75%"),
            Map.entry("starter-condition", "from cold"),
            Map.entry("starter-routine", "kept"),
            Map.entry("piece", "850g"),
            Map.entry("form", "tin"),
            Map.entry("shaping", "knocked-back"),
            Map.entry("target", "85%"),
            Map.entry("oven-capacity", "6"),
            Map.entry("at-the-bench", "07:00-22:00"),
            Map.entry("mixer", "spiral"),
            Map.entry("warming", "-1.5C"),
            Map.entry("scale", "0.5g"));
    Kitchen kitchen = Kitchen.empty();
    for (String key : Kitchen.keys()) {
      kitchen = kitchen.with(key, values.get(key), CATALOGUE);
    }
    assertThat(kitchen.values()).isEqualTo(values);
    assertThat(read(kitchen.text())).isEqualTo(kitchen);
    assertThat(kitchen.values().keySet()).containsExactlyElementsOf(Kitchen.keys());
  }

  @Test
  void quantitiesAreThereForProgramsThatEmbedIt() {
    Kitchen kitchen =
        read(
            "# mine\n\nRoom: 66F\nstarter_hydration: 75 %\npiece: 850g\ncold: 4C\naltitude: 20m\n"
                + "zone: europe/berlin\nFLOUR: Rye;;\n");
    assertThat(kitchen.room().orElseThrow().celsius()).isEqualTo(18.9, within(0.02));
    assertThat(kitchen.cold().orElseThrow().celsius()).isEqualTo(4);
    assertThat(kitchen.starterHydration().orElseThrow().percent()).isEqualTo(75);
    assertThat(kitchen.piece().orElseThrow().grams()).isEqualTo(850);
    assertThat(kitchen.altitude().orElseThrow().metres()).isEqualTo(20);
    assertThat(kitchen.zone().orElseThrow().getId()).isEqualTo("Europe/Berlin");
    assertThat(kitchen.flour(CATALOGUE).orElseThrow().name()).isEqualTo("rye");
    assertThat(kitchen.without("flour").flour(CATALOGUE)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "romm: 19C | line 2: 'romm:' is not known here: did you mean 'room:'?",
        "oven: 4 | line 2: 'oven:' is not known here: did you mean 'oven capacity:'?",
        "room: 19 | line 2: room: 19 has no unit: write room: 19C (or 66.2F)",
        "piece: 9kg | line 2: 'piece:' is given twice",
        "cold-air: warm | line 2: cold air: warm is not known: use still, fan",
        "cold-measured: 4.5C | line 2: cold measured: 4.5C is yes or no, the temperature belongs to"
            + " cold: write cold 4.5C, and cold-measured yes if a thermometer",
        "form: plait | line 2: form: plait is not known: use round, oval, tin, baguette, tub",
        "form: | line 2: 'form:' has no value",
        "zone: Atlantis | line 2: zone: Atlantis is no zone known here",
        "oven-capacity: 0 | line 2: oven capacity: 0 is outside 1…1000",
        "a line | line 2: 'a line' is no line 'key: value', such as 'room: …'",
        "language: klingon | line 2: language: klingon is no language",
      })
  void aBadLineIsNamed(String line, String message) {
    assertThatThrownBy(() -> read("piece: 850g\n" + line))
        .isInstanceOf(LineException.class)
        .hasMessageStartingWith(message)
        .hasMessageNotContaining("\n");
  }

  @Test
  void aKeyThatNoKitchenHasIsRefused() {
    assertThatThrownBy(() -> Kitchen.empty().with("colour", "white", CATALOGUE))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("a kitchen has no 'colour': its keys are room, vessel");
  }

  @Test
  void wordsOfAnotherLanguageMeanKeys() {
    Vocabulary german =
        (kind, word) ->
            switch (kind + " " + word) {
              case "KEY raum" -> Optional.of("room");
              case "KEY form" -> Optional.of("form");
              case "FORM rund" -> Optional.of("round");
              default -> Optional.empty();
            };
    Kitchen kitchen =
        Kitchen.read("Raum: 19C\nForm: Rund".lines().iterator(), CATALOGUE.in(german));
    assertThat(kitchen.values()).isEqualTo(Map.of("room", "19C", "form", "round"));
  }

  @Test
  void aRefrigeratorIsReadBack() {
    ColdDocument refrigerator = new ColdDocument(-0.8, 0.5, 0.0512, 0.12);
    assertThat(ColdDocument.read(refrigerator.text().lines().iterator(), Vocabulary.KEYS_ONLY))
        .isEqualTo(refrigerator);
    assertThatThrownBy(
            () -> ColdDocument.read("air-offset: 0.5".lines().iterator(), Vocabulary.KEYS_ONLY))
        .hasMessageStartingWith("there is no line 'air offset deviation: …'");
    assertThatThrownBy(() -> new ColdDocument(11, 0.5, 0, 0))
        .hasMessage("air offset 11 °C is outside -10…10 °C (did you mean 1.1 °C?)");
  }

  /** One line is put in another's place, or at the end; what a person wrote beside it stays. */
  @Test
  void aChangedLineLeavesTheOthersAsTheyAre() {
    List<String> lines = List.of("# mine", "Room : 19C", "", "piece: 850g");

    assertThat(Kitchen.changed(lines, "room", Optional.of("21.5C"), CATALOGUE))
        .isEqualTo("# mine\nroom: 21.5C\n\npiece: 850g\n");
    assertThat(Kitchen.changed(lines, "room", Optional.empty(), CATALOGUE))
        .isEqualTo("# mine\n\npiece: 850g\n");
    assertThat(Kitchen.changed(lines, "form", Optional.of("round"), CATALOGUE))
        .isEqualTo("# mine\nRoom : 19C\n\npiece: 850g\nform: round\n");
    assertThatThrownBy(() -> Kitchen.changed(lines, "form", Optional.empty(), CATALOGUE))
        .hasMessage("there is no line 'form: …'");
    assertThatThrownBy(() -> Kitchen.changed(lines, "room", Optional.of("19"), CATALOGUE))
        .hasMessageContaining("no unit");
  }
}
