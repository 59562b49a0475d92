package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import de.siegmar.fastcsv.reader.CsvReader;
import doughtide.cli.file.FlourFile;
import doughtide.cli.file.StarterFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Text that was typed or stands in a file stays text in everything that is written. */
class MarkupTest {

  private static final String SCRIPT = "<script>alert(1)</script>&amp;\"'";
  private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");

  @TempDir Path folder;

  private CliRun run(String... words) {
    CliRun run = CliRun.in(TestEnvironment.in(folder), words);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    return run;
  }

  private CliRun chart(String file, String title) {
    return run("rise", "--dough-temp", "25C", "--members", "8", "--chart", file, "--title", title);
  }

  private Document svg(String file) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    var builder = factory.newDocumentBuilder();
    builder.setEntityResolver(
        (name, place) -> new InputSource(new ByteArrayInputStream(new byte[0])));
    return builder.parse(folder.resolve(file).toFile());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        SCRIPT,
        "]]>",
        "<!-- -->",
        "<?x y?>",
        "<!DOCTYPE svg [<!ENTITY x 'y'>]>",
        "</svg><a href='javascript:x'/>",
        "&x; &#60;script>",
        "url(#x)"
      })
  void aTitleIsTextInAnSvg(String title) throws Exception {
    chart("x.svg", title);
    Document svg = svg("x.svg");
    assertThat(svg.getElementsByTagNameNS("*", "title").item(0).getTextContent()).isEqualTo(title);
    NodeList all = svg.getElementsByTagName("*");
    for (int i = 0; i < all.getLength(); i++) {
      Element element = (Element) all.item(i);
      assertThat(element.getLocalName()).isNotIn("script", "a", "foreignObject", "x", "animate");
      for (int k = 0; k < element.getAttributes().getLength(); k++) {
        String attribute = element.getAttributes().item(k).getNodeName();
        assertThat(attribute).doesNotStartWith("on").doesNotContain("href");
      }
    }
    assertThat(Files.readString(folder.resolve("x.svg")))
        .doesNotContain("<script", "javascript:x'/>");
  }

  @ParameterizedTest
  @ValueSource(strings = {SCRIPT, ") /JS (x) >> endobj", "(()", "\\\\051 /OpenAction", "=1+1"})
  void aTitleIsTextInAPdf(String title) throws IOException {
    chart("x.pdf", title);
    try (PDDocument pdf = Loader.loadPDF(folder.resolve("x.pdf").toFile())) {
      assertThat(pdf.getDocumentInformation().getTitle()).isEqualTo(title);
      assertThat(pdf.getDocumentCatalog().getOpenAction()).isNull();
      assertThat(pdf.getDocumentCatalog().getNames()).isNull();
      for (PDPage page : pdf.getPages()) {
        assertThat(page.getAnnotations()).isEmpty();
      }
    }
  }

  @Test
  void whatStandsInARowOfABatchIsNoFormula() throws IOException {
    Files.writeString(
        folder.resolve("doughs.csv"),
        "id,dough_temp\n=1+1,25C\n+1,25C\n-1,25C\n@A,25C\n\"\t=1\",25C\n\" =1\",25C\n"
            + "＝1,25C\n=x,=2+2\n<b>,=3\n");
    CliRun csv = CliRun.in(TestEnvironment.in(folder), "batch", "doughs.csv", "--members", "8");
    assertNoFormula(csv.out());
    CliRun json =
        CliRun.in(
            TestEnvironment.in(folder),
            "batch",
            "doughs.csv",
            "--members",
            "8",
            "--format",
            "jsonl");
    List<String> ids = new ArrayList<>();
    for (String line : json.out().lines().toList()) {
      ids.addAll(texts(line, "id"));
    }
    assertThat(ids).contains("=1+1", "+1", "-1", "@A", "<b>"); // JSON knows no formulas
  }

  @Test
  void noTableHoldsAFormula() throws IOException {
    assertNoFormula(run("rise", "--dough-temp", "25C", "--members", "8", "--format", "csv").out());
    assertNoFormula(
        run("feed", "--ratio", "1:5:5", "--starter-temp", "22C", "--format", "csv").out());
  }

  private static void assertNoFormula(String csv) throws IOException {
    assertThat(csv).isNotBlank();
    try (var reader = CsvReader.builder().ofCsvRecord(csv)) {
      reader.forEach(
          record ->
              assertThat(record.getFields())
                  .allSatisfy(
                      cell -> {
                        boolean opens =
                            !cell.isEmpty() && "=+-@\t\r\n＝＋－＠".indexOf(cell.charAt(0)) >= 0;
                        assertThat(opens && !NUMBER.matcher(cell).matches()).as(cell).isFalse();
                      }));
    }
  }

  /** Names of files are text from outside, too: in JSON and on the terminal. */
  @Test
  void namesOfFilesStayText() throws IOException {
    DemoReadings.copyTo(folder);
    Path bakes = folder.resolve("quayside-bakes");
    for (String name : List.of("=1+1", "a\"},{\"b", "<b>x", "esc\u001b[31mred")) {
      Files.copy(bakes.resolve("2026-01-10.csv"), bakes.resolve(name + ".csv"));
    }
    String json = run("learn", "quayside-bakes", "--format", "json").out();
    assertThat(texts(json, null)).contains("=1+1", "a\"},{\"b", "<b>x");
    String text = run("learn", "quayside-bakes").out();
    assertThat(text).doesNotContain("\u001b");
    assertThat(json).doesNotContain("\u001b");
    String saved = run("learn", "quayside-bakes", "--save", "x\u001b[2J\u202Ey.json").out();
    assertThat(saved).doesNotContain("\u001b", "\u202E");
  }

  private static List<String> texts(String json, String field) throws IOException {
    List<String> texts = new ArrayList<>();
    try (JsonParser parser = new JsonFactory().createParser(json)) {
      for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
        if (token == JsonToken.VALUE_STRING
            && (field == null || field.equals(parser.currentName()))) {
          texts.add(parser.getText());
        }
      }
    }
    return texts;
  }

  /** A record is lines of text: no name can add a line to it. */
  @ParameterizedTest
  @ValueSource(strings = {"Harrow; white", "a: b", "# x", "=1+1", "x,y", SCRIPT})
  void aFlourKeepsItsName(String name) {
    run("flour", "save", "x.txt", "--flour-name", name, "--flour", "white", "--hydration", "70%");
    String json =
        run(
                "rise",
                "--dough-temp",
                "25C",
                "--members",
                "8",
                "--flour-file",
                "x.txt",
                "--format",
                "json")
            .out();
    CliRun text = run("rise", "--dough-temp", "25C", "--members", "8", "--flour-file", "x.txt");
    assertThat(json + text.out()).isNotBlank();
    assertThat(FlourFile.read("--flour-file", "x.txt", TestEnvironment.in(folder)).name())
        .isEqualTo(name);
  }

  @Test
  void aNameWithLineEndsIsRefused() {
    for (String name : List.of("a\nhydration: 99%", "a\rb", "a\u0000b", "a\u0085b")) {
      CliRun run =
          CliRun.in(
              TestEnvironment.in(folder),
              "flour",
              "save",
              "x.txt",
              "--flour-name",
              name,
              "--flour",
              "white",
              "--hydration",
              "70%");
      assertThat(run.refusal()).contains("--flour-name");
      assertThat(folder.resolve("x.txt")).doesNotExist();
    }
  }

  /** A mixer's name comes from the command line and goes into the starter's JSON. */
  @Test
  void aMixerKeepsItsName() throws IOException {
    DemoReadings.learnedIn(folder);
    String name = "a\"},{\"b\\";
    run(
        "water",
        "--pour",
        "30C",
        "--got",
        "30C",
        "--room",
        "21C",
        "--mixer",
        name,
        "--starter-file",
        "starter.json",
        "--save",
        "kept.json");
    assertThat(
            StarterFile.read("--starter-file", "kept.json", TestEnvironment.in(folder))
                .mixerFrictionCelsius())
        .containsOnlyKeys(name);
  }

  @Test
  void aMixerThatCoolsADoughIsNotKept() throws IOException {
    DemoReadings.learnedIn(folder);
    String call =
        "water --pour 30C --got 15C --room 21C --mixer hook --starter-file starter.json --save k.json";
    CliRun run = CliRun.in(TestEnvironment.in(folder), call.split(" "));
    assertThat(run.refusal()).contains("--save keeps a mixer", "--got");
    assertThat(folder.resolve("k.json")).doesNotExist();
  }

  /** The names of a class's doughs stand in a file and go into every form of the day. */
  @Test
  void theNamesOfDoughsStayText() throws Exception {
    Files.writeString(
        folder.resolve("class.csv"),
        "name,loaves,starter,dough_temp\n=1+1,1,20%,24C\n\"<b>,;:\\n\",1,20%,24C\n");
    String call =
        "class-day class.csv --ready-at 2027-03-14T12:00 --at-the-bench 07:00-22:00 --cold 4C"
            + " --hands 2 --zone Europe/Berlin --calendar x.ics --chart x.svg --format ";
    assertNoFormula(run((call + "csv").split(" ")).out());
    Document svg = svg("x.svg");
    assertThat(svg.getElementsByTagNameNS("*", "b").getLength()).isZero();
    String calendar = Files.readString(folder.resolve("x.ics")).replace("\r\n ", "");
    assertThat(calendar).contains("<b>\\,\\;:\\\\n");
    String json = run((call + "json --overwrite").split(" ")).out();
    assertThat(texts(json, null)).contains("=1+1", "<b>,;:\\n");
  }

  /** RFC 5545: lines of at most 75 octets, folded; commas, semicolons and line ends escaped. */
  @Test
  void aCalendarIsFoldedAndEscaped() throws IOException {
    String call =
        "bake-day --ready-at 2027-03-14T12:00 --at-the-bench 06:30-08:30,17:00-22:30 --room 21C"
            + " --cold 4C --zone Europe/Berlin --calendar x.ics";
    run(call.split(" "));
    String text = Files.readString(folder.resolve("x.ics"));
    assertThat(text.replace("\r\n", "")).doesNotContain("\n", "\r");
    List<String> lines = List.of(text.split("\r\n"));
    assertThat(lines)
        .allSatisfy(
            line -> {
              assertThat(line.getBytes(StandardCharsets.UTF_8)).hasSizeLessThanOrEqualTo(75);
              assertThat(line).matches("([A-Z-]+[;:].*| .*)");
            });
    assertThat(text.replace("\r\n ", "").lines().filter(l -> l.matches("(SUMMARY|DESCRIPTION).*")))
        .isNotEmpty()
        .allSatisfy(
            line ->
                assertThat(line.substring(line.indexOf(':') + 1)).matches("([^,;\\\\]|\\\\.)*"));
  }
}
