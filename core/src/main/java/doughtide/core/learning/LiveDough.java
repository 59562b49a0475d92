package doughtide.core.learning;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.loaf.ShapeTable;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseModel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * The dough in hand, one reading at a time: the members of a forecast, weighted by how well each
 * explains the heights read so far. A reading costs arithmetic, not new runs; where few members are
 * left to carry the weight, a larger ensemble is run once, and the dough says so: that one takes as
 * long as the start. Readings of the pH and of the temperature are kept but do not weigh.
 * Immutable: a reading gives a new object.
 *
 * <pre>{@code
 * LiveDough dough =
 *     LiveDough.of(RiseForecaster.standard(), JarError.standard(), formula, temperature)
 *         .shapedFor(Proof.inCold(Temperature.ofCelsius(4), 12));
 * LiveDough later = dough.with(Reading.ofRise(3.5, Rise.ofPercent(32)));
 * TimeWindow shape = later.shape().hours();
 * TimeWindow half = later.forecast().hoursToRise(Rise.ofPercent(50));
 * }</pre>
 */
public final class LiveDough {
  /** Members that must carry the weight, by Kish's effective number (starting value). */
  public static final int FEWEST_MEMBERS = 40;

  private static final int LOAVES_A_MEMBER = 8; // what is not known of a loaf widens more
  private static final int LOAVES = 4096; // where nobody asked for fewer than 512 members
  private static final int FEWEST_LOAVES = 600; // of those (starting value)
  private static final int MOST_MEMBERS = 4096;
  private static final int MOST_OF_LOAVES = 16_384;
  private static final int MORE = 4; // loaves run for a refit, of which one is kept
  private static final int JUDGES = 512; // members that say whether a reading fits

  /** A reading is doubted if the chance of one as far off or farther is less (starting value). */
  public static final double LEAST_CHANCE = 0.02;

  private static final double LEAST_WAIT_HOURS = 0.25;
  private static final double HALF_A_DAY = 12;
  private static final int LOOKS = 24;

  private final RiseForecaster forecaster;
  private final JarError jar;
  private final RiseForecast before;
  private final Members fitted;
  private final RiseForecast now;
  private final List<Reading> readings;
  private final Optional<ReadingDoubt> doubt;
  private final Optional<Loaves> loaves;

  private LiveDough(
      RiseForecaster forecaster,
      JarError jar,
      RiseForecast before,
      Members fitted,
      List<Reading> readings,
      Optional<ReadingDoubt> doubt,
      Optional<Loaves> loaves) {
    this.forecaster = forecaster;
    this.jar = jar;
    this.before = before;
    this.fitted = fitted;
    this.readings = List.copyOf(readings);
    this.doubt = doubt;
    this.now = before.isPossible() ? fitted.weighted(fitted.logLikelihoods(readings)) : before;
    this.loaves = loaves.map(each -> new Loaves(each.first(), each.now().covering(now)));
  }

  private static LiveDough unread(
      RiseForecaster forecaster, JarError jar, RiseForecast before, List<Reading> readings) {
    return new LiveDough(
        forecaster,
        jar,
        before,
        Members.of(before, jar),
        readings,
        Optional.empty(),
        Optional.empty());
  }

  /**
   * When the members are shaped.
   *
   * @param first of the members before any reading
   * @param now of those that are weighted by the readings
   */
  private record Loaves(ShapeTable first, ShapeTable now) {}

  /**
   * {@return a dough without readings}
   *
   * @param forecaster model and belief; its members are run once
   * @param jar how the sample jar misreads
   * @param formula the dough
   * @param temperature its own temperature from mixing on
   */
  public static LiveDough of(
      RiseForecaster forecaster, JarError jar, DoughFormula formula, DoughTemperature temperature) {
    return unread(forecaster, jar, forecaster.forecast(formula, temperature), List.of());
  }

