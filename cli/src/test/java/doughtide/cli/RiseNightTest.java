package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import doughtide.cli.command.RiseCommandTest;
import doughtide.cli.text.Paragraph;
import doughtide.core.document.ColdDocument;
import doughtide.core.document.Vocabulary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Room, cold, proof and sample jar of the rise command. */
class RiseNightTest {

  @TempDir Path folder;

  @Test
  void aNightInTheColdIsToldFromBulkToOven() {
    CliRun run = rise("--dough-temp 25C --cold 4C --hold 12h --piece 850g --form oval");
    assertThat(unwrapped(run))
        .contains("850 g, oval; rest and shaping 30 min; 12 h in the cold at 4 °C (39 °F)")
        .contains("When to shape", "end of bulk", "watch for a jar that has risen")
        .contains("spoils it first", "one loaf in ten more", "the loaf just shaped is at")
        .contains("shape now", "never in")
        .contains("into the cold", "middle 10 °C", "middle 7 °C", "middle 5 °C")
        .contains("into the oven", "good from", "good until", "if it is 2 °C warmer");
    narrow(run);
  }

  @Test
  void jsonOfTheColdHoldsTheSchema() throws IOException {
    String json = rise("--dough-temp 25C --cold 4C --hold 12h --format json").out();
    assertThat(RiseCommandTest.names(json, 1))
        .containsExactly(
            "schema",
            "answer",
            "rises",
            "pastBest",
            "curve",
            "strength",
            "shape",
            "cold",
            "warnings",
            "widens",
            "understood",
            "cautions");
    assertThat(fields(json, "shape"))
        .startsWith("hoursEarly", "hoursLikely", "hoursLate", "reachedShare", "risePercent");
    assertThat(fields(json, "cold"))
        .startsWith(
            "intoColdHours",
            "coreAt10C",
            "coreAt7C",
            "coreAt5C",
            "ovenHours",
            "riseAtBakePercent",
            "bakeFromHours");
    assertThat(number(json, "intoColdHours"))
        .isGreaterThan(number(json, "hoursLikely", "shape"))
        .isLessThan(number(json, "hoursLikely", "coreAt10C"));
    assertThat(number(json, "hoursLikely", "coreAt10C"))
        .isLessThan(number(json, "hoursLikely", "coreAt7C"));
    assertThat(number(json, "reachedShare", "coreAt5C"))
        .isLessThan(number(json, "reachedShare", "coreAt10C"));
    assertThat(number(json, "low", "riseAtBakePercent"))
        .isLessThan(number(json, "high", "riseAtBakePercent"));
    assertThat(number(json, "loafRisePercent", "shape"))
        .isNotEqualTo(number(json, "risePercent", "shape"));
  }

  @Test
  void aWarmDoughIsShapedAtALowerRise() {
    double warm =
        number(
            rise("--dough-temp 28C --cold 4C --hold 12h --format json").out(),
            "risePercent",
            "shape");
    String cool = rise("--dough-temp 20C --cold 4C --hold 12h --format json").out();
    assertThat(warm).isLessThan(number(cool, "risePercent", "shape"));
  }

  @Test
  void theOvenHourIsTheNextThatLeavesTimeForBulk() {
    String words = "--dough-temp 24C --cold 4C --bake-at 07:00 --zone Europe/Berlin";
    CliRun evening = rise(words + " --mixed-at 2027-03-06T14:00");
    assertThat(evening.out()).contains("into the oven", "Sun 07:00");
    CliRun midnight = rise(words + " --mixed-at 2027-03-07T05:00");
    assertThat(midnight.out()).contains("Mon 07:00");
    CliRun springNight = rise(words + " --mixed-at 2027-03-27T14:00 --format json");
    assertThat(number(springNight.out(), "ovenHours")).isEqualTo(16);
    assertThat(springNight.out()).contains("\"ovenClock\": \"2027-03-28T07:00+02:00\"");
    narrow(evening);
  }

  @Test
  void aProofInTheRoomIsNinetyMinutesUnlessSaid() throws IOException {
    CliRun run = rise("--dough-temp 24C --proof-temp 24C");
    assertThat(unwrapped(run)).contains("1 h 30 min in a room of 24 °C (75 °F)", "into proof");
    assertThat(run.out()).doesNotContain("cold", "fridge");
    String json = rise("--dough-temp 24C --proof-temp 24C --format json").out();
    assertThat(fields(json, "proof"))
        .startsWith("intoProofHours", "ovenHours", "riseAtBakePercent");
    CliRun both = rise("--dough-temp 24C --proof-temp 24C --proof 1h --cold 4C --hold 10h");
    assertThat(unwrapped(both))
        .contains("1 h in a room of 24 °C (75 °F); 10 h in the cold at 4 °C (39 °F)");
    narrow(both);
  }

