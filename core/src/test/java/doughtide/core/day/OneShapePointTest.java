package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.question.BulkEnd;
import doughtide.core.day.question.InverseQuestions;
import doughtide.core.day.question.LeaveOption;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** With equal members every question about a dough has the same shape point. */
class OneShapePointTest {
  private static final int EQUAL_MEMBERS = 64;
  private static final RiseForecaster FORECASTER =
      RiseForecaster.standard().withMembers(EQUAL_MEMBERS);
  private static final Temperature COLD = Temperature.ofCelsius(4);
  private static final DoughFormula FORMULA =
      DoughFormula.builder()
          .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(20)))
          .hydration(Share.ofPercent(72))
          .build();

  private static void isSame(double hours, double percent, ShapeForecast shape) {
    assertThat(percent).isCloseTo(shape.rise().likely().orElseThrow(), within(1.0));
    assertThat(hours).isCloseTo(shape.hours().likely().orElseThrow(), within(5.0 / 60));
  }

  private static RiseForecast bulk(double celsius) {
    return bulk(celsius, EQUAL_MEMBERS);
  }

  private static RiseForecast bulk(double celsius, int members) {
    return FORECASTER
        .withMembers(members)
        .forecast(FORMULA, DoughTemperature.steady(Temperature.ofCelsius(celsius)), 36);
  }

  @ParameterizedTest
  @ValueSource(doubles = {20, 24, 28})
  void leavingAndWantingAskTheSameLoaf(double celsius) {
    Proof proof = Proof.inColdUntil(COLD, 22);
    ShapeForecast shape = ShapeForecaster.of(bulk(celsius), proof).forecast();
    LeaveOption leave =
        InverseQuestions.leaveAt(bulk(celsius), 0.1, 12, 13, proof, Mass.ofGrams(1000)).stream()
            .filter(option -> option.kind() == LeaveOption.Kind.SHAPE_AT_POINT)
            .findFirst()
            .orElseThrow();
    InverseQuestions.MixingTime wanted =
        InverseQuestions.of(FORECASTER)
            .mixingFor(
                0,
                BulkEnd.before(proof),
                FORMULA,
                DoughTemperature.steady(Temperature.ofCelsius(celsius)));

    isSame(
        leave.shapedHours() - proof.restHours(),
        leave.riseWhenShaped().likely().orElseThrow(),
        shape);
    isSame(wanted.bulk().likely().orElseThrow(), wanted.rise().likely().orElseThrow(), shape);
  }

  @Test
  void plansOfADayAskTheSameLoaf() {
    BakeDay day =
        BakeDay.builder()
            .readyAt(34.5)
            .bench(new BenchHours(List.of(new BenchInterval(7, 22), new BenchInterval(31, 46))))
            .dough(FORMULA)
            .starterPercents(List.of(20.0))
            .doughCelsius(List.of(24.0))
            .bulkPlace(BakeDay.BulkPlace.HELD)
            .room(TemperatureTrace.steady(Temperature.ofCelsius(24)))
            .cold(COLD)
            .build();
    // Plans look for their point with more members than the other questions do.
    List<BakePlan> plans =
        DayPlanner.plan(List.of(day), 1, SearchControl.none()).days().stream()
            .map(each -> each.plans().get(0))
            .filter(plan -> plan.bulkColdFrom().isEmpty())
            .toList();

    assertThat(plans).isNotEmpty();
    boolean atPoint = true;
    for (BakePlan plan : plans) {
      ShapeForecast shape =
          ShapeForecaster.of(bulk(24, DoughCandidates.POINT_MEMBERS), plan.proof())
              .folded(plan.strength())
              .forecast();
      double hours = plan.bulkEndHour() - plan.mixHour();
      double off = Math.abs(hours - shape.hours().likely().orElseThrow());
      if (off <= 5.0 / 60) {
        assertThat(atPoint).as("plans at their point come first").isTrue();
        isSame(hours, plan.shapeRise().percent(), shape);
      } else {
        // The hours at the bench ask for another hour: shaped by the clock, half an hour off at
        // most.
        assertThat(plan).isNotSameAs(plans.get(0));
        assertThat(off).isLessThan(0.5);
        atPoint = false;
      }
    }
  }
}
