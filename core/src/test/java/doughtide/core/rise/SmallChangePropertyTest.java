package doughtide.core.rise;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Ingredients;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.WaterTemperature;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** A thousandth more of anything moves no answer by a tenth, and windows are in order. */
class SmallChangePropertyTest {
  private static final int DOUGHS = 60;
  private static final RiseForecaster FORECASTER = RiseForecaster.standard().withMembers(16);

  private static DoughFormula formula(double starter, double hydration, double salt) {
    return DoughFormula.builder()
        .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(starter)))
        .hydration(Share.ofPercent(hydration))
        .salt(Share.ofPercent(salt))
        .build();
  }

  private static TimeWindow half(double[] values) {
    return FORECASTER
        .forecast(
            formula(values[1], values[2], values[3]),
            DoughTemperature.steady(Temperature.ofCelsius(values[0])),
            60)
        .hoursToRise(Rise.ofPercent(50));
  }

  @Test
  void aThousandthMoreMovesNoHourByATenth() {
    SplittableRandom random = new SplittableRandom(11);
    for (int i = 0; i < DOUGHS; i++) {
      double[] values = {
        random.nextDouble(16, 31),
        random.nextDouble(5, 40),
        random.nextDouble(58, 85),
        random.nextDouble(0.5, 3)
      };
      TimeWindow before = half(values);
      double likely = before.likely().orElseThrow();
      assertThat(likely)
          .isBetween(before.early().orElseThrow(), before.late().orElse(Double.MAX_VALUE));
      values[i % values.length] *= 1.001;
      assertThat(half(values).likely().orElseThrow())
          .as("dough %d", i)
          .isBetween(likely * 0.9, likely * 1.1);
    }
  }

  @Test
  void massesAddUpAndWaterFollowsSmallChanges() {
    SplittableRandom random = new SplittableRandom(12);
    for (int i = 0; i < DOUGHS; i++) {
      double starter = random.nextDouble(2, 60);
      DoughFormula formula = formula(starter, random.nextDouble(55, 95), random.nextDouble(0, 3));
      double grams = random.nextDouble(200, 50_000);
      Ingredients parts = formula.forDough(Mass.ofGrams(grams));
      double sum =
          parts.flourGrams() + parts.waterGrams() + parts.saltGrams() + parts.starterGrams();
      assertThat(sum).as("dough %d", i).isBetween(grams * (1 - 1e-9), grams * (1 + 1e-9));

      double room = random.nextDouble(12, 30);
      double water = water(formula, parts, room);
      assertThat(water(formula, parts, room * 1.001)).isBetween(water - 0.2, water + 0.2);
    }
  }

  private static double water(DoughFormula formula, Ingredients parts, double room) {
    Temperature around = Temperature.ofCelsius(room);
    return WaterTemperature.of(formula, parts, around, around)
        .waterFor(Temperature.ofCelsius(25))
        .waterCelsius();
  }
}
