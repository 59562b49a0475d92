package doughtide.core.day;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Ingredients;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.Mixing;
import doughtide.core.thermal.WaterAnswer;
import doughtide.core.thermal.WaterTemperature;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One plan for a day: every step by the clock, and how much later each may be. Hours are on the
 * plan's axis unless said otherwise.
 *
 * <p>The baker is taken to end bulk fermentation when the sample jar shows {@link #shapeRise}, or
 * as near to that moment as the hours at the bench allow; all other steps keep to the clock; a
 * proof in the room keeps its length.
 */
public final class BakePlan {
  private static final double KEEP_GRAMS = 20;

  /** A scale that shows whole grams weighs less than this badly (starting value). */
  private static final double LEAST_STARTER_GRAMS = 4;

  /** Flour and water are not mixed warmer than this (starting value). */
  private static final double MOST_STANDING_CELSIUS = 45;

  private final BakeDay day;
  private final Draft draft;
  private final Weighed weighed;
  private final DoughTemperature temperature;
  private final Optional<Rise> overdueJar;

  BakePlan(BakeDay day, Draft draft, Weighed weighed, DoughTemperature temperature) {
    this(day, draft, weighed, temperature, Optional.empty());
  }

  private BakePlan(
      BakeDay day,
      Draft draft,
      Weighed weighed,
      DoughTemperature temperature,
      Optional<Rise> overdueJar) {
    this.day = day;
    this.draft = draft;
    this.weighed = weighed;
    this.temperature = temperature;
    this.overdueJar = overdueJar;
  }

  /**
   * A dough that was begun, with what is still meant to happen.
   *
   * @param route as it was mixed, and when its tub is in the cold
   * @param feed of its starter
   * @param strength folds that were done or are still meant
   * @param proof where the loaves wait
   * @param basketHour when they are or were in their baskets
   * @param ovenHour when the first go into the oven
   * @param shapeRise rise of the sample jar when dividing begins; where that is overdue, what it
   *     has shown when it was time
   * @param overdueJar what the jar likely shows when dividing begins where that is overdue: then it
   *     begins whatever the jar shows
   */
  @Internal
  public record Begun(
      BakeRoute route,
      FeedChoice feed,
      StrengthPlan strength,
      ProofKind proof,
      double basketHour,
      double ovenHour,
      Rise shapeRise,
      Optional<Rise> overdueJar) {}

  /**
   * What the ensemble says of a plan.
   *
   * @param goodShare share of doughs that come out right
   * @param shape when the jar shows the moment, on the axis
   * @param margins of the steps that matter to the dough, in order
   */
  @Internal
  public record Weighed(double goodShare, TimeWindow shape, List<StepMargin> margins) {
    /**
     * Keeps its own copy.
     *
     * @param goodShare share of doughs that come out right, 0…1
     * @param shape when the jar shows the moment, on the axis
     * @param margins of the steps that matter to the dough, in order
     */
    public Weighed {
      margins = List.copyOf(margins);
    }

    double marginHours() {
      return margins.stream().mapToDouble(StepMargin::hours).min().orElse(0);
    }

    StepMargin tight() {
      return margins.stream().min(Comparator.comparingDouble(StepMargin::hours)).orElseThrow();
    }

    double margin(BakeStep.Kind kind) {
      return margins.stream()
          .filter(each -> each.kind() == kind)
          .mapToDouble(StepMargin::hours)
          .findFirst()
          .orElse(0);
    }
  }

  /**
   * {@return the plan of a dough that was begun, as it goes on}
   *
   * @param day what was planned for
   * @param begun what was done and is decided
   * @param weighed how the doughs come out
   */
  @Internal
  public static BakePlan of(BakeDay day, Begun begun, Weighed weighed) {
    Draft draft =
        new Draft(
            begun.route(),
            begun.feed(),
            begun.strength(),
            begun.proof(),
            begun.basketHour() - begun.route().mixHour(),
            begun.ovenHour(),
            begun.shapeRise().fraction(),
            0);
    return new BakePlan(
        day, draft, weighed, new DayModel(day).temperature(begun.route()), begun.overdueJar());
  }

  /** {@return what was planned for} */
  public BakeDay day() {
    return day;
  }

  /** {@return every step by the clock, ascending, as if it were the only dough of the day} */
  public List<BakeStep> steps() {
    return draft.steps(day);
  }

  /**
   * {@return the feeding before}
   *
   * @hidden
   */
  @Internal
  public FeedChoice feed() {
    return draft.feed();
  }

  /** {@return the dough} */
  public DoughFormula dough() {
    return day.dough(draft.route().starterPercent());
  }

  /** {@return starter in per cent of the flour added} */
  public double starterPercent() {
    return draft.route().starterPercent();
  }

  /** {@return wanted dough temperature after mixing} */
  public Temperature doughTemperature() {
    return Temperature.ofCelsius(draft.route().doughCelsius());
  }

  /** {@return the dough's temperature from mixing on, as planned} */
  public DoughTemperature temperature() {
    return temperature;
  }

  /** {@return autolyse and folds} */
  public StrengthPlan strength() {
    return draft.strength();
  }

  /** {@return when starter and salt come in: hour 0 of the dough} */
  public double mixHour() {
    return draft.mixHour();
  }

  /** {@return when the tub goes into the cold, where bulk fermentation is partly in the cold} */
  public OptionalDouble bulkColdFrom() {
    return draft.route().coldFrom();
  }

  /** {@return when the tub comes out again, hours on the axis} */
  public OptionalDouble bulkColdTo() {
    return draft.route().coldTo();
  }

  /** {@return likely end of bulk fermentation, hours on the axis} */
  public double bulkEndHour() {
    return draft.basketHour() - day.restHours();
  }

  /** {@return when the loaves are in their baskets, hours on the axis} */
  public double basketHour() {
    return draft.basketHour();
  }

  /** {@return when the first batch goes into the oven, hours on the axis} */
  public double ovenHour() {
    return draft.ovenHour();
  }

  /** {@return where the loaves wait} */
  public ProofKind proofKind() {
    return draft.proof();
  }

  /** {@return length of the proof, hours} */
  public double proofHours() {
    return draft.ovenHour() - draft.basketHour();
  }

  /** {@return what happens after bulk fermentation, for a forecast of the loaf} */
  public Proof proof() {
    return draft.proof(day);
  }

  /** {@return rise of the sample jar that ends bulk fermentation} */
  public Rise shapeRise() {
    return new Rise(draft.shapeRise());
  }

  /**
   * {@return what the sample jar likely shows at {@link #bulkEndHour} where shaping is overdue:
   * then it is done at that hour whatever the jar shows; empty in all other plans}
   *
   * @hidden
   */
  @Internal
  public Optional<Rise> overdueJar() {
    return overdueJar;
  }

  /**
   * {@return when the jar is there: one dough in ten before, half, nine in ten; one hour alone
   * where the dough is shaped already}
   */
  public TimeWindow shapeWindow() {
    return weighed.shape();
  }

  /** {@return whether the dough is shaped already, as it may be in the rest of a day} */
  public boolean isShaped() {
    return shapeWindow().widthHours().orElse(1) == 0;
  }

  /**
   * {@return share of the hours of {@link #shapeWindow} that are hours at the bench with time left
   * to shape, 0…1: who is away meanwhile cannot shape by the jar}
   */
  public double jarAtBenchShare() {
    return PlanWorth.jarAtBenchShare(day, weighed.shape());
  }

  /** {@return share of doughs that come out right if all goes by the plan, 0…1} */
  public double goodShare() {
    return weighed.goodShare();
  }

  /**
   * {@return margins of the steps that matter to the dough, in their order}
   *
   * @hidden
   */
  @Internal
  public List<StepMargin> margins() {
    return weighed.margins();
  }

  /** {@return the least margin, hours: what plans are ranked by} */
  public double marginHours() {
    return weighed.marginHours();
  }

  /**
   * {@return the step with the least margin}
   *
   * @hidden
   */
  @Internal
  public StepMargin tight() {
    return weighed.tight();
  }

  /** {@return what to weigh for all loaves, grams} */
  public Ingredients ingredients() {
    return dough().forDough(day.allDough());
  }

  /**
   * {@return what to weigh for the feeding, with 20 g kept back, more where the starter weighs
   * little}
   *
   * @hidden
   */
  @Internal
  public FeedAmounts feedAmounts() {
    return feedAmounts(ingredients().starterGrams());
  }

  /**
   * {@return how a feeding is done; of a starter built in stages, how a stage is}
   *
   * @param step a feeding of this plan
   * @hidden
   */
  @Internal
  public FeedRatio feedRatio(BakeStep step) {
    return day.stages()
        .map(times -> times.build().feedings().get(Math.max(0, step.number() - 1)).ratio())
        .orElse(draft.feed().ratio());
  }

  /**
   * {@return the stage that a feeding is, of a starter built in stages}
   *
   * @param step a feeding of this plan
   * @hidden
   */
  @Internal
  public Optional<BuildStage> stage(BakeStep step) {
    return day.stages().map(times -> times.build().stages().get(Math.max(0, step.number() - 1)));
  }

  /** What to weigh for a feeding or a stage; stages make just what the next one takes. */
  FeedAmounts feedAmounts(BakeStep step, double use) {
    return day.stages()
        .map(times -> times.build().amounts(Mass.ofGrams(use)).get(Math.max(0, step.number() - 1)))
        .orElseGet(() -> feedAmounts(use));
  }

  /** The same where the starter is for other doughs too. */
  FeedAmounts feedAmounts(double use) {
    Feeding feeding =
        Feeding.of(draft.feed().ratio())
            .withStarter(day.dough().starter())
            .withFlour(day.dough().starter().flour());
    double keep = Math.max(KEEP_GRAMS, LEAST_STARTER_GRAMS * draft.feed().ratio().growth() - use);
    return feeding.amounts(Mass.ofGrams(use), Mass.ofGrams(keep));
  }

  /** {@return whether all the water is poured on the flour some time before the dough is mixed} */
  @Internal
  public boolean hasAutolyse() {
    return strength().autolyseHours() > 0;
  }

  /**
   * {@return temperature of the water to pour, everything else at the room's temperature; flour and
   * water that stand alone before the dough is mixed go part of the way to the room meanwhile}
   *
   * @param mixing what mixing does to the dough's temperature
   */
  @Internal
  public WaterAnswer water(Mixing mixing) {
    Temperature room = Temperature.ofCelsius(day.room().celsius(mixHour()));
    WaterAnswer atOnce =
        WaterTemperature.of(dough(), ingredients(), room, room)
            .mixing(mixing)
            .waterFor(doughTemperature());
    double kept = new DayModel(day).keptInRoom(strength().autolyseHours());
    return kept == 1 || atOnce.waterCelsius() < 0 ? atOnce : warmer(atOnce, room, kept);
  }

  /** The same where only a part of the difference to the room is left when the dough is mixed. */
  private WaterAnswer warmer(WaterAnswer atOnce, Temperature room, double kept) {
    Ingredients weigh = ingredients();
    WaterTemperature alone =
        WaterTemperature.of(
                Mass.ofGrams(weigh.flourGrams()), room, Mass.ofGrams(weigh.waterGrams()))
            .moisture(Share.ofFraction(dough().flour().composition().moisture()));
    double left = alone.doughCelsius(Temperature.ofCelsius(atOnce.waterCelsius()));
    double first = room.celsius() + (left - room.celsius()) / kept;
    return alone.waterFor(
        Temperature.ofCelsius(Math.max(0, Math.min(first, MOST_STANDING_CELSIUS))));
  }

  Draft draft() {
    return draft;
  }

  /** In a line, for logs: hours on the plan's axis, and the share of doughs that come out right. */
  @Override
  public String toString() {
    return "mixed at hour "
        + hour(mixHour())
        + " at "
        + Checks.plain(doughTemperature().celsius())
        + " °C with "
        + Checks.plain(starterPercent())
        + " % starter, shaped at "
        + hour(bulkEndHour())
        + ", in the oven at "
        + hour(ovenHour())
        + "; right "
        + Math.round(100 * goodShare())
        + " %";
  }

  private static String hour(double at) {
    return Checks.line(OptionalDouble.of(at));
  }
}
