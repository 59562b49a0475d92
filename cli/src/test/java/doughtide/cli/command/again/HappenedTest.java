package doughtide.cli.command.again;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.cli.args.ClockTimes;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.ProofKind;
import doughtide.core.day.again.Slipped;
import doughtide.core.quantity.InputException;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Two doughs whose starter is fed once and whose loaves go into the oven together. */
class HappenedTest {
  private static final OffsetDateTime DAY = OffsetDateTime.parse("2027-03-14T00:00Z");
  private static final ClockTimes TIMES =
      ClockTimes.from(ZonedDateTime.parse("2027-03-14T00:00Z[UTC]"));
  private static final List<Integer> BOTH = List.of(0, 1);
  private static final List<PlanFile.Written> STEPS =
      List.of(
          step(Kind.FEED, BOTH, 6),
          step(Kind.MIX, List.of(0), 10),
          step(Kind.MIX, List.of(1), 11),
          step(Kind.SHAPE, List.of(0), 14),
          step(Kind.SHAPE, List.of(1), 15),
          step(Kind.PREHEAT, BOTH, 16),
          step(Kind.BAKE, BOTH, 17),
          step(Kind.COOL, BOTH, 18));

  private static PlanFile.Written step(Kind kind, List<Integer> doughs, int hour) {
    OffsetDateTime at = DAY.plusHours(hour);
    return new PlanFile.Written(kind, 0, doughs, 0, at, at.plusMinutes(5), false);
  }

  private static PlanFile.Dough dough(String name) {
    return new PlanFile.Dough(name, Map.of(), 1, 20, 24, ProofKind.ROOM, 2, Optional.empty());
  }

  private static Happened happened(double now, String... did) {
    return happened(now, List.of(did), List.of());
  }

  private static Happened happened(double now, List<String> did, List<String> notDone) {
    PlanFile file =
        new PlanFile(
            Map.of(), "id", 0, 1, List.of(dough("Quay rye"), dough("wheat")), STEPS, List.of());
    return Happened.of(file, did, notDone, TIMES, now);
  }

  @ParameterizedTest
  @ValueSource(strings = {"quay rye feed 7:00", "feed Quay rye 7:00", "quay rye feed 7:00 am"})
  void aFeedingOfOneDoughIsDoneForThatDoughAlone(String did) {
    Happened happened = happened(8, did);

    assertThat(happened.hour(0, Kind.FEED)).isEqualTo(OptionalDouble.of(7));
    assertThat(happened.hour(1, Kind.FEED)).as("as planned").isEqualTo(OptionalDouble.of(6));
    assertThat(happened.planned()).hasSameSizeAs(happened.steps());
  }

  @Test
  void withoutADoughItIsDoneForAll() {
    Happened happened = happened(8, "feed 7:00");

    assertThat(happened.hour(0, Kind.FEED)).isEqualTo(OptionalDouble.of(7));
    assertThat(happened.hour(1, Kind.FEED)).isEqualTo(OptionalDouble.of(7));
    assertThat(happened.steps()).hasSameSizeAs(STEPS);
  }

  @Test
  void loavesOfOneDoughAreInTheOvenWithoutThoseOfTheOther() {
    Happened happened =
        happened(17.2, "wheat shape 15:00", "wheat bake 17:00", "quay rye shape 14:30");

    assertThat(happened.hour(1, Kind.BAKE)).isEqualTo(OptionalDouble.of(17));
    assertThat(happened.hour(0, Kind.BAKE)).isEmpty();
    assertThat(happened.hour(0, Kind.PREHEAT)).as("one oven").isPresent();
    assertThat(happened.hour(0, Kind.SHAPE)).isEqualTo(OptionalDouble.of(14.5));
  }

  @Test
  void eachOfTwoMayBeTold() {
    Happened happened = happened(9, "wheat feed 6:30", "quay rye feed 8:00");

    assertThat(happened.hour(0, Kind.FEED)).isEqualTo(OptionalDouble.of(8));
    assertThat(happened.hour(1, Kind.FEED)).isEqualTo(OptionalDouble.of(6.5));
    assertThat(happened.feedings(1)).containsExactly(6.5);
  }

