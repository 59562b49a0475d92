package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import de.siegmar.fastcsv.reader.CsvReader;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.command.again.DayCalendar;
import doughtide.cli.file.FlourFile;
import doughtide.cli.file.OutputFile;
import doughtide.cli.file.StarterFile;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.math.BigDecimal;
import java.net.URI;
import java.net.URLClassLoader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.htmlunit.BrowserVersion;
import org.htmlunit.WebClient;
import org.htmlunit.html.HtmlPage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/**
 * What a hostile or unlucky caller can do: text that was typed or stands in a file stays text in
 * everything that is written, and machines that are small, closed or set up oddly are met in a
 * line.
 */
class AttackListTest {

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
        "water --pour 30C --got 15C --room 21C --mixer hook --starter-file starter.json --save"
            + " k.json";
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

  /** RFC 5545 counts octets, and a letter of several octets must not be torn. */
  @Test
  void aCalendarFoldsBetweenLetters() throws IOException {
    for (String letter : List.of("a", "ä", "麦", "🍞", "e\u0301", ",", "\\")) {
      List<DayCalendar.Entry> entries = new ArrayList<>();
      for (int length = 1; length < 90; length++) {
        String text = "x".repeat(length % 4) + letter.repeat(length);
        entries.add(new DayCalendar.Entry("step" + length, text, text, length, length, false));
      }
      assertThat(unfolded(calendar(entries)))
          .containsSubsequence(
              entries.stream().map(each -> "SUMMARY:" + escaped(each.summary())).toList());
    }
  }

  private byte[] calendar(List<DayCalendar.Entry> entries) throws IOException {
    OutputFile file =
        OutputFile.of(
            "--calendar", "fold.ics", OutputFile.Existing.REPLACE, TestEnvironment.in(folder));
    ClockTimes times = ClockTimes.from(TestEnvironment.NOW.atZone(ZoneId.of("Europe/Berlin")));
    new DayCalendar("plan", 0, times).write(entries, "bake-day", file, TestEnvironment.NOW);
    return Files.readAllBytes(folder.resolve("fold.ics"));
  }

