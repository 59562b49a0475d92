package doughtide.core.day;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Ingredients;
import doughtide.core.dough.StarterCondition;
import doughtide.core.dough.StarterShare;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Cold;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.Shaping;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.quantity.Value;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.core.thermal.Vessel;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What is given when a day is planned backward from the bread: when it must be ready, when the
 * baker is at the bench, room, cold, oven, dough and loaves. Immutable; hours count along an axis
 * whose zero is a midnight of the caller's choice (only nights, which the ranking of plans avoids,
 * are counted by it).
 *
 * <pre>{@code
 * BakeDay day = BakeDay.builder()
 *     .readyAt(36)
 *     .bench(new BenchHours(List.of(new BenchInterval(-7, -1.5), new BenchInterval(6.5, 8.5),
 *         new BenchInterval(17, 22.5), new BenchInterval(30.5, 32.5))))
 *     .room(TemperatureTrace.steady(Temperature.ofCelsius(21)))
 *     .cold(Temperature.ofCelsius(4))
 *     .build();
 * }</pre>
 */
public final class BakeDay extends Value {
  private static final long serialVersionUID = 1;

  /** What keeps the dough during bulk fermentation. */
  public enum BulkPlace {
    /** It stands in the room and drifts towards its temperature. */
    ROOM,
    /** A proofer or the like holds it at its temperature after mixing. */
    HELD
  }

  private static final int MOST_LOAVES = 500;

  /** A quarter of an hour each; folds are at most three hours apart. */
  private static final int MOST_MIXES = 12;

  /** With less water, flour and water alone are crumbs, no dough (common practice, no source). */
  private static final double LEAST_AUTOLYSE_WATER = 0.45;

  private final Builder given;

  private BakeDay(Builder given) {
    this.given = given;
  }

  /**
   * {@return a builder with a room at 21 °C, no cold, the usual oven, the usual dough and one loaf
   * of 850 g; hours ready and at the bench must be given}
   */
  public static Builder builder() {
    return new Builder();
  }

  /** {@return a builder that starts from this day} */
  public Builder toBuilder() {
    return new Builder(given);
  }

  /** {@return when the bread must be cool enough to slice, hours on the axis} */
  public double readyHour() {
    return given.readyHour;
  }

  /** {@return when the baker is at the bench} */
  public BenchHours bench() {
    return Objects.requireNonNull(given.bench);
  }

  /** {@return the room over the axis} */
  public TemperatureTrace room() {
    return given.room;
  }

  /** {@return the cold and how well it is known, if there is one} */
  public Optional<Cold> cold() {
    return Optional.ofNullable(given.cold);
  }

  /** {@return the oven} */
  public Oven oven() {
    return given.oven;
  }

  /**
   * {@return the dough; its starter share is not used, and its starter is in the condition in which
   * it is fed: it goes into the dough ripe}
   */
  public DoughFormula dough() {
    return given.dough;
  }

