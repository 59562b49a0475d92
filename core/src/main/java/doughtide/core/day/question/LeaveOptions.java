package doughtide.core.day.question;

import doughtide.core.day.HandsOnTime;
import doughtide.core.day.question.LeaveOption.Kind;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.LoafLimits;
import doughtide.core.loaf.LoafModel;
import doughtide.core.loaf.LoafScores;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.RoomCooling;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.core.thermal.Vessel;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Follows every member of a running bulk through each way out. */
final class LeaveOptions {
  private static final double FOLLOW_HOURS = 24;
  private static final double APART_HOURS = 0.25;
  private static final LoafSettings SETTINGS = new LoafSettings(8, 0.25, 512, 128);

  private final RiseForecast bulk;
  private final double nowHours;
  private final double leaveHours;
  private final double backHours;
  private final Proof proof;
  private final Mass inTub;
  private final Rise target;

  LeaveOptions(
      RiseForecast bulk,
      double nowHours,
      double leaveHours,
      double backHours,
      Proof proof,
      Mass inTub) {
    this.bulk = bulk;
    this.nowHours = Checks.inRange("hours since mixing", nowHours, 0, bulk.hours(), "h");
    this.leaveHours = Checks.inRange("hour of leaving", leaveHours, nowHours, 240, "h");
    this.backHours = Checks.inRange("hour of coming back", backHours, leaveHours, 240, "h");
    this.proof = proof;
    this.inTub = inTub;
    this.target = proof.target().orElse(bulk.formula().targetRise());
  }

  List<LeaveOption> all() {
    if (!bulk.isPossible()) {
      return List.of();
    }
    return Stream.concat(inTheRoom().stream(), inTheCold().stream())
        .sorted(
            Comparator.comparingDouble((LeaveOption each) -> -Math.floor(each.goodShare() * 10))
                .thenComparingDouble(this::offTarget))
        .toList();
  }

  /** How far the likely rise at the oven lies from the target; shares of a tenth are noise. */
  private double offTarget(LeaveOption option) {
    return Math.abs(option.riseAtBake().likely().orElse(1000) - target.percent());
  }

  private List<LeaveOption> inTheRoom() {
    Bulk tub = new Bulk(bulk, OptionalDouble.empty());
    double last = leaveHours - proof.restHours();
    List<Optional<LeaveOption>> options = new ArrayList<>();
    options.add(tub.shaped(Kind.SHAPE_NOW, nowHours));
    options.add(tub.shapedAtPoint(Kind.SHAPE_AT_POINT, nowHours, last));
    if (last > nowHours) {
      options.add(tub.shaped(Kind.SHAPE_BEFORE_LEAVING, last));
    }
    options.add(tub.shaped(Kind.SHAPE_WHEN_BACK, backHours));
    options.add(tub.shapedAtPoint(Kind.SHAPE_AFTER_BACK, backHours, bulk.hours()));
    return options.stream().flatMap(Optional::stream).toList();
  }

  /** Into the cold just before leaving, or now; whatever brings more doughs right. */
  private List<LeaveOption> inTheCold() {
    if (proof.cold().isEmpty()) {
      return List.of();
    }
    double late = Math.max(nowHours, leaveHours - HandsOnTime.CARRY_HOURS);
    List<Bulk> tubs =
        Stream.of(late, nowHours)
            .distinct()
            .map(hour -> chilled(hour, proof.cold().get()))
            .toList();
    Optional<LeaveOption> back =
        best(tubs.stream().map(tub -> tub.shaped(Kind.TUB_IN_COLD, backHours)));
    Optional<LeaveOption> longer =
        best(
            tubs.stream()
                .map(tub -> tub.shapedAtPoint(Kind.TUB_IN_COLD_LONGER, backHours, bulk.hours())));
    return Stream.of(back, longer).flatMap(Optional::stream).toList();
  }

  private static Optional<LeaveOption> best(Stream<Optional<LeaveOption>> options) {
    // The first of equals: as late as possible.
    return options
        .flatMap(Optional::stream)
        .reduce((a, b) -> b.goodShare() > a.goodShare() ? b : a);
  }

  private Bulk chilled(double fromHours, Temperature cold) {
    RoomCooling cooling =
        RoomCooling.of(bulk.formula(), inTub, Vessel.tub(Material.POLYPROPYLENE), Air.STILL_COLD);
    RiseForecast chilled =
        bulk.at(
            bulk.temperature()
                .then(
                    fromHours,
                    TemperatureTrace.steady(cold),
                    cooling.tauHours(),
                    cooling.heatCapacityPerKgFlourJPerK()));
    return new Bulk(chilled, OptionalDouble.of(fromHours));
  }

