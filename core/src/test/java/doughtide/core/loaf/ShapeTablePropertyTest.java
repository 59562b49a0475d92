package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
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

/** The table of loaves says what the model of the loaf says. */
class ShapeTablePropertyTest {
  private static final double POINTS = 2;
  private static final double HOURS = 5.0 / 60;

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void tableAndModelAgree(long seed) {
    Random random = new Random(seed);
    RiseForecast bulk = bulk(random);
    Proof proof = proof(random);
    ShapeTable table = ShapeTable.of(bulk, proof);
    ShapeForecaster model = ShapeForecaster.of(bulk, proof);
    double[] looked = looks(table.point(bulk));
    double[] worked = looks(model.point());
    for (int i = 0; i < 3; i++) {
      assertThat(Math.abs(looked[i] - worked[i])).as("seed %d", seed).isLessThan(HOURS);
    }
    for (int member = 0; member < bulk.curves().size(); member++) {
      compare(seed, random, bulk, member, table, model);
    }
  }

  /** One member, which then has all of the weight. */
  private static void compare(
      long seed,
      Random random,
      RiseForecast bulk,
      int member,
      ShapeTable table,
      ShapeForecaster model) {
    MemberShape at = model.ofMember(member, bulk.curves().get(member));
    double last = model.lastBulkEnd(bulk.curves().get(member));
    double[] alone = new double[bulk.ensemble().size()];
    alone[member] = 1;
    for (int i = 0; i < 8; i++) {
      double end = at.hours() + 3.5 * random.nextDouble() - 2;
      if (at.isFound() && end >= 0 && end <= last) {
        double looked = table.ovenPercent(bulk.weighted(alone), end).quantile(0.5).orElseThrow();
        double worked = model.ovenPercent(member, bulk.curves().get(member), end);
        assertThat(Math.abs(looked - worked))
            .as("seed %d, member %d, %s h, shaped at %s h", seed, member, end, at.hours())
            .isLessThan(POINTS);
      }
    }
  }

  private static double[] looks(ShapeForecaster.Point point) {
    return new double[] {
      point.hours().early().orElse(99),
      point.hours().likely().orElse(99),
      point.hours().late().orElse(99)
    };
  }

  private static RiseForecast bulk(Random random) {
    DoughFormula formula =
        DoughFormula.builder()
            .starterShare(StarterShare.prefermented(Share.ofPercent(5 + random.nextInt(20))))
            .hydration(Share.ofPercent(60 + random.nextInt(25)))
            .build();
    return RiseForecaster.standard()
        .withMembers(16)
        .keepingCurves()
        .forecast(formula, DoughTemperature.steady(Temperature.ofCelsius(19 + random.nextInt(10))));
  }

  private static Proof proof(Random random) {
    Temperature cold = Temperature.ofCelsius(2 + random.nextInt(6));
    PieceForm form = PieceForm.standard().get(random.nextInt(5));
    Proof night =
        random.nextInt(3) == 0
            ? Proof.inColdUntil(cold, 16 + random.nextInt(12))
            : Proof.inCold(cold, 6 + random.nextInt(18));
    return night.withPiece(Mass.ofGrams(300 + random.nextInt(1200)), form);
  }
}
