package doughtide.cli.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.cli.CliRun;
import doughtide.cli.TestEnvironment;
import doughtide.core.document.Catalogue;
import doughtide.core.document.FlourDocument;
import doughtide.core.dough.FlourClass;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Invented flours of an invented bread class. */
class FlourFileTest {

  @TempDir Path folder;

  private FlourRecord read(String text) throws IOException {
    Files.writeString(folder.resolve("flour.txt"), text);
    return FlourFile.read("--flour-file", "flour.txt", TestEnvironment.in(folder));
  }

  @Test
  void whatIsWrittenIsReadBack() throws IOException {
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
  void aRecordNeedsLittle() throws IOException {
    FlourRecord record = read("\uFEFF# mine\r\n\r\nNAME: Harrow white\r\nflour: white\r\n");

    assertThat(record).isEqualTo(FlourRecord.named("Harrow white", FlourClass.WHITE));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "colour: white | 'flour.txt' line 3: 'colour:' is not known here: the keys are name, lot",
        "protein: 12 | 'flour.txt' line 3: protein 12 has no unit: write protein 12%",
        "protein: | 'flour.txt' line 3: 'protein:' has no value",
        "protein: 90% | 'flour.txt': protein 90 % is outside 0…50 %",
        "name: again | 'flour.txt' line 3: 'name:' is given twice",
        "date: 6 March | 'flour.txt' line 3: date \"6 March\" is not a date: write for example",
        "bowl: a; b; 72% | 'flour.txt' line 3: 3 columns, there must be 4",
        "bowl: a; b; 72%; so-so | 'flour.txt' line 3: grade 'so-so' is not known: use one of",
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
        .hasMessageStartingWith("'flour.txt': there is no line 'flour: …': add for example");
  }

  @Test
  void aDoughTakesFlourAndHydrationFromTheRecord() throws IOException {
    Files.writeString(
        folder.resolve("flour.txt"),
        "name: Millrace wholemeal\nflour: wholemeal wheat\nhydration: 78%\n");
    CliRun run =
        CliRun.in(
            TestEnvironment.in(folder), "rise", "--dough-temp", "25C", "--flour-file", "flour.txt");

    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("Millrace wholemeal; hydration 78 %");
  }

  /** The folds are counted from the limit that the graded bowls gave. */
  @Test
  void aRiseFoldsByThatLimit() throws IOException {
    Files.writeString(
        folder.resolve("flour.txt"),
        "name: Harrow white\nflour: white\nhydration: 72%\n"
            + "bowl: a; Ann; 72%; thin window\nbowl: a; Ann; 76%; thin window\n"
            + "bowl: a; Ann; 80%; tears when stretched far\nbowl: a; Ann; 84%; tears\n");
    FlourRecord record = FlourFile.read("x", "flour.txt", TestEnvironment.in(folder));
    double limit = record.fit().orElseThrow().limit().likelyPercent();
    String said = "tears from about " + Math.round(limit) + "% on";
    CliRun run =
        CliRun.in(
            TestEnvironment.in(folder), "rise", "--dough-temp", "25C", "--flour-file", "flour.txt");

    assertThat(limit).isGreaterThan(record.prior().limitPercent() + 2);
    assertThat(run.out().replaceAll("\\s+", " ")).contains(said);
  }
}
