package doughtide.core.day.question;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import org.junit.jupiter.api.Test;

/** When bulk fermentation of a dough of 24 °C ends. */
class BulkEndTest {
  private static final RiseForecaster FORECASTER = RiseForecaster.standard().withMembers(16);
  private static final DoughFormula DOUGH = DoughFormula.builder().build();
  private static final DoughTemperature WARM = DoughTemperature.steady(Temperature.ofCelsius(24));
  private static final Rise HALF = Rise.ofPercent(50);
  private static final Proof NIGHT = Proof.inCold(Temperature.ofCelsius(4), 12);

  private static double likely(BulkEnd end) {
    return end.likelyHours(FORECASTER, DOUGH, WARM);
  }

  private static double likely(Proof proof) {
    return likely(BulkEnd.before(proof));
  }

  @Test
  void aRiseIsReachedOrNever() {
    double hours = FORECASTER.typical(DOUGH, WARM).run(20).hoursToRise(HALF).orElseThrow();

    assertThat(likely(BulkEnd.atRise(HALF))).isCloseTo(hours, within(0.02));
    assertThat(likely(BulkEnd.atRise(Rise.ofPercent(900)))).isEqualTo(BulkEnd.NEVER_HOURS);
  }

  @Test
  void aProofHasAShapePointComesTooLateOrIsNeverReached() {
    RiseForecast forecast = FORECASTER.keepingCurves().forecast(DOUGH, WARM);
    double point = ShapeForecaster.of(forecast, NIGHT).point().hours().likely().orElseThrow();

    assertThat(likely(NIGHT)).isCloseTo(point, within(0.5));
    Proof overnight = Proof.inRoom(Temperature.ofCelsius(24), 9).withTarget(HALF);
    assertThat(likely(overnight)).as("risen too far").isZero();
    Proof days = Proof.inRoom(Temperature.ofCelsius(24), 48).withTarget(Rise.ofPercent(390));
    assertThat(likely(days)).as("fallen before the oven").isZero();
    Proof high = Proof.inCold(Temperature.ofCelsius(4), 1).withTarget(Rise.ofPercent(390));
    assertThat(likely(high)).as("never so high").isEqualTo(BulkEnd.NEVER_HOURS);
    Proof warm = Proof.inCold(Temperature.ofCelsius(24), 12);
    assertThat(likely(warm)).as("no hours").isEqualTo(BulkEnd.NEVER_HOURS);
  }

  @Test
  void theMomentIsThatOfTheRiseOrOfTheShapePoint() {
    RiseForecast forecast = FORECASTER.keepingCurves().forecast(DOUGH, WARM);
    BulkEnd.Moment rise = BulkEnd.atRise(HALF).in(forecast);
    BulkEnd.Moment night = BulkEnd.before(NIGHT).in(forecast);

    assertThat(rise.hours()).isEqualTo(forecast.hoursToRise(HALF));
    assertThat(rise.rise().low()).hasValue(50);
    assertThat(rise.rise().high()).hasValue(50);
    ShapeForecaster.Point point = ShapeForecaster.of(forecast, NIGHT).point();
    assertThat(night.hours()).isEqualTo(point.hours());
    assertThat(night.rise()).isEqualTo(point.rise());
  }

  /** A loaf is followed through the night by the curve of its dough, which is kept for that. */
  @Test
  void aShapePointIsToldByAllMembersWithTheirCurves() {
    RiseForecaster many = FORECASTER.withMembers(256);
    BulkEnd night = BulkEnd.before(NIGHT);
    BulkEnd rise = BulkEnd.atRise(HALF);

    assertThat(rise.printed(many)).isSameAs(many);
    assertThat(night.printed(many)).isNotSameAs(many);
    assertThat(night.printed(many).ensemble().size()).isEqualTo(256);
  }

  @Test
  void endsAreValues() {
    assertThat(BulkEnd.atRise(HALF)).isEqualTo(BulkEnd.atRise(Rise.ofPercent(50)));
    assertThat(BulkEnd.atRise(HALF)).isNotEqualTo(BulkEnd.atRise(Rise.ofPercent(60)));
    assertThat(BulkEnd.before(NIGHT)).isNotEqualTo(BulkEnd.before(NIGHT.withRest(1)));
    assertThat(BulkEnd.atRise(HALF)).hasToString("at a rise of 50 %");
    assertThat(BulkEnd.before(NIGHT).toString()).startsWith("before a proof: ");
    assertThat(BulkEnd.before(NIGHT).rise()).isEmpty();
    assertThat(BulkEnd.before(NIGHT).proof()).contains(NIGHT);
  }
}
