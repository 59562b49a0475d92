package doughtide.report.handout;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;

/**
 * A dough as a page tells it: what is in it and how warm it is over time.
 *
 * <pre>{@code
 * HandoutDough dough =
 *     HandoutDough.steady(DoughFormula.builder().build(), Temperature.ofCelsius(24));
 * }</pre>
 *
 * @param formula what is in it
 * @param temperature the dough's own temperature in steps, the first from hour 0
 */
public record HandoutDough(DoughFormula formula, List<TemperatureTrace.Step> temperature) {

  /**
   * Copies the steps.
   *
   * @param formula what is in it
   * @param temperature the dough's own temperature in steps, the first from hour 0
   * @throws InputException if there is no step or the first does not begin at hour 0
   */
  public HandoutDough {
    temperature = List.copyOf(temperature);
    if (temperature.isEmpty() || temperature.get(0).hours() != 0) {
      throw new InputException("the dough temperature must be given from hour 0 on");
    }
  }

  /**
   * {@return a dough of one temperature}
   *
   * @param formula what is in it
   * @param temperature the dough's own, −2…45 °C
   */
  public static HandoutDough steady(DoughFormula formula, Temperature temperature) {
    return new HandoutDough(formula, List.of(new TemperatureTrace.Step(0, temperature)));
  }

  /**
   * {@return the same with another formula}
   *
   * @param newFormula what is in it
   */
  public HandoutDough with(DoughFormula newFormula) {
    return new HandoutDough(newFormula, temperature);
  }

  /**
   * {@return the same at one other temperature}
   *
   * @param newTemperature the dough's own, −2…45 °C
   */
  public HandoutDough at(Temperature newTemperature) {
    return steady(formula, newTemperature);
  }

  /**
   * {@return the temperature as the model takes it}
   *
   * @throws InputException if no dough has one of the temperatures
   */
  public DoughTemperature doughTemperature() {
    temperature.forEach(step -> DoughTemperature.steady(step.temperature()));
    return DoughTemperature.following(TemperatureTrace.steps(temperature));
  }
}
