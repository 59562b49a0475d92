package doughtide.cli.command.bench;

import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.cli.options.BenchOptions;
import doughtide.core.day.DayPlan;
import doughtide.core.day.bench.BenchBatches;
import doughtide.core.day.bench.BenchLoaf;
import java.util.ArrayList;
import java.util.List;

/** The first and the last loaf of a dough, and what the difference of their ages costs. */
public final class BenchSections {

  private BenchSections() {}

  /** Whether loaves of a dough differ so much that it is worth a line. */
  public static boolean matters(DayPlan day, int dough, BenchOptions options) {
    int loaves = day.plans().get(dough).day().loaves();
    return loaves > 1
        && (options.isGiven() || loaves > day.plans().get(dough).day().oven().loaves());
  }

  /** The loaves of a dough. */
  public static BenchBatches of(DayPlan day, int dough, BenchOptions options) {
    return BenchBatches.of(day, dough, options.minutes(), options.mixer());
  }

  /** Adds them for other programs. */
  public static void data(BenchBatches bench, ClockTimes times, Section.Builder row) {
    Section.Builder to = row.section("bench", "");
    Listing.Builder mixes = to.listing("mixes", "");
    for (int i = 0; i < bench.mixes().size(); i++) {
      mixes
          .row()
          .number("doughGrams", "", bench.mixes().get(i).grams(), Unit.GRAMS)
          .at("at", "", bench.mixHour(i + 1), times);
    }
    to.flag("mixedInTime", "", bench.mixedInTime());
    loaf("first", bench.first(), bench, times, to);
    loaf("last", bench.last(), bench, times, to);
    to.number("lastRisesMorePercent", "", points(bench), Unit.PERCENT);
  }

  private static void loaf(
      String key, BenchLoaf loaf, BenchBatches bench, ClockTimes times, Section.Builder to) {
    to.section(key, "")
        .number("loaf", "", loaf.number(), Unit.COUNT)
        .number("mixBatch", "", loaf.mixBatch(), Unit.COUNT)
        .number("ovenBatch", "", loaf.ovenBatch(), Unit.COUNT)
        .at("shapedAt", "", loaf.shapedHour(), times)
        .at("ovenAt", "", loaf.ovenHour(), times)
        .number("ageShapedHours", "", loaf.ageShapedHours(), Unit.HOURS)
        .number("ageBakedHours", "", loaf.ageBakedHours(), Unit.HOURS)
        .number("riseAtOvenPercent", "", bench.riseAtOven(loaf).percent(), Unit.PERCENT);
  }

  private static double points(BenchBatches bench) {
    return bench.riseAtOven(bench.last()).percent() - bench.riseAtOven(bench.first()).percent();
  }

  /** The same as sentences. */
  public static String words(BenchBatches bench, ClockTimes times) {
    double points = points(bench);
    long shown = Math.round(Math.abs(points));
    return mixing(bench, times)
        + "Loaf 1: "
        + loaf(bench.first(), bench, times)
        + ". Loaf "
        + bench.last().number()
        + ": "
        + loaf(bench.last(), bench, times)
        + (shown == 0
            ? ", as high as the first."
            : ", " + shown + (points > 0 ? " points higher." : " points lower."))
        + " What is mixed first is shaped and baked first; each loaf proofs as soon as it is"
        + " shaped.";
  }

  private static String mixing(BenchBatches bench, ClockTimes times) {
    int batches = bench.mixes().size();
    if (batches == 1) {
      return "";
    }
    List<String> at = new ArrayList<>();
    for (int i = 1; i <= batches; i++) {
      at.add(times.at(bench.mixHour(i)));
    }
    return "Mix in "
        + batches
        + " batches of "
        + Words.grams(bench.mixes().get(0).grams())
        + ": "
        + String.join(", ", at)
        + (bench.mixedInTime() ? ". " : " (the last after you leave the bench). ");
  }

  private static String loaf(BenchLoaf loaf, BenchBatches bench, ClockTimes times) {
    return "shaped by "
        + times.at(loaf.shapedHour())
        + " at an age of "
        + Words.about(loaf.ageShapedHours())
        + ", into the oven "
        + times.at(loaf.ovenHour())
        + " ("
        + Words.about(loaf.ageBakedHours())
        + "), risen "
        + Words.rounded(bench.riseAtOven(loaf).percent(), 0)
        + " %";
  }
}
