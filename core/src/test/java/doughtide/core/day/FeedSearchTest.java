package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** At the bench from 6 to 8 and from 18 to 22, in a room of 21 °C; mixed at 31:00 or so. */
class FeedSearchTest {
  private static final FeedRatio EQUAL = FeedRatio.oneTo(1, Share.ofPercent(100));
  private static final BakeDay DAY =
      BakeDay.builder()
          .readyAt(60)
          .bench(new BenchHours(BenchHoursTest.intervals(6, 8, 18, 22)))
          .starterPercents(List.of(20.0))
          .doughCelsius(List.of(24.0))
          .build();
  private final DayModel model = new DayModel(DAY);

  private FeedSearch search(BakeDay day) {
    return new FeedSearch(model, day);
  }

  @Test
  void theStarterIsFedWhenSomebodyIsThereAndIsRipeWithMostRoom() {
    FeedSearch search = search(DAY);
    FeedChoice best = search.best(31).orElseThrow();

    assertThat(best.mixHour()).isEqualTo(31);
    assertThat(DAY.bench().contains(best.feedHour(), best.feedHour() + HandsOnTime.FEED_HOURS))
        .isTrue();
    assertThat(search.isRipe(best)).isTrue();
    for (double hour = 18; hour <= 21.5; hour += 0.5) {
      for (double parts : new double[] {1, 2, 5, 10, 20}) {
        FeedChoice other = search.at(hour, 31, FeedRatio.oneTo(parts, Share.ofPercent(100)));
        assertThat(other.slackHours()).isLessThanOrEqualTo(best.slackHours());
      }
    }
    assertThat(search.at(18.5, 31, best.ratio()).ageHours()).isEqualTo(12.5);
  }

  /** Two and a half hours before mixing at the latest, a day and two hours at the soonest. */
  @Test
  void feedingsTooLateOrTooSoonAreNone() {
    assertThat(search(DAY).best(7)).isEmpty();
    assertThat(search(DAY).best(49)).isEmpty();
    assertThat(search(DAY).best(37).orElseThrow().feedHour()).isBetween(18.0, 22.0);
    assertThat(search(DAY).best(23).orElseThrow().feedHour()).isLessThanOrEqualTo(20.5);
  }

  @Test
  void aFeedingForAnotherDoughServesWhereItIsWellRipe() {
    FeedSearch search = search(DAY);
    FeedChoice best = search.best(31).orElseThrow();

    assertThat(search.sharedWith(31, List.of(best))).contains(best);
    assertThat(search.sharedWith(best.feedHour() + best.ripeHours() + 0.2, List.of(best)))
        .isEmpty();
    assertThat(search.sharedWith(best.feedHour() + best.fallingHours() + 1, List.of(best)))
        .isEmpty();
    assertThat(search.sharedWith(31, List.of())).isEmpty();
  }

  @Test
  void aStarterFromTheColdIsThereWheneverItIsWanted() {
    FeedSearch cold = search(DAY.toBuilder().starterInCold(48).build());
    FeedChoice choice = cold.best(31).orElseThrow();

    assertThat(choice.ageHours()).isEqualTo(48);
    assertThat(choice.slackHours()).isEqualTo(48);
    assertThat(cold.at(20, 31, EQUAL)).isEqualTo(choice);
  }

  /** What is fed is fed: it is used an hour and a half before it is ripe, and not sooner. */
  @Test
  void aStarterThatIsFedNeedNotBeJustRipe() {
    FeedSearch fed = search(DAY.toBuilder().fed(20, EQUAL).build());
    double ripe = search(DAY).at(20, 31, EQUAL).ripeHours();

    assertThat(fed.best(20 + ripe - 1.4).orElseThrow().feedHour()).isEqualTo(20);
    assertThat(fed.best(20 + ripe - 1.6)).isEmpty();
    assertThat(fed.at(5, 20 + ripe, FeedRatio.oneTo(9, Share.ofPercent(100))).slackHours())
        .isCloseTo(0, within(1e-9));
    assertThat(search(DAY).isRipe(new FeedChoice(20, 24, EQUAL, 4, 7))).isFalse();
    assertThat(search(DAY).isRipe(new FeedChoice(20, 24.1, EQUAL, 4, 7))).isTrue();
  }

