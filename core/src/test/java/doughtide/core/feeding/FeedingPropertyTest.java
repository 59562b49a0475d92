package doughtide.core.feeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds for every feed: random starters, flours, ratios and rooms from fixed seeds. */
class FeedingPropertyTest {
  private static final FeedingPlanner PLANNER =
      FeedingPlanner.with(RiseForecaster.standard().withMembers(32));

  /** A made-up feed and room. */
  private static final class Case {
    final Random random;
    final Feeding feeding;
    final double celsius;

    Case(int seed) {
      random = new Random(seed);
      Share hydration = Share.ofPercent(between(50, 130));
      Starter starter = new Starter(hydration, flour(), any(StarterCondition.values()));
      FeedRatio ratio = FeedRatio.oneTo(between(1, 12), hydration);
      Share salt = Share.ofPercent(random.nextBoolean() ? 0 : 2);
      feeding = new Feeding(starter, ratio, flour(), salt, Altitude.SEA_LEVEL);
      celsius = between(17, 25);
    }

    doughtide.core.dough.Flour flour() {
      return any(FlourClass.values()).flour();
    }

    <T> T any(T[] values) {
      return values[random.nextInt(values.length)];
    }

    double between(double low, double high) {
      return low + (high - low) * random.nextDouble();
    }

    double ripe(Feeding fed, double at) {
      return PLANNER
          .forecast(fed, DoughTemperature.steady(Temperature.ofCelsius(at)))
          .ripe()
          .likely()
          .orElseThrow();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void moreStarterIsNeverLaterRipe(int seed) {
    Case c = new Case(seed);
    FeedRatio r = c.feeding.ratio();
    Feeding more = c.feeding.withRatio(new FeedRatio(1.4, r.flour(), r.water()));

    assertThat(c.ripe(more, c.celsius))
        .as("seed %d", seed)
        .isLessThanOrEqualTo(c.ripe(c.feeding, c.celsius));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void warmerIsNeverLaterRipe(int seed) {
    Case c = new Case(seed);

    assertThat(c.ripe(c.feeding, c.celsius + 1.5))
        .as("seed %d", seed)
        .isLessThanOrEqualTo(c.ripe(c.feeding, c.celsius));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6})
  void saltIsNeverEarlierRipe(int seed) {
    Case c = new Case(seed);

    assertThat(c.ripe(c.feeding.withSalt(Share.ofPercent(2)), c.celsius))
        .as("seed %d", seed)
        .isGreaterThan(c.ripe(c.feeding.withSalt(Share.ofPercent(0)), c.celsius));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void ratioForAForecastHourIsTheRatioForecast(int seed) {
    Case c = new Case(seed);
    double ready =
        PLANNER
            .refresh(c.feeding, 1, FeedingPlannerTest.room(c.celsius))
            .readyHours()
            .orElseThrow();
    RatioAnswer back = PLANNER.ratioFor(ready, c.feeding, 1, FeedingPlannerTest.room(c.celsius));

    assertThat(back.plan().readyHours().orElseThrow())
        .as("seed %d", seed)
        .isEqualTo(ready, within(0.005));
    assertThat(back.ratio().flour())
        .as("seed %d", seed)
        .isEqualTo(c.feeding.ratio().flour(), within(0.01 * c.feeding.ratio().flour()));
  }

  /** Parts of flour, parts of water and the room, each a thousandth more; windows in order. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void aThousandthMoreMovesNoHourByATenth(int seed) {
    Case c = new Case(seed);
    FeedRatio r = c.feeding.ratio();
    double likely = c.ripe(c.feeding, c.celsius);
    List<Double> moved =
        List.of(
            c.ripe(c.feeding.withRatio(new FeedRatio(1, 1.001 * r.flour(), r.water())), c.celsius),
            c.ripe(c.feeding.withRatio(new FeedRatio(1, r.flour(), 1.001 * r.water())), c.celsius),
            c.ripe(c.feeding, 1.001 * c.celsius));

    assertThat(moved)
        .as("seed %d", seed)
        .allSatisfy(hours -> assertThat(hours).isBetween(0.9 * likely, 1.1 * likely));
    TimeWindow window =
        PLANNER
            .forecast(c.feeding, DoughTemperature.steady(Temperature.ofCelsius(c.celsius)))
            .ripe();
    assertThat(likely)
        .isBetween(window.early().orElseThrow(), window.late().orElse(Double.MAX_VALUE));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void gramsAddUp(int seed) {
    Case c = new Case(seed);
    double use = c.between(10, 2000);
    FeedAmounts amounts = c.feeding.amounts(Mass.ofGrams(use));

    assertThat(amounts.useGrams()).as("seed %d", seed).isEqualTo(use, within(1e-6));
    assertThat(amounts.totalGrams())
        .as("seed %d", seed)
        .isEqualTo(
            amounts.starterGrams()
                + amounts.flourGrams()
                + amounts.waterGrams()
                + amounts.saltGrams(),
            within(1e-9));
    assertThat(amounts.keepGrams()).isEqualTo(amounts.starterGrams());
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void sameInputGivesTheSameAnswer(int seed) {
    Case c = new Case(seed);

    assertThat(c.ripe(c.feeding, c.celsius))
        .as("seed %d", seed)
        .isEqualTo(new Case(seed).ripe(c.feeding, c.celsius));
  }
}