  /**
   * {@return a bake with all its readings so far, one after the other}
   *
   * @param forecaster model and belief; its members are run once, as far as the readings and half a
   *     day go, or farther
   * @param jar how the sample jar misreads
   * @param bake the dough, its temperature and its readings
   * @param doubts takes each reading that can hardly be of this dough, with the likely reason
   */
  public static LiveDough of(
      RiseForecaster forecaster,
      JarError jar,
      Bake bake,
      BiConsumer<Reading, ReadingDoubt> doubts) {
    return of(forecaster, jar, bake.formula(), bake.temperature())
        .lasting(Math.min(bake.lastHours() + HALF_A_DAY, RiseModel.LONGEST_HOURS))
        .withAll(bake.readings(), doubts);
  }

  /** The same, run at least so far. */
  private LiveDough lasting(double hours) {
    return before.hours() < hours
        ? unread(forecaster, jar, run(before.ensemble().size(), hours), readings)
        : this;
  }

  private LiveDough withAll(List<Reading> more, BiConsumer<Reading, ReadingDoubt> doubts) {
    LiveDough dough = this;
    for (Reading reading : more) {
      dough = dough.with(reading);
      dough.doubt().ifPresent(found -> doubts.accept(reading, found));
    }
    return dough;
  }

  /**
   * {@return the dough with one more reading}
   *
   * @param reading later than those before, within the hours of the forecast
   * @throws InputException if it is not later than the last one, or beyond the forecast
   */
  public LiveDough with(Reading reading) {
    if (!readings.isEmpty() && !(reading.hours() > last().hours())) {
      throw new InputException(
          "live.reading-order", "each reading must be later than the one before it");
    }
    if (reading.hours() > before.hours()) {
      throw new InputException(
          "live.reading-late",
          "the reading lies beyond the hours that were forecast: start the dough anew");
    }
    List<Reading> all = new ArrayList<>(readings);
    all.add(reading);
    Optional<ReadingDoubt> found = before.isPossible() ? doubt(reading) : Optional.empty();
    return new LiveDough(forecaster, jar, before, fitted, all, found, loaves).refittedIfThin();
  }

  private LiveDough refittedIfThin() {
    int size = before.ensemble().size();
    int fewest =
        loaves.isEmpty() ? FEWEST_MEMBERS : FEWEST_LOAVES * Math.min(size, LOAVES) / LOAVES;
    int most = loaves.isEmpty() ? MOST_MEMBERS : Math.min(MORE * size, MOST_OF_LOAVES);
    boolean isThin = before.isPossible() && Members.worth(now) < fewest;
    return isThin && size < most ? refitted(most) : this;
  }

  private LiveDough refitted(int most) {
    int kept = loaves.isEmpty() ? most : most / MORE;
    Members drawn = Members.of(run(most, before.hours()), jar).drawn(kept, readings);
    LiveDough next =
        new LiveDough(forecaster, jar, before, drawn, readings, doubt, Optional.empty());
    return loaves.map(each -> next.with(each.first())).orElse(next);
  }

  private RiseForecast run(int members, double hours) {
    return forecaster.withMembers(members).forecast(before.formula(), before.temperature(), hours);
  }

  /**
   * The same dough, of which a loaf is to be made: from then on it answers when to shape. When each
   * of its members is shaped is worked out here, once, in about a second on one core; after a
   * reading that is looked up. What is not known of a loaf widens more, so eight times as many
   * doughs are followed as the forecaster has members, at most 4096 if that is more than it has.
   *
   * @param proof what happens after bulk fermentation
   * @return this dough, to be asked {@link #shape()}
   */
  public LiveDough shapedFor(Proof proof) {
    int size = before.ensemble().size();
    int wanted = Math.min(LOAVES_A_MEMBER * size, LOAVES);
    LiveDough enough = unread(forecaster, jar, before, readings);
    return size < wanted
        ? followed(ShapeTable.ofAll(before, forecaster.withMembers(wanted), proof))
        : enough.with(ShapeTable.of(enough.now, proof)).refittedIfThin();
  }

  private LiveDough followed(ShapeTable table) {
    return unread(forecaster, jar, table.bulk(), readings).with(table).refittedIfThin();
  }

