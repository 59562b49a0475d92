package doughtide.report.chart;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How far the parts of a rise chart go. Nothing goes beyond what was computed.
 *
 * @param data what the chart shows
 */
record RiseChartHours(RiseChartData data) {
  private static final double MARGIN = 1.03;
  private static final double PAST_MARGIN = 1.16;
  private static final double OPEN_SHARE = 0.35;
  private static final double WAKEFUL_HOURS = 3; // after the loaf went into the cold
  private static final double BEFORE_OVEN_HOURS = 1;
  private static final double SHORTEST_NIGHT_HOURS = 3;
  private static final double NIGHT_SHARE = 0.25;

  /** The last hour of the axis. */
  double end() {
    if (data.loaf().isPresent()) {
      return Math.max(data.loaf().get().ovenHours() * MARGIN, bulkEnd());
    }
    return Math.min(Math.max(shown(), 1), Math.max(data.lastHour(), 1));
  }

  /** As far as past its best where that was computed, else as far as there is something to see. */
  private double shown() {
    OptionalDouble past = likelyPastBest();
    if (past.isPresent()) {
      return past.getAsDouble() * PAST_MARGIN;
    }
    double last =
        data.passing().stream()
            .mapToDouble(
                point ->
                    point
                        .lateHours()
                        .orElse(point.likelyHours().orElse(point.earlyHours().orElse(0))))
            .max()
            .orElse(0);
    double readings =
        data.readings().stream().mapToDouble(RiseChartData.JarReading::hours).max().orElse(0);
    double all = Math.max(Math.max(last, readings), data.shape().map(this::late).orElse(0.0));
    return all > 0 ? all * 1.06 : data.lastHour();
  }

  private OptionalDouble likelyPastBest() {
    return data.pastBest().map(RiseChartData.PastBest::likelyHours).orElse(OptionalDouble.empty());
  }

  private double late(RiseChartData.ShapePoint shape) {
    return shape.lateHours().orElse(shape.likelyHours() * (1 + OPEN_SHARE));
  }

  /** The last hour of the dough's own lines: where a loaf is shown, it is late by then. */
  double bulkEnd() {
    if (data.loaf().isEmpty()) {
      return Math.min(end(), data.lastHour());
    }
    return Math.min(data.shape().map(this::late).orElse(data.lastHour()), data.lastHour());
  }

  /** The last hour of the ribbon: long enough to read its last stage. */
  double ribbonEnd() {
    if (data.loaf().isEmpty()) {
      return end();
    }
    double last =
        data.stages()
            .map(each -> each.pastBest().orElse(each.rightUntil().orElse(each.rightFrom())))
            .orElse(0.0);
    double room = 0.18 * end();
    return Math.min(Math.max(last + room, bulkEnd()), end());
  }

  /** The hours of the night in which nothing is to be done. */
  Optional<Squeeze> squeeze() {
    return data.cold()
        .map(
            cold -> {
              double from = Math.max(cold.fromHours() + WAKEFUL_HOURS, bulkEnd() + 0.25);
              return new double[] {from, cold.toHours() - BEFORE_OVEN_HOURS};
            })
        .filter(night -> night[1] - night[0] >= SHORTEST_NIGHT_HOURS)
        .map(night -> new Squeeze(night[0], night[1], NIGHT_SHARE));
  }
}
