package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.dough.FlourClass;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.quantity.InputException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Invented flours of an invented bread class. */
class FlourDocumentTest {

  @Test
  void whatIsWrittenIsReadBack() {
    FlourRecord record =
        new FlourRecord(
            "Fenside rye: the dark one",
            Optional.of("L 12"),
            Optional.of(LocalDate.of(2027, 3, 6)),
            Catalogue.standard().flour("flour", "rye:62.5%,wholemeal rye:37.5%"),
            OptionalDouble.of(9.25),
            OptionalDouble.of(13),
            OptionalDouble.of(1.35),
            List.of(
                new GradedBowl("6 March; first", "Ann", 72.5, Grade.THIN_WINDOW),
                new GradedBowl("6 March, later", "#2", 76, Grade.TORN)),
            OptionalDouble.of(78));

    assertThat(read(FlourDocument.text(record))).isEqualTo(record);
  }

  @Test
  void aRecordNeedsLittle() {
    FlourRecord record = read("\uFEFF# mine\r\n\r\nNAME: Harrow white\r\nflour: white\r\n");

    assertThat(record).isEqualTo(FlourRecord.named("Harrow white", FlourClass.WHITE));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "colour: white | line 3: 'colour:' is not known here: the keys are name, lot",
        "protein: 12 | line 3: protein 12 has no unit: write protein 12%",
        "protein: | line 3: 'protein:' has no value",
        "protein: 90% | protein 90 % is outside 0…50 %",
        "name: again | line 3: 'name:' is given twice",
        "date: 6 March | line 3: date \"6 March\" is not a date: write for example",
        "bowl: a; b; 72% | line 3: 3 columns, there must be 4",
        "bowl: a; b; 72%; so-so | line 3: grade 'so-so' is not known: use one of",
      })
  void aBadLineIsNamed(String line, String part) {
    assertThatThrownBy(() -> read("name: Harrow white\nflour: white\n" + line + "\n"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(part);
  }

  @Test
  void anotherFileIsRefused() {
    assertThatThrownBy(() -> read("name: Harrow white\n"))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("there is no line 'flour: …': add for example");
  }

  private static FlourRecord read(String text) {
    return FlourDocument.read(text.lines().iterator(), Catalogue.standard());
  }
}
