package doughtide.core.day.question;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.HandsOnTime;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.LoafModel;
import doughtide.core.loaf.LoafScores;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.PieceCurve;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a baker can do who leaves a dough of 24 °C. */
class LeaveOptionsTest {
  private static final RiseForecast BULK =
      RiseForecaster.standard()
          .withMembers(16)
          .keepingCurves()
          .forecast(
              DoughFormula.builder().build(),
              DoughTemperature.steady(Temperature.ofCelsius(24)),
              40);
  private static final Temperature COLD = Temperature.ofCelsius(4);
  private static final Rise TARGET = Rise.ofPercent(80);
  private static final Proof NIGHT = Proof.inCold(COLD, 12).withTarget(TARGET);
  private static final double REST = Proof.USUAL_REST_HOURS;
  private static final double CARRY = HandsOnTime.CARRY_HOURS;

  private static List<LeaveOption> leave(double now, double leave, double back, Proof proof) {
    return InverseQuestions.leaveAt(BULK, now, leave, back, proof, Mass.ofGrams(1000));
  }

  private static Optional<LeaveOption> one(List<LeaveOption> options, LeaveOption.Kind kind) {
    return options.stream().filter(each -> each.kind() == kind).findFirst();
  }

  /** The oven comes when room and cold are over, unless it has an hour of its own. */
  @Test
  void theOvenFollowsTheProof() {
    Proof both = NIGHT.afterRoom(Temperature.ofCelsius(22), 1.25);
    for (LeaveOption each : leave(3, 5.5, 9, both)) {
      assertThat(each.ovenHours()).isCloseTo(each.shapedHours() + 13.25, within(1e-9));
    }
    List<LeaveOption> fixed = leave(3, 5.5, 9, Proof.inColdUntil(COLD, 20));
    assertThat(fixed).extracting(LeaveOption::ovenHours).containsOnly(20.0);
    assertThat(one(fixed, LeaveOption.Kind.SHAPE_NOW).orElseThrow().shapedHours())
        .isCloseTo(3 + REST, within(1e-9));
    assertThat(one(fixed, LeaveOption.Kind.SHAPE_BEFORE_LEAVING).orElseThrow().shapedHours())
        .isCloseTo(5.5, within(1e-9));
    assertThat(one(fixed, LeaveOption.Kind.SHAPE_WHEN_BACK).orElseThrow().shapedHours())
        .isCloseTo(9 + REST, within(1e-9));
  }

  /** Right is from 85 to 120 % of the target and not past its best: counted anew, loaf by loaf. */
  @Test
  void theShareIsThatOfTheLoavesThatAreRightAtTheOven() {
    for (double now : new double[] {4, 5, 6}) {
      LeaveOption option = one(leave(now, 7, 20, NIGHT), LeaveOption.Kind.SHAPE_NOW).orElseThrow();
      LoafModel loaf = LoafModel.of(BULK.formula(), NIGHT, LoafSettings.FULL);
      int right = 0;
      for (int i = 0; i < 16; i++) {
        PieceCurve piece = loaf.run(BULK.curves().get(i), now + REST, LoafScores.of(i), 12);
        double percent = piece.riseAtEnd().percent();
        right += percent >= 68 && percent <= 96 && piece.hoursToOver().isEmpty() ? 1 : 0;
      }
      assertThat(option.goodShare()).isCloseTo(right / 16.0, within(1.0 / 16 + 1e-9));
      assertThat(option.riseAtBake().likely().orElseThrow())
          .isCloseTo(
              ShapeForecaster.of(BULK, NIGHT)
                  .nightIfShapedByClock(now)
                  .orElseThrow()
                  .riseAtBake()
                  .likely()
                  .orElseThrow(),
              within(1.0));
      assertThat(option.riseWhenShaped().likely().orElseThrow())
          .isCloseTo(BULK.likelyPercentAt(now), within(3.0));
      assertThat(option.bakeFrom().likely().orElseThrow()).isGreaterThan(now + REST);
      assertThat(option.bakeUntil().likely().orElse(99))
          .isGreaterThan(option.bakeFrom().likely().orElseThrow());
    }
  }