  private static final Temperature COOL = Temperature.ofCelsius(14);

  /** At the bench from 6 to 8, again after so many hours, and on another day. */
  private static FeedSearch awayFor(double hours, double celsius) {
    BakeDay day =
        DAY.toBuilder()
            .room(TemperatureTrace.steady(Temperature.ofCelsius(celsius)))
            .bench(new BenchHours(BenchHoursTest.intervals(6, 8, 8 + hours, 40, 50, 60)))
            .build();
    return new FeedSearch(new DayModel(day), day);
  }

  /**
   * Fed half an hour before a long absence with so much flour that it lasts: the least flour that
   * leaves an hour on both sides, or else what leaves most.
   */
  @Test
  void beforeALongAbsenceAThinFeedMustLast() {
    FeedSearch away = awayFor(15, 24);
    int thin = 0;
    for (double mix = 23; mix <= 27.5; mix += 0.5) {
      List<FeedChoice> lasting = new ArrayList<>();
      for (double parts : new double[] {30, 50, 100}) {
        lasting.add(away.at(7.5, mix, FeedRatio.oneTo(parts, Share.ofPercent(100))));
      }
      Optional<FeedChoice> best = away.best(mix);
      if (best.filter(each -> each.ratio().flour() > FeedSearch.MOST_USUAL_PARTS).isPresent()) {
        FeedChoice found = best.get();
        thin++;
        assertThat(found.feedHour()).isEqualTo(7.5);
        Optional<FeedChoice> roomy =
            lasting.stream().filter(each -> each.slackHours() >= 1).findFirst();
        double most = lasting.stream().mapToDouble(FeedChoice::slackHours).max().orElseThrow();
        assertThat(found).isEqualTo(roomy.orElse(found));
        assertThat(found.slackHours())
            .isGreaterThan(0)
            .isEqualTo(roomy.isPresent() ? roomy.get().slackHours() : most);
      }
    }
    assertThat(thin).isEqualTo(9);
  }

  /** A long absence lasts fourteen hours at least. */
  @Test
  void beforeAShortAbsenceNoThinFeedIsNeeded() {
    assertThat(awayFor(15, 24).best(24)).isPresent();
    assertThat(awayFor(13.5, 24).best(24)).isEmpty();
    FeedSearch days = awayFor(30, 18);
    FeedRatio thirty = FeedRatio.oneTo(30, Share.ofPercent(100));
    assertThat(days.isRipe(days.at(7.5, 39, thirty))).isTrue();
    assertThat(days.best(39)).as("more than a day and two hours before").isEmpty();
    assertThat(awayFor(15, COOL.celsius()).best(7)).isEmpty();
  }

  private static BuildTimes twoStages(double secondHours, double ripe, double falling) {
    BuildStage stage =
        new BuildStage(
            Optional.empty(),
            new FeedRatio(1, 2, 2),
            OptionalDouble.empty(),
            FlourClass.WHITE.flour(),
            Temperature.ofCelsius(25),
            OptionalDouble.empty());
    StagedBuild build = new StagedBuild(Starter.ripe(), List.of(stage, stage), Altitude.SEA_LEVEL);
    return new BuildTimes(
        build,
        List.of(
            new BuildTimes.Stage(0, TimeWindow.NEVER, 4),
            new BuildTimes.Stage(secondHours, TimeWindow.NEVER, 4)),
        ripe,
        falling);
  }

  private FeedSearch built(BuildTimes times) {
    return search(DAY.toBuilder().stages(times).build());
  }

