package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.TemperatureTrace;
import org.junit.jupiter.api.Test;

class ShapeForecasterTest {
  private static final Temperature FRIDGE = Temperature.ofCelsius(4);

  private static RiseForecast bulkAt(double celsius) {
    DoughFormula formula = DoughFormula.builder().hydration(Share.ofPercent(72)).build();
    DoughTemperature temperature = DoughTemperature.steady(Temperature.ofCelsius(celsius));
    return RiseForecaster.standard().withMembers(64).forecast(formula, temperature);
  }

  private static ShapeForecast shape(double celsius, Proof proof) {
    return ShapeForecaster.of(bulkAt(celsius), proof).forecast();
  }

  private static Warning firstWarning(ShapeForecast shape) {
    return shape.warnings().get(0);
  }

  @Test
  void likelyLoafMeetsItsTargetAtTheOven() {
    ShapeForecast shape = shape(24, Proof.inCold(FRIDGE, 12));
    ShapeForecast.Night night = shape.likely().orElseThrow();
    double target = shape.target().percent();

    double likely = night.riseAtBake().likely().orElseThrow();

    assertThat(night.piece().riseAt(night.ovenHours()).percent()).isCloseTo(likely, within(6.0));
    assertThat(likely).isCloseTo(target, within(8.0));
    assertThat(night.bulkEndHours()).isCloseTo(shape.hours().likely().orElseThrow(), within(1e-9));
  }

  @Test
  void stagesAreWhatTheLimitsOfALoafSay() {
    RiseForecast bulk = bulkAt(24);
    ShapeForecaster forecaster = ShapeForecaster.of(bulk, Proof.inCold(FRIDGE, 12));
    ShapeForecast shape = forecaster.forecast();
    double likely = shape.hours().likely().orElseThrow();

    ShapeStages stages = forecaster.stages(shape).orElseThrow();

    assertThat(stages.rightFrom()).isBetween(likely - 2, likely - 0.05);
    assertThat(stages.rightUntil().orElseThrow()).isBetween(likely + 0.05, likely + 2);
    assertThat(stages.pastBest().orElseThrow())
        .isBetween(stages.rightUntil().orElseThrow(), bulk.hoursToOver().late().orElseThrow());
    double early =
        forecaster
            .nightIfShapedAt(stages.rightFrom())
            .orElseThrow()
            .riseAtBake()
            .likely()
            .orElseThrow();
    assertThat(early).isCloseTo(0.85 * shape.target().percent(), within(8.0));
  }

  @Test
  void everyMemberHasItsOwnEndOfBulk() {
    ShapeForecast shape = shape(24, Proof.inCold(FRIDGE, 12));
    double median = shape.hours().likely().orElseThrow();

    assertThat(shape.bulkEndOfMembers()).hasSize(64);
    assertThat(shape.bulkEndOfMembers().stream().filter(each -> each < median).count())
        .isEqualTo(32);
    assertThat(shape.bulkEnd().window()).isEqualTo(shape.hours());
  }

  /** A cold that may be warm makes nobody shape a dough just mixed: the jar says when. */
  @Test
  void theHoursAreThoseAtWhichTheJarShowsTheLikelyRise() {
    ShapeForecast shape = shape(24, Proof.inCold(FRIDGE, 16));
    Rise jar = Rise.ofPercent(shape.rise().likely().orElseThrow());
    TimeWindow shown = bulkAt(24).hoursToRise(jar);

    assertThat(shape.hours()).isEqualTo(shown);
    assertThat(shape.hours().early().orElseThrow()).isGreaterThan(1);
    assertThat(shape.bulkEndOfMembers().stream().min(Double::compare).orElseThrow())
        .isLessThan(shape.hours().early().orElseThrow());
  }

