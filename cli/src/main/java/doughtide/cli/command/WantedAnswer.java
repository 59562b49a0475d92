package doughtide.cli.command;

import doughtide.cli.options.WantedOptions;
import doughtide.core.day.question.InverseAnswer;
import doughtide.core.day.question.InverseAnswer.Choice;
import doughtide.core.day.question.InverseAnswer.Reach;
import doughtide.core.day.question.InverseQuestions;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was found, the same shape for every question.
 *
 * @param options what was asked
 * @param rows for half of the doughs, for nine in ten, for one in ten
 * @param forecast the dough with the likely answer
 * @param rise that the sample jar shows at the end of bulk fermentation then
 * @param widens why the window is wide
 */
record WantedAnswer(
    WantedOptions options,
    List<Row> rows,
    RiseForecast forecast,
    ShapeForecast.RiseRange rise,
    List<RiseAnswer.Widening> widens) {

  /** How many doughs are there at the wanted time. */
  enum Doughs {
    HALF("half of the doughs"),
    NINE_IN_TEN("nine in ten"),
    ONE_IN_TEN("one in ten");

    private final String words;

    Doughs(String words) {
      this.words = words;
    }

    String words() {
      return words;
    }
  }

  /**
   * One answer.
   *
   * @param doughs how many are in time with it
   * @param value per cent of the flour added, °C, or an hour of the clock; empty for none
   * @param reach whether the time can be had
   * @param window when bulk fermentation ends, hours since mixing
   */
  record Row(Doughs doughs, OptionalDouble value, Reach reach, TimeWindow window) {}

  public WantedAnswer {
    rows = List.copyOf(rows);
    widens = List.copyOf(widens);
  }

  public static WantedAnswer of(WantedOptions options, RiseForecaster forecaster) {
    InverseQuestions ask = InverseQuestions.of(forecaster);
    DoughFormula formula = options.dough().formula();
    return switch (options.question()) {
      case STARTER ->
          of(
              options,
              ask.starterShareFor(
                  options.bulkHours().orElseThrow(),
                  options.end(),
                  formula,
                  options.temperature()));
      case DOUGH_TEMP ->
          of(
              options,
              ask.doughTemperatureFor(
                  options.bulkHours().orElseThrow(), options.end(), formula, options::kept));
      case MIX_AT ->
          mixing(options, ask.mixingFor(0, options.end(), formula, options.temperature()));
    };
  }

  private static WantedAnswer of(WantedOptions options, InverseAnswer found) {
    List<Row> rows =
        List.of(
            row(Doughs.HALF, Optional.of(found.half())),
            row(Doughs.NINE_IN_TEN, found.nineInTen()),
            row(Doughs.ONE_IN_TEN, found.oneInTen()));
    return of(options, rows, found.forecast(), found.rise());
  }

  private static Row row(Doughs doughs, Optional<Choice> choice) {
    return choice
        .map(
            found ->
                new Row(doughs, OptionalDouble.of(found.value()), found.reach(), found.window()))
        .orElse(new Row(doughs, OptionalDouble.empty(), Reach.NOT_SO_SOON, TimeWindow.NEVER));
  }

  private static WantedAnswer mixing(WantedOptions options, InverseQuestions.MixingTime found) {
    TimeWindow at = found.hours();
    TimeWindow bulk = found.bulk();
    List<Row> rows =
        List.of(
            new Row(Doughs.HALF, at.likely(), Reach.ON_TIME, bulk),
            new Row(Doughs.NINE_IN_TEN, at.early(), Reach.ON_TIME, bulk),
            new Row(Doughs.ONE_IN_TEN, at.late(), Reach.ON_TIME, bulk));
    return of(options, rows, found.forecast(), found.rise());
  }

  private static WantedAnswer of(
      WantedOptions options, List<Row> rows, RiseForecast forecast, ShapeForecast.RiseRange rise) {
    List<RiseAnswer.Widening> widens =
        rise.likely().isPresent()
            ? Narrowing.of(forecast, Rise.ofPercent(Math.rint(rise.likely().getAsDouble())))
            : List.of();
    return new WantedAnswer(options, rows, forecast, rise, widens);
  }

  /** The answer for half of the doughs. */
  public Row half() {
    return rows.get(0);
  }

  /** The dough with the answer in it. */
  public DoughFormula formula() {
    return formula(half());
  }

  /** The dough with a row's starter, where the starter is asked for. */
  public DoughFormula formula(Row row) {
    DoughFormula given = options.dough().formula();
    if (options.question() != WantedOptions.Question.STARTER || row.value().isEmpty()) {
      return given;
    }
    return given.toBuilder()
        .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(row.value().getAsDouble())))
        .build();
  }
}
