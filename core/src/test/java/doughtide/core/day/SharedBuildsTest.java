package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Doughs whose starters are built in one stage at 26 or at 28 °C, and one that is fed. */
class SharedBuildsTest {
  private static final RiseForecaster FEW = RiseForecaster.standard().withMembers(8);
  private static final DoughCandidates WHITE = of(built(26), 1);
  private static final DoughCandidates MORE = of(built(26), 2);
  private static final DoughCandidates WARM = of(built(28), 1);
  private static final DoughCandidates WARMER = of(built(28), 2);
  private static final DoughCandidates FED = of(day(), 1);

  private static BakeDay.Builder day() {
    return BakeDay.builder()
        .readyAt(28)
        .bench(new BenchHours(BenchHoursTest.intervals(-9, -5.5, -4, 15, 22, 30)))
        .cold(Temperature.ofCelsius(4))
        .starterPercents(List.of(20.0))
        .doughCelsius(List.of(24.0))
        .oven(Oven.usual().withLoaves(4))
        .forecaster(FEW)
        .plans(1);
  }

  private static BakeDay.Builder built(double celsius) {
    BuildStage stage =
        new BuildStage(
            Optional.of("levain"),
            new FeedRatio(1, 4, 4),
            OptionalDouble.empty(),
            FlourClass.WHITE.flour(),
            Temperature.ofCelsius(celsius),
            OptionalDouble.empty());
    StagedBuild build = new StagedBuild(Starter.ripe(), List.of(stage), Altitude.SEA_LEVEL);
    return day()
        .dough(DoughFormula.builder().starter(build.ripened()).build())
        .stages(BuildTimes.of(FeedingPlanner.with(FEW).build(build)));
  }

  private static DoughCandidates of(BakeDay.Builder builder, int loaves) {
    BakeDay day = builder.loaves(loaves, Mass.ofGrams(850), PieceForm.ROUND).build();
    return DoughCandidates.of(new DayModel(day), day, 1, false, SearchControl.none());
  }

  private static int roomier(FeedChoice build, DoughCandidates... doughs) {
    return Stream.of(doughs)
        .mapToInt(each -> each.roomierThanOf(build).orElseThrow())
        .max()
        .orElse(0);
  }

  /** The builds that leave both most room come first, an hour apart at least. */
  @Test
  void oneBuildServesTwoDoughs() {
    List<Map<Integer, FeedChoice>> ways = SharedBuilds.of(List.of(WHITE, MORE));

    assertThat(ways).hasSizeBetween(2, 6);
    assertThat(ways).allMatch(way -> way.keySet().equals(Set.of(0, 1)));
    assertThat(ways).allMatch(way -> way.get(0).equals(way.get(1)));
    List<FeedChoice> builds = ways.stream().map(way -> way.get(0)).toList();
    assertThat(builds.stream().map(build -> roomier(build, WHITE, MORE)).toList()).isSorted();
    for (FeedChoice build : builds) {
      assertThat(builds)
          .filteredOn(other -> other != build)
          .allMatch(other -> Math.abs(other.feedHour() - build.feedHour()) > 1);
    }
    int first = roomier(builds.get(0), WHITE, MORE);
    assertThat(Stream.of(WHITE, MORE).flatMap(each -> each.builds().stream()))
        .filteredOn(
            build -> Stream.of(WHITE, MORE).allMatch(o -> o.roomierThanOf(build).isPresent()))
        .allMatch(build -> roomier(build, WHITE, MORE) >= first);
  }

  /** The first of its plans by room that can take its starter from a build. */
  @Test
  void aDoughTellsItsBuildsTheRoomiestFirst() {
    List<FeedChoice> builds = WHITE.builds();

    assertThat(builds).hasSizeGreaterThan(2);
    assertThat(builds).extracting(FeedChoice::feedHour).doesNotHaveDuplicates();
    assertThat(WHITE.roomierThanOf(builds.get(0))).hasValue(0);
    FeedChoice last = builds.get(builds.size() - 1);
    FeedChoice never =
        new FeedChoice(last.feedHour() - 100, last.mixHour() - 100, last.ratio(), 5, 6);
    assertThat(WHITE.roomierThanOf(never)).isEmpty();
  }

