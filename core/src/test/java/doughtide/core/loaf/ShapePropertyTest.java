package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What must hold for any night. */
class ShapePropertyTest {
  private static RiseForecast bulk(Random random, double celsius) {
    FlourClass[] flours = FlourClass.values();
    DoughFormula formula =
        DoughFormula.builder()
            .flour(flours[random.nextInt(flours.length)].flour())
            .starterShare(StarterShare.prefermented(Share.ofPercent(5 + random.nextInt(20))))
            .hydration(Share.ofPercent(60 + random.nextInt(30)))
            .build();
    return RiseForecaster.standard()
        .withMembers(16)
        .forecast(formula, DoughTemperature.steady(Temperature.ofCelsius(celsius)));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void nightsAreFiniteAndInOrder(long seed) {
    Random random = new Random(seed);
    RiseForecast bulk = bulk(random, 17 + random.nextInt(14));
    Temperature cold = Temperature.ofCelsius(1 + random.nextInt(8));
    PieceForm form = PieceForm.standard().get(random.nextInt(5));
    Proof proof =
        Proof.inCold(cold, 1 + random.nextInt(30))
            .withPiece(Mass.ofGrams(100 + random.nextInt(2000)), form);
    ShapeForecast shape = ShapeForecaster.of(bulk, proof).forecast();
    assertThat(shape.isPossible() || !shape.warnings().isEmpty())
        .as("seed %d", seed)
        .isTrue(); // -1: no shape point, and a warning says so
    shape.likely().ifPresent(night -> check(seed, bulk, shape, night));
  }

  private static void check(
      long seed, RiseForecast bulk, ShapeForecast shape, ShapeForecast.Night night) {
    assertThat(night.bulkEndHours()).as("seed %d", seed).isBetween(0.0, bulk.hours());
    assertThat(shape.hours().early().orElseThrow())
        .as("seed %d", seed)
        .isLessThanOrEqualTo(shape.hours().likely().orElseThrow());
    for (double hour : night.piece().hours()) {
      assertThat(night.piece().riseAt(hour).percent()).as("seed %d", seed).isBetween(-20.0, 500.0);
      // A refrigerator known by its dial may be colder than stated.
      assertThat(night.piece().coreCelsiusAt(hour)).as("seed %d", seed).isBetween(-4.0, 45.0);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {21, 22, 23, 24, 25, 26})
  void longerNightsAskForAnEarlierShape(long seed) {
    RiseForecast bulk = bulk(new Random(seed), 24);
    double before = Double.POSITIVE_INFINITY;
    for (double hold : new double[] {4, 8, 16, 24}) {
      Proof proof = Proof.inCold(Temperature.ofCelsius(5), hold);
      double now = ShapeForecaster.of(bulk, proof).forecast().hours().likely().orElse(before);
      assertThat(now).as("seed %d, %s h", seed, hold).isLessThanOrEqualTo(before + 0.02);
      before = now;
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {31, 32, 33, 34, 35, 36})
  void warmerDoughIsShapedAtALowerRise(long seed) {
    double before = Double.POSITIVE_INFINITY;
    for (double celsius : new double[] {19, 22, 25, 28}) {
      Proof proof = Proof.inCold(Temperature.ofCelsius(4), 10);
      RiseForecast bulk = bulk(new Random(seed), celsius);
      ShapeForecast shape = ShapeForecaster.of(bulk, proof).forecast();
      double now = shape.rise().likely().orElse(-1);
      assertThat(now >= 0 || !shape.warnings().isEmpty())
          .as("seed %d", seed)
          .isTrue(); // -1: no shape point, and a warning says so
      assertThat(now).as("seed %d, %s °C", seed, celsius).isLessThan(Math.max(before, -0.5));
      before = now;
    }
  }
}
