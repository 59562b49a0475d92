package doughtide.report.words;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.InputException;

/** Refuses doughs for which no hours can be given: a page without them would mislead. */
public final class Refusal {

  private Refusal() {}

  public static RiseForecast ifImpossible(RiseForecast forecast) {
    if (forecast.isPossible()) {
      return forecast;
    }
    Warning reason = forecast.warnings().get(0);
    throw new InputException(reason.text() + " " + reason.remedy());
  }
}