  /** The dough with a share of starter, in per cent of the flour added. */
  DoughFormula dough(double starterPercent) {
    return given.dough.toBuilder()
        .starter(
            given
                .dough
                .starter()
                .in(
                    given.starterInColdHours > 0
                        ? StarterCondition.FROM_COLD
                        : StarterCondition.RIPE))
        .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(starterPercent)))
        .build();
  }

  /**
   * {@return for how many hours a ripe starter waits in the cold already; empty where one is fed
   * for the dough}
   */
  public OptionalDouble starterInColdHours() {
    return given.starterInColdHours > 0
        ? OptionalDouble.of(given.starterInColdHours)
        : OptionalDouble.empty();
  }

  /**
   * A feeding that has been done for this dough.
   *
   * @param hour when, h on the axis of the day
   * @param ratio how
   * @hidden
   */
  @Internal
  public record Fed(double hour, FeedRatio ratio) implements Serializable {
    /**
     * Checks that the ratio is given.
     *
     * @param hour when, h on the axis of the day
     * @param ratio how
     */
    public Fed {
      Checks.given("ratio", ratio);
    }
  }

  /**
   * {@return the feeding that has been done for this dough already, if one has}
   *
   * @hidden
   */
  @Internal
  public Optional<Fed> fed() {
    return Optional.ofNullable(given.fed);
  }

  /**
   * {@return the stages in which its starter is built, if it is}
   *
   * @hidden
   */
  @Internal
  public Optional<BuildTimes> stages() {
    return Optional.ofNullable(given.stages);
  }

  /** Whether a starter has still to be fed for the dough, by one feeding or in all its stages. */
  boolean needsFeeding() {
    return given.fed == null && given.starterInColdHours == 0;
  }

  /** How many of the stages of its starter are done. */
  int stagesDone() {
    return given.stagesDone;
  }

  /** {@return number of loaves, 1 or more} */
  public int loaves() {
    return given.loaves;
  }

  /** {@return dough of one loaf} */
  public Mass piece() {
    return given.piece;
  }

  /** {@return all dough} */
  public Mass allDough() {
    return Mass.ofGrams(given.piece.grams() * given.loaves);
  }

  /** {@return form of a loaf} */
  public PieceForm form() {
    return given.form;
  }

  /** {@return how firmly the loaves are handled; empty for as usual} */
  public Optional<Shaping> shaping() {
    return Optional.ofNullable(given.shaping);
  }

  /** {@return rise wanted at the oven} */
  public Rise target() {
    return Optional.ofNullable(given.target).orElse(given.dough.targetRise());
  }

  /** {@return belief and parameters} */
  public RiseForecaster forecaster() {
    return given.forecaster;
  }

  /** {@return autolyse and folds} */
  public StrengthPlan strength() {
    return Optional.ofNullable(given.strength).orElseGet(() -> StrengthPlan.of(given.dough));
  }

  /** The same with the starter of a route: no autolyse where flour and water make no dough. */
  StrengthPlan strength(BakeRoute route) {
    Ingredients weigh = dough(route.starterPercent()).forDough(allDough());
    boolean isDough = weigh.waterGrams() >= LEAST_AUTOLYSE_WATER * weigh.flourGrams();
    return isDough ? strength() : strength().withoutAutolyse();
  }

  /** {@return what keeps the dough} */
  public BulkPlace bulkPlace() {
    return given.bulkPlace;
  }

  /** {@return what the dough stands in during bulk fermentation; a plastic tub unless given} */
  public Vessel vessel() {
    return given.vessel;
  }

  /** {@return dough temperatures that may be planned, °C} */
  public List<Double> doughCelsius() {
    return given.doughCelsius;
  }

  /** {@return starter shares that may be planned, per cent of the flour added} */
  public List<Double> starterPercents() {
    return given.starterPercents;
  }

  /** {@return how many plans are wanted} */
  public int plans() {
    return given.plans;
  }

  @Override
  protected List<?> parts() {
    return given.parts();
  }

  @Override
  public String toString() {
    return loaves()
        + " × "
        + Checks.plain(piece().grams())
        + " g ready at hour "
        + Checks.plain(readyHour())
        + ", at the bench "
        + bench().intervals();
  }

  /** {@return the time for dividing, bench rest and shaping together, hours} */
  public double restHours() {
    return given.restHours > 0 ? given.restHours : usualRest(given.loaves);
  }

  /**
   * {@return a proof of the loaves of this day}
   *
   * @param place where they wait and how long
   */
  public Proof ofItsLoaves(Proof place) {
    Proof loaves = place.withRest(restHours()).withPiece(piece(), form()).withTarget(target());
    return shaping().map(loaves::shaped).orElse(loaves);
  }

  /**
   * {@return a dough of this day in its tub, with its curves}
   *
   * @param route what was decided about it, or has happened
   * @param members how many doughs stand for it
   * @param hours from mixing, how long it is followed
   */
  public RiseForecast bulk(BakeRoute route, int members, double hours) {
    return forecaster()
        .withMembers(members)
        .keepingCurves()
        .forecast(dough(route.starterPercent()), new DayModel(this).temperature(route), hours);
  }

  /**
   * The steps from shaping on, ascending.
   *
   * @param proof where the loaves wait
   * @param basketHour when they are in their baskets, on the axis of the day
   * @param ovenHour when the first goes into the oven, on the same axis
   * @return empty where two things would have to be done at once
   */
  public Optional<List<BakeStep>> stepsAfterBulk(
      ProofKind proof, double basketHour, double ovenHour) {
    List<BakeStep> steps = Draft.afterBulk(this, proof, basketHour, ovenHour);
    return Draft.overlap(steps) ? Optional.empty() : Optional.of(steps);
  }

  /** Half an hour for up to four loaves, two minutes more for each more (starting value). */
  private static double usualRest(int loaves) {
    return Math.min(0.5 + Math.max(0, loaves - 4) / 30.0, 4);
  }

  /** From the first batch in to the last batch out, hours. */
  @Internal
  public double bakingHours() {
    return Draft.ovenBusyHours(this);
  }

  /** {@return how long mixing takes, hours: a quarter of an hour for each batch in the mixer} */
  public double mixHours() {
    return mixBatches() * HandsOnTime.MIX_HOURS;
  }

  /**
   * {@return in how many batches a dough is mixed}
   *
   * @param dough all of it
   * @param mixer most of it in the mixer at once; empty for all
   * @throws InputException if they are more than twelve
   * @hidden
   */
  @Internal
  public static int mixBatches(Mass dough, Optional<Mass> mixer) {
    double most = mixer.map(Mass::grams).orElse(dough.grams());
    int batches = (int) Math.max(1, Math.ceil(dough.grams() / most - 1e-9));
    if (batches > MOST_MIXES) {
      throw new InputException(
          "mixer.batches",
          Checks.plain(Math.rint(dough.grams()))
              + " g of dough are "
              + batches
              + " batches in the mixer, and a plan holds at most "
              + MOST_MIXES
              + ": give a larger mixer, or fewer loaves");
    }
    return batches;
  }

  /** In how many batches the dough is mixed. */
  private int mixBatches() {
    return mixBatches(allDough(), Optional.ofNullable(given.mixer));
  }

  /** Collects what is given; every method returns the builder. */
  public static final class Builder implements Serializable {
    private static final long serialVersionUID = 1;

    private double readyHour = Double.NaN;
    private @Nullable BenchHours bench;
    private TemperatureTrace room = TemperatureTrace.steady(Temperature.ofCelsius(21));
    private @Nullable Cold cold;
    private Oven oven = Oven.usual();
    private DoughFormula dough = DoughFormula.builder().build();
    private int loaves = 1;
    private Mass piece = Mass.ofGrams(850);
    private PieceForm form = PieceForm.ROUND;
    private @Nullable Shaping shaping;
    private @Nullable Rise target;
    private RiseForecaster forecaster = RiseForecaster.standard();
    private @Nullable StrengthPlan strength;
    private BulkPlace bulkPlace = BulkPlace.ROOM;
    private Vessel vessel = Vessel.tub(Material.POLYPROPYLENE);
    private List<Double> doughCelsius = List.of(20.0, 22.0, 24.0, 26.0, 28.0);
    private List<Double> starterPercents = List.of(2.0, 3.0, 5.0, 8.0, 12.0, 16.0, 20.0, 30.0);
    private int plans = 3;
    private double restHours;
    private double starterInColdHours;
    private @Nullable Fed fed;
    private @Nullable Mass mixer;
    private @Nullable BuildTimes stages;
    private int stagesDone;

    private Builder() {}

    private Builder(Builder from) {
      this.readyHour = from.readyHour;
      this.bench = from.bench;
      this.room = from.room;
      this.cold = from.cold;
      this.oven = from.oven;
      this.dough = from.dough;
      this.loaves = from.loaves;
      this.piece = from.piece;
      this.form = from.form;
      this.shaping = from.shaping;
      this.target = from.target;
      this.forecaster = from.forecaster;
      this.strength = from.strength;
      this.bulkPlace = from.bulkPlace;
      this.vessel = from.vessel;
      this.doughCelsius = from.doughCelsius;
      this.starterPercents = from.starterPercents;
      this.plans = from.plans;
      this.restHours = from.restHours;
      this.starterInColdHours = from.starterInColdHours;
      this.fed = from.fed;
      this.mixer = from.mixer;
      this.stages = from.stages;
      this.stagesDone = from.stagesDone;
    }

    /** All that is given, to compare days by. */
    private List<?> parts() {
      return Arrays.asList(
          readyHour,
          bench,
          room,
          cold,
          oven,
          dough,
          loaves,
          piece,
          form,
          shaping,
          target,
          forecaster,
          strength,
          bulkPlace,
          vessel,
          doughCelsius,
          starterPercents,
          plans,
          restHours,
          starterInColdHours,
          fed,
          mixer,
          stages,
          stagesDone);
    }

    /**
     * When the bread must be cool enough to slice, −8760…8760.
     *
     * @param hour hours on the axis of the day, −8760…8760
     * @return this builder
     */
    public Builder readyAt(double hour) {
      this.readyHour = Checks.inRange("hour the bread is wanted", hour, -8760, 8760, "h");
      return this;
    }

    /**
     * When the baker is at the bench.
     *
     * @param hours on the axis of the day
     * @return this builder
     */
    public Builder bench(BenchHours hours) {
      this.bench = Checks.given("bench hours", hours);
      return this;
    }

    /**
     * The room over the axis.
     *
     * @param trace °C over hours on the axis of the day
     * @return this builder
     */
    public Builder room(TemperatureTrace trace) {
      this.room = Checks.given("room", trace);
      return this;
    }

    /**
     * A cold of which only the dial is known.
     *
     * @param byDial what it says, 0…12 °C
     * @return this builder
     */
    public Builder cold(Temperature byDial) {
      return cold(Cold.byDial(byDial));
    }

    /**
     * The cold and how well it is known.
     *
     * @param place stated as 0…12 °C
     * @return this builder
     */
    public Builder cold(Cold place) {
      Checks.inRange("temperature of the cold", place.stated().celsius(), 0, 12, "°C");
      this.cold = place;
      return this;
    }

    /**
     * How firmly the loaves are handled from dividing to their final shape.
     *
     * @param how form and hands
     * @return this builder
     */
    public Builder shaped(Shaping how) {
      this.shaping = Checks.given("shaping", how);
      return this;
    }

    /**
     * The oven.
     *
     * @param value its times and room
     * @return this builder
     */
    public Builder oven(Oven value) {
      this.oven = Checks.given("oven", value);
      return this;
    }

    /**
     * The dough; its starter share is not used.
     *
     * @param formula flour, water and salt of the dough
     * @return this builder
     */
    public Builder dough(DoughFormula formula) {
      this.dough = Checks.given("dough", formula);
      return this;
    }

    /**
     * The loaves.
     *
     * @param number 1…500
     * @param mass dough of one
     * @param pieceForm form of one
     * @return this builder
     */
    public Builder loaves(int number, Mass mass, PieceForm pieceForm) {
      this.loaves = (int) Checks.inRange("loaves", number, 1, MOST_LOAVES, "");
      this.piece = Checks.given("mass of a loaf", mass);
      this.form = Checks.given("form of a loaf", pieceForm);
      return this;
    }

    /**
     * Rise wanted at the oven, 10…400 %.
     *
     * @param rise 10…400 %
     * @return this builder
     */
    public Builder target(Rise rise) {
      Checks.inRange("target rise", rise.percent(), 10, 400, "%");
      this.target = rise;
      return this;
    }

    /**
     * Belief and parameters, for example a learned starter.
     *
     * @param value belief, parameters and number of members: with fewer than 64 plans are found
     *     sooner and their figures are coarser; more make no difference
     * @return this builder
     */
    public Builder forecaster(RiseForecaster value) {
      this.forecaster = Checks.given("forecaster", value);
      return this;
    }

    /**
     * Autolyse and folds, for example from graded bowls.
     *
     * @param value autolyse and folds
     * @return this builder
     */
    public Builder strength(StrengthPlan value) {
      this.strength = Checks.given("strength", value);
      return this;
    }

    /**
     * What keeps the dough during bulk fermentation.
     *
     * @param place room or a box that holds the dough's temperature
     * @return this builder
     */
    public Builder bulkPlace(BulkPlace place) {
      this.bulkPlace = Checks.given("bulk place", place);
      return this;
    }

    /**
     * What the dough stands in during bulk fermentation.
     *
     * @param value form, wall and cover of it
     * @return this builder
     */
    public Builder vessel(Vessel value) {
      this.vessel = Checks.given("vessel", value);
      return this;
    }

    /**
     * Dough temperatures that may be planned, each 10…32 °C.
     *
     * @param celsius at least one, each 10…32 °C
     * @return this builder
     */
    public Builder doughCelsius(List<Double> celsius) {
      celsius.forEach(each -> Checks.inRange("dough temperature", each, 10, 32, "°C"));
      this.doughCelsius = sorted("dough temperatures", celsius);
      return this;
    }

    /**
     * Starter shares that may be planned, each 0.5…100 % of the flour added.
     *
     * @param percents at least one, each 0.5…100 % of the flour added
     * @return this builder
     */
    public Builder starterPercents(List<Double> percents) {
      percents.forEach(each -> Checks.inRange("starter share", each, 0.5, 100, "%"));
      this.starterPercents = sorted("starter shares", percents);
      return this;
    }

    private static List<Double> sorted(String what, List<Double> values) {
      if (values.isEmpty()) {
        throw new InputException("day.no-choices", "no " + what + " are given: give at least one");
      }
      return values.stream().sorted().distinct().toList();
    }

    /**
     * A ripe starter waits in the cold, so that none is fed for the dough.
     *
     * @param hours for how long already, 1…168
     * @return this builder
     */
    public Builder starterInCold(double hours) {
      this.starterInColdHours = Checks.inRange("starter in the cold", hours, 1, 168, "h");
      return this;
    }

    /**
     * The starter for this dough has been fed already.
     *
     * @param hour when, −8760…8760 h on the axis of the day
     * @param ratio how
     * @return this
     * @hidden
     */
    @Internal
    public Builder fed(double hour, FeedRatio ratio) {
      Checks.inRange("hour the starter was fed", hour, -8760, 8760, "h");
      this.fed = new Fed(hour, ratio);
      return this;
    }

    /**
     * The starter is built in stages; the dough's own is what they make.
     *
     * @param times the stages and when each begins
     * @return this
     * @hidden
     */
    @Internal
    public Builder stages(BuildTimes times) {
      this.stages = Checks.given("stages", times);
      return this;
    }

    /**
     * Some of the stages of its starter are done.
     *
     * @param times all stages, those that are done when they were made
     * @param firstHour when the first was made, −8760…8760 h on the axis of the day
     * @param done how many are done, 1 to all
     * @return this
     * @hidden
     */
    @Internal
    public Builder stagesBegun(BuildTimes times, double firstHour, int done) {
      this.stagesDone = (int) Checks.inRange("stages done", done, 1, times.stages().size(), "");
      return stages(times).fed(firstHour, times.build().feedings().get(0).ratio());
    }

    /**
     * Most dough in the mixer at once: more is mixed in batches, one after another.
     *
     * @param most 100 g to 1000 kg
     * @return this builder
     */
    public Builder mixer(Mass most) {
      Checks.inRange("mixer", most.grams(), 100, 1e6, "g");
      this.mixer = most;
      return this;
    }

    /**
     * How many plans are wanted, 1…20.
     *
     * @param number 1…20
     * @return this builder
     */
    public Builder plans(int number) {
      this.plans = (int) Checks.inRange("plans", number, 1, 20, "");
      return this;
    }

    /**
     * Divide, bench rest and shape together, 0.1…6 h.
     *
     * @param hours 0.1…6
     * @return this builder
     */
    public Builder restHours(double hours) {
      this.restHours = Checks.inRange("divide, rest and shape", hours, 0.1, 6, "h");
      return this;
    }

    /**
     * @return the day
     * @throws InputException if the hour ready or the hours at the bench were not given, or the
     *     mixer is so small that more than twelve batches are mixed
     */
    public BakeDay build() {
      if (Double.isNaN(readyHour)) {
        throw new InputException(
            "day.ready-at", "the hour the bread is wanted is missing: give readyAt");
      }
      if (bench == null) {
        throw new InputException("day.bench", "the hours at the bench are missing: give bench");
      }
      BakeDay day = new BakeDay(new Builder(this));
      day.mixBatches();
      return day;
    }
  }
}
