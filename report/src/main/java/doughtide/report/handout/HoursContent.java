package doughtide.report.handout;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Computes a table of hours by dough temperature and starter share. */
final class HoursContent {

  private static final int MOST_ROWS = 10;
  private static final int MOST_COLUMNS = 6;

  private final Words words;
  private final FormulaWords say;
  private final RiseForecaster forecaster;
  private final Map<List<Object>, RiseForecast> forecasts = new HashMap<>();

  HoursContent(Words words, RiseForecaster forecaster) {
    this.words = words;
    this.say = new FormulaWords(words);
    this.forecaster = forecaster;
  }

  static void check(int rows, int columns) {
    if (rows < 1 || rows > MOST_ROWS || columns < 1 || columns > MOST_COLUMNS) {
      throw new InputException(
          "a table of "
              + rows
              + " rows and "
              + columns
              + " columns cannot be read from a metre away: use 1 to "
              + MOST_ROWS
              + " rows and 1 to "
              + MOST_COLUMNS
              + " columns");
    }
  }

  HoursTable table(
      Optional<String> title,
      DoughFormula formula,
      List<Temperature> temperatures,
      List<StarterShare> shares,
      Rise rise) {
    check(temperatures.size(), shares.size());
    List<DoughFormula> formulas = formulas(formula, shares);
    List<List<Optional<TimeSpan>>> cells = new ArrayList<>();
    for (Temperature temperature : temperatures) {
      List<Optional<TimeSpan>> row = new ArrayList<>();
      for (DoughFormula each : formulas) {
        row.add(TimeSpan.of(forecast(each, temperature).hoursToRise(rise)));
      }
      cells.add(row);
    }
    List<String> notes = notes(formula);
    return new HoursTable(
        title.orElseGet(
            () -> words.say("hours.title", Map.of("rise", say.percent(rise.percent())))),
        notes,
        words.say("hours.across"),
        formulas.stream().map(this::head).toList(),
        celsius(temperatures),
        cells,
        List.of(words.say("caution.rawDough")));
  }

  private static List<DoughFormula> formulas(DoughFormula formula, List<StarterShare> shares) {
    return shares.stream().map(share -> formula.toBuilder().starterShare(share).build()).toList();
  }

  private List<String> notes(DoughFormula formula) {
    List<String> notes = new ArrayList<>();
    notes.add(say.withoutStarter(formula));
    say.altitude(formula).ifPresent(notes::add);
    return notes;
  }

  private static List<Double> celsius(List<Temperature> temperatures) {
    return temperatures.stream().map(each -> Math.rint(each.celsius() * 10) / 10).toList();
  }

  /** The same doughs before a night in the cold. */
  NightTable night(
      DoughFormula formula,
      List<Temperature> temperatures,
      List<StarterShare> shares,
      Proof proof) {
    check(temperatures.size(), shares.size());
    List<DoughFormula> formulas = formulas(formula, shares);
    List<List<Optional<NightTable.Cell>>> cells = new ArrayList<>();
    for (Temperature temperature : temperatures) {
      cells.add(formulas.stream().map(each -> shaped(each, temperature, proof)).toList());
    }
    List<String> notes = notes(formula);
    notes.add(say.piece(proof));
    return new NightTable(
        say.title(proof),
        notes,
        words.say("hours.across"),
        formulas.stream().map(this::head).toList(),
        celsius(temperatures),
        cells,
        List.of(words.say("caution.rawDough")));
  }

  private Optional<NightTable.Cell> shaped(
      DoughFormula formula, Temperature temperature, Proof proof) {
    ShapeForecaster.Point shape = ShapeForecaster.of(forecast(formula, temperature), proof).point();
    OptionalDouble jar = shape.rise().likely();
    return shape.hours().likely().isEmpty() || jar.isEmpty()
        ? Optional.empty()
        : TimeSpan.of(shape.hours()).map(hours -> new NightTable.Cell(jar.getAsDouble(), hours));
  }

  /** Each dough is forecast once, for all its tables. */
  private RiseForecast forecast(DoughFormula formula, Temperature temperature) {
    return forecasts.computeIfAbsent(
        List.of(formula, temperature),
        key -> forecaster.forecast(formula, DoughTemperature.steady(temperature)));
  }

  private String head(DoughFormula formula) {
    return say.percent(100 * formula.starterOfAddedFlour())
        + "\n("
        + say.percent(100 * formula.prefermentedFlour())
        + ")";
  }
}
