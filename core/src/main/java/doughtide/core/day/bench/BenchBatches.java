package doughtide.core.day.bench;

import doughtide.core.Internal;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakePlan;
import doughtide.core.day.DayPlan;
import doughtide.core.day.HandsOnTime;
import doughtide.core.day.OvenLoad;
import doughtide.core.day.ProofKind;
import doughtide.core.loaf.LoafModel;
import doughtide.core.loaf.LoafScores;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import doughtide.core.thermal.LaterTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The loaves of one dough of a day, one by one: dividing and shaping take minutes a loaf, the oven
 * holds so many, the mixer so much. What is mixed first is divided first, shaped first and baked
 * first, so that ages differ least. The likely dough is followed loaf by loaf, so that what the
 * difference costs is a rise at the oven and no rule of thumb.
 *
 * <pre>{@code
 * BenchBatches bench = BenchBatches.of(day, 0, 2, Optional.of(Mass.ofKilograms(12)));
 * double points = bench.riseAtOven(bench.last()).percent()
 *     - bench.riseAtOven(bench.first()).percent();
 * }</pre>
 */
@Internal
public final class BenchBatches {

  /** Dividing and shaping of one loaf, minutes (starting value). */
  public static final double USUAL_MINUTES_A_LOAF = 2;

  private static final int MEMBERS = 32;
  private static final double SPARE_HOURS = 0.5;

  private final BakePlan plan;
  private final List<BenchLoaf> loaves;
  private final List<Mass> mixes;
  private final LoafModel model;
  private final RiseCurve dough;

  private BenchBatches(BakePlan plan, List<BenchLoaf> loaves, List<Mass> mixes) {
    this.plan = plan;
    this.loaves = List.copyOf(loaves);
    this.mixes = List.copyOf(mixes);
    this.model =
        LoafModel.of(plan.dough(), plan.proof(), LoafSettings.SEARCH).folded(plan.strength());
    double hours =
        loaves.stream().mapToDouble(BenchLoaf::ageShapedHours).max().orElseThrow() + SPARE_HOURS;
    this.dough =
        plan.day()
            .forecaster()
            .withMembers(MEMBERS)
            .forecast(plan.dough(), plan.temperature(), hours)
            .typical()
            .runFast(hours);
  }

  /**
   * The loaves of a dough.
   *
   * @param day the plan
   * @param number of the dough, from 0
   * @param minutesALoaf dividing and shaping, 0…30 min
   * @param mixer most dough in the mixer at once; empty for all of it, 100 g or more
   * @throws doughtide.core.quantity.InputException if the minutes or the mixer are out of range, or
   *     more than twelve batches would be mixed
   */
  public static BenchBatches of(
      DayPlan day, int number, double minutesALoaf, Optional<Mass> mixer) {
    Checks.inRange("minutes a loaf", minutesALoaf, 0, 30, "min");
    BakePlan plan = day.plans().get(number);
    List<Mass> mixes = mixes(plan.day().allDough(), mixer);
    return new BenchBatches(
        plan, loaves(plan, ovens(day, number), minutesALoaf / 60, mixes.size()), mixes);
  }

  private static List<Mass> mixes(Mass all, Optional<Mass> mixer) {
    double most = mixer.map(Mass::grams).orElse(all.grams());
    Checks.inRange("mixer", most, Math.min(100, all.grams()), 1e6, "g");
    int batches = BakeDay.mixBatches(all, mixer);
    List<Mass> mixes = new ArrayList<>();
    for (int i = 0; i < batches; i++) {
      mixes.add(Mass.ofGrams(all.grams() / batches));
    }
    return mixes;
  }

  /** The oven's hour and batch of each loaf of a dough, in the order of baking. */
  private static List<OvenLoad> ovens(DayPlan day, int number) {
    List<OvenLoad> ovens = new ArrayList<>();
    for (OvenLoad load : day.loads()) {
      for (OvenLoad.Portion portion : load.portions()) {
        for (int i = 0; portion.dough() == number && i < portion.loaves(); i++) {
          ovens.add(new OvenLoad(load.fromHour(), load.toHour(), List.of(portion)));
        }
      }
    }
    return ovens;
  }

  private static List<BenchLoaf> loaves(
      BakePlan plan, List<OvenLoad> ovens, double hoursALoaf, int batches) {
    int count = ovens.size();
    double spent = Math.min(hoursALoaf * (count - 1), plan.day().restHours());
    double each = count > 1 ? spent / (count - 1) : 0;
    List<BenchLoaf> loaves = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int mix = (int) ((long) i * batches / count);
      loaves.add(
          new BenchLoaf(
              i + 1,
              mix + 1,
              plan.mixHour() + mix * HandsOnTime.MIX_HOURS,
              plan.basketHour() - (count - 1 - i) * each,
              ovens.get(i).portions().get(0).batch(),
              ovens.get(i).fromHour()));
    }
    return loaves;
  }

  /** All loaves in the order of shaping. */
  public List<BenchLoaf> loaves() {
    return loaves;
  }

  /** The first one shaped. */
  public BenchLoaf first() {
    return loaves.get(0);
  }

  /** The last one shaped. */
  public BenchLoaf last() {
    return loaves.get(loaves.size() - 1);
  }

  /** Dough of each batch in the mixer; together all of it. */
  public List<Mass> mixes() {
    return mixes;
  }

  /** When a batch begins to be mixed, from 1, on the plan's axis. */
  public double mixHour(int batch) {
    return plan.mixHour() + (batch - 1) * HandsOnTime.MIX_HOURS;
  }

  /** Whether the last batch is mixed before the baker leaves the bench. */
  public boolean mixedInTime() {
    double from = plan.mixHour();
    double to = mixHour(mixes.size()) + HandsOnTime.MIX_HOURS;
    return plan.day().bench().contains(from, to);
  }

  /** Rise of the likely loaf when it goes into the oven, over the dough after mixing. */
  public Rise riseAtOven(BenchLoaf loaf) {
    double hours = Math.max(loaf.proofHours(), 0.05);
    LoafModel where =
        plan.proofKind() == ProofKind.COLD
            ? model
            : model.in(new LaterTrace(plan.day().room(), loaf.shapedHour()));
    return where.run(dough, loaf.ageShapedHours(), LoafScores.MIDDLE, hours).riseAtEnd();
  }
}
