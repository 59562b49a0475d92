package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.document.ReadingsDocument.Setting;
import doughtide.core.learning.LoafResult;
import doughtide.core.learning.Reading;
import doughtide.core.loaf.ColdFit;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class DoughNotesTest {
  private static final ZonedDateTime NOW = ZonedDateTime.of(2027, 3, 7, 1, 0, 0, 0, ZoneOffset.UTC);
  private static final Setting SETTING = Setting.of("saturday").inHand(NOW);

  private static String started(boolean byHeight) {
    Map<String, String> head = new LinkedHashMap<>();
    head.put("mixed-at", "2027-03-06T20:30");
    head.put("zone", "UTC");
    head.put("dough-temp", "25C");
    head.put("room", "19C");
    head.put("vessel", "bowl");
    head.put("cold", "4C");
    head.put("bake-at", "07:00");
    if (byHeight) {
      head.put("start-height", "62 mm");
    }
    return DoughNotes.started(head, byHeight);
  }

  private static DoughNotes.Line line(String time, double percent, double celsius) {
    return new DoughNotes.Line(
        time,
        Optional.of(Rise.ofPercent(percent)),
        OptionalDouble.of(celsius),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        "");
  }

  private static DoughNotes.Line fold(String time) {
    return new DoughNotes.Line(
        time,
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        "fold");
  }

  private static ReadingsDocument read(String text) {
    return ReadingsDocument.read(text.lines().iterator(), SETTING);
  }

  @Test
  void aDoughJustMixedDriftsInItsRoomAndKnowsItsPlan() {
    ReadingsDocument read = read(started(false));

    assertThat(read.bake().readings()).isEmpty();
    assertThat(read.bake().temperature().lowestCelsius(2)).isEqualTo(19);
    assertThat(read.head().planned()).contains(read.bake().temperature());
    assertThat(read.head().plan())
        .containsExactly(Map.entry("cold", "4C"), Map.entry("bake-at", "07:00"));
    assertThat(read.head().lastHours()).isNegative();
    assertThat(read.head().result()).isEmpty();
  }

  @Test
  void linesAreReadBackAlsoAfterMidnightAndAFoldIsNoReading() {
    String text = DoughNotes.with(started(false), fold("2027-03-06 21:00"), SETTING);
    text = DoughNotes.with(text, line("2027-03-07 00:30", 44, 24.25), SETTING);
    ReadingsDocument read = read(text);

    assertThat(text).endsWith("2027-03-06 21:00;;;;fold\n2027-03-07 00:30;44;24.3;;\n");
    assertThat(read.bake().readings())
        .containsExactly(Reading.ofRise(4, Rise.ofPercent(44)).withCelsius(24.3));
    assertThat(read.given()).isEqualTo(1);
    assertThat(read.head().planned()).isNotEqualTo(Optional.of(read.bake().temperature()));
  }

  @Test
  void aJarOfKnownStartKeepsHeights() {
    String text = DoughNotes.with(started(true), line("00:30", 44, 24), SETTING);

    assertThat(text).endsWith("00:30;89.3;24;;\n");
    assertThat(read(text).bake().readings().get(0).rise().orElseThrow().percent())
        .isCloseTo(44, within(0.1));
  }

  @Test
  void aProbeInTheColdGetsItsColumnAndTheHourOfTheCold() {
    OptionalDouble none = OptionalDouble.empty();
    DoughNotes.Line cold =
        new DoughNotes.Line("2027-03-06 21:30", Optional.empty(), none, none, none, "into");
    DoughNotes.Line probe =
        new DoughNotes.Line(
            "2027-03-07 00:30", Optional.empty(), none, OptionalDouble.of(12), none, "");

    String text =
        DoughNotes.with(DoughNotes.intoCold(started(false), cold, SETTING), probe, SETTING);
    ReadingsDocument.Core core = read(text).head().core();

    assertThat(text)
        .contains("into cold: 2027-03-06 21:30\ntime;rise %;dough temp C;pH;note;core temp C\n")
        .endsWith("2027-03-06 21:30;;;;into\n2027-03-07 00:30;;;;;12\n");
    double inCold = core.intoColdHours().orElseThrow();
    assertThat(core.since(inCold)).containsExactly(new ColdFit.Reading(3, 12));
    assertThatThrownBy(() -> core.since(inCold + 3)).hasMessageContaining("into cold: 21:30");
    assertThat(read(text).bake().readings()).isEmpty();
  }

  /** A logger in the loaf: the first of each hour is taken. */
  @Test
  void manyReadingsOfTheCoreAreThinnedToOneAnHour() {
    StringBuilder text =
        new StringBuilder("dough temp: 25C\nmixed at: 12:00\ncold: 4C\ntime;core temp F\n");
    for (int minutes = 600; minutes < 1200; minutes += 5) {
      text.append(minutes).append("min;50\n");
    }

    assertThat(read(text.toString()).head().core().since(9.9))
        .hasSize(10)
        .allSatisfy(each -> assertThat(each.celsius()).isCloseTo(10, within(1e-9)));
  }

  /** A file typed by hand: commas, other columns, line ends of another system, no date. */
  @Test
  void aFileTypedByHandStaysAsItWasButForTheNewLine() {
    String text =
        "# mine\r\nmixed at: 20:30\r\ndough temp: 25\u00b0C\r\nnote: warm flour\r\n"
            + "time,note,rise %,dough temp F\r\n22:00,\"wet, sticky\",8,";
    String noted = DoughNotes.with(text, line("00:30", 44, 25), SETTING);

    assertThat(noted).isEqualTo(text + "\r\n00:30,,44,77\r\n");
    assertThat(read(noted).mixed()).contains(NOW.minusHours(4).minusMinutes(30));
    assertThat(read(noted).bake().lastHours()).isEqualTo(4);
  }

  @Test
  void refusesWhatTheTableHasNoPlaceFor() {
    String bare = "dough temp: 25C\nmixed at: 09:30\ntime;rise %\n11:00;5\n";

    assertThatThrownBy(() -> DoughNotes.with(bare, line("11:30", 9, 24), SETTING))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("dough temp C");
    assertThatThrownBy(() -> DoughNotes.with(bare, fold("11:30"), SETTING))
        .hasMessageContaining("note");
    assertThatThrownBy(
            () -> DoughNotes.with(started(false), line("2027-03-06 20:00", 9, 24), SETTING))
        .hasMessageContaining("before mixing");
  }

  @Test
  void theResultStandsOnceInTheHead() {
    String under =
        DoughNotes.with(started(false), LoafResult.UNDER, Map.of("crumb", "tight"), SETTING);
    String right = DoughNotes.with(under, LoafResult.RIGHT, Map.of(), SETTING);

    assertThat(read(under).head().result()).contains(LoafResult.UNDER);
    assertThat(under.lines()).contains("crumb: tight", "result: under");
    assertThat(read(right).head().result()).contains(LoafResult.RIGHT);
    assertThat(right.lines().filter(line -> line.startsWith("result"))).hasSize(1);
    assertThat(right.lines().filter(line -> line.startsWith("crumb"))).hasSize(1);
  }

  @Test
  void aVesselWithoutARoomIsRefused() {
    String text = "dough temp: 25C\nvessel: bowl\ntime;rise %\n1h;5\n";

    assertThatThrownBy(() -> read(text)).hasMessageContaining("room: 19C");
  }

  @Test
  void tellsATextWithATableFromAnother() {
    Vocabulary words = Vocabulary.KEYS_ONLY;
    assertThat(List.of("time;rise %", "a: b\ntime,rise %"))
        .allMatch(text -> DoughNotes.hasTable(text, words));
    assertThat(List.of("time;ris %;dough temp C", "time;height mm;temp", "time;core temp;temp"))
        .as("a mistyped column is told of, not left out")
        .allMatch(text -> DoughNotes.hasTable(text, words));
    assertThat(List.of("time,temperature C", "Time;Temp (°F)", "\"time\",\"dough temp\",note"))
        .as("of a logger")
        .noneMatch(text -> DoughNotes.hasTable(text, words));
    assertThat(List.of("", "room: 19C", "time: 3", "my times"))
        .noneMatch(text -> DoughNotes.hasTable(text, words));
  }
}
