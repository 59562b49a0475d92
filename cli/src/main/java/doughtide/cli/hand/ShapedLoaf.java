package doughtide.cli.hand;

import doughtide.cli.args.Speech;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Temperature;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;

/**
 * A loaf that has been shaped: nothing is left to choose but when to bake it.
 *
 * @param hours from mixing until it was shaped
 * @param proof what happens to it
 * @param night what becomes of it
 */
record ShapedLoaf(double hours, Proof proof, ShapeForecast.Night night) {

  /**
   * The loaf of a dough.
   *
   * @param forecast with its readings
   * @param proof as it was planned
   * @param shaped hours from mixing until it was shaped
   * @param intoCold the same until it went into the cold, if it did
   */
  static Optional<ShapedLoaf> of(
      RiseForecast forecast, Proof proof, double shaped, OptionalDouble intoCold) {
    Proof real = waited(proof, shaped, intoCold, forecast);
    double end =
        Math.min(Math.max(shaped - proof.restHours(), 0), forecast.hours() - proof.restHours());
    return ShapeForecaster.of(forecast, real)
        .nightIfShapedByClock(end)
        .map(night -> new ShapedLoaf(shaped, real, night));
  }

  /**
   * The time before the cold as it really was; where no room was told of, the loaf keeps the
   * temperature of its dough.
   */
  private static Proof waited(
      Proof proof, double shaped, OptionalDouble intoCold, RiseForecast dough) {
    double hours = intoCold.orElse(0) - shaped;
    if (hours < 0 || intoCold.isEmpty() || (hours == 0 && proof.room().isEmpty())) {
      return proof;
    }
    Supplier<Temperature> own =
        () ->
            Temperature.ofCelsius(dough.curves().get(0).celsiusAt(Math.min(shaped, dough.hours())));
    return proof.afterRoom(proof.room().orElseGet(own), hours);
  }

  /** In a sentence. */
  String headline(Moments moments, Speech speech) {
    OptionalDouble from = night.bakeFrom().window().likely();
    OptionalDouble until = night.bakeUntil().window().likely();
    String oven = moments.of(OptionalDouble.of(night.ovenHours()));
    String risen = LoafSections.likely(night.riseAtBake());
    String good =
        from.isEmpty()
            ? speech.say("now.hardlyReady")
            : until.isPresent()
                ? speech.say(
                    "now.goodUntil", Map.of("from", moments.of(from), "until", moments.of(until)))
                : speech.say("now.goodOn", Map.of("from", moments.of(from)));
    return speech.say("now.shaped", Map.of("time", moments.of(hours), "good", good))
        + "\n"
        + speech.say("now.inOven", Map.of("time", oven, "rise", risen));
  }
}
