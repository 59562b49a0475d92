package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.CliRun;
import doughtide.cli.TestEnvironment;
import doughtide.core.document.ReadingsDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HandoutCommandTest {

  @TempDir Path folder;

  private CliRun run(String... words) {
    List<String> all = new ArrayList<>(List.of("handout"));
    all.addAll(List.of(words));
    return CliRun.in(TestEnvironment.in(folder), all.toArray(String[]::new));
  }

  private List<String> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private String text(String file) throws IOException {
    try (PDDocument document = Loader.loadPDF(Files.readAllBytes(folder.resolve(file)))) {
      return new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0]+", " ");
    }
  }

  @Test
  void studentsAndTeacherGetFilesOfTheirOwn() throws IOException {
    CliRun run =
        run("comparison", "--out", "warmth.pdf", "--vary", "dough-temp:20C,26C", "--students");
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("warmth.pdf", "warmth-answers.pdf");
    assertThat(files()).containsExactly("warmth-answers.pdf", "warmth.pdf");
    assertThat(text("warmth-answers.pdf")).contains("Answers:", "For sure");
    assertThat(text("warmth.pdf")).doesNotContain("Answers:", "For sure");
  }

  @Test
  void nothingIsWrittenIfOneOfTheFilesIsThereAlready() throws IOException {
    Files.writeString(folder.resolve("warmth-answers.pdf"), "mine");
    CliRun run = run("comparison", "--out", "warmth.pdf", "--students");
    assertThat(run.refusal()).contains("warmth-answers.pdf");
    assertThat(files()).containsExactly("warmth-answers.pdf");
    assertThat(Files.readString(folder.resolve("warmth-answers.pdf"))).isEqualTo("mine");
  }

  @Test
  void chartsAreWrittenBesideThePage() throws IOException {
    run("why-it-rises", "--out", "why.pdf", "--dough-temp", "75F", "--charts-as", "svg");
    assertThat(files())
        .containsExactly(
            "why-acid.svg",
            "why-gas.svg",
            "why-life.svg",
            "why-rise.svg",
            "why-strength.svg",
            "why.pdf");
  }

  @Test
  void theLogHoldsTheWordsThatLearnReads() throws IOException {
    run(
        "readings-log",
        "--out",
        "log.pdf",
        "--language",
        "de",
        "--flour",
        "white:80%,wholemeal rye:20%",
        "--hydration",
        "72%",
        "--date",
        "2027-03-06");
    assertThat(text("log.pdf"))
        .contains("time;height mm;dough temp C;pH;note", "6. März 2027")
        .contains("white:80%,", "wholemeal rye:20%", "start height:", "mixed at:");
    String filledIn =
        "flour: white:80%, wholemeal rye:20%\nhydration: 72%\nstarter: 20%\n"
            + "starter hydration: 100%\nsalt: 2%\ndough temp: 75F\n"
            + "mixed at: 2027-03-06T09:30\nstart height: 52 mm\n"
            + "time;height mm;dough temp C;pH;note\n10:30;53;24;;";
    ReadingsDocument read =
        ReadingsDocument.read(filledIn.lines().iterator(), ReadingsDocument.Setting.of("the log"));
    assertThat(read.bake().formula().hydration().percent()).isEqualTo(72);
    assertThat(read.assumed()).isEmpty();
  }

  @Test
  void whatCannotBePrintedIsRefusedInOneLine() throws IOException {
    String twenty = "20C,".repeat(19) + "20C";
    assertThat(run("comparison", "--out", "a.pdf", "--vary", "dough-temp:" + twenty).refusal())
        .contains("20 lines in one chart: use 1 to 6");
    assertThat(run("bake-sheet", "--out", "a.pdf", "--dough-temp", "41C").refusal())
        .contains("41 °C");
    assertThat(run("bake-shet", "--out", "a.pdf").refusal()).contains("did you mean bake-sheet?");
    assertThat(run("bake-sheet", "--out", "a.pdf").refusal()).contains("--dough-temp");
    assertThat(run("hours-table", "--out", "a.png").refusal()).contains("must end in .pdf");
    assertThat(run("hours-table", "--out", "a.pdf", "--students").refusal())
        .contains("comparison only");
    assertThat(run("hours-table", "--out", "a.pdf", "--vary", "hydration:70%").refusal())
        .contains("cannot change hydration");
    assertThat(run("hours-table", "--out", "a.pdf", "--vary", "warmth:70%").refusal())
        .contains("dough-temp");
    assertThat(run("readings-log", "--out", "a.pdf", "--language", "xx").refusal())
        .contains("use en, de, fr, es or pt");
    assertThat(run("readings-log", "--out", "a.pdf", "--date", "6.3.2027").refusal())
        .contains("2027-03-06");
    assertThat(run("readings-log", "--out", "a.pdf", "--charts-as", "png").refusal())
        .contains("has no chart");
    assertThat(files()).isEmpty();
  }
}
