package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.core.day.BakeDay;
import doughtide.core.day.bench.BenchBatches;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What loaves and dough are handled with at the bench.
 *
 * @param minutesALoaf dividing and shaping of one loaf, if it was said
 * @param mixer most dough in the mixer at once, if it was said
 */
public record BenchOptions(OptionalDouble minutesALoaf, Optional<Mass> mixer) {

  public static final String SHAPING_TIME = "time-a-loaf";
  public static final String MIXER_CAPACITY = "mixer-capacity";
  private static final double USUAL_REST_HOURS = 0.5; // with up to four loaves, as BakeDay has it
  private static final int LOAVES_MEANWHILE = 4;
  private static final double LONGEST_REST_HOURS = 6;

  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
                SHAPING_TIME,
                "TIME",
                "3min",
                "Dividing and shaping of one loaf, up to 30min: the last loaf is shaped so much"
                    + " later than the first.")
            .withDefault("2min"),
        OptionSpec.value(
                MIXER_CAPACITY,
                "MASS",
                "12kg",
                "Most dough in the mixer at once: more is mixed in batches, 15 min apart.")
            .withDefault("all of it"));
  }

  public static BenchOptions read(Arguments arguments) {
    OptionalDouble hours = arguments.hours(SHAPING_TIME);
    hours.ifPresent(value -> Checks.inRange("--" + SHAPING_TIME, 60 * value, 0, 30, "min"));
    Optional<Mass> mixer = arguments.mass(MIXER_CAPACITY);
    mixer.ifPresent(mass -> Checks.inRange("--" + MIXER_CAPACITY, mass.grams(), 100, 1e6, "g"));
    return new BenchOptions(
        hours.isPresent() ? OptionalDouble.of(60 * hours.getAsDouble()) : hours, mixer);
  }

  /** The minutes a loaf that were said, or the usual. */
  public double minutes() {
    return minutesALoaf.orElse(BenchBatches.USUAL_MINUTES_A_LOAF);
  }

  /** Whether anything was said. */
  public boolean isGiven() {
    return minutesALoaf.isPresent() || mixer.isPresent();
  }

  /** A day in which shaping and mixing take as long as was said. */
  public BakeDay in(BakeDay day) {
    BakeDay.Builder in = day.toBuilder();
    mixer.ifPresent(in::mixer);
    if (minutesALoaf.isPresent()) {
      double more = Math.max(0, day.loaves() - LOAVES_MEANWHILE) * minutes() / 60;
      in.restHours(Math.min(USUAL_REST_HOURS + more, LONGEST_REST_HOURS));
    }
    return in.build();
  }
}