  /** By whole tenths of the share, and among equals by what lies nearer to the target. */
  @Test
  void theBestComesFirst() {
    List<LeaveOption> options = leave(2, 8, 14, NIGHT);
    assertThat(options.size()).isGreaterThan(4);
    for (int i = 1; i < options.size(); i++) {
      double before = Math.floor(10 * options.get(i - 1).goodShare());
      double after = Math.floor(10 * options.get(i).goodShare());
      assertThat(before).isGreaterThanOrEqualTo(after);
      if (before == after) {
        assertThat(off(options.get(i - 1))).isLessThanOrEqualTo(off(options.get(i)));
      }
    }
  }

  private static double off(LeaveOption option) {
    return Math.abs(option.riseAtBake().likely().orElseThrow() - TARGET.percent());
  }

  /** A young dough stays out as long as it can; one far on goes into the cold at once. */
  @Test
  void theTubGoesIntoTheColdWhenItSuitsTheDough() {
    LeaveOption young = one(leave(1, 3, 12, NIGHT), LeaveOption.Kind.TUB_IN_COLD).orElseThrow();
    LeaveOption far = one(leave(8, 11, 14, NIGHT), LeaveOption.Kind.TUB_IN_COLD).orElseThrow();

    assertThat(young.tubIntoColdHours().orElseThrow()).isCloseTo(3 - CARRY, within(1e-9));
    assertThat(far.tubIntoColdHours().orElseThrow()).isCloseTo(8, within(1e-9));
    assertThat(far.shapedHours()).isCloseTo(14 + REST, within(1e-9));
  }

  /** A point a few minutes from now or from leaving is as good as now or leaving. */
  @Test
  void theShapePointIsOfferedOnlyBetweenNowAndLeaving() {
    double point = ShapeForecaster.of(BULK, NIGHT).point().hours().likely().orElseThrow();
    LeaveOption.Kind kind = LeaveOption.Kind.SHAPE_AT_POINT;

    assertThat(one(leave(1, point + 2, 20, NIGHT), kind)).isPresent();
    assertThat(one(leave(point + 0.1, point + 2, 20, NIGHT), kind)).isEmpty();
    assertThat(one(leave(1, point + REST - 0.1, 20, NIGHT), kind)).isEmpty();
    LeaveOption at = one(leave(1, point + 2, 20, NIGHT), kind).orElseThrow();
    assertThat(at.shapedHours()).isCloseTo(point + REST, within(0.3));
    assertThat(at.goodShare())
        .isGreaterThanOrEqualTo(
            one(leave(1, point + 2, 20, NIGHT), LeaveOption.Kind.SHAPE_NOW)
                .orElseThrow()
                .goodShare());
    LeaveOption after =
        one(leave(0.25, 1, point - 2, NIGHT), LeaveOption.Kind.SHAPE_AFTER_BACK).orElseThrow();
    assertThat(after.shapedHours()).isCloseTo(at.shapedHours(), within(0.05));
    assertThat(one(leave(1, 2, point + 1, NIGHT), LeaveOption.Kind.SHAPE_AFTER_BACK)).isEmpty();
  }

  @Test
  void anOvenThatComesBeforeTheLoafIsShapedIsNoOption() {
    List<LeaveOption> options = leave(2, 5, 12, Proof.inColdUntil(COLD, 12.4));

    assertThat(one(options, LeaveOption.Kind.SHAPE_NOW)).isPresent();
    assertThat(one(options, LeaveOption.Kind.SHAPE_WHEN_BACK)).isEmpty();
    assertThat(one(options, LeaveOption.Kind.TUB_IN_COLD)).isEmpty();
    assertThat(one(leave(2, 2.25, 12, NIGHT), LeaveOption.Kind.SHAPE_BEFORE_LEAVING)).isEmpty();
  }

  @Test
  void hoursMustFollowOneAnother() {
    assertThatThrownBy(() -> leave(5, 4, 9, NIGHT))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("hour of leaving 4 h");
    assertThatThrownBy(() -> leave(2, 4, 3, NIGHT)).hasMessageContaining("coming back 3 h");
    assertThatThrownBy(() -> leave(41, 42, 43, NIGHT)).hasMessageContaining("since mixing 41 h");
  }
}
