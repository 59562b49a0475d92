package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every reader of files, before files that are not what they should be. */
class ReaderFaultsTest {

  private static final int TEN_MEGABYTES = 10_000_000;

  @TempDir static Path folder;

  /** What reads a file, with content it takes. */
  enum Reader {
    BATCH_CSV("batch FILE --members 8", "id,dough_temp,salt\nA,25C,2%\nB,70F,\n"),
    BATCH_JSON(
        "batch FILE --members 8 --format jsonl",
        "{\"id\":\"A\",\"dough_temp\":\"25C\"}\n{\"id\":\"B\",\"dough_temp\":\"18C\"}\n"),
    CLASS_DAY(
        "class-day FILE --ready-at 2027-03-14T12:00 --at-the-bench 07:00-22:00 --cold 4C",
        "name,loaves,starter,dough_temp\nwheat,1,20%,24C\n"),
    LOGGER(
        "rise --members 8 --temps FILE",
        "time,temperature C\n2027-03-06 08:00,25.1\n2027-03-06 09:00,24.9\n"),
    READINGS(
        "rise --members 8 --readings FILE",
        "dough: Quayside bread class\nstarter: 20%\ndough temp: 25C\nmixed at: 2027-03-06T09:30\n\n"
            + "time,rise %,dough temp C,note\n10:30,5,24.7,\n11:30,9,24.4,warm\n"),
    FLOUR_RECORD(
        "rise --dough-temp 25C --members 8 --flour-file FILE",
        "# doughtide flour record\nname: Harrow white\nflour: white:100%\nhydration: 71%\n"
            + "bowl: 6 March; Ann; 72%; thin window\n"),
    BOWLS(
        "flour read FILE",
        "trial,person,hydration,grade\n1,Ann,60%,firm\n1,Ann,66%,thin window\n1,Ann,72%,torn\n"),
    STAGES(
        "feed --stages FILE --amount 900g",
        "starter flour: rye\nstage: fresh sour, 1:5, dough yield 200, rye, 26C, 6h\n"),
    STARTER("rise --dough-temp 25C --members 8 --starter-file FILE", "");

    private final String words;
    private final String content;

    Reader(String words, String content) {
      this.words = words;
      this.content = content;
    }
  }

  private static byte[] starter = {};

  @BeforeAll
  static void learn() throws IOException {
    DemoReadings.learnedIn(folder);
    starter = Files.readAllBytes(folder.resolve("starter.json"));
  }

