package doughtide.core.thermal;

import doughtide.core.quantity.Temperature;

/** Bodies in which one hour is a Fourier number of 1. */
final class Bodies {
  private static final DoughHeat HEAT = new DoughHeat(1000, 3600, 1);
  private static final double LENGTH = Math.sqrt(0.001);

  private Bodies() {}

  static Conduction ofBiot(BodyForm form, double biot, int shells) {
    return Conduction.of(form, LENGTH, HEAT, biot / LENGTH, shells);
  }

  /** From 1 °C into air at 0 °C. */
  static CoolingPiece unitStep(BodyForm form, double biot, int shells) {
    return CoolingPiece.start(
        ofBiot(form, biot, shells),
        Temperature.ofCelsius(1),
        TemperatureTrace.steady(Temperature.ofCelsius(0)));
  }
}
