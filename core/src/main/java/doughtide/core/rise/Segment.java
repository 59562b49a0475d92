package doughtide.core.rise;

import doughtide.core.quantity.Checks;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** A stretch of time in which the temperature is smooth and its source the same. */
record Segment(double fromHours, double toHours, DoughTemperature.Stage stage) {
  private static final double SHORTEST_HOURS = 1e-9;
  private static final int LOOKS = 48;
  private static final double COLDEST_ROOM = -40;
  private static final double WARMEST_ROOM = 60;

  /** Cuts a run into segments at every change of stage and every breakpoint of a trace. */
  static List<Segment> of(DoughTemperature temperature, double hours) {
    List<DoughTemperature.Stage> stages = temperature.stages();
    List<Segment> segments = new ArrayList<>();
    for (int i = 0; i < stages.size(); i++) {
      DoughTemperature.Stage stage = stages.get(i);
      double end = i + 1 < stages.size() ? stages.get(i + 1).fromHours() : hours;
      addCut(segments, stage, Math.min(end, hours));
    }
    return segments;
  }

  private static void addCut(List<Segment> segments, DoughTemperature.Stage stage, double end) {
    double begin = Math.max(stage.fromHours(), 0);
    TreeSet<Double> cuts = new TreeSet<>(List.of(begin, end));
    for (double breakpoint : stage.trace().breakpoints()) {
      double at = breakpoint + stage.fromHours();
      if (at > begin && at < end) {
        cuts.add(at);
      }
    }
    double from = begin;
    for (double cut : cuts) {
      if (cut - from > SHORTEST_HOURS) {
        segments.add(new Segment(from, cut, stage));
        from = cut;
      }
    }
  }

  /** Temperature of dough (stated) or room at an hour of this segment; the end belongs to it. */
  double celsius(double hours) {
    double inside = Math.min(hours, toHours - SHORTEST_HOURS / 10);
    return stage.trace().celsius(inside - stage.fromHours());
  }

  /** Lowest stated or surrounding temperature at evenly spaced hours, both ends included. */
  double lowestCelsius() {
    double lowest = celsiusAtLook(0);
    for (int i = 1; i <= LOOKS; i++) {
      lowest = Math.min(lowest, celsiusAtLook(i));
    }
    return lowest;
  }

  /** Highest stated or surrounding temperature at evenly spaced hours, both ends included. */
  double highestCelsius() {
    double highest = celsiusAtLook(0);
    for (int i = 1; i <= LOOKS; i++) {
      highest = Math.max(highest, celsiusAtLook(i));
    }
    return highest;
  }

  private double celsiusAtLook(int look) {
    return celsius(atPart((double) look / LOOKS));
  }

  /** Whether the dough's temperature is stated and the same from start to end. */
  boolean keepsOneTemperature() {
    double first = celsius(fromHours);
    return !stage.inRoom() && first == celsius(atPart(0.37)) && first == celsius(atPart(0.83));
  }

  /**
   * Refuses temperatures at which the equations mean nothing.
   *
   * @throws doughtide.core.quantity.InputException if a dough's stated temperature is outside −2…45
   *     °C, or the one around it outside −40…60 °C
   */
  void checkCelsius() {
    for (int i = 0; i <= LOOKS; i++) {
      checkCelsius(celsiusAtLook(i));
    }
  }

  private void checkCelsius(double celsius) {
    if (stage.inRoom()) {
      Checks.inRange("temperature around the dough", celsius, COLDEST_ROOM, WARMEST_ROOM, "°C");
    } else {
      Checks.inRange(
          "dough temperature",
          celsius,
          DoughTemperature.LOWEST_CELSIUS,
          DoughTemperature.HIGHEST_CELSIUS,
          "°C");
    }
  }

  /** The hour at a part of this segment, 0 its start and 1 its end. */
  double atPart(double part) {
    return fromHours + part * (toHours - fromHours);
  }
}
