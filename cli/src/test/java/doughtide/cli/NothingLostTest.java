package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** No call writes over a file that it has read, whatever it is asked to overwrite. */
class NothingLostTest {
  private static final String READINGS =
      "dough temp: 25C\nmixed at: 09:30\ntime;rise %\n11:30;12\n13:30;30\n";

  @TempDir Path folder;

  @BeforeEach
  void files() throws IOException {
    Files.createDirectory(folder.resolve("bk"));
    Files.writeString(folder.resolve("bk/a.csv"), READINGS);
    Files.writeString(folder.resolve("a.svg"), READINGS);
    Files.writeString(folder.resolve("day.ics"), "name;loaves\nwhite;1\n");
    Files.writeString(folder.resolve("doughs.csv"), "dough_temp\n25C\n");
    Files.writeString(folder.resolve("doughs.csv.part"), "dough_temp\n25C\n");
    Files.writeString(folder.resolve("harrow.txt"), "name: Harrow\nflour: white\nhydration: 71%\n");
    Files.writeString(folder.resolve("room.svg"), "hours,temperature C\n0,25\n2,23\n");
    Files.writeString(folder.resolve("home.pdf"), "room: 19C\n");
    Files.createSymbolicLink(folder.resolve("link.csv"), Path.of("bk", "a.csv"));
    Files.createSymbolicLink(folder.resolve("bak"), Path.of("bk"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "learn bk --save bk/a.csv --overwrite",
        "learn bk --save link.csv --overwrite",
        "learn bak --save bk/a.csv --overwrite",
        "rise --readings a.svg --chart a.svg --overwrite",
        "rise --temps room.svg --chart ./bk/../room.svg --overwrite",
        "batch doughs.csv --out doughs.csv --overwrite",
        "batch doughs.csv.part --out doughs.csv --overwrite",
        "flour save harrow.txt --flour-file harrow.txt --overwrite",
        "class-day day.ics --ready-at 2027-03-14T12:00 --at-the-bench 7-22 --calendar day.ics"
            + " --overwrite",
        "rise --dough-temp 25C --kitchen home.pdf --chart home.pdf --overwrite",
        "handout comparison --vary hydration:65%,75% --flour-file harrow.txt --kitchen home.pdf"
            + " --out home.pdf --overwrite",
      })
  void aFileThatIsReadIsNotWritten(String words) throws IOException {
    assertThat(CliRun.in(TestEnvironment.in(folder), words.split(" ")).refusal())
        .contains("is read by this call and would be lost by writing it");
    assertThat(folder.resolve("bk/a.csv")).hasContent(READINGS);
    assertThat(folder.resolve("a.svg")).hasContent(READINGS);
    assertThat(folder.resolve("doughs.csv.part")).hasContent("dough_temp\n25C\n");
  }

  @Test
  void aKitchenIsKeptByReplacingIt() {
    String[] words = "kitchen set room 21C --kitchen home.pdf".split(" ");

    assertThat(CliRun.in(TestEnvironment.in(folder), words).code()).isZero();
    assertThat(folder.resolve("home.pdf")).hasContent("room: 21C\n");
  }
}
