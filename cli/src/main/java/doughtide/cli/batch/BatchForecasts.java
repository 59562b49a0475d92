package doughtide.cli.batch;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.session.Environment;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.InputException;
import doughtide.report.words.Advice;
import java.util.List;

/** Forecasts one row after another; used by several threads at once. */
final class BatchForecasts {

  private final CommandSpec dough;
  private final BatchColumns columns;
  private final RiseForecaster forecaster;
  private final Environment environment;

  public BatchForecasts(
      CommandSpec dough, BatchColumns columns, RiseForecaster forecaster, Environment environment) {
    this.dough = dough;
    this.columns = columns;
    this.forecaster = forecaster;
    this.environment = environment;
  }

  /** The answer, which tells what is wrong if the row cannot be used. */
  public BatchAnswer answer(BatchRow row) {
    if (!row.problem().isEmpty()) {
      return BatchAnswer.refused(row, row.problem());
    }
    try {
      Arguments arguments = new Arguments(dough, row.values(), List.of(), environment.catalogue());
      DoughOptions options = DoughOptions.read(arguments, environment);
      return answer(
          row, forecaster.forecast(options.formula(), options.doughTemperature(arguments)));
    } catch (InputException e) {
      return BatchAnswer.refused(row, columns.inColumns(String.valueOf(e.getMessage())));
    }
  }

  private static BatchAnswer answer(BatchRow row, RiseForecast forecast) {
    return new BatchAnswer(
        row,
        BatchAnswer.RISES.stream().map(forecast::hoursToRise).toList(),
        forecast.hoursToOver(),
        forecast.warnings().stream().map(each -> Advice.english(each).text()).toList(),
        "");
  }
}