  /** Shaped for the same proof; the table serves as long as its members do. */
  private LiveDough with(ShapeTable first) {
    Loaves tables =
        fitted.isDrawn()
            ? new Loaves(first.ofHours(), ShapeTable.of(now, first.proof()))
            : new Loaves(first, first);
    return new LiveDough(forecaster, jar, before, fitted, readings, doubt, Optional.of(tables));
  }

  /**
   * {@return when to shape, by the readings so far, and what the jar shows then}
   *
   * @throws InputException if it was not {@linkplain #shapedFor told} what is to be made of it
   */
  public ShapeForecaster.Point shape() {
    return loaves().now().point(now);
  }

  /**
   * {@return when it would be shaped if nothing had been read, and what the jar would show then}
   *
   * @throws InputException if it was not {@linkplain #shapedFor told} what is to be made of it
   */
  public ShapeForecaster.Point expectedShape() {
    return loaves().first().covering(before).point(before);
  }

  /**
   * {@return when to shape, by the readings so far, and what becomes of the loaf until the oven:
   * some loaves are followed anew, which takes longer than {@link #shape} with the same hours}
   *
   * @throws InputException if it was not {@linkplain #shapedFor told} what is to be made of it
   */
  public ShapeForecast shapeForecast() {
    return loaves().now().forecast(now);
  }

  /**
   * {@return when the first members are shaped, hours from mixing; infinite for never}
   *
   * @param members how many, at most as many as {@link #expected} has
   * @throws InputException if it was not {@linkplain #shapedFor told} what is to be made of it
   * @hidden
   */
  @Internal
  public double[] shapeHoursOfFirst(int members) {
    return loaves().first().hoursOf(IntStream.range(0, members).toArray());
  }

  /**
   * {@return what the loaf will have risen at the oven if bulk fermentation ends at an hour,
   * percent; the loaves are worked out when this is first asked, in about a second on one core}
   *
   * @param bulkEndHours from mixing, 0 to the end of the forecast
   * @throws InputException if it was not {@linkplain #shapedFor told} what is to be made of it
   */
  public Distribution ovenPercentIfShapedAt(double bulkEndHours) {
    return loaves().now().ovenPercent(now, bulkEndHours);
  }

  private Loaves loaves() {
    return loaves.orElseThrow(
        () ->
            new InputException(
                "live.no-proof",
                "this dough does not know what is to be made of it: give it a proof first"));
  }

  private Reading last() {
    return readings.get(readings.size() - 1);
  }

  /** {@return what is believed now: any question, answered by the weighted members} */
  public RiseForecast forecast() {
    return now;
  }

  /** {@return what was expected before any reading} */
  public RiseForecast expected() {
    return before;
  }

  /**
   * {@return whether a larger ensemble had to be run because few members explained the readings}
   */
  public boolean isRefitted() {
    return fitted.isDrawn();
  }

  /**
   * {@return how many equal members the weighted ones are worth (Kish's effective number)} Below
   * about 40 the windows are rough.
   */
  public double membersThatCarry() {
    return fitted.worthOf(now);
  }

  /** {@return why the last reading can hardly be of this dough; empty if it fits} */
  public Optional<ReadingDoubt> doubt() {
    return doubt;
  }

  /** Judged by what was believed before this reading came. */
  private Optional<ReadingDoubt> doubt(Reading reading) {
    if (reading.rise().isEmpty()) {
      return Optional.empty();
    }
    double height = reading.rise().get().heightTimes();
    double fit = chance(reading.hours(), height, 1);
    if (fit >= LEAST_CHANCE) {
      return Optional.empty();
    }
    double clock = 0;
    for (double slip : new double[] {-12, -1, 1, 12}) {
      double at = reading.hours() + slip;
      if (at >= 0 && at <= before.hours()) {
        clock = Math.max(clock, chance(at, height, 1));
      }
    }
    boolean fell = readings.stream().anyMatch(r -> isAbove(r, height));
    double mark = 0;
    for (double factor : new double[] {0.7, 0.8, 0.9, 1.1, 1.25, 1.4}) {
      mark = Math.max(mark, chance(reading.hours(), height, factor));
    }
    boolean byClock = !fell && clock > Math.max(mark, LEAST_CHANCE);
    boolean byMark = mark >= LEAST_CHANCE;
    return Optional.of(
        byClock
            ? ReadingDoubt.CLOCK_WRONG
            : byMark ? ReadingDoubt.MARK_MOVED : ReadingDoubt.OTHER_DOUGH);
  }