  /** The lines of a calendar, each physical one checked: 75 octets of whole letters. */
  private static List<String> unfolded(byte[] calendar) throws CharacterCodingException {
    List<String> lines = new ArrayList<>();
    for (String bytes : new String(calendar, StandardCharsets.ISO_8859_1).split("\r\n")) {
      byte[] octets = bytes.getBytes(StandardCharsets.ISO_8859_1);
      assertThat(octets).hasSizeLessThanOrEqualTo(75);
      String line = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(octets)).toString();
      assertThat(line).doesNotContain("\n", "\r");
      if (line.startsWith(" ")) {
        lines.set(lines.size() - 1, lines.get(lines.size() - 1) + line.substring(1));
      } else {
        lines.add(line);
      }
    }
    return lines;
  }

  private static String escaped(String text) {
    return text.replaceAll("[,;\\\\]", "\\\\$0");
  }

  /** A letter that the bundled font lacks is named by its number; an empty box says nothing. */
  @Test
  void aTitleInOtherLettersIsNamedNotBoxed() throws Exception {
    String title = "麦 bread 🍞";
    for (String file : List.of("x.svg", "x.png", "x.pdf")) {
      chart(file, title);
    }
    String[] page = {"handout", "starter-page", "--title", title, "--out", "page.pdf"};
    CliRun printed = CliRun.in(TestEnvironment.in(folder), page);
    assertThat(printed.code()).isZero();
    assertThat(printed.err()).contains(title, "printed as [U+9EA6] bread [U+1F35E]");
    assertThat(drawn(svg("x.svg"))).contains("[U+9EA6] bread [U+1F35E]");
    for (String file : List.of("x.pdf", "page.pdf")) {
      try (PDDocument pdf = Loader.loadPDF(folder.resolve(file).toFile())) {
        assertThat(new PDFTextStripper().getText(pdf)).contains("[U+9EA6] bread [U+1F35E]");
        assertThat(pdf.getDocumentInformation().getTitle()).isEqualTo(title);
      }
    }
    chart("named.png", "[U+9EA6] bread [U+1F35E]");
    assertThat(folder.resolve("x.png")).hasSameBinaryContentAs(folder.resolve("named.png"));
  }

  private static String drawn(Document svg) {
    NodeList all = svg.getElementsByTagNameNS("*", "text");
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < all.getLength(); i++) {
      text.append(all.item(i).getTextContent()).append('\n');
    }
    return text.toString();
  }

  /** A picture of dots holds the dots and their size, and no text a program could run. */
  @ParameterizedTest
  @ValueSource(strings = {SCRIPT, "<?php phpinfo() ?>", "=1+1"})
  void aTitleIsDotsInAPng(String title) throws IOException {
    chart("x.png", title);
    byte[] png = Files.readAllBytes(folder.resolve("x.png"));
    List<String> chunks = new ArrayList<>();
    ByteBuffer parts = ByteBuffer.wrap(png).position(8);
    while (parts.hasRemaining()) {
      int length = parts.getInt();
      byte[] name = new byte[4];
      parts.get(name);
      chunks.add(new String(name, StandardCharsets.US_ASCII));
      parts.position(parts.position() + length + 4);
    }
    assertThat(chunks).containsOnly("IHDR", "pHYs", "IDAT", "IEND");
  }

  /** Every option that takes words of the baker's own, found by asking the commands. */
  @Test
  void unseenCharactersAreRefusedAlikeInAllTextOptions() {
    int options = 0;
    for (String name : Commands.NAMES) {
      CommandSpec spec = Commands.named(name).spec();
      for (OptionSpec option : spec.options().stream().filter(OptionSpec::isFreeText).toList()) {
        options++;
        for (String unseen :
            List.of("\u0001", "\n", "\t", "\u0085", "\u2028", "\u202E", "\uD800")) {
          List<String> words = new ArrayList<>(List.of(name));
          words.addAll(spec.examples().get(0).arguments());
          int there = words.indexOf(option.typed());
          if (there >= 0) {
            words.subList(there, there + 2).clear();
          }
          words.addAll(List.of(option.typed(), "a" + unseen + "b"));
          CliRun run = CliRun.in(TestEnvironment.in(folder), words.toArray(String[]::new));
          assertThat(run.refusal())
              .isEqualTo(
                  String.format(
                      Locale.ROOT,
                      "doughtide: %s holds U+%04X, a character that is not seen: leave it out",
                      option.typed(),
                      unseen.codePointAt(0)));
        }
      }
    }
    assertThat(options).isGreaterThan(5);
  }

  /** Too little memory is said in a line, without a trace of Java from any thread. */
  @Test
  void littleMemoryIsEnoughOrRefusedInALine() throws Exception {
    String[] pages = {
      "handout", "comparison", "--vary", "dough-temp:20C,26C", "--out", "class.pdf"
    };
    CliRun run = process(Map.of(), List.of("-Xmx32m"), pages);
    assertThat(run.code()).isIn(Main.OK, Main.FAULT);
    assertThat(run.err().lines())
        .allMatch(line -> line.startsWith("doughtide: the program ran out of memory"));
  }

  /** The place that the environment names is that of clocks; Java would read nonsense as UTC. */
  @ParameterizedTest
  @CsvSource({
    "Asia/Kathmandu, +05:45",
    ":America/St_Johns, -02:30",
    "Mars/Olympus, TZ='Mars/Olympus' in the environment names no time zone"
  })
  void thePlaceOfTheEnvironmentIsTakenOrRefused(String place, String said) throws Exception {
    String call = "rise --dough-temp 25C --members 8 --mixed-at 2027-07-01T09:30 --format json";
    CliRun run = process(Map.of("TZ", place), List.of("-XX:TieredStopAtLevel=1"), call.split(" "));
    assertThat(run.code() == Main.OK ? run.out() : run.refusal()).contains(said);
  }

  /** The program in a Java of its own, from the classes of this test. */
  private CliRun process(Map<String, String> set, List<String> java, String... words)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(java);
    command.addAll(List.of("-cp", classPath(), Main.class.getName()));
    command.addAll(List.of(words));
    Path out = folder.resolve("stdout");
    Path err = folder.resolve("stderr");
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile());
    builder.environment().putAll(set);
    return new CliRun(builder.start().waitFor(), Files.readString(out), Files.readString(err));
  }

  private static String classPath() {
    if (Thread.currentThread().getContextClassLoader() instanceof URLClassLoader given) {
      return Arrays.stream(given.getURLs())
          .map(url -> Path.of(URI.create(url.toString())).toString())
          .collect(Collectors.joining(File.pathSeparator));
    }
    return System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
  }

  /** In London the clocks went from 01:00 to 02:00 on 28 March 2027. */
  @Test
  void hoursThatVanishWhenTheClocksGoForwardAreLeftOutWithANote() {
    CliRun run =
        CliRun.in(
            TestEnvironment.in(folder),
            ("bake-day --ready-at 2027-03-28T12:00 --at-the-bench 1.15-1.45,5-22h30 --loaves 1"
                    + " --plans 1")
                .split(" "));

    assertThat(run.code()).isZero();
    assertThat(run.onlyLine())
        .contains("the hours 1.15-1.45 of --at-the-bench do not exist on 2027-03-28");
  }

  /** In London the clocks went from 02:00 back to 01:00 on 31 October 2027. */
  @Test
  void hoursThatComeTwiceAreUsedTwice() throws IOException {
    CliRun run =
        CliRun.in(
            TestEnvironment.in(folder),
            ("bake-day --ready-at 2027-10-31T20:00 --at-the-bench 00:30-02:30,09:00-12:00 --loaves"
                    + " 1 --plans 1 --calendar x.ics --format json")
                .split(" "));

    JsonAnswer json = JsonAnswer.of(run);
    List<OffsetDateTime> handsOn = new ArrayList<>();
    for (int i = 0; i < json.number("plans.0.steps.size"); i++) {
      String step = "plans.0.steps." + i;
      if (json.text(step + ".handsOn").equals("true")) {
        handsOn.add(OffsetDateTime.parse(json.text(step + ".from")));
        handsOn.add(OffsetDateTime.parse(json.text(step + ".to")));
      }
    }
    assertThat(handsOn)
        .allMatch(time -> isBetween(time, "00:30", "02:30") || isBetween(time, "09:00", "12:00"))
        .filteredOn(time -> isBetween(time, "01:00", "01:59"))
        .extracting(OffsetDateTime::getOffset)
        .contains(ZoneOffset.ofHours(1), ZoneOffset.UTC);
    assertEscaped(unfolded(Files.readAllBytes(folder.resolve("x.ics"))));
  }

  private static void assertEscaped(List<String> calendar) {
    assertThat(calendar).allMatch(line -> line.matches("[A-Z-]+[;:].*"));
    assertThat(calendar.stream().filter(line -> line.matches("(SUMMARY|DESCRIPTION).*")))
        .isNotEmpty()
        .allMatch(line -> line.substring(line.indexOf(':') + 1).matches("([^,;\\\\]|\\\\.)*"));
  }

  private static boolean isBetween(OffsetDateTime time, String from, String to) {
    LocalTime clock = time.atZoneSameInstant(ZoneId.of("Europe/London")).toLocalTime();
    return !clock.isBefore(LocalTime.parse(from)) && !clock.isAfter(LocalTime.parse(to));
  }

  /** A logger that wrote all night, every 90 milliseconds. */
  @Test
  void aMillionLinesOfALoggerAreRead() throws IOException {
    StringBuilder text = new StringBuilder(20_000_000).append("hours,temperature C\n");
    for (int i = 0; i < 1_000_000; i++) {
      text.append(BigDecimal.valueOf(24L * i, 6).toPlainString())
          .append(",24.")
          .append(i / 100_000 % 10)
          .append('\n');
    }
    Files.writeString(folder.resolve("night.csv"), text);
    assertThat(run("rise", "--temps", "night.csv", "--members", "8").out())
        .startsWith("Risen 50 % about");
  }

  @Test
  void manyReadingsAreMeansOfAQuarterOfAnHour() throws IOException {
    readings(20_000);
    assertThat(run("learn", "bakes").out()).contains("20000 readings (as 25 means");
  }

  @Test
  @Tag("long")
  void aMillionReadingsAreRead() throws IOException {
    readings(1_000_000);
    assertThat(run("learn", "bakes").out()).contains("1000000 readings (as 25 means");
  }

  private void readings(int count) throws IOException {
    StringBuilder text =
        new StringBuilder("starter: 20%\nhydration: 72%\ndough temp: 25C\n\ntime,rise %\n");
    for (int i = 1; i <= count; i++) {
      double share = i / (double) count;
      text.append(BigDecimal.valueOf(360_000_000L * i / count, 6).toPlainString()).append("min,");
      text.append(Math.round(50 * share * share)).append('\n');
    }
    Files.writeString(Files.createDirectory(folder.resolve("bakes")).resolve("a.csv"), text);
  }

  /** Permissions do not hold for root, but no user can make a file in {@code /proc}. */
  @ParameterizedTest
  @ValueSource(strings = {"closed", "/proc"})
  void aReadOnlyFolderIsSaidInALine(String closed) throws IOException {
    Path path = folder.resolve(closed);
    if (path.startsWith(folder)) {
      assertThat(Files.createDirectory(path).toFile().setWritable(false)).isTrue();
      assumeFalse(Files.isWritable(path), "permissions do not hold for root");
    }
    assumeTrue(Files.isDirectory(path));
    for (String call :
        List.of(
            "rise --dough-temp 25C --members 8 --chart %s/x.svg",
            "rise --dough-temp 25C --members 8 --mixed-at 09:30 --page %s/x.html",
            "flour save %s/x.txt --flour white --hydration 70%%",
            "handout starter-page --out %s/x.pdf")) {
      CliRun run =
          CliRun.in(
              TestEnvironment.in(folder), String.format(Locale.ROOT, call, closed).split(" "));
      assertThat(run.code()).isEqualTo(Main.BAD_INPUT);
      assertThat(run.onlyLine()).contains(closed + "/x.");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>alert(1)</script>&amp;\"'",
        "]]>",
        "<!-- -->",
        "</svg><a href='javascript:x'/>"
      })
  void aTitleIsTextInAPage(String title) throws IOException {
    run(
        "rise",
        "--dough-temp",
        "25C",
        "--mixed-at",
        "09:30",
        "--members",
        "8",
        "--page",
        "x.html",
        "--title",
        title,
        "--language",
        "de");
    try (WebClient client = new WebClient(BrowserVersion.CHROME)) {
      HtmlPage page =
          client.loadHtmlCodeIntoCurrentWindow(Files.readString(folder.resolve("x.html")));
      assertThat(page.querySelector("h1").getTextContent()).isEqualTo(title);
      assertThat(page.getTitleText()).isEqualTo(title);
      assertThat(page.querySelectorAll("script")).hasSize(1);
      assertThat(page.querySelector("html").getAttributes().getNamedItem("lang").getNodeValue())
          .isEqualTo("de");
    }
  }
}
