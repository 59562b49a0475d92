package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.BakeStep.Kind;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.forecast.RiseForecaster;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What loosens the tightest step of drafts of a day at home, each tried here one by one. */
class LooseningTest {
  private static final int DOUGH = 3;
  private static final int DRAFTS = 4;

  /** A dough of a share and a temperature, and what is tried instead. */
  private static final class Tried {
    private final DraftSearch search;
    private final PlanWeigher weigher;
    private final Loosening loosening;
    private final List<Draft> drafts;

    Tried(double percent, double celsius) {
      BakeDay day =
          Weeks.atHome()
              .starterPercents(List.of(percent))
              .doughCelsius(List.of(celsius))
              .forecaster(RiseForecaster.standard().withMembers(8))
              .build();
      DayModel model = new DayModel(day);
      search = new DraftSearch(model, day);
      weigher = new PlanWeigher(model, day, model.members(8), SearchControl.none());
      loosening = new Loosening(search, weigher, DOUGH);
      drafts =
          search.search(1, SearchControl.none()).fitting().stream()
              .limit(DRAFTS)
              .map(DraftSearch.Scored::draft)
              .toList();
    }

    /** Of each change the margins of the plan that is most like a draft, where there is one. */
    private Map<Adjustment, BakePlan.Weighed> changed(Draft draft, double[] percents) {
      Map<Adjustment, BakeRoute> routes = new LinkedHashMap<>();
      BakeRoute route = draft.route();
      for (double percent : percents) {
        routes.put(of(Adjustment.Kind.STARTER_SHARE, percent), route.withStarter(percent));
      }
      for (double celsius : new double[] {route.doughCelsius() - 1, route.doughCelsius() + 1}) {
        routes.put(of(Adjustment.Kind.DOUGH_TEMPERATURE, celsius), route.withDough(celsius));
      }
      for (double by : new double[] {-0.5, 0.5}) {
        routes.put(of(Adjustment.Kind.MIX, by), route.withMixHour(route.mixHour() + by));
      }
      Map<Adjustment, BakePlan.Weighed> changed = new LinkedHashMap<>();
      routes.forEach(
          (change, way) ->
              like(draft, way).ifPresent(other -> changed.put(change, weigher.weigh(other))));
      return changed;
    }

    /** Waits in the same place and is baked within an hour of it, the nearest in time. */
    private Optional<Draft> like(Draft draft, BakeRoute way) {
      List<Draft> like = new ArrayList<>();
      Optional<FeedChoice> feed =
          way.mixHour() == draft.mixHour()
              ? Optional.of(draft.feed())
              : search.feeds().best(way.mixHour());
      feed.ifPresent(fed -> like.addAll(search.drafts(way, fed)));
      like.removeIf(
          other ->
              other.proof() != draft.proof() || off(other, draft) > 1.01 || search.miss(other) > 0);
      return like.stream().min(Comparator.comparingDouble(other -> off(other, draft)));
    }

    private static double off(Draft other, Draft draft) {
      return Math.abs(other.ovenHour() - draft.ovenHour());
    }
  }

  private static Adjustment of(Adjustment.Kind kind, double value) {
    return new Adjustment(kind, value, 0, DOUGH);
  }

  private static StepMargin tight(Kind kind, StepMargin.Limit limit) {
    return new StepMargin(kind, 1, limit);
  }

  /** Six minutes more room at least, and more than by any other change. */
  private static Stream<Adjustment> checked(Tried tried, double... percents) {
    assertThat(tried.drafts).hasSize(DRAFTS);
    List<Adjustment> said = new ArrayList<>();
    for (Draft draft : tried.drafts) {
      BakePlan.Weighed now = tried.weigher.weigh(draft);
      Map<Adjustment, BakePlan.Weighed> changed = tried.changed(draft, percents);
      for (Kind kind : List.of(Kind.MIX, Kind.SHAPE, Kind.BAKE)) {
        OptionalDouble most = changed.values().stream().mapToDouble(w -> w.margin(kind)).max();
        Optional<Adjustment> loosest =
            changed.entrySet().stream()
                .filter(each -> each.getValue().margin(kind) == most.orElseThrow())
                .filter(each -> each.getValue().margin(kind) > now.margin(kind) + 0.1)
                .map(Map.Entry::getKey)
                .findFirst();
        Optional<Adjustment> found = tried.loosening.of(draft, tight(kind, StepMargin.Limit.DOUGH));
        assertThat(found).as("%s of %s", kind, draft).isEqualTo(loosest);
        found.ifPresent(said::add);
      }
    }
    return said.stream();
  }

  /** A little of a starter is weighed by halves of a per cent. */
  @Test
  void ofSixChangesTheOneWithMostRoomIsSaid() {
    assertThat(checked(new Tried(2, 28), 1.5, 2.5).map(Adjustment::kind))
        .contains(Adjustment.Kind.STARTER_SHARE, Adjustment.Kind.DOUGH_TEMPERATURE);
    assertThat(checked(new Tried(5, 22), 4, 6)).contains(of(Adjustment.Kind.STARTER_SHARE, 4));
  }

  @Test
  void atTheBenchAndForTheStarterNothingIsTried() {
    Tried tried = new Tried(5, 22);
    Draft draft = tried.drafts.get(0);

    for (Kind kind : List.of(Kind.FEED, Kind.MIX, Kind.BAKE)) {
      assertThat(tried.loosening.of(draft, tight(kind, StepMargin.Limit.BENCH)))
          .contains(of(Adjustment.Kind.BENCH_LONGER, 0));
    }
    assertThat(tried.loosening.of(draft, tight(Kind.FEED, StepMargin.Limit.DOUGH)))
        .contains(of(Adjustment.Kind.FEED, 0));
    assertThat(tried.loosening.of(draft, tight(Kind.FEED, StepMargin.Limit.NEXT_STEP)))
        .contains(of(Adjustment.Kind.FEED, 0));
  }
}
