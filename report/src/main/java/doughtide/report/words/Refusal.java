package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TemperatureWarnings;

/** Refuses doughs for which no hours can be given: a page without them would mislead. */
@Internal
public final class Refusal {

  private Refusal() {}

  public static RiseForecast ifImpossible(RiseForecast forecast) {
    if (forecast.isPossible()) {
      return forecast;
    }
    throw TemperatureWarnings.refusal(forecast.warnings().get(0));
  }
}