  @Test
  void aProbeNarrowsTheRefrigeratorAndIsKept() throws IOException {
    String words = "rise --dough-temp 24C --cold 4C --hold 12h --members 32 --format json";
    CliRun dial = CliRun.in(TestEnvironment.in(folder), words(words));
    CliRun probed =
        CliRun.in(
            TestEnvironment.in(folder), words(words + " --core 3h:16C,8h:7C --save cold.txt"));
    assertThat(probed.err()).isEmpty();
    CliRun kept = CliRun.in(TestEnvironment.in(folder), words(words + " --cold-file cold.txt"));

    assertThat(Files.readString(folder.resolve("cold.txt"))).contains("air-offset:", "film");
    assertThat(kept.err()).isEmpty();
    assertThat(width(probed.out())).isLessThan(0.7 * width(dial.out()));
    assertThat(number(kept.out(), "hoursLikely", "coreAt10C"))
        .isCloseTo(number(probed.out(), "hoursLikely", "coreAt10C"), within(0.05));
  }

  /** Readings of the core in a file teach the same as the option, and learn keeps the same. */
  @Test
  void aColumnOfTheCoreTeachesWhatTheOptionTeaches() throws IOException {
    String dough = "rise --dough-temp 24C --hydration 72% --cold 4C --hold 12h --members 256";
    CliRun typed =
        CliRun.in(TestEnvironment.in(folder), words(dough + " --core 3h:16C,8h:7C --save a.txt"));
    assertThat(typed.err()).isEmpty();
    double inCold =
        number(CliRun.of(words(dough + " --format json")).out(), "intoColdHours", "cold");
    Files.createDirectory(folder.resolve("bakes"));
    Files.writeString(
        folder.resolve("bakes/night.csv"),
        "starter: 20%\nhydration: 72%\nflour: white\nsalt: 2%\ndough temp: 24C\n"
            + "mixed at: 2027-03-06T12:00\ncold: 4C\nhold: 12h\ninto cold: "
            + inCold
            + "h\ntime;core temp C\n"
            + (inCold + 3)
            + "h;16\n"
            + (inCold + 8)
            + "h;7\n");
    CliRun read =
        CliRun.in(
            TestEnvironment.in(folder), words("rise --readings bakes/night.csv --save b.txt"));
    CliRun learned = CliRun.in(TestEnvironment.in(folder), words("learn bakes --save-cold c.txt"));

    assertThat(read.err()).isEmpty();
    assertThat(learned.err()).isEmpty();
    assertThat(read.out()).contains("its air likely at");
    assertThat(learned.out()).contains("Your cold", "Saved in 'c.txt'");
    ColdDocument option = kept("a.txt");
    assertThat(kept("b.txt").airOffsetCelsius()).isCloseTo(option.airOffsetCelsius(), within(0.15));
    assertThat(kept("b.txt").filmLogFactor()).isCloseTo(option.filmLogFactor(), within(0.05));
    assertThat(kept("c.txt")).isEqualTo(kept("b.txt"));
    CliRun without =
        CliRun.in(
            TestEnvironment.in(folder), words("rise --readings bakes/night.csv --core 3h:12C"));
    assertThat(without.refusal()).contains("--core", "the file describes the dough");
  }

  private ColdDocument kept(String name) throws IOException {
    return ColdDocument.read(
        Files.readString(folder.resolve(name)).lines().iterator(), Vocabulary.KEYS_ONLY);
  }

  private static double width(String json) {
    return number(json, "hoursLate", "coreAt10C") - number(json, "hoursEarly", "coreAt10C");
  }

  @Test
  void aProbeThatCannotBeReadIsRefusedInOneLine() {
    String cold = "rise --dough-temp 24C --cold 4C --hold 12h ";
    assertThat(CliRun.of(words(cold + "--core 12C")).refusal()).contains("write hours and");
    assertThat(CliRun.of(words(cold + "--core 3h:99C")).refusal()).contains("outside");
    assertThat(CliRun.of(words(cold + "--save x.txt")).refusal()).contains("--core 3h:12C");
    assertThat(CliRun.of(words(cold + "--shaping soft")).refusal()).contains("knocked-back");
  }

  @Test
  void aLongRestIsTooLateAndNotShortOfStarter() {
    CliRun run = rise("--dough-temp 26C --starter 30% --cold 4C --hold 12h --rest 12h");
    assertThat(unwrapped(run))
        .doesNotContain("use more starter")
        .containsAnyOf("it is too late for this dough", "Even shaped at once");
  }

  @Test
  void firmHandsAskForAHigherJar() {
    String words = "--dough-temp 24C --cold 4C --hold 12h --format json --shaping ";
    double gentle = number(rise(words + "gentle").out(), "risePercent", "shape");
    double firm = number(rise(words + "firm").out(), "risePercent", "shape");
    assertThat(firm).isGreaterThan(gentle);
  }

  @Test
  void aTargetIsTakenOver() {
    String json = rise("--dough-temp 24C --proof-temp 24C --target 60% --format json").out();
    assertThat(number(json, "targetPercent")).isEqualTo(60);
  }