  @Test
  void stagesFollowOneAnother() {
    Proof proof = Proof.inCold(FRIDGE, 10).withRest(0.75).afterRoom(Temperature.ofCelsius(22), 0.5);
    ShapeForecast.Night night = shape(24, proof).likely().orElseThrow();
    double cold = night.coldFromHours().orElseThrow();
    double at10 = night.coreAt(Temperature.ofCelsius(10)).quantile(0.5).orElseThrow();

    assertThat(night.proofFromHours()).isCloseTo(night.bulkEndHours() + 0.75, within(1e-9));
    assertThat(cold).isCloseTo(night.proofFromHours() + 0.5, within(1e-9));
    assertThat(night.ovenHours()).isCloseTo(cold + 10, within(1e-9));
    assertThat(at10)
        .isGreaterThan(cold)
        .isLessThan(night.coreAt(Temperature.ofCelsius(7)).quantile(0.5).orElseThrow());
  }

  @Test
  void fixedOvenHourIsKept() {
    ShapeForecast.Night night = shape(24, Proof.inColdUntil(FRIDGE, 18)).likely().orElseThrow();

    assertThat(night.ovenHours()).isCloseTo(18, within(1e-9));
  }

  @Test
  void roomProofHasNoCold() {
    Proof proof = Proof.inRoom(Temperature.ofCelsius(24), 1.5);
    ShapeForecast.Night night = shape(25, proof).likely().orElseThrow();

    assertThat(night.coldFromHours()).isEmpty();
    assertThat(night.coreAt(Temperature.ofCelsius(10)).reached()).isZero();
    assertThat(night.warmer()).isEmpty();
    double likely = night.riseAtBake().likely().orElseThrow();
    assertThat(likely).isCloseTo(85, within(8.0));
    assertThat(night.piece().riseAt(night.ovenHours()).percent()).isCloseTo(likely, within(6.0));
  }

  @Test
  void warmerRefrigeratorRaisesTheLoaf() {
    ShapeForecast.Night night = shape(24, Proof.inCold(FRIDGE, 12)).likely().orElseThrow();
    ShapeForecast.WarmerCold warmer = night.warmer().orElseThrow();

    assertThat(warmer.byCelsius()).isEqualTo(2);
    assertThat(warmer.riseAtBakePercent())
        .isGreaterThan(night.piece().riseAt(night.ovenHours()).percent() + 3);
  }

  @Test
  void saysPlainlyWhereThereIsNoPoint() {
    ShapeForecast tooLong = shape(26, Proof.inRoom(Temperature.ofCelsius(26), 9));
    ShapeForecast tooHigh = shape(24, Proof.inCold(FRIDGE, 1).withTarget(Rise.ofPercent(400)));

    assertThat(tooLong.isPossible()).isFalse();
    assertThat(tooLong.hours()).isEqualTo(TimeWindow.NEVER);
    assertThat(firstWarning(tooLong).kind()).isEqualTo(Warning.Kind.PAST_TARGET_IN_ROOM);
    assertThat(tooHigh.isPossible()).isFalse();
    assertThat(firstWarning(tooHigh)).isEqualTo(Warning.Kind.NOT_REACHED.with(400));
  }

  @Test
  void inventsNoNumbersOutsideGrowthAndBelowFreezing() {
    ShapeForecast frozen = shape(24, Proof.inCold(Temperature.ofCelsius(-18), 12));
    ShapeForecast hot = shape(24, Proof.inRoom(Temperature.ofCelsius(38), 1));

    assertThat(shape(41, Proof.inCold(FRIDGE, 12)).isPossible()).isFalse();
    assertThat(frozen.isPossible()).isFalse();
    assertThat(firstWarning(frozen).kind()).isEqualTo(Warning.Kind.FREEZING);
    assertThat(hot.isPossible()).isFalse();
    assertThat(firstWarning(hot).kind()).isEqualTo(Warning.Kind.OUTSIDE_GROWTH);
  }

  @Test
  void refrigeratorWarmerThanTheDoughIsNamed() {
    ShapeForecast shape = shape(14, Proof.inCold(Temperature.ofCelsius(15), 2));

    assertThat(firstWarning(shape)).isEqualTo(Warning.Kind.NOT_COOLING.with(15, 14));
  }