  @Test
  void aStepOfEitherDoughIsRefusedWithBothReadings() {
    assertThatThrownBy(() -> happened(12, "mix 10:00"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("\"Quay rye mix 10:00\" or \"wheat mix 10:00\"");
    assertThatThrownBy(() -> happened(12, "spelt mix 10:00"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("is no step of the plan");
  }

  @Test
  void aFeedingOfOneDoughThatWasNotDoneLeavesThatOfTheOther() {
    Happened happened = happened(8, List.of(), List.of("quay rye feed"));

    assertThat(happened.hour(0, Kind.FEED)).isEmpty();
    assertThat(happened.hour(1, Kind.FEED)).as("as planned").isEqualTo(OptionalDouble.of(6));
    assertThat(happened(8, List.of(), List.of("feed")).steps()).noneMatch(PlanStep::done);
  }

  @Test
  void whatComesBeforeAStepThatWasNotDoneWasDoneAsPlanned() {
    Happened happened = happened(14.5, List.of("wheat mix 11:30"), List.of("quay rye shape"));

    assertThat(happened.hour(0, Kind.MIX)).isEqualTo(OptionalDouble.of(10));
    assertThat(happened.hour(0, Kind.SHAPE)).isEmpty();
    assertThat(happened.hour(1, Kind.MIX)).isEqualTo(OptionalDouble.of(11.5));
  }

  @Test
  void whatWasNotDoneCannotHaveLaterSteps() {
    assertThatThrownBy(() -> happened(12, List.of("wheat mix 11:30"), List.of("wheat feed")))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("--not-done feed: --did tells of a later step");
    assertThatThrownBy(() -> happened(12, List.of(), List.of("mix")))
        .hasMessageContaining("\"Quay rye mix\" or \"wheat mix\"");
    assertThatThrownBy(() -> happened(12, List.of(), List.of("sleep")))
        .hasMessageContaining(
            "is no step of the plan: write for example --not-done \"Quay rye feed\"");
  }

  /** Shaped from 14:00 to 14:30; into the cold at once, or an hour later. */
  private static Happened chilled(double into, double now, List<String> did, List<String> notDone) {
    List<PlanFile.Written> steps = new ArrayList<>();
    steps.add(step(Kind.MIX, List.of(0), 10));
    steps.add(written(Kind.SHAPE, 14, 14.5));
    steps.add(written(Kind.LOAVES_INTO_COLD, into, into + 1.0 / 12));
    steps.add(step(Kind.BAKE, List.of(0), 30));
    steps.add(step(Kind.COOL, List.of(0), 31));
    PlanFile.Dough rye =
        new PlanFile.Dough("rye", Map.of(), 1, 20, 24, ProofKind.COLD, 15, Optional.empty());
    PlanFile file = new PlanFile(Map.of(), "id", 0, 1, List.of(rye), steps, List.of());
    return Happened.of(file, did, notDone, TIMES, now);
  }

  private static PlanFile.Written written(Kind kind, double from, double to) {
    return new PlanFile.Written(kind, 0, List.of(0), 0, minutes(from), minutes(to), false);
  }

  private static OffsetDateTime minutes(double hour) {
    return DAY.plusMinutes(Math.round(60 * hour));
  }

  private static OptionalDouble intoCold(Happened happened) {
    PlanFile.Dough rye =
        new PlanFile.Dough("rye", Map.of(), 1, 20, 24, ProofKind.COLD, 15, Optional.empty());
    return happened.slipped(0, rye).intoColdHour();
  }

  @Test
  void loavesMeantForTheColdFromTheBenchAreInItUnlessThatIsSaidNotToBeDone() {
    List<String> shaped = List.of("shape 14:20");
    List<String> not = List.of("loaves into cold");

    assertThat(intoCold(chilled(14.5, 15, shaped, List.of()))).hasValue(14 + 20.0 / 60);
    assertThat(intoCold(chilled(14.5, 15, shaped, not))).isEmpty();
    assertThat(intoCold(chilled(14.5, 16, List.of("loaves into cold 15:45"), List.of())))
        .hasValue(15.75);
  }

  @Test
  void loavesMeantToStandInTheRoomFirstAreInTheColdOnlyWhereThatIsTold() {
    assertThat(intoCold(chilled(15.5, 16, List.of("shape 14:00"), List.of()))).isEmpty();
    assertThat(intoCold(chilled(15.5, 16, List.of("loaves into cold 15:40"), List.of())))
        .hasValue(15 + 40.0 / 60);
  }

  /** Mixed at 10:00, folded at 11:00, 12:00 and 13:00, shaped at 14:00. */
  private static Slipped folded(double now, List<String> did, List<String> notDone) {
    List<PlanFile.Written> steps = new ArrayList<>();
    steps.add(step(Kind.MIX, List.of(0), 10));
    for (int i = 1; i <= 3; i++) {
      OffsetDateTime at = DAY.plusHours(10 + i);
      steps.add(new PlanFile.Written(Kind.FOLD, i, List.of(0), 0, at, at.plusMinutes(5), false));
    }
    steps.add(step(Kind.SHAPE, List.of(0), 14));
    steps.add(step(Kind.BAKE, List.of(0), 17));
    steps.add(step(Kind.COOL, List.of(0), 18));
    PlanFile file = new PlanFile(Map.of(), "id", 0, 1, List.of(dough("rye")), steps, List.of());
    return Happened.of(file, did, notDone, TIMES, now).slipped(0, dough("rye"));
  }

  private static List<Integer> open(Slipped dough) {
    return dough.open().stream().map(BakeStep::number).toList();
  }

  @Test
  void aFoldThatWasNotDoneIsOpenWithThoseAfterIt() {
    Slipped dough = folded(12.5, List.of(), List.of("fold 2"));

    assertThat(dough.folds()).isEqualTo(1);
    assertThat(open(dough)).containsExactly(2, 3);
    assertThat(folded(12.5, List.of("mix 10:00"), List.of()).folds()).as("as planned").isEqualTo(2);
  }

  @Test
  void aFoldThatWasNotDoneBeforeALaterStepIsLeftOutAndTheOthersAreDone() {
    Slipped one = folded(12.5, List.of("fold 2 12:10"), List.of("fold 1"));
    Slipped shaped = folded(15, List.of("shape 14:10"), List.of("fold 3"));

    assertThat(one.folds()).isEqualTo(1);
    assertThat(open(one)).containsExactly(3);
    assertThat(shaped.folds()).isEqualTo(2);
    assertThat(open(shaped)).isEmpty();
  }
}
