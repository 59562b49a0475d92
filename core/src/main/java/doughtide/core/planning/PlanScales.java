package doughtide.core.planning;

import doughtide.core.forecast.ShapeForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Weighs a draft over many members: how much later each step may be until one dough in ten more is
 * spoiled than without delay.
 */
final class PlanScales {
  /** A loaf is right from this part of its target (starting value). */
  static final double LEAST_PART = 0.85;

  /** A loaf is right up to this part of its target (starting value). */
  static final double MOST_PART = 1.25;

  /** A delay is too long when it spoils this share of doughs more (starting value). */
  static final double SPOILED_SHARE = 0.1;

  private static final double STEP_HOURS = 0.5;
  private static final double LONGEST_DELAY_HOURS = 6;
  private static final double DELAY_GRID_HOURS = 0.125;
  private static final double SETTLED_HOURS = 8;
  private static final double LARGEST_SHIFT = 25; // points of rise
  private static final double AT_OVEN_PER_SHAPED = 1.2; // a point more when shaped, at the oven
  private static final double COLD_DEVIATION_CELSIUS = 1; // starting value
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  private final DayModel model;
  private final BakeDay day;
  private final FeedSearch feeds;
  private final List<Unknowns> members;

  PlanScales(DayModel model, FeedSearch feeds, List<Unknowns> members) {
    this.model = model;
    this.day = model.day();
    this.feeds = feeds;
    this.members = members;
  }

  /** Radical inverse in base 3 as a normal score: even, and independent of the Sobol draws. */
  static double coldError(int member) {
    double inverse = 0;
    double place = 1.0 / 3;
    for (int rest = member + 1; rest > 0; rest /= 3) {
      inverse += (rest % 3) * place;
      place /= 3;
    }
    return COLD_DEVIATION_CELSIUS * NORMAL.inverseCumulativeProbability(inverse);
  }

  /**
   * Delays with which a member comes out right, hours; none where {@code from} is after {@code to}.
   */
  private record Borne(double from, double to) {
    boolean bears(double delay) {
      return delay >= from && delay <= to;
    }
  }

  /**
   * One member's fate.
   *
   * @param jar when its jar is there, on the axis
   * @param rise at the oven, per cent
   * @param until good to bake until, on the axis
   * @param mix later mixing that it bears
   * @param shape later shaping that it bears
   * @param bake later baking that it bears
   */
  private record Fate(double jar, double rise, double until, Borne mix, Borne shape, Borne bake) {}

  BakePlan.Weighed weigh(Draft draft) {
    List<Fate> fates = fates(draft);
    long good = fates.stream().filter(fate -> fate.bake().bears(0)).count();
    return new BakePlan.Weighed(
        (double) good / fates.size(),
        TimeWindow.of(fates.stream().mapToDouble(Fate::jar).toArray()),
        range(fates.stream().mapToDouble(Fate::rise).sorted().toArray()),
        TimeWindow.of(fates.stream().mapToDouble(Fate::until).toArray()),
        margins(draft, fates));
  }

  private List<Fate> fates(Draft draft) {
    List<Fate> fates = new ArrayList<>();
    for (int i = 0; i < members.size(); i++) {
      fates.add(new Member(draft, members.get(i), coldError(i)).fate());
    }
    return fates;
  }

  /**
   * The likely path does not lie in the middle of the members: a cold night spreads them unevenly.
   * So the rise to shape at is moved until as many as possible come out right.
   */
  Draft centred(Draft draft) {
    double[] rises = rises(draft);
    double shift = bestShift(rises);
    Draft moved = later(draft, shift);
    double[] then = rises(moved);
    double made = median(then) - median(rises);
    Draft again = Math.abs(made) < 1 ? moved : later(draft, shift * shift / made);
    Draft best = right(then, 0) > right(rises, 0) ? moved : draft;
    return right(rises(again), 0) > Math.max(right(then, 0), right(rises, 0)) ? again : best;
  }

  private Draft later(Draft draft, double shift) {
    return draft.laterBy(shift / 100 / AT_OVEN_PER_SHAPED, day.restHours());
  }

