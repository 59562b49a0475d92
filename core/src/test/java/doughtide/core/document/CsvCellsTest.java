package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.quantity.InputException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CsvCellsTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      quoteCharacter = '`',
      value = {
        "a,b,c ! a|b|c",
        "a,,c, ! a||c|",
        "~a,b~,c ! a,b|c",
        "~say ~~no~~~,c ! say ~no~|c",
        "~~,~~ ! |",
        "`` ! ``",
      })
  void cellsAreSplit(String line, String cells) {
    assertThat(String.join("|", CsvCells.of(line.replace('~', '"'), ',')))
        .isEqualTo(cells.replace('~', '"'));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      quoteCharacter = '`',
      value = {"~a,b ! not closed", "a~,b ! not closed", "~a~b,c~d~ ! closing quotation mark"})
  void quotationMarksMustPair(String line, String part) {
    assertThatThrownBy(() -> CsvCells.of(line.replace('~', '"'), ','))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(part);
  }
}