  private byte[] good(Reader reader) {
    return reader == Reader.STARTER ? starter : bytes(reader.content);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private CliRun run(Reader reader, byte[] content) throws IOException {
    Files.write(folder.resolve("given file.txt"), content);
    return run(reader, "given file.txt");
  }

  private CliRun run(Reader reader, String name) {
    String[] words =
        Arrays.stream(reader.words.split(" "))
            .map(word -> word.equals("FILE") ? name : word)
            .toArray(String[]::new);
    return CliRun.in(TestEnvironment.in(folder), words);
  }

  /** Refused; the last line names the file and, where it has lines, one of them. */
  private static String refused(CliRun run) {
    assertThat(run.err()).doesNotContain("Exception", "\tat ", "java.", "a fault");
    assertThat(run.code()).as(run.err()).isEqualTo(Main.BAD_INPUT);
    List<String> lines = run.err().lines().toList();
    assertThat(lines).hasSizeLessThan(4).allSatisfy(line -> assertThat(line).hasSizeLessThan(700));
    assertThat(lines.get(lines.size() - 1)).startsWith("doughtide: ");
    assertThat(run.err()).contains("'given file.txt'");
    return run.err();
  }

  @ParameterizedTest
  @EnumSource
  void takesWhatItShould(Reader reader) throws IOException {
    CliRun run = run(reader, good(reader));
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
  }

  @ParameterizedTest
  @EnumSource
  void aByteOrderMarkAndOtherLineEndsChangeNothing(Reader reader) throws IOException {
    String text = new String(good(reader), StandardCharsets.UTF_8);
    CliRun plain = run(reader, good(reader));
    assertThat(run(reader, bytes("\uFEFF" + text))).isEqualTo(plain);
    assertThat(run(reader, bytes(text.replace("\n", "\r\n")))).isEqualTo(plain);
    assertThat(run(reader, bytes(text.replace("\n", "\r")))).isEqualTo(plain);
  }

  @ParameterizedTest
  @EnumSource
  void anEmptyFile(Reader reader) throws IOException {
    assertThat(refused(run(reader, new byte[0]))).contains("empty");
    refused(run(reader, bytes("\uFEFF")));
    refused(run(reader, bytes("\n\n")));
    refused(run(reader, bytes(" ")));
  }

  @ParameterizedTest
  @EnumSource
  void zeroBytes(Reader reader) throws IOException {
    byte[] good = good(reader);
    for (int at : new int[] {0, good.length / 2, good.length - 1}) {
      byte[] spoiled = good.clone();
      spoiled[at] = 0;
      refused(run(reader, spoiled));
    }
    refused(run(reader, new byte[100_000]));
  }

  @ParameterizedTest
  @EnumSource
  void otherEncodings(Reader reader) throws IOException {
    String text = new String(good(reader), StandardCharsets.UTF_8);
    if (reader != Reader.STARTER) { // RFC 8259 says how a reader tells UTF-16 in JSON
      refused(run(reader, text.getBytes(StandardCharsets.UTF_16)));
      refused(run(reader, text.getBytes(StandardCharsets.UTF_16LE)));
    }
    byte[] latin = text.replaceFirst("A|a", "é").getBytes(StandardCharsets.ISO_8859_1);
    refused(run(reader, latin));
  }

  @ParameterizedTest
  @EnumSource
  void aFieldOfTenMegabytes(Reader reader) throws IOException {
    String text = new String(good(reader), StandardCharsets.UTF_8);
    int lastLine = text.stripTrailing().lastIndexOf('\n') + 1;
    String huge = "x".repeat(TEN_MEGABYTES);
    refused(run(reader, bytes(text.substring(0, lastLine) + huge + text.substring(lastLine))));
    refused(run(reader, bytes(huge + text)));
    refused(run(reader, bytes(text + huge)));
  }

  @ParameterizedTest
  @EnumSource
  void bytesOfAnotherKind(Reader reader) throws IOException {
    Random random = new Random(8);
    for (int i = 0; i < 20; i++) {
      byte[] other = new byte[1 + random.nextInt(2000)];
      random.nextBytes(other);
      other[0] = (byte) 0xFF;
      assertThat(run(reader, other).code()).isEqualTo(Main.BAD_INPUT);
      assertThat(run(reader, other).err()).contains("given file.txt").doesNotContain("a fault");
    }
  }

  @ParameterizedTest
  @EnumSource
  void quotationMarksThatDoNotPair(Reader reader) throws IOException {
    String text = new String(good(reader), StandardCharsets.UTF_8).stripTrailing();
    int lastLine = text.lastIndexOf('\n') + 1;
    String start = text.substring(0, lastLine);
    String end = text.substring(lastLine);
    for (String spoiled :
        List.of("\"" + end, end + "\"", "\"a\"b" + end, end.replaceFirst("[0-9]", "\"$0\"x\""))) {
      CliRun run = run(reader, bytes(start + spoiled + "\n"));
      assertThat(run.code()).as(spoiled + run.err()).isIn(Main.OK, Main.BAD_INPUT);
      assertThat(run.err()).as(spoiled).doesNotContain("Exception");
    }
  }

  @ParameterizedTest
  @EnumSource
  void noFileAtAll(Reader reader) throws IOException {
    Files.deleteIfExists(folder.resolve("given file.txt"));
    Files.createDirectory(folder.resolve("given file.txt"));
    assertThat(refused(run(reader, "given file.txt"))).contains("is a folder");
    Files.delete(folder.resolve("given file.txt"));
    assertThat(refused(run(reader, "given file.txt"))).contains("does not exist");
    CliRun below = run(reader, "quayside-today.csv/x");
    assertThat(below.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(below.err().lines()).hasSize(1);
  }

  @Test
  void numbersThatNoStarterCanHave() throws IOException {
    String text = new String(starter, StandardCharsets.UTF_8);
    for (String number :
        List.of("1e999", "-1e999", "NaN", "\"NaN\"", "1e308", "null", "[]", "{}")) {
      String spoiled = text.replaceFirst("(prior: vigour; )-?[0-9.E-]+", "$1" + number);
      assertThat(spoiled).isNotEqualTo(text);
      refused(run(Reader.STARTER, bytes(spoiled)));
      refused(run(Reader.STARTER, bytes(text.replaceFirst("(bakes: )[0-9]+", "$1" + number))));
    }
    refused(run(Reader.STARTER, bytes("[".repeat(100_000))));
    refused(run(Reader.STARTER, bytes("{\"a\":".repeat(5_000))));
  }

  /** One spoiled bake stops learning, and its file is named. */
  @Test
  void aFolderOfReadings() throws IOException {
    Path bakes = Files.createDirectory(folder.resolve("spoiled bakes"));
    ByteArrayOutputStream spoiled = new ByteArrayOutputStream();
    spoiled.write(bytes("starter: 20%\n"));
    spoiled.write(new byte[20]);
    for (byte[] content : List.of(new byte[0], new byte[10], bytes("x"), spoiled.toByteArray())) {
      Files.write(bakes.resolve("spoiled.csv"), content);
      CliRun run = CliRun.in(TestEnvironment.in(folder), "learn", "spoiled bakes");
      assertThat(run.code()).isEqualTo(Main.BAD_INPUT);
      assertThat(run.err()).contains("'spoiled bakes/spoiled.csv'");
      assertThat(run.err().lines()).hasSize(1);
    }
    try (Stream<Path> all = Files.list(bakes)) {
      for (Path each : all.toList()) {
        Files.delete(each);
      }
    }
    Files.createDirectory(bakes.resolve("folder.csv"));
    assertThat(CliRun.in(TestEnvironment.in(folder), "learn", "spoiled bakes").refusal())
        .contains("is a folder");
  }
}