  /** Both stages are made at the bench, from 18 on, and the last is 12 to 15 hours old at 31. */
  @Test
  void aBuildIsBegunSoThatAllItsStagesAreAtTheBench() {
    FeedChoice begun = built(twoStages(1.5, 12, 15)).best(31).orElseThrow();

    assertThat(begun.feedHour()).isCloseTo(18, within(1.0 / 12));
    assertThat(begun.slackHours()).isCloseTo(31 - begun.feedHour() - 12, within(1e-9));
    assertThat(begun.ratio()).isEqualTo(new FeedRatio(1, 2, 2));
    assertThat(built(twoStages(6, 12, 15)).best(31)).isEmpty();
    FeedChoice middle = built(twoStages(1.5, 10, 12)).best(31).orElseThrow();
    assertThat(middle.feedHour()).as("most room on both sides").isCloseTo(20, within(0.05));
    assertThat(built(twoStages(1.5, 12, 15)).isRipe(begun)).isTrue();
    assertThat(built(twoStages(1.5, 12, 15)).at(20, 31, EQUAL).slackHours())
        .isCloseTo(-1, within(1e-9));
    assertThat(built(twoStages(1.5, 12, 12.5)).sharedWith(31, List.of(begun))).isEmpty();
    assertThat(built(twoStages(1.5, 12, 15)).sharedWith(31, List.of(begun))).contains(begun);
  }

  /** What was begun yesterday is as old as it is. */
  @Test
  void aBuildThatIsBegunKeepsItsHour() {
    BuildTimes times = twoStages(1.5, 12, 15);
    FeedSearch begun = search(DAY.toBuilder().stagesBegun(times, 17, 1).build());

    assertThat(begun.best(31).orElseThrow().feedHour()).isEqualTo(17);
    assertThat(begun.best(31).orElseThrow().slackHours()).isCloseTo(1, within(1e-9));
    assertThat(begun.best(33.4)).as("an hour and a half past it, nearly").isPresent();
    assertThat(begun.best(33.6)).isEmpty();
  }

  /** Ripe and falling are those of the same jar run alone; a thin feed is used until it fell. */
  @Test
  void ripeTimesAreThoseOfTheJarRunAlone() {
    RipeTimes times = model.ripeTimes();
    for (double parts : new double[] {2, 20, 30}) {
      FeedRatio ratio = FeedRatio.oneTo(parts, DAY.dough().starter().hydration());
      RiseCurve jar =
          DAY.forecaster()
              .typical(
                  Feeding.of(ratio).withStarter(DAY.dough().starter()).formula(),
                  DoughTemperature.following(DAY.room()))
              .with(model.likelyStarter())
              .run(60);
      FeedChoice choice = times.choice(18, 31, parts);

      assertThat(choice.ripeHours()).isCloseTo(jar.hoursToRipe().orElseThrow(), within(0.01));
      assertThat(choice.fallingHours())
          .isCloseTo(
              (parts > 20 ? jar.hoursToFallen() : jar.hoursToPeak()).orElseThrow(), within(0.01));
      assertThat(times.members(choice, List.of(model.likelyStarter())).get(0).ripe())
          .isEqualTo(choice.ripeHours());
    }
  }

  /** In a room that turns cool at hour 24 a jar fed in the evening meets the cool. */
  @Test
  void aJarMeetsTheRoomOfItsOwnHours() {
    TemperatureTrace rooms =
        TemperatureTrace.steps(
            List.of(
                new TemperatureTrace.Step(0, Temperature.ofCelsius(26)),
                new TemperatureTrace.Step(24, COOL)));
    BakeDay day = DAY.toBuilder().room(rooms).build();
    RipeTimes times = new DayModel(day).ripeTimes();

    double morning = times.choice(6, 31, 2).ripeHours();
    double evening = times.choice(20, 31, 2).ripeHours();
    FeedChoice late = times.choice(30, 40, 2);
    double night = late.ripeHours();
    Unknowns middle = new DayModel(day).likelyStarter();
    assertThat(morning).isLessThan(evening - 0.5);
    assertThat(evening).isLessThan(night - 0.5);
    BakeDay cool = DAY.toBuilder().room(TemperatureTrace.steady(COOL)).build();
    assertThat(night)
        .isCloseTo(
            new DayModel(cool).ripeTimes().members(late, List.of(middle)).get(0).ripe(),
            within(0.05));
    BakeDay cold = DAY.toBuilder().room(TemperatureTrace.steady(Temperature.ofCelsius(2))).build();
    assertThat(new DayModel(cold).ripeTimes().choice(6, 31, 5).ripeHours()).isEqualTo(120);
  }
}
