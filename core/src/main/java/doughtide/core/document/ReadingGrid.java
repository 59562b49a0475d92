package doughtide.core.document;

import doughtide.core.learning.Reading;
import doughtide.core.quantity.Rise;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Collects readings: a person's few as they are, a logger's many as their means over a quarter of
 * an hour, in which no dough changes much. Memory does not grow with the file.
 */
final class ReadingGrid {

  private static final int MOST_AS_THEY_ARE = 400;
  private static final double STEP_HOURS = 0.25;

  private static final class Mean {
    private double sum;
    private int count;

    void add(double value) {
      sum += value;
      count++;
    }

    OptionalDouble value() {
      return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / count);
    }
  }

  private record Cell(Mean hours, Mean rise, Mean celsius, Mean ph) {
    Cell() {
      this(new Mean(), new Mean(), new Mean(), new Mean());
    }

    void add(Reading reading) {
      hours.add(reading.hours());
      reading.rise().ifPresent(value -> rise.add(value.fraction()));
      reading.celsius().ifPresent(celsius::add);
      reading.ph().ifPresent(ph::add);
    }

    Reading reading() {
      Optional<Rise> mean =
          rise.value().isPresent()
              ? Optional.of(new Rise(rise.value().getAsDouble()))
              : Optional.empty();
      return new Reading(hours.value().orElseThrow(), mean, celsius.value(), ph.value());
    }
  }

  private final List<Reading> few = new ArrayList<>();
  private final Map<Integer, Cell> many = new TreeMap<>();
  private long count;

  public void add(Reading reading) {
    count++;
    if (count <= MOST_AS_THEY_ARE) {
      few.add(reading);
      return;
    }
    few.forEach(this::addToGrid);
    few.clear();
    addToGrid(reading);
  }

  private void addToGrid(Reading reading) {
    int index = (int) (reading.hours() / STEP_HOURS);
    many.computeIfAbsent(index, key -> new Cell()).add(reading);
  }

  /** How many were given. */
  public long count() {
    return count;
  }

  /** The readings in order of time. */
  public List<Reading> readings() {
    return many.isEmpty() ? List.copyOf(few) : many.values().stream().map(Cell::reading).toList();
  }
}