  @Test
  void noNightIsMadeUpForAColdAsWarmAsTheDough() {
    Proof proof = Proof.inCold(Temperature.ofCelsius(14), 2);
    assertThat(ShapeForecaster.of(bulkAt(14), proof).nightIfShapedAt(4)).isEmpty();
    assertThat(ShapeForecaster.of(bulkAt(16), proof).nightIfShapedAt(4)).isPresent();
  }

  @Test
  void smallPiecesCoolFasterAndAreShapedHigher() {
    Proof loaf = Proof.inCold(FRIDGE, 12);
    ShapeForecast small = shape(25, loaf.withPiece(Mass.ofGrams(250), PieceForm.BAGUETTE));
    ShapeForecast large = shape(25, loaf.withPiece(Mass.ofGrams(1800), PieceForm.ROUND));

    assertThat(small.rise().likely().orElseThrow())
        .isGreaterThan(large.rise().likely().orElseThrow() + 10);
  }

  @Test
  void whatIsShapedByTheClockComesOutAsDifferentlyAsDoughsRise() {
    ShapeForecaster forecaster = ShapeForecaster.of(bulkAt(25), Proof.inCold(FRIDGE, 12));
    ShapeForecast.RiseRange jar = forecaster.nightIfShapedAt(4).orElseThrow().riseAtBake();
    ShapeForecast.RiseRange clock = forecaster.nightIfShapedByClock(4).orElseThrow().riseAtBake();

    assertThat(clock.likely().orElseThrow()).isCloseTo(jar.likely().orElseThrow(), within(10.0));
    assertThat(clock.high().orElseThrow() - clock.low().orElseThrow())
        .isGreaterThan(jar.high().orElseThrow() - jar.low().orElseThrow() + 10);
    assertThatThrownBy(() -> forecaster.nightIfShapedByClock(-1))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("end of bulk fermentation -1 h is outside");
  }

  @Test
  void nightFromAGivenHourTakesWhatComes() {
    ShapeForecaster forecaster = ShapeForecaster.of(bulkAt(25), Proof.inCold(FRIDGE, 12));
    ShapeForecast.Night early = forecaster.nightIfShapedAt(2).orElseThrow();
    ShapeForecast.Night late = forecaster.nightIfShapedAt(5).orElseThrow();

    assertThat(early.riseAtBake().likely().orElseThrow())
        .isLessThan(late.riseAtBake().likely().orElseThrow());
    assertThatThrownBy(() -> forecaster.nightIfShapedAt(-1))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("end of bulk fermentation -1 h is outside");
  }

  @Test
  void sameInputGivesTheSameAnswer() {
    Proof proof = Proof.inCold(FRIDGE, 12);

    assertThat(shape(23, proof).hours()).isEqualTo(shape(23, proof).hours());
  }

  @Test
  void proofChecksItsRanges() {
    assertThatThrownBy(() -> Proof.inCold(FRIDGE, 97)).hasMessageContaining("outside 0…96 h");
    assertThatThrownBy(() -> Proof.inColdUntil(FRIDGE, Double.NaN))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(() -> Proof.inCold(FRIDGE, 1).withPiece(Mass.ofGrams(5), PieceForm.TIN))
        .hasMessageContaining("mass of the piece 5 g");
  }

  @Test
  void aDoughThatWasInTheSameColdBeforeHasAShapePoint() {
    DoughTemperature tub =
        DoughTemperature.steady(Temperature.ofCelsius(24))
            .then(3, TemperatureTrace.steady(FRIDGE), 3, 4000)
            .then(9, TemperatureTrace.steady(Temperature.ofCelsius(22)), 3, 4000);
    RiseForecast bulk =
        RiseForecaster.standard().withMembers(32).forecast(DoughFormula.builder().build(), tub, 30);

    ShapeForecast shape = ShapeForecaster.of(bulk, Proof.inColdUntil(FRIDGE, 34)).forecast();

    assertThat(shape.isPossible()).isTrue();
    assertThat(shape.warnings()).noneMatch(each -> each.kind() == Warning.Kind.NOT_COOLING);
    assertThat(shape.hours().likely().orElseThrow()).isGreaterThan(3);
  }
}