  private double[] rises(Draft draft) {
    if (!day.bench().contains(draft.basketHour() - day.restHours(), draft.basketHour())) {
      return new double[0];
    }
    double[] rises = new double[members.size()];
    for (int i = 0; i < rises.length; i++) {
      rises[i] = new Member(draft, members.get(i), coldError(i)).risePercent();
    }
    return rises;
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted.length == 0 ? 0 : quantile(sorted, 0.5);
  }

  private double bestShift(double[] rises) {
    double best = 0;
    double worth = right(rises, 0);
    for (double shift = -LARGEST_SHIFT; shift <= LARGEST_SHIFT; shift += 1) {
      double now = right(rises, shift);
      if (now > worth + 1e-9) {
        worth = now;
        best = shift;
      }
    }
    return best;
  }

  /** Members in range, the nearer its middle the better where as many are. */
  private double right(double[] rises, double shift) {
    double target = day.target().fraction() * 100;
    double sum = 0;
    for (double rise : rises) {
      double part = (rise + shift) / target;
      double middle = (LEAST_PART + MOST_PART) / 2;
      double off = Math.abs(part - middle) / ((MOST_PART - LEAST_PART) / 2);
      sum += off <= 1 ? 1 - 0.1 * off : 0;
    }
    return sum;
  }

  private static ShapeForecast.RiseRange range(double[] sorted) {
    return new ShapeForecast.RiseRange(
        OptionalDouble.of(quantile(sorted, 0.1)),
        OptionalDouble.of(quantile(sorted, 0.5)),
        OptionalDouble.of(quantile(sorted, 0.9)));
  }

  private static double quantile(double[] sorted, double q) {
    double place = q * (sorted.length - 1);
    int low = (int) place;
    int high = Math.min(low + 1, sorted.length - 1);
    return sorted[low] + (place - low) * (sorted[high] - sorted[low]);
  }

  private List<StepMargin> margins(Draft draft, List<Fate> fates) {
    List<StepMargin> margins = new ArrayList<>();
    BakeStep feed = step(draft, BakeStep.Kind.FEED);
    margins.add(margin(feed, feedDelay(draft), benchSlack(feed)));
    BakeStep mix = step(draft, BakeStep.Kind.MIX);
    margins.add(margin(mix, borne(fates.stream().map(Fate::mix).toList()), mixSlack(draft)));
    double shapeDelay = borne(fates.stream().map(Fate::shape).toList());
    BakeStep shape = step(draft, BakeStep.Kind.SHAPE);
    margins.add(margin(shape, shapeDelay, benchSlack(shape)));
    if (draft.proof() == ProofKind.COLD) {
      // Until it is in the cold the loaf goes on as it did in the tub.
      BakeStep cold = step(draft, BakeStep.Kind.LOAVES_INTO_COLD);
      margins.add(margin(cold, shapeDelay, benchSlack(cold)));
    }
    BakeStep bake = step(draft, BakeStep.Kind.BAKE);
    margins.add(margin(bake, borne(fates.stream().map(Fate::bake).toList()), bakeSlack(draft)));
    return margins;
  }

  private static StepMargin margin(BakeStep step, double dough, double bench) {
    double least = Math.max(0, Math.min(dough, bench));
    StepMargin.Limit limit = dough <= bench ? StepMargin.Limit.DOUGH : StepMargin.Limit.BENCH;
    return new StepMargin(step.kind(), Math.min(least, LONGEST_DELAY_HOURS), limit);
  }

  private BakeStep step(Draft draft, BakeStep.Kind kind) {
    return draft.steps(day).stream().filter(each -> each.kind() == kind).findFirst().orElseThrow();
  }

  private double benchSlack(BakeStep step) {
    return day.bench().slackHours(step.fromHour(), step.toHour());
  }

  private double firstOvenHours(Draft draft) {
    if (draft.proof() == ProofKind.COLD) {
      return draft.ovenHours();
    }
    double from = ovenInterval(draft).fromHour() + day.oven().preheatHours() - draft.mixHour();
    return Math.min(from, draft.ovenHours());
  }

