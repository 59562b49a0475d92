package doughtide.core.loaf;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TemperatureWarnings;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Rise;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What the proof brings along to be said. */
final class ProofWarnings {
  private static final double WARM_COLD_CELSIUS = 10;
  private static final double OVER_POINTS = 5;

  private ProofWarnings() {}

  static List<Warning> of(RiseForecast bulk, Proof proof) {
    List<Warning> warnings = new ArrayList<>();
    proof
        .room()
        .filter(room -> room.celsius() >= TemperatureWarnings.WARMEST_GROWTH_CELSIUS)
        .ifPresent(room -> warnings.add(TemperatureWarnings.tooWarm(room.celsius())));
    proof.cold().ifPresent(cold -> addCold(warnings, bulk, cold.celsius()));
    return warnings;
  }

  static double warmestDough(RiseForecast bulk) {
    return bulk.temperature().highestCelsius(bulk.hours());
  }

  private static void addCold(List<Warning> warnings, RiseForecast bulk, double cold) {
    if (cold <= TemperatureWarnings.FREEZING_CELSIUS) {
      warnings.add(TemperatureWarnings.freezing(cold));
      return;
    }
    double dough = warmestDough(bulk);
    if (cold >= dough) {
      warnings.add(Warning.Kind.NOT_COOLING.with(cold, dough));
    } else if (cold > WARM_COLD_CELSIUS) {
      warnings.add(Warning.Kind.BARELY_COOLING.with(cold));
    }
  }

  static Warning noShapePoint(ShapeSearch.Missing why, Rise target, Proof proof) {
    double percent = Math.rint(target.percent());
    boolean cold = proof.cold().isPresent();
    return switch (why) {
      case PAST_BEST -> Warning.Kind.PAST_BEST_BEFORE_OVEN.with();
      case PAST_TARGET ->
          (cold ? Warning.Kind.PAST_TARGET_IN_COLD : Warning.Kind.PAST_TARGET_IN_ROOM)
              .with(percent);
      case NOTHING, OUT_OF_REACH -> Warning.Kind.NOT_REACHED.with(percent);
    };
  }

  static List<Warning> ofNight(ShapeForecast.Night night, Rise target, Proof proof) {
    List<Warning> warnings = new ArrayList<>();
    OptionalDouble until = night.bakeUntil().window().early();
    if (until.isPresent() && until.getAsDouble() < night.ovenHours()) {
      warnings.add(
          proof.cold().isPresent()
              ? Warning.Kind.SOME_TOO_FAR_IN_COLD.with()
              : Warning.Kind.SOME_TOO_FAR_IN_ROOM.with());
    }
    double reached = night.riseAtBake().likely().orElse(0);
    if (reached > target.percent() + OVER_POINTS) {
      warnings.add(Warning.Kind.OVER_TARGET.with(Math.rint(reached), Math.rint(target.percent())));
    }
    return warnings;
  }
}
