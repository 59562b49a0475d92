package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Which loaves a table holds, and what it says where there is nothing to interpolate. */
class ShapeTableTest {
  private static final Proof NIGHT = Proof.inCold(Temperature.ofCelsius(4), 12);

  private static RiseForecast dough(int members, double hours) {
    return RiseForecaster.standard()
        .withMembers(members)
        .forecast(
            DoughFormula.builder().build(),
            DoughTemperature.steady(Temperature.ofCelsius(24)),
            hours);
  }

  private static double[] weights(int members, double... placesAndWeights) {
    double[] weights = new double[members];
    for (int i = 0; i < placesAndWeights.length; i += 2) {
      weights[(int) placesAndWeights[i]] = placesAndWeights[i + 1];
    }
    return weights;
  }

  /** Of more than some thousand doughs the fewest that have 99 hundredths of the weight. */
  @Test
  void ofManyDoughsTheHeaviestAreWorkedOut() {
    int members = 4104;
    RiseForecast bulk = dough(members, 8);
    RiseForecast now = bulk.weighted(weights(members, 900, 50, 20, 30, 3000, 19.5, 7, 0.5));
    ShapeTable table = ShapeTable.of(now, NIGHT);

    assertThat(table).hasToString("table of 3 loaves");
    assertThat(table.covering(now)).isSameAs(table);
    RiseForecast then = bulk.weighted(weights(members, 20, 1, 7, 1));
    assertThat(table.covering(then)).hasToString("table of 4 loaves");
    assertThat(table.covering(then).covering(now)).hasToString("table of 4 loaves");
    ShapeForecaster model = ShapeForecaster.of(bulk, NIGHT).with(LoafSettings.SEARCH);
    double[] hours = table.hoursOf(new int[] {20, 5, 20});
    assertThat(hours[0]).isEqualTo(hours[2]);
    assertThat(bulk.ofMembers(List.of(20, 5), model::ofMember))
        .extracting(MemberShape::hours)
        .containsExactly(hours[0], hours[1]);
    assertThat(table.ofHours()).hasToString("table of 3 loaves");
  }

  /** Few doughs are all worked out, weight or none, so that a later weight finds them. */
  @Test
  void ofFewDoughsAllAreWorkedOut() {
    RiseForecast bulk = dough(16, 10);
    ShapeTable table = ShapeTable.of(bulk.weighted(weights(16, 3, 1)), NIGHT);

    assertThat(table).hasToString("table of 16 loaves");
    assertThat(table.covering(bulk)).isSameAs(table);
    assertThat(table.bulk().ensemble().size()).isEqualTo(16);
    assertThat(table.proof()).isEqualTo(NIGHT);
    ShapeTable run = ShapeTable.ofAll(bulk, RiseForecaster.standard().withMembers(16), NIGHT);
    int[] all = IntStream.range(0, 16).toArray();
    assertThat(run.hoursOf(all)).containsExactly(table.hoursOf(all));
  }

  /** A loaf without a shape point has rows evenly over its hours, and the model's figures there. */
  @Test
  void aLoafThatNeverRisesSoFarIsKnownAllTheSame() {
    Proof high = Proof.inRoom(Temperature.ofCelsius(24), 1).withTarget(Rise.ofPercent(390));
    RiseForecast bulk = dough(8, 12);
    ShapeTable table = ShapeTable.of(bulk, high);
    ShapeForecaster model = ShapeForecaster.of(bulk, high).with(LoafSettings.SEARCH);
    RiseForecast alone = bulk.weighted(weights(8, 2, 1));
    double last = 12 - high.restHours();

    assertThat(table.point(bulk)).isEqualTo(ShapeForecaster.Point.NONE);
    for (double end : new double[] {0, last / 8, last * 3 / 8, last * 7 / 8, last}) {
      double looked = table.ovenPercent(alone, end).quantile(0.5).orElseThrow();
      double worked =
          bulk.ofMembers(List.of(2), (member, curve) -> model.ovenPercent(member, curve, end))
              .get(0);
      assertThat(looked).isCloseTo(worked, within(1e-9));
    }
    assertThatThrownBy(() -> table.ovenPercent(alone, -0.1)).hasMessageContaining("outside");
  }

  @Test
  void whereNoHoursCanBeGivenTheTableIsEmpty() {
    Proof warm = Proof.inCold(Temperature.ofCelsius(25), 12);
    RiseForecast bulk = dough(8, 10);
    ShapeTable table = ShapeTable.of(bulk, warm);

    assertThat(table).hasToString("table of 0 loaves");
    assertThat(table.covering(bulk)).isSameAs(table);
    assertThat(table.point(bulk)).isEqualTo(ShapeForecaster.Point.NONE);
    assertThat(table.ovenPercent(bulk, 4)).isEqualTo(Distribution.NEVER);
    assertThat(table.forecast(bulk).isPossible()).isFalse();
    assertThat(table.forecast(bulk).warnings())
        .extracting(Warning::kind)
        .containsExactly(Warning.Kind.NOT_COOLING);
    assertThat(ShapeTable.ofAll(bulk, RiseForecaster.standard().withMembers(8), warm))
        .hasToString("table of 0 loaves");
  }
}
