package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.CliRun;
import doughtide.cli.TestEnvironment;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
  void oneCallMakesAllPagesOfAClassAndOneAStudentInHerLanguage() throws IOException {
    Files.writeString(
        folder.resolve("roster.csv"),
        "class: Quayside bread class\nname;flour;loaves;language\nAnn;;2;\nBjörn;rye;1;de\n");
    CliRun run =
        run(
            "class-pages",
            "--out",
            "class.pdf",
            "--roster",
            "roster.csv",
            "--dough-temp",
            "24C",
            "--vary",
            "dough-temp:24C,26C",
            "--mixed-at",
            "09:30",
            "--cold",
            "4C",
            "--hold",
            "12h");
    assertThat(run.err()).isEmpty();
    assertThat(files())
        .containsExactly(
            "class-answers.pdf",
            "class-log.pdf",
            "class-students.pdf",
            "class-wall.pdf",
            "class.pdf",
            "roster.csv");
    String students = text("class-students.pdf");
    assertThat(students).contains("Ann", "899 g", "Björn", "Roggenmehl", "Achtung:");
    Matcher shape = Pattern.compile("when the jar shows (\\d+)%").matcher(students);
    assertThat(shape.find()).isTrue();
    assertThat(text("class-wall.pdf")).contains("Shape before a night", shape.group(1) + "%");
    assertThat(text("class-answers.pdf")).contains("Answers:", "24 °C");
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
        .contains("Zeit;Höhe mm;Teigtemperatur C;pH-Wert;Notiz", "6. März 2027")
        .contains("Weizenmehl 80%,", "Roggenvollkornmehl", "Anfangshöhe:", "gemischt um:");
  }

  @Test
  void theSheetOfAFirstEveningTeachesWhatItAsks() throws IOException {
    run("first-evening", "--out", "evening.pdf", "--dough-temp", "24C", "--mixed-at", "16:00");
    assertThat(text("evening.pdf"))
        .contains("1:1:1", "1:10:10", "33 °C", "5 g 50 g 50 g", "lid", "time;height mm");
    Files.createDirectory(folder.resolve("evening"));
    jar("small.csv", "feed: 1:1:1\ndough temp: 24C\nmixed at: 16:00", "17:45;60");
    jar("large.csv", "feed: 1:10:10\ndough temp: 24C\nmixed at: 16:00", "21:00;60");
    jar("warm.csv", "gefüttert: 1:1:1\nTeigtemperatur: 33C\ngemischt um: 16:00", "17:20;60");
    CliRun learned =
        CliRun.in(
            TestEnvironment.in(folder),
            "learn",
            "evening",
            "--starter-routine",
            "kept",
            "--save",
            "starter.txt");
    assertThat(learned.err()).isEmpty();
    assertThat(learned.out()).contains("3 bakes");
    CliRun rise = rise("--starter-file", "starter.txt");
    assertThat(rise().out()).contains("Nothing is known of your starter", "first-evening");
    assertThat(rise.out()).doesNotContain("Nothing is known");
    assertThat(width(rise)).isLessThan(0.7 * width(rise()));
  }

  private void jar(String file, String head, String reading) throws IOException {
    Files.writeString(
        folder.resolve("evening").resolve(file),
        head
            + "\nflour: white\nstart height: 40mm\noccasion: 6 March\n\ntime;height mm\n"
            + reading);
  }

  private CliRun rise(String... more) {
    List<String> all = new ArrayList<>(List.of("rise", "--dough-temp", "24C", "--members", "128"));
    all.addAll(List.of(more));
    return CliRun.in(TestEnvironment.in(folder), all.toArray(String[]::new));
  }

  /** Hours from early to late of the line "risen 50 %". */
  private static double width(CliRun rise) {
    String line =
        rise.out().lines().filter(l -> l.startsWith("risen 50")).findFirst().orElseThrow();
    List<Double> hours = new ArrayList<>();
    Matcher matcher = Pattern.compile("(\\d+) h(?: (\\d+) min)?").matcher(line);
    while (matcher.find()) {
      String minutes = matcher.group(2) == null ? "0" : matcher.group(2);
      hours.add(Double.parseDouble(matcher.group(1)) + Double.parseDouble(minutes) / 60);
    }
    assertThat(hours).hasSize(3);
    return hours.get(2) - hours.get(0);
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
    assertThat(
            run(
                    "hours-table",
                    "--out",
                    "a.pdf",
                    "--vary",
                    "dough-temp:" + twenty,
                    "--jar-height",
                    "62mm")
                .refusal())
        .as("refused before the table is computed, which has too many rows")
        .contains("--jar-height says nothing to hours-table");
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
