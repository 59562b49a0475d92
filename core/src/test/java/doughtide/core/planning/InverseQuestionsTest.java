package doughtide.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Proof;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class InverseQuestionsTest {
  private static final RiseForecaster FORECASTER = RiseForecaster.standard().withMembers(64);
  private static final InverseQuestions ASK = InverseQuestions.of(FORECASTER);
  private static final DoughFormula DOUGH = DoughFormula.builder().build();
  private static final DoughTemperature WARM = DoughTemperature.steady(Temperature.ofCelsius(24));
  private static final Rise RISE = Rise.ofPercent(60);

  @ParameterizedTest
  @ValueSource(doubles = {5, 7, 9, 12})
  void starterShareIsRecoveredByRunningTheDough(double hours) {
    InverseQuestions.Inverse answer = ASK.starterShareFor(hours, RISE, DOUGH, WARM);

    assertThat(answer.reach()).isEqualTo(InverseQuestions.Reach.ON_TIME);
    assertThat(answer.window().likely().orElseThrow()).isCloseTo(hours, within(0.15 * hours));
    assertThat(answer.window().early().orElseThrow())
        .isLessThan(answer.window().late().orElseThrow());
  }

  @Test
  void moreTimeNeedsLessStarterAndACoolerDough() {
    double quick = ASK.starterShareFor(6, RISE, DOUGH, WARM).value();
    double slow = ASK.starterShareFor(9, RISE, DOUGH, WARM).value();
    double warm = ASK.doughTemperatureFor(6, RISE, DOUGH, DoughTemperature::steady).value();
    double cool = ASK.doughTemperatureFor(9, RISE, DOUGH, DoughTemperature::steady).value();

    assertThat(slow).isLessThan(quick);
    assertThat(cool).isLessThan(warm);
  }

  @Test
  void whatCannotBeHadIsSaid() {
    assertThat(ASK.starterShareFor(1, RISE, DOUGH, WARM).reach())
        .isEqualTo(InverseQuestions.Reach.NOT_SO_SOON);
    assertThat(ASK.starterShareFor(40, RISE, DOUGH, WARM).reach())
        .isEqualTo(InverseQuestions.Reach.NOT_SO_LATE);
  }

  @Test
  void latestMixingLeavesTimeForTheSlowDough() {
    double late = FORECASTER.forecast(DOUGH, WARM).hoursToRise(RISE).late().orElseThrow();

    assertThat(ASK.latestMixing(20, RISE, DOUGH, WARM).orElseThrow())
        .isCloseTo(20 - late, within(1e-9));
  }

  @Test
  void leavingOffersShapingNowBeforeAndAfterAndTheCold() {
    RiseForecast bulk = FORECASTER.forecast(DOUGH, WARM, 48);
    Proof night = Proof.inColdUntil(Temperature.ofCelsius(4), 22);

    List<LeaveOption> options = InverseQuestions.leaveAt(bulk, 3, 5.5, 12, night, KILO);

    assertThat(options)
        .isSortedAccordingTo(Comparator.comparingDouble((LeaveOption o) -> -o.goodShare()));
    LeaveOption now = of(options, LeaveOption.Kind.SHAPE_NOW);
    LeaveOption later = of(options, LeaveOption.Kind.SHAPE_BEFORE_LEAVING);
    assertThat(now.riseAtBake().likely().orElseThrow())
        .isLessThan(later.riseAtBake().likely().orElseThrow());
    assertThat(later.shapedHours()).isCloseTo(5.5, within(1e-9));
    LeaveOption left = of(options, LeaveOption.Kind.SHAPE_WHEN_BACK);
    LeaveOption cold = of(options, LeaveOption.Kind.TUB_IN_COLD);
    assertThat(cold.goodShare()).isGreaterThan(left.goodShare());
    assertThat(cold.riseWhenShaped().likely().orElseThrow())
        .isLessThan(left.riseWhenShaped().likely().orElseThrow());
    assertThat(cold.tubIntoColdHours().orElseThrow()).isBetween(3.0, 5.5);
  }

  @Test
  void theShapePointIsOfferedWhereItCanBeKept() {
    RiseForecast bulk = FORECASTER.forecast(DOUGH, WARM, 48);
    Proof night = Proof.inColdUntil(Temperature.ofCelsius(4), 20);

    LeaveOption point =
        of(InverseQuestions.leaveAt(bulk, 2, 9, 14, night, KILO), LeaveOption.Kind.SHAPE_AT_POINT);
    assertThat(point.riseAtBake().likely().orElseThrow()).isCloseTo(85, within(6.0));
    assertThat(point.goodShare()).isGreaterThan(0.7);

    LeaveOption after =
        of(
            InverseQuestions.leaveAt(bulk, 0.5, 1, 2, night, KILO),
            LeaveOption.Kind.SHAPE_AFTER_BACK);
    assertThat(after.shapedHours()).isCloseTo(point.shapedHours(), within(0.05));
  }

  @Test
  void aProofInTheRoomHasNoColdForTheTub() {
    RiseForecast bulk = FORECASTER.forecast(DOUGH, WARM, 48);
    Proof room = Proof.inRoom(Temperature.ofCelsius(24), 1.5);

    assertThat(InverseQuestions.leaveAt(bulk, 3, 5.5, 12, room, KILO))
        .isNotEmpty()
        .allMatch(each -> each.tubIntoColdHours().isEmpty());
  }

  @Test
  void whereYeastCannotGrowNothingIsOffered() {
    DoughTemperature hot = DoughTemperature.steady(Temperature.ofCelsius(41));
    Proof room = Proof.inRoom(Temperature.ofCelsius(24), 1.5);

    assertThat(
            InverseQuestions.leaveAt(FORECASTER.forecast(DOUGH, hot, 48), 3, 5.5, 12, room, KILO))
        .isEmpty();
  }

  private static final Mass KILO = Mass.ofGrams(1000);

  private static LeaveOption of(List<LeaveOption> options, LeaveOption.Kind kind) {
    return options.stream().filter(each -> each.kind() == kind).findFirst().orElseThrow();
  }
}