  private double lastOvenHours(Draft draft) {
    if (draft.proof() == ProofKind.COLD) {
      return draft.ovenHours();
    }
    double busy = Draft.ovenBusyHours(day);
    double bench = ovenInterval(draft).toHour() - busy - Work.UNLOAD_HOURS;
    double ready = day.readyHour() - day.oven().coolHours() - busy;
    return Math.max(Math.min(bench, ready) - draft.mixHour(), draft.ovenHours());
  }

  private BenchInterval ovenInterval(Draft draft) {
    return day.bench().around(draft.ovenHour(), draft.ovenHour() + Work.LOAD_HOURS).orElseThrow();
  }

  /** Folds and the tub's way into the cold move with mixing. */
  private double mixSlack(Draft draft) {
    return draft.steps(day).stream()
        .filter(
            step ->
                step.kind() == BakeStep.Kind.MIX
                    || step.kind() == BakeStep.Kind.FOLD
                    || step.kind() == BakeStep.Kind.BULK_INTO_COLD)
        .mapToDouble(this::benchSlack)
        .min()
        .orElse(0);
  }

  private double bakeSlack(Draft draft) {
    double last =
        draft.steps(day).stream()
            .filter(step -> step.kind() == BakeStep.Kind.BAKE || step.kind() == BakeStep.Kind.COOL)
            .mapToDouble(this::benchSlack)
            .min()
            .orElse(0);
    double ready = draft.ovenHour() + Draft.ovenBusyHours(day) + day.oven().coolHours();
    return Math.min(last, Math.max(0, day.readyHour() - ready));
  }

  /** How much later a feeding may be until the starter is not ripe at mixing. */
  private double feedDelay(Draft draft) {
    double age = draft.feed().ageHours();
    return borne(
        feeds.members(draft.feed(), members).stream()
            .map(time -> new Borne(age - time.fallen(), age - time.ripe()))
            .toList());
  }

  /** The longest delay up to which no more than a tenth of the members is spoiled by it. */
  private static double borne(List<Borne> members) {
    double least = share(members, 0) - SPOILED_SHARE;
    double borne = 0;
    for (double d = DELAY_GRID_HOURS; d <= LONGEST_DELAY_HOURS; d += DELAY_GRID_HOURS) {
      if (share(members, d) < least - 1e-9) {
        return borne;
      }
      borne = d;
    }
    return borne;
  }

  private static double share(List<Borne> members, double delay) {
    return (double) members.stream().filter(each -> each.bears(delay)).count() / members.size();
  }

  /** One member of the ensemble on one draft. */
  private final class Member {
    private final Draft draft;
    private final double jarHours;
    private final DayModel.Grown grown;
    private final double earliest;
    private final double latest;
    private final double over;
    private final double firstOven;
    private final double lastOven;

    Member(Draft draft, Unknowns unknowns, double coldError) {
      this.draft = draft;
      this.firstOven = firstOvenHours(draft);
      this.lastOven = lastOvenHours(draft);
      double hours = Math.min(lastOven + 0.25, draft.shapedHours() * 1.7 + 2);
      RiseCurve curve = model.run(draft.route(), unknowns, hours);
      this.grown = new DayModel.Grown(curve, coldError, STEP_HOURS);
      this.jarHours =
          curve.hoursToRise(new Rise(draft.shapeRise())).orElse(hours) + day.restHours();
      this.over = Math.min(curve.hoursToOver().orElse(hours), hours);
      double bulkEnd = draft.basketHour() - day.restHours();
      BenchInterval at = day.bench().around(bulkEnd, draft.basketHour()).orElseThrow();
      double afterCold = draft.route().coldTo().orElse(Double.NEGATIVE_INFINITY) + 0.25;
      this.earliest = Math.max(at.fromHour(), afterCold) + day.restHours() - draft.mixHour();
      double beforeOven = lastOven - 0.25;
      this.latest =
          Math.max(earliest, Math.min(Math.min(at.toHour() - draft.mixHour(), beforeOven), over));
    }

