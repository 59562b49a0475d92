package doughtide.core.day.question;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
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

  private static final BulkEnd END = BulkEnd.atRise(RISE);
  private static final BulkEnd NIGHT = BulkEnd.before(Proof.inCold(Temperature.ofCelsius(4), 12));

  @ParameterizedTest
  @ValueSource(doubles = {5, 7, 9, 12})
  void starterShareIsRecoveredByRunningTheDough(double hours) {
    InverseAnswer answer = ASK.starterShareFor(hours, END, DOUGH, WARM);

    assertThat(answer.half().reach()).isEqualTo(InverseAnswer.Reach.ON_TIME);
    TimeWindow again = FORECASTER.forecast(with(answer.half()), WARM).hoursToRise(RISE);
    assertThat(again.likely().orElseThrow()).isCloseTo(hours, within(0.01 * hours));
    assertThat(answer.half().window()).isEqualTo(again);
    TimeWindow late =
        FORECASTER.forecast(with(answer.nineInTen().orElseThrow()), WARM).hoursToRise(RISE);
    assertThat(late.late().orElseThrow()).isCloseTo(hours, within(0.01 * hours));
    TimeWindow early =
        FORECASTER.forecast(with(answer.oneInTen().orElseThrow()), WARM).hoursToRise(RISE);
    assertThat(early.early().orElseThrow()).isCloseTo(hours, within(0.01 * hours));
  }

  private static DoughFormula with(InverseAnswer.Choice starter) {
    return DOUGH.toBuilder()
        .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(starter.value())))
        .build();
  }

  @ParameterizedTest
  @ValueSource(doubles = {5, 8, 11})
  void temperatureIsRecoveredByRunningTheDough(double hours) {
    InverseAnswer answer = ASK.doughTemperatureFor(hours, END, DOUGH, DoughTemperature::steady);

    assertThat(answer.half().reach()).isEqualTo(InverseAnswer.Reach.ON_TIME);
    DoughTemperature found = DoughTemperature.steady(Temperature.ofCelsius(answer.half().value()));
    assertThat(FORECASTER.forecast(DOUGH, found).hoursToRise(RISE).likely().orElseThrow())
        .isCloseTo(hours, within(0.01 * hours));
    assertThat(answer.nineInTen().orElseThrow().value()).isGreaterThan(answer.half().value());
    assertThat(answer.oneInTen().orElseThrow().value()).isLessThan(answer.half().value());
  }

  /** With as many members as were asked for, however dear a loaf of each is. */
  @Test
  void aNightInTheColdEndsBulkAtItsShapePoint() {
    RiseForecaster many = FORECASTER.withMembers(160);

    InverseAnswer answer = InverseQuestions.of(many).starterShareFor(6, NIGHT, DOUGH, WARM);

    ShapeForecast shape =
        ShapeForecaster.of(many.forecast(with(answer.half()), WARM), NIGHT.proof().orElseThrow())
            .forecast();
    assertThat(shape.hours().likely().orElseThrow()).isCloseTo(6, within(0.1));
    assertThat(answer.rise().likely()).isEqualTo(shape.rise().likely());
  }

  @Test
  void moreTimeNeedsLessStarterAndACoolerDough() {
    double quick = ASK.starterShareFor(6, END, DOUGH, WARM).half().value();
    double slow = ASK.starterShareFor(9, END, DOUGH, WARM).half().value();
    double warm = ASK.doughTemperatureFor(6, END, DOUGH, DoughTemperature::steady).half().value();
    double cool = ASK.doughTemperatureFor(9, END, DOUGH, DoughTemperature::steady).half().value();

    assertThat(slow).isLessThan(quick);
    assertThat(cool).isLessThan(warm);
  }

  @Test
  void whatCannotBeHadIsSaidWithWhatComesNearest() {
    InverseAnswer soon = ASK.starterShareFor(1, END, DOUGH, WARM);
    InverseAnswer late = ASK.starterShareFor(40, END, DOUGH, WARM);

    assertThat(soon.half().reach()).isEqualTo(InverseAnswer.Reach.NOT_SO_SOON);
    assertThat(soon.half().value()).isCloseTo(InverseQuestions.MOST_STARTER_PERCENT, within(1e-9));
    assertThat(late.half().reach()).isEqualTo(InverseAnswer.Reach.NOT_SO_LATE);
    assertThat(late.half().value()).isCloseTo(InverseQuestions.LEAST_STARTER_PERCENT, within(1e-9));
  }

  @Test
  void aRiseThatFewDoughsReachHasNoShareForNineInTen() {
    BulkEnd high = BulkEnd.atRise(Rise.ofPercent(230));

    assertThat(ASK.starterShareFor(12, high, DOUGH, WARM).nineInTen()).isEmpty();
  }

  @Test
  void noShareIsGivenWhereYeastDoesNotGrow() {
    DoughTemperature hot = DoughTemperature.steady(Temperature.ofCelsius(38));

    assertThatThrownBy(() -> ASK.starterShareFor(6, END, DOUGH, hot))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("38 °C");
    assertThatThrownBy(() -> ASK.mixingFor(20, END, DOUGH, hot))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("38 °C");
    assertThatThrownBy(() -> ASK.doughTemperatureFor(6, END, DOUGH, any -> hot))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("38 °C");
  }

  @Test
  void fromOneHourToTwoDaysAreAnswered() {
    assertThatThrownBy(() -> ASK.starterShareFor(0.9, END, DOUGH, WARM))
        .hasMessageContaining("wanted bulk time 0.9 h is outside 1…48 h");
    assertThatThrownBy(() -> ASK.doughTemperatureFor(49, END, DOUGH, DoughTemperature::steady))
        .hasMessageContaining("wanted bulk time 49 h is outside 1…48 h");
  }

  @Test
  void mixingEarlyLeavesTimeForTheSlowDough() {
    double late = FORECASTER.forecast(DOUGH, WARM).hoursToRise(RISE).late().orElseThrow();

    assertThat(ASK.mixingFor(20, END, DOUGH, WARM).hours().early().orElseThrow())
        .isCloseTo(20 - late, within(1e-9));
  }

  @Test
  void leavingOffersShapingNowBeforeAndAfterAndTheCold() {
    RiseForecast bulk = FORECASTER.forecast(DOUGH, WARM, 48);
    Proof night = Proof.inColdUntil(Temperature.ofCelsius(4), 22);

    List<LeaveOption> options = InverseQuestions.leaveAt(bulk, 3, 5.5, 12, night, KILO);

    assertThat(options)
        .isSortedAccordingTo(
            Comparator.comparingDouble((LeaveOption o) -> -Math.floor(10 * o.goodShare())));
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
    assertThat(point.goodShare()).isGreaterThan(0.25);

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
