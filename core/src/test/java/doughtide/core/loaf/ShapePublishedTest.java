package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.GasBalance;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Checks B2, B8 and N9 of testdata/shape-point.csv; each line names its source. */
class ShapePublishedTest {
  record Line(
      String check,
      String name,
      String quantity,
      double low,
      double high,
      String expectedOutcome,
      String source) {

    double number(int word) {
      return Double.parseDouble(name.split(" ")[word]);
    }
  }

  static Stream<Line> lines() throws IOException {
    Path file = Path.of(System.getProperty("doughtide.testdata"), "shape-point.csv");
    return Files.readAllLines(file).stream()
        .filter(line -> !line.startsWith("#") && !line.startsWith("check,"))
        .map(line -> line.split(","))
        .map(c -> new Line(c[0], c[1], c[2], number(c[3]), number(c[4]), c[6], c[7]));
  }

  private static double number(String text) {
    return Double.parseDouble(text);
  }

  @ParameterizedTest
  @MethodSource("lines")
  void comesOutAsRecorded(Line line) {
    double measured =
        switch (line.quantity()) {
          case "hoursInsideUsable" -> hoursInside(line.number(0));
          case "lostAtOven" -> lostAtOven();
          default -> riseAtShape(line.number(0)) - riseAtShape(line.number(2));
        };
    String outcome = measured >= line.low() && measured <= line.high() ? "pass" : "miss";
    System.out.printf(
        Locale.ROOT, "| %s | %s | %.2f | %s |%n", line.check(), line.name(), measured, outcome);

    assertThat(outcome).as("%s: measured %s", line, measured).isEqualTo(line.expectedOutcome());
  }

  private static double riseAtShape(double celsius) {
    DoughFormula formula = DoughFormula.builder().hydration(Share.ofPercent(72)).build();
    DoughTemperature temperature = DoughTemperature.steady(Temperature.ofCelsius(celsius));
    RiseForecast bulk = RiseForecaster.standard().forecast(formula, temperature);
    Proof night = Proof.inCold(Temperature.ofCelsius(4), 12);
    return ShapeForecaster.of(bulk, night).forecast().rise().likely().orElseThrow();
  }

  /** A dough of 26 °C with 15 % prefermented flour, proofed in a tin at 26 °C. */
  private static double lostAtOven() {
    DoughFormula formula =
        DoughFormula.builder()
            .starterShare(StarterShare.prefermented(Share.ofPercent(15)))
            .hydration(Share.ofPercent(65))
            .build();
    Temperature warm = Temperature.ofCelsius(26);
    RiseForecast bulk =
        RiseForecaster.standard().withMembers(128).forecast(formula, DoughTemperature.steady(warm));
    Proof proof =
        Proof.inRoom(warm, 2)
            .withPiece(Mass.ofGrams(800), PieceForm.TIN)
            .shaped(Shaping.KNOCKED_BACK);
    ShapeForecast.Night night = ShapeForecaster.of(bulk, proof).forecast().likely().orElseThrow();
    GasBalance gas = night.piece().gasAt(night.ovenHours());
    return gas.lostMol() / gas.madeMol();
  }

  /**
   * Distance of the oven hour from the nearer end of the usable window, hours; negative outside.
   */
  private static double hoursInside(double hoursInTheCold) {
    Flour flour =
        Flour.mix(
            List.of(
                new Flour.Part(FlourClass.WHITE.flour(), Share.ofPercent(90)),
                new Flour.Part(FlourClass.RYE.flour(), Share.ofPercent(10))));
    DoughFormula formula =
        DoughFormula.builder()
            .flour(flour)
            .starter(Starter.ripe(Share.ofPercent(125)))
            .starterShare(StarterShare.prefermented(Share.ofPercent(15)))
            .hydration(Share.ofPercent(65))
            .build();
    DoughTemperature temperature = DoughTemperature.steady(Temperature.ofCelsius(24.4));
    RiseForecast bulk = RiseForecaster.standard().forecast(formula, temperature);
    Proof proof =
        Proof.inCold(Temperature.ofCelsius(5), hoursInTheCold)
            .afterRoom(Temperature.ofCelsius(23), 1.5)
            .withRest(0.25);
    ShapeForecast.Night night = ShapeForecaster.of(bulk, proof).nightIfShapedAt(2.75).orElseThrow();
    double from = night.bakeFrom().window().likely().orElseThrow();
    double until = night.bakeUntil().window().likely().orElse(Double.POSITIVE_INFINITY);
    return Math.min(night.ovenHours() - from, until - night.ovenHours());
  }
}