  private static boolean isAbove(Reading earlier, double height) {
    return earlier.rise().isPresent() && earlier.rise().get().heightTimes() > height * 1.02;
  }

  /** The weighted chance of a height as far off as this one or farther, both sides. */
  private double chance(double hours, double height, double factor) {
    ReadingNoise noise = ReadingNoise.standard();
    double deviation = noise.riseDeviation(new Rise(height - 1));
    double[] rises = now.risesOfMembers(hours);
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double share =
        weightedMean(
            Math.min(rises.length, JUDGES),
            i -> true,
            i ->
                normal.cumulativeProbability(
                    (height - (1 + rises[i]) * fitted.factor(i) * factor) / deviation));
    return 2 * Math.min(share, 1 - share);
  }

  /** The mean over some of the members, each with its weight. */
  private double weightedMean(int members, IntPredicate counts, IntToDoubleFunction value) {
    double[] weights = now.ensemble().weights();
    double sum = 0;
    double total = 0;
    for (int i = 0; i < members; i++) {
      if (weights[i] > 0 && counts.test(i)) {
        sum += weights[i] * value.applyAsDouble(i);
        total += weights[i];
      }
    }
    return sum / total;
  }

  /**
   * {@return a distribution over the members of something known of each, for example its shape
   * hour}
   *
   * @param hoursOfMembers one value a member, in the order of the ensemble of {@link #forecast()}
   */
  public Distribution over(double[] hoursOfMembers) {
    return Distribution.of(hoursOfMembers, now.ensemble().weights());
  }

  /**
   * {@return the hour at which one more reading of the height would narrow a time most, before the
   * dough may be there; empty if it may be there within a quarter of an hour} By linear regression
   * over the weighted members.
   *
   * @param target the rise whose time is wanted
   */
  public OptionalDouble nextLookHours(Rise target) {
    OptionalDouble early = now.hoursToRise(target).early();
    double first = (readings.isEmpty() ? 0 : last().hours()) + LEAST_WAIT_HOURS;
    if (early.isEmpty() || !(early.getAsDouble() > first)) {
      return OptionalDouble.empty();
    }
    double[] times = now.hoursOfMembers(target);
    double best = first;
    double most = -1;
    for (int i = 0; i <= LOOKS; i++) {
      double at = first + (early.getAsDouble() - first) * i / LOOKS;
      double gain = gain(times, at);
      if (gain > most) {
        most = gain;
        best = at;
      }
    }
    return OptionalDouble.of(best);
  }

  /** What a reading takes off the variance of a time. */
  private double gain(double[] times, double at) {
    double[] rises = now.risesOfMembers(at);
    IntPredicate there = i -> Double.isFinite(times[i]);
    IntToDoubleFunction height = i -> (1 + rises[i]) * fitted.factor(i);
    int size = times.length;
    double meanTime = weightedMean(size, there, i -> times[i]);
    double meanHeight = weightedMean(size, there, height);
    IntToDoubleFunction off = i -> height.applyAsDouble(i) - meanHeight;
    double across = weightedMean(size, there, i -> (times[i] - meanTime) * off.applyAsDouble(i));
    double variance = weightedMean(size, there, i -> off.applyAsDouble(i) * off.applyAsDouble(i));
    double noise = ReadingNoise.standard().riseDeviation(new Rise(meanHeight - 1));
    return across * across / (variance + noise * noise);
  }

  /** In a line, for logs: the dough, its readings and the members that carry the weight. */
  @Override
  public String toString() {
    return now
        + "; "
        + readings.size()
        + (readings.size() == 1 ? " reading, " : " readings, ")
        + Math.round(membersThatCarry())
        + " members";
  }
}
