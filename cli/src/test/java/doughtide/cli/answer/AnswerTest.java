package doughtide.cli.answer;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.args.ClockTimes;
import doughtide.core.forecast.TimeWindow;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** One tree, written three times. */
class AnswerTest {

  private static final TimeWindow WINDOW =
      new TimeWindow(OptionalDouble.of(3.5), OptionalDouble.of(4.25), OptionalDouble.empty(), 0.85);
  private static final ClockTimes NINE =
      ClockTimes.from(ZonedDateTime.of(2027, 3, 6, 9, 0, 0, 0, ZoneId.of("Europe/London")));

  @Test
  void aWindowHasOneShapeWithAndWithoutAClock() {
    Section.Builder plain = Section.loose(Timeline.sinceMixing(Optional.empty()));
    plain.window("ripe", "ripe", WINDOW);
    assertThat(json(plain))
        .contains("\"ripe\": {\n    \"hoursEarly\": 3.5,\n    \"hoursLikely\": 4.25,")
        .contains("\"hoursLate\": null,\n    \"reachedShare\": 0.85\n  }");
    assertThat(text(plain))
        .containsExactly(
            "Ready.",
            "",
            "After mixing  early         likely        late",
            "ripe          3 h 30 min    4 h 15 min    –");
    Section.Builder clock = Section.loose(Timeline.sinceMixing(Optional.of(NINE)));
    clock.listing("rises", "").row().window(Section.HERE, "ripe", WINDOW);
    assertThat(json(clock))
        .contains("\"clockEarly\": \"2027-03-06T12:30Z\"", "\"clockLate\": null}");
    assertThat(text(clock)).contains("ripe  Sat 12:30  Sat 13:15  –          from 3 h 30 min");
  }

  @Test
  void aRangeIsLowLikelyHighAndThePageSaysTheLikelyFirst() {
    Section.Builder body = Section.loose(Timeline.sinceMixing(Optional.empty()));
    body.range("risePercent", "rise", 28.04, 34.26, 41, Unit.PERCENT)
        .range("percent", "limit", 71.1, 72.2, 73.3, Unit.PERCENT);
    body.section("before", "").range(Section.HERE, "factor", 1, 1.5, 2, Unit.NONE);
    assertThat(json(body))
        .contains("\"riseLowPercent\": 28.04", "\"riseLikelyPercent\": 34.26")
        .contains("\"riseHighPercent\": 41", "\"lowPercent\": 71.1", "\"low\": 1,");
    assertThat(text(body))
        .contains("rise    34 % (28 % to 41 %)", "limit   72.2 % (71.1 % to 73.3 %)")
        .contains("factor  1.5 (1 to 2)");
  }

  @Test
  void withoutKeyForPeopleOnlyAndWithoutLabelForProgramsOnly() {
    Section.Builder body = Section.loose(Timeline.sinceMixing(Optional.empty()));
    body.say("mind", "the gap")
        .number("members", "", 512, Unit.COUNT)
        .cautions(List.of("hot ovens burn."));
    assertThat(text(body))
        .containsExactly("Ready.", "", "mind  the gap", "Caution: hot ovens burn.");
    assertThat(json(body))
        .isEqualTo(
            """
            {
              "schema": "doughtide/test/3",
              "answer": "Ready.",
              "members": 512,
              "cautions": [
                "hot ovens burn."
              ]
            }
            """);
  }

  @Test
  void csvHasTheFieldsOfJsonAndDefusesTextOnly() {
    Section.Builder body = Section.loose(Timeline.sinceMixing(Optional.empty()));
    Listing.Builder rows = body.listing("rows", "");
    rows.row().word("name", "", "=1+1").number("shiftKelvin", "", -1.5, Unit.KELVIN);
    rows.row().word("name", "", "b").number("pH", "", 4.2, Unit.PH).flag("handsOn", "", true);
    Answer answer = Answer.of("test", 3, "Ready.", body).withTable(rows::build);
    assertThat(written(answer::csv).lines())
        .containsExactly("name,shift_kelvin,ph,hands_on", "'=1+1,-1.5,,", "b,,4.2,yes");
  }

  @Test
  void aTableWithoutRowsHasItsColumns() {
    Listing.Builder rows = new Listing.Builder("rows", "", Timeline.sinceMixing(Optional.of(NINE)));
    rows.like().number("hours", "", 0, Unit.HOURS).at("clock", "", 0, NINE);
    Answer answer =
        Answer.of("test", 3, "Ready.", Section.loose(Timeline.sinceMixing(Optional.empty())))
            .withTable(rows::build);
    assertThat(written(answer::csv)).isEqualTo("hours,clock\n");
  }

  private static String json(Section.Builder body) {
    return written(Answer.of("test", 3, "Ready.", body)::json);
  }

  private static List<String> text(Section.Builder body) {
    return written(Answer.of("test", 3, "Ready.", body)::text).lines().toList();
  }

  private static String written(Consumer<PrintStream> writer) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
    writer.accept(stream);
    stream.flush();
    return out.toString(StandardCharsets.UTF_8);
  }
}
