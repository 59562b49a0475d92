package doughtide.core.day.again;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeDay;
import doughtide.core.day.BakeRoute;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.ProofKind;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A dough mixed at hour 13 with four folds, meant for every half hour from 13:30 on. */
class LateFoldsTest {
  private static final BakeDay DAY =
      BakeDay.builder()
          .readyAt(24)
          .bench(new BenchHours(List.of(new BenchInterval(8, 23))))
          .room(TemperatureTrace.steady(Temperature.ofCelsius(23)))
          .loaves(2, Mass.ofGrams(850), PieceForm.ROUND)
          .build();

  private static BakeStep fold(int number) {
    double hour = 13 + number / 2.0;
    return new BakeStep(Kind.FOLD, hour, hour + 1.0 / 12, number);
  }

  private static Slipped dough(int done, double nowHour, List<BakeStep> open) {
    return new Slipped(
        BakeRoute.inRoom(20, 26, 13),
        new FeedChoice(8, 13, FeedRatio.oneTo(1, Share.ofPercent(100)), 4, 6),
        nowHour,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        done,
        ProofKind.ROOM,
        2,
        20,
        open);
  }

  private static Slipped spaced(int done, double nowHour) {
    List<BakeStep> open = IntStream.rangeClosed(done + 1, 4).mapToObj(LateFoldsTest::fold).toList();
    return LateFolds.spaced(DAY, dough(done, nowHour, open));
  }

  private static List<Double> hours(Slipped dough) {
    return dough.open().stream().map(BakeStep::fromHour).toList();
  }

  @Test
  void foldsThatAreAllToComeStayAtTheirHours() {
    assertThat(hours(spaced(1, 13.75))).containsExactly(14.0, 14.5, 15.0);
  }

  @Test
  void aFoldThatIsLateIsDoneNowAndTheOthersFollowAsFarApartAsUsual() {
    Slipped dough = spaced(0, 13.75);

    assertThat(hours(dough)).containsExactly(13.75, 14.25, 14.75, 15.25);
    assertThat(dough.open()).extracting(BakeStep::number).containsExactly(1, 2, 3, 4);
  }

  /** As many as come before the likely dough has risen by fifteen per cent. */
  @Test
  void laterTheyComeCloserTogetherAndThenFewerOfThemAndNeverAfterItsLastUsefulHour() {
    double last =
        13
            + DAY.bulk(BakeRoute.inRoom(20, 26, 13), 32, 12)
                .hoursToRise(new Rise(StrengthPlan.LAST_FOLD_RISE))
                .likely()
                .getAsDouble();
    for (double now = 13.6; now < last + 1; now += 0.1) {
      List<Double> hours = hours(spaced(0, now));
      assertThat(hours.size())
          .isEqualTo(Math.min(4, now > last ? 0 : 1 + (int) ((last - now) * 3)));
      assertThat(hours).allSatisfy(hour -> assertThat(hour).isLessThanOrEqualTo(last + 1e-6));
      for (int i = 0; i < hours.size(); i++) {
        double from = i == 0 ? now : hours.get(i - 1);
        assertThat(hours.get(i) - from).isBetween(i == 0 ? 0 : 1.0 / 3 - 1e-6, 0.5 + 1e-6);
      }
    }
  }

  @Test
  void theyComeBeforeTheTubGoesIntoTheColdAndThatKeepsItsHour() {
    BakeStep into = new BakeStep(Kind.BULK_INTO_COLD, 14.5, 14.5 + 1.0 / 12, 0);
    Slipped dough = LateFolds.spaced(DAY, dough(0, 13.75, List.of(fold(1), fold(2), into)));

    assertThat(dough.open()).contains(into);
    assertThat(dough.open().get(1).fromHour()).isCloseTo(14.25, within(1e-9));
    assertThat(LateFolds.spaced(DAY, dough(0, 14.4, List.of(fold(1), into))).open())
        .containsExactly(into);
  }

  @Test
  void onlyFoldsThatAreDoneOrOpenAreInTheDough() {
    StrengthPlan wanted = DAY.strength();

    assertThat(spaced(1, 13.75).folds(wanted).folds()).isEqualTo(4);
    assertThat(spaced(1, 20).folds(wanted).folds()).isEqualTo(1);
    assertThat(spaced(1, 20).folds(wanted).spacingHours()).isEqualTo(wanted.spacingHours());
  }
}
