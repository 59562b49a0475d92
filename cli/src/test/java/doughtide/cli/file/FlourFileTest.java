package doughtide.cli.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.cli.CliRun;
import doughtide.cli.TestEnvironment;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Invented flours of an invented bread class. */
class FlourFileTest {

  @TempDir Path folder;

  private FlourRecord read(String text) throws IOException {
    Files.writeString(folder.resolve("flour.txt"), text);
    return FlourFile.read("--flour-file", "flour.txt", TestEnvironment.in(folder));
  }

  @Test
  void aBadLineIsToldWithTheFile() {
    assertThatThrownBy(() -> read("name: Harrow white\nflour: white\nprotein: 12\n"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("'flour.txt' line 3: protein 12 has no unit: write protein 12%");
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