  /** A plan is moved until its mixing is near the hour at which the shared build is ripe. */
  @Test
  void aPlanTakesItsStarterFromTheSharedBuild() {
    FeedChoice build = SharedBuilds.of(List.of(WHITE, MORE)).get(0).get(0);
    OtherDoughs others =
        new OtherDoughs(
            List.of(WHITE.day(), MORE.day()),
            1,
            new TreeMap<>(),
            1,
            Taken.NOTHING,
            Optional.of(build));
    DraftSearch search = new DraftSearch(MORE.model(), MORE.day());
    List<Draft> drafts =
        MORE.found().fitting().stream().map(DraftSearch.Scored::draft).limit(60).toList();
    int moved = 0;
    for (Draft draft : drafts) {
      boolean near =
          IntStream.rangeClosed(-5, 5)
              .filter(by -> by == 0 || draft.route().coldFrom().isEmpty())
              .anyMatch(
                  by -> search.feeds().ofBuild(build, draft.mixHour() + by / 12.0).isPresent());
      assertThat(others.mayShareBuild(draft, search.feeds())).isEqualTo(near);
      boolean ripe = search.feeds().ofBuild(build, draft.mixHour()).isPresent();
      assertThat(others.isRipe(draft.feed(), search.feeds())).isEqualTo(ripe);
      boolean same = Math.abs(draft.feed().feedHour() - build.feedHour()) < 1e-6;
      assertThat(others.fit(draft)).as("of another build it does not fit").isEqualTo(same);
      Optional<Draft> found = others.moved(draft, search);
      assertThat(found.isEmpty() || near).isTrue();
      if (found.isPresent()) {
        moved++;
        assertThat(found.get().feed().feedHour()).isEqualTo(build.feedHour());
        assertThat(found.get().feed().mixHour()).isEqualTo(found.get().mixHour());
        assertThat(others.fit(found.get())).isTrue();
        assertThat(others.isRipe(found.get().feed(), search.feeds())).isTrue();
      }
    }
    assertThat(moved).isBetween(1, drafts.size() - 1);
  }

  /** And so it is planned, though each dough would have a build of its own. */
  @Test
  void aDayBuildsTheStarterOnce() {
    DayPlan day =
        DayPlanner.plan(List.of(WHITE.day(), MORE.day()), 1, SearchControl.none()).days().get(0);

    assertThat(day.steps())
        .filteredOn(each -> each.step().kind() == BakeStep.Kind.FEED)
        .singleElement()
        .satisfies(each -> assertThat(each.doughs()).containsExactly(0, 1));
  }

  @Test
  void whoHasOtherStagesOrNoneSharesNothing() {
    assertThat(SharedBuilds.of(List.of(WHITE))).isEmpty();
    assertThat(SharedBuilds.of(List.of(FED, FED))).isEmpty();
    assertThat(SharedBuilds.of(List.of(WHITE, WARM, FED))).isEmpty();
    assertThat(SharedBuilds.of(List.of(WHITE, WARM, MORE)))
        .isNotEmpty()
        .allMatch(way -> way.keySet().equals(Set.of(0, 2)));
  }

  /** Each group has a build of its own; where one has fewer, its last serves again. */
  @Test
  void twoGroupsHaveTwoBuilds() {
    List<Map<Integer, FeedChoice>> ways = SharedBuilds.of(List.of(WHITE, WARM, MORE, WARMER));
    List<Map<Integer, FeedChoice>> white = SharedBuilds.of(List.of(WHITE, MORE));
    List<Map<Integer, FeedChoice>> warm = SharedBuilds.of(List.of(WARM, WARMER));

    assertThat(ways).hasSize(Math.max(white.size(), warm.size()));
    for (int i = 0; i < ways.size(); i++) {
      Map<Integer, FeedChoice> way = ways.get(i);
      assertThat(way.keySet()).containsExactlyElementsOf(IntStream.range(0, 4).boxed().toList());
      FeedChoice ofWhite = white.get(Math.min(i, white.size() - 1)).get(0);
      FeedChoice ofWarm = warm.get(Math.min(i, warm.size() - 1)).get(0);
      assertThat(List.of(way.get(0), way.get(2))).containsOnly(ofWhite);
      assertThat(List.of(way.get(1), way.get(3))).containsOnly(ofWarm);
    }
  }
}
