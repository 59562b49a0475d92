package doughtide.examples;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.io.Serializable;
import org.apache.beam.sdk.Pipeline;
import org.apache.beam.sdk.io.TextIO;
import org.apache.beam.sdk.transforms.MapElements;
import org.apache.beam.sdk.transforms.SerializableFunction;
import org.apache.beam.sdk.values.TypeDescriptor;
import org.apache.beam.sdk.values.TypeDescriptors;

/**
 * Doughs for more than one machine: a pipeline of Apache Beam in which the library is an ordinary
 * function. Whatever the pipeline runs on sends the function to its workers and the doughs after
 * it; both are serializable. Lines "id,celsius,starter %,hydration %" go in; "id,early,likely,late"
 * hours to half again the volume come out.
 */
public final class ManyDoughs {
  private ManyDoughs() {}

  /** One dough. */
  public record Dough(String id, DoughFormula formula, Temperature temperature)
      implements Serializable {
    static Dough parse(String line) {
      String[] cells = line.split(",", -1);
      DoughFormula formula =
          DoughFormula.builder()
              .starterShare(
                  StarterShare.ofAddedFlour(Share.ofPercent(Double.parseDouble(cells[2]))))
              .hydration(Share.ofPercent(Double.parseDouble(cells[3])))
              .build();
      return new Dough(cells[0], formula, Temperature.ofCelsius(Double.parseDouble(cells[1])));
    }
  }

  /** When it has risen by half. */
  public record Answer(String id, TimeWindow half) implements Serializable {
    String line() {
      double never = Double.POSITIVE_INFINITY;
      return String.join(
          ",",
          id,
          Double.toString(half.early().orElse(never)),
          Double.toString(half.likely().orElse(never)),
          Double.toString(half.late().orElse(never)));
    }
  }

  /** The library as a function: no pipeline in it. */
  public record Forecast(RiseForecaster forecaster) implements SerializableFunction<Dough, Answer> {
    @Override
    public Answer apply(Dough dough) {
      TimeWindow half =
          forecaster
              .forecast(dough.formula(), DoughTemperature.steady(dough.temperature()))
              .hoursToRise(Rise.ofPercent(50));
      return new Answer(dough.id(), half);
    }
  }

  /**
   * Adds the steps to a pipeline.
   *
   * @param from files with lines of doughs
   * @param to what the names of the files with answers begin with
   * @param forecaster best one that stays {@linkplain RiseForecaster#onCallingThread() on its
   *     thread}: the engine has a thread for each core
   */
  public static void addTo(Pipeline pipeline, String from, String to, RiseForecaster forecaster) {
    pipeline
        .apply("read", TextIO.read().from(from))
        .apply("parse", MapElements.into(TypeDescriptor.of(Dough.class)).via(Dough::parse))
        .apply(
            "forecast",
            MapElements.into(TypeDescriptor.of(Answer.class)).via(new Forecast(forecaster)))
        .apply("print", MapElements.into(TypeDescriptors.strings()).via(Answer::line))
        .apply("write", TextIO.write().to(to));
  }
}
