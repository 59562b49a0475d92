package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The table of core/docs/shape-point.md: rows that the model gives now stand in the page. */
@Tag("long")
class ShapePointTableTest {
  private static final double COOLEST_CELSIUS = 18;
  private static final double WARMEST_CELSIUS = 30;

  @Test
  void everyRowStandsInThePage() throws IOException {
    StringBuilder rows = new StringBuilder();
    for (double celsius = COOLEST_CELSIUS; celsius <= WARMEST_CELSIUS; celsius += 2) {
      for (Shaping shaping : Shaping.values()) {
        rows.append(row(celsius, shaping)).append('\n');
      }
    }
    System.out.print(rows);

    String page =
        Files.readString(
            Path.of(System.getProperty("doughtide.testdata"), "../core/docs/shape-point.md"));
    assertThat(page.lines().collect(Collectors.toList()))
        .containsAll(rows.toString().lines().toList());
  }

  private static String row(double celsius, Shaping shaping) {
    DoughFormula formula = DoughFormula.builder().hydration(Share.ofPercent(72)).build();
    RiseForecast bulk =
        RiseForecaster.standard()
            .forecast(formula, DoughTemperature.steady(Temperature.ofCelsius(celsius)));
    Proof dial = Proof.inCold(Temperature.ofCelsius(4), 12).shaped(shaping);
    Proof measured = dial.withCold(dial.coldPlace().orElseThrow().measured());
    return String.format(
        Locale.ROOT,
        "| %.0f | %s | %s | %s |",
        celsius,
        shaping.key(),
        cells(ShapeForecaster.of(bulk, dial).forecast()),
        cells(ShapeForecaster.of(bulk, measured).forecast()));
  }

  private static String cells(ShapeForecast shape) {
    if (shape.likely().isEmpty()) {
      return "– | – | – | –";
    }
    ShapeForecast.RiseRange oven = shape.likely().get().riseAtBake();
    return String.format(
        Locale.ROOT,
        "%.1f | %.0f | %.0f | %.0f to %.0f",
        shape.hours().likely().orElseThrow(),
        shape.rise().likely().orElseThrow(),
        shape.loafRise().likely().orElseThrow(),
        oven.low().orElseThrow(),
        oven.high().orElse(Double.POSITIVE_INFINITY));
  }
}