  @ParameterizedTest
  @MethodSource("coldsWithoutHours")
  void noNumberIsMadeUpForAColdThatIsNone(String words, String part) {
    CliRun run = rise(words);
    assertThat(run.code()).isZero();
    assertThat(run.out().replaceAll("\\s+", " ")).contains(part);
    assertThat(run.out()).doesNotContain("into the cold", "end of bulk");
    String json = rise(words + " --format json").out();
    assertThat(json)
        .contains("\"shape\": {\n    \"hoursEarly\": null,\n    \"hoursLikely\": null")
        .contains("\"intoColdHours\": null", "\"likely\": null");
  }

  static Stream<org.junit.jupiter.params.provider.Arguments> coldsWithoutHours() {
    return Stream.of(
        arguments("--dough-temp 15C --cold 16C --hold 12h", "is not colder than the dough"),
        arguments("--dough-temp 25C --cold -18C --hold 12h", "the dough freezes"),
        arguments("--dough-temp 41C --cold 4C --hold 12h", "from 36 °C no hours are given"));
  }

  @Test
  void aDoughInARoomDriftsAndTheJarRunsAhead() throws IOException {
    String words =
        "--dough-temp 26C --room 19C --vessel bowl --vessel-material wood --cover open"
            + " --dough-mass 1.7kg --jar 50g";
    CliRun run = rise(words);
    assertThat(unwrapped(run))
        .contains("26 °C (79 °F) at mixing, then drifting in a room of 19 °C")
        .contains("open wood bowl, 1700 g of dough: half of the difference")
        .contains("The dough itself, likely, after: 1 h")
        .contains("Sample jar of 50 g: when the dough has risen 50 %, the jar reads");
    narrow(run);
    String json = rise(words + " --format json").out();
    assertThat(fields(json, "jar"))
        .contains("riseReadsPercent", "riseReadsLowPercent", "doughWarmerKelvin");
    assertThat(number(json, "riseReadsPercent")).isLessThan(50);
    assertThat(number(json, "doughWarmerKelvin")).isPositive();
    assertThat(RiseCommandTest.rows(json, "doughTemperatures").get(0))
        .containsExactly("hours", "celsius");
  }

  @Test
  void anAssumedMassIsNamed() {
    assertThat(rise("--dough-temp 26C --room 19C").out().replaceAll("\\s+", " "))
        .contains("covered plastic tub, 1000 g of dough (assumed, say --dough-mass)");
  }

  @Test
  void theDemoRunsInItsFolder() throws IOException {
    Path data = Path.of(System.getProperty("doughtide.testdata"));
    List<String> commands =
        Files.readAllLines(data.resolve("quayside-bread-class.txt")).stream()
            .filter(line -> line.startsWith("doughtide "))
            .toList();
    assertThat(commands).hasSizeGreaterThanOrEqualTo(3);
    for (String command : commands) {
      CliRun run = CliRun.in(TestEnvironment.in(data), words(command.substring(10)));
      assertThat(run.err()).as(command).isEmpty();
      assertThat(run.out()).as(command).contains("risen 50 %");
      narrow(run);
    }
  }

  @Test
  void theChartOfANightShowsColdShapePointAndLoaf() throws IOException {
    String words = "--dough-temp 25C --cold 4C --hold 12h --chart night.svg --members 16";
    CliRun run = CliRun.in(TestEnvironment.in(folder), words("rise " + words));
    assertThat(run.err()).isEmpty();
    assertThat(Files.readString(folder.resolve("night.svg")))
        .contains("in the cold", "Dough temperature", "shape ", "the loaf");
  }

  private static String unwrapped(CliRun run) {
    return run.out().replaceAll("\\s+", " ");
  }

  private static CliRun rise(String words) {
    CliRun run = CliRun.of(words("rise " + words + " --members 32"));
    assertThat(run.err()).isEmpty();
    return run;
  }

  /** Splits at spaces outside quotes. */
  private static String[] words(String line) {
    return Arrays.stream(line.split(" (?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)"))
        .map(word -> word.replace("\"", ""))
        .toArray(String[]::new);
  }

  private static List<String> fields(String json, String object) {
    Matcher found =
        Pattern.compile("\"" + object + "\": \\{(.*?)\\n  }", Pattern.DOTALL).matcher(json);
    assertThat(found.find()).as(object).isTrue();
    return Pattern.compile("\\n    \"(\\w+)\"")
        .matcher(found.group(1))
        .results()
        .map(each -> each.group(1))
        .toList();
  }

  private static double number(String json, String name) {
    return number(json, name, "schema");
  }

  /** The first number of this name after another name. */
  private static double number(String json, String name, String after) {
    String rest = json.substring(json.indexOf("\"" + after + "\""));
    Matcher found = Pattern.compile("\"" + name + "\": (-?[0-9.]+)").matcher(rest);
    assertThat(found.find()).as(name).isTrue();
    return Double.parseDouble(found.group(1));
  }

  private static void narrow(CliRun run) {
    assertThat(run.out().lines())
        .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(Paragraph.WIDTH));
  }
}