  /** A dough in its tub, in the room or from some hour on in the cold. */
  private final class Bulk {
    private final RiseForecast forecast;
    private final OptionalDouble coldFrom;
    private ShapeForecaster.@Nullable Point point; // looked for when first asked

    Bulk(RiseForecast forecast, OptionalDouble coldFrom) {
      this.forecast = forecast;
      this.coldFrom = coldFrom;
    }

    /**
     * When the jar shows the shape point, where that lies clearly between two hours; a dough that
     * is not there by the second is shaped then.
     */
    Optional<LeaveOption> shapedAtPoint(Kind kind, double from, double to) {
      double rest = proof.restHours();
      double high = Math.min(to, ovenHour(to + rest) - rest) - APART_HOURS;
      OptionalDouble likely = point().hours().likely();
      if (likely.isEmpty()
          || likely.getAsDouble() <= from + APART_HOURS
          || likely.getAsDouble() > high) {
        return Optional.empty();
      }
      Rise shown = Rise.ofPercent(point().rise().likely().orElseThrow());
      double last = Math.min(high + APART_HOURS, bulk.hours() - rest);
      return shaped(
          kind,
          likely.getAsDouble(),
          curve -> Math.min(Math.max(curve.hoursToRise(shown).orElse(last), from), last));
    }

    private ShapeForecaster.Point point() {
      if (point == null) {
        point = ShapeForecaster.of(forecast, proof).with(SETTINGS).point();
      }
      return point;
    }

    /** By the clock. */
    Optional<LeaveOption> shaped(Kind kind, double bulkEnd) {
      return shaped(kind, bulkEnd, curve -> bulkEnd);
    }

    private Optional<LeaveOption> shaped(
        Kind kind, double likelyEnd, ToDoubleFunction<RiseCurve> bulkEnd) {
      double rest = proof.restHours();
      double likely = likelyEnd + rest;
      boolean noHours = forecast.curves().isEmpty(); // too cold for the model
      if (noHours || likely > bulk.hours() || ovenHour(likely) <= likely) {
        return Optional.empty();
      }
      LoafModel loaf = LoafModel.of(forecast.formula(), proof, SETTINGS);
      LoafLimits usable = LoafLimits.usable(target);
      List<Loaf> loaves = new ArrayList<>();
      for (int i = 0; i < Math.min(SETTINGS.followed(), forecast.curves().size()); i++) {
        RiseCurve curve = forecast.curves().get(i);
        double end = bulkEnd.applyAsDouble(curve);
        double oven = ovenHour(end + rest);
        double follow = oven - end - rest + FOLLOW_HOURS;
        PieceCurve piece = loaf.run(curve, end + rest, LoafScores.of(i), follow);
        loaves.add(new Loaf(curve.riseAt(end).percent(), piece, oven));
      }
      return Optional.of(
          new LeaveOption(
              kind,
              coldFrom,
              likely,
              range(loaves, Loaf::percentWhenShaped),
              ovenHour(likely),
              range(loaves, each -> each.piece().riseAt(each.oven()).percent()),
              when(loaves, each -> usable.from(each.piece()).orElse(Double.POSITIVE_INFINITY)),
              when(loaves, each -> usable.until(each.piece()).orElse(Double.POSITIVE_INFINITY)),
              share(loaves)));
    }
  }

  private double ovenHour(double shaped) {
    return proof.ovenHour().orElse(shaped + proof.roomHours() + proof.holdHours());
  }

  private double share(List<Loaf> loaves) {
    LoafLimits right = LoafLimits.right(target);
    long good = loaves.stream().filter(each -> right.isGood(each.piece(), each.oven())).count();
    return (double) good / loaves.size();
  }

  /** A loaf. */
  private record Loaf(double percentWhenShaped, PieceCurve piece, double oven) {}

  private static TimeWindow when(List<Loaf> loaves, ToDoubleFunction<Loaf> event) {
    return TimeWindow.of(loaves.stream().mapToDouble(event).toArray());
  }

  private static ShapeForecast.RiseRange range(List<Loaf> loaves, ToDoubleFunction<Loaf> percent) {
    return ShapeForecast.RiseRange.of(
        Distribution.of(loaves.stream().mapToDouble(percent).toArray()));
  }
}