    Fate fate() {
      double shaped = inHours(jarHours);
      double oven = ovenFor(shaped, 0);
      PieceCurve piece =
          model.loaf(
              grown,
              Math.min(shaped, grown.curve().endHours()),
              draft.proof(),
              draft.mixHour() + shaped,
              oven - shaped + LONGEST_DELAY_HOURS);
      double later = (day.oven().batches(day.loaves()) - 1) * day.oven().bakeHours();
      double from =
          piece.hoursToRise(model.partOfTarget(LEAST_PART)).orElse(Double.POSITIVE_INFINITY);
      double until = until(piece);
      double low = solve(LEAST_PART, 0, earliest - 1, over, Double.POSITIVE_INFINITY);
      double high = solve(MOST_PART, 0, Math.max(shaped - 2, earliest), over, over);
      return new Fate(
          draft.mixHour() + jarHours - day.restHours(),
          piece.riseAt(oven).percent(),
          draft.mixHour() + until,
          mixDelay(low, high),
          new Borne(low - shaped, high >= latest ? Double.POSITIVE_INFINITY : high - shaped),
          new Borne(from - oven, until - oven - later));
    }

    double risePercent() {
      double shaped = Math.min(inHours(jarHours), grown.curve().endHours());
      return 100
          * model.riseAtOven(grown, draft.route(), shaped, draft.proof(), ovenFor(shaped, 0));
    }

    /**
     * Oven hour of a loaf in its basket at an hour, both from mixing, when mixing is late: by the
     * clock after a night in the cold; after the planned length of a proof in the kitchen, as far
     * as the hours at the bench allow.
     */
    private double ovenFor(double shaped, double late) {
      if (draft.proof() == ProofKind.COLD) {
        return draft.ovenHours() - late;
      }
      double proof = draft.ovenHours() - draft.shapedHours();
      return Math.min(Math.max(shaped + proof, firstOven - late), lastOven - late);
    }

    private double inHours(double shaped) {
      return Math.min(Math.max(shaped, earliest), latest);
    }

    private double until(PieceCurve piece) {
      double high = piece.hoursToRise(model.partOfTarget(MOST_PART)).orElse(piece.endHours());
      return Math.min(high, piece.hoursToOver().orElse(piece.endHours()));
    }

    /**
     * Mixing later by d with the oven's hour kept: the dough has d less. What it then needs lies d
     * later on the clock and, where the proof is short, a little farther up.
     */
    private Borne mixDelay(double low, double high) {
      double lowLess = low;
      boolean matters =
          draft.proof() == ProofKind.ROOM || draft.ovenHours() - jarHours < SETTLED_HOURS;
      if (matters && Double.isFinite(low)) {
        lowLess = solve(LEAST_PART, 1, low, over, low + 1);
      }
      double climbs = lowLess - low;
      double from = Double.POSITIVE_INFINITY;
      double to = Double.NEGATIVE_INFINITY;
      for (double d = 0; d <= LONGEST_DELAY_HOURS; d += DELAY_GRID_HOURS) {
        double own = inHours(jarHours + d) - d;
        if (own >= low + climbs * d && own <= high) {
          from = Math.min(from, d);
          to = d;
        }
      }
      return new Borne(from, to);
    }

    /** Hours in the basket that give a part of the target at the oven, or what stands for never. */
    private double solve(double part, double late, double low, double high, double never) {
      double least = Math.max(low, 0.1);
      double most = Math.min(Math.min(high, lastOven - late - 0.1), grown.curve().endHours());
      if (most <= least) {
        return Math.max(least, most);
      }
      return ShapeHour.find(
              x -> model.riseAtOven(grown, draft.route(), x, draft.proof(), ovenFor(x, late)),
              grown.curve(),
              day.target().fraction() * part,
              least,
              most,
              Math.min(jarHours, most))
          .orElse(Math.min(never, Double.POSITIVE_INFINITY));
    }
  }
}
