package doughtide.report.chart;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.List;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;

/** Twelve doughs at the borders of what is baked. */
final class ExtremeDoughs {

  private ExtremeDoughs() {}

  private static final RiseForecaster FORECASTER = RiseForecaster.standard().withMembers(32);

  static final int COUNT = 12;

  static RiseForecast dough(int number) {
    return List.<Supplier<RiseForecast>>of(
            () -> of(24, each -> each),
            () -> of(12, each -> each),
            () -> of(34, each -> each),
            () -> of(24, each -> each.starterShare(share(2))),
            () -> of(26, each -> each.starterShare(share(60))),
            () -> of(16, each -> each.hydration(Share.ofPercent(100))),
            () -> of(24, each -> each.hydration(Share.ofPercent(50))),
            () -> of(28, each -> each.flour(FlourClass.WHOLEMEAL_RYE.flour())),
            () -> of(22, each -> each.salt(Share.ofPercent(0))),
            () -> of(20, each -> each.salt(Share.ofPercent(3.5))),
            () -> of(24, each -> each.altitude(Altitude.ofMetres(3500))),
            () -> of(30, each -> each.flour(FlourClass.WHOLEMEAL_SPELT.flour())))
        .get(number)
        .get();
  }

  private static StarterShare share(double percent) {
    return StarterShare.ofAddedFlour(Share.ofPercent(percent));
  }

  private static RiseForecast of(double celsius, UnaryOperator<DoughFormula.Builder> change) {
    return FORECASTER.forecast(
        change.apply(DoughFormula.builder()).build(),
        DoughTemperature.steady(Temperature.ofCelsius(celsius)));
  }
}
