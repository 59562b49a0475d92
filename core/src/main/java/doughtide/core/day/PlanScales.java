package doughtide.core.day;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.ColdScores;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.loaf.UsableRise;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Weighs a draft over many members: how much later each step may be until one dough in ten more is
 * spoiled than without delay.
 */
final class PlanScales {
  /** A delay is too long when it spoils this share of doughs more (starting value). */
  static final double SPOILED_SHARE = 0.1;

  private static final double LONGEST_DELAY_HOURS = 6;
  private static final double DELAY_GRID_HOURS = 0.125;
  private static final double GREATEST_BY_HOURS = 48; // a slower dough's end is taken instead
  private static final double LONGEST_BULK_TIMES = 2.5; // the slowest doughs against the likely
  private static final double LAST_BULK_HOURS = 4;
  private static final double SETTLED_HOURS = 8;
  private static final double LAST_GOOD_ACCURACY_HOURS = 0.05;

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
      fates.add(new Member(draft, members.get(i), ColdScores.celsius(i)).fate());
    }
    return fates;
  }

  /** The draft at the shape point of its dough, where there is one. */
  Draft atShapePoint(Draft draft) {
    double longest = draft.shapedHours() * LONGEST_BULK_TIMES + LAST_BULK_HOURS;
    RiseForecast bulk =
        day.forecaster()
            .withMembers(members.size())
            .forecast(
                day.dough(draft.route().starterPercent()),
                model.temperature(draft.route()),
                draft.proof() == ProofKind.COLD ? draft.ovenHours() : longest);
    LoafSettings settings = LoafSettings.FULL.withMembers(members.size());
    ShapeForecaster.Point point = ShapeForecaster.of(bulk, draft.proof(day)).with(settings).point();
    return point.hours().likely().isEmpty()
        ? draft
        : draft.shapedAt(
            point.hours().likely().getAsDouble(),
            Rise.ofPercent(point.rise().likely().orElseThrow()),
            day.restHours());
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

  /** From the first batch into the oven to the last. */
  private double laterBatches() {
    return Draft.ovenBusyHours(day) - day.oven().bakeHours() - Work.LOAD_HOURS;
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
    private final UsableRise usable;
    private final double endHours;
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
      RiseCurve curve = model.run(draft.route(), unknowns, Math.max(hours, GREATEST_BY_HOURS));
      this.usable = UsableRise.of(day.target(), curve);
      this.endHours = hours;
      this.grown = new DayModel.Grown(curve, coldError);
      double jar = curve.hoursToRise(new Rise(draft.shapeRise())).orElse(hours);
      this.jarHours = Math.min(jar, hours) + day.restHours();
      this.over = Math.min(curve.hoursToOver().orElse(hours), hours);
      double bulkEnd = draft.basketHour() - day.restHours();
      BenchInterval at = day.bench().around(bulkEnd, draft.basketHour()).orElseThrow();
      double afterCold = draft.route().coldTo().orElse(Double.NEGATIVE_INFINITY) + 0.25;
      double from = Math.max(Math.max(at.fromHour(), afterCold), draft.mixHour());
      this.earliest = from + day.restHours() - draft.mixHour();
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
              Math.min(shaped, endHours),
              draft.proof(),
              draft.mixHour() + shaped,
              oven - shaped + LONGEST_DELAY_HOURS);
      double from = usable.from(piece).orElse(Double.POSITIVE_INFINITY);
      double until = usable.until(piece).orElse(piece.endHours());
      double low = solve(usable.from(), 0, earliest - 1, over, Double.POSITIVE_INFINITY);
      double high = lastGood();
      return new Fate(
          draft.mixHour() + jarHours - day.restHours(),
          piece.riseAt(oven).percent(),
          draft.mixHour() + until,
          mixDelay(low, high),
          new Borne(low - shaped, high - shaped),
          new Borne(from - oven, until - oven - laterBatches()));
    }

    /**
     * Hours in the basket up to which the last batch is not past its best: infinite where the
     * latest that is possible still does, none where even the earliest is too far.
     */
    private double lastGood() {
      if (!isTooFar(latest)) {
        return Double.POSITIVE_INFINITY;
      }
      if (isTooFar(earliest)) {
        return Double.NEGATIVE_INFINITY;
      }
      double good = earliest;
      double far = latest;
      while (far - good > LAST_GOOD_ACCURACY_HOURS) {
        double middle = (good + far) / 2;
        if (isTooFar(middle)) {
          far = middle;
        } else {
          good = middle;
        }
      }
      return good;
    }

    private boolean isTooFar(double inBasket) {
      double shaped = Math.min(inBasket, endHours);
      double last = ovenFor(shaped, 0) + laterBatches();
      PieceCurve piece =
          model.loaf(grown, shaped, draft.proof(), draft.mixHour() + shaped, last - shaped);
      return usable.until(piece).isPresent();
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

    /**
     * Mixing later by d with the oven's hour kept: the dough has d less. What it then needs lies d
     * later on the clock and, where the proof is short, a little farther up.
     */
    private Borne mixDelay(double low, double high) {
      double lowLess = low;
      boolean matters =
          draft.proof() == ProofKind.ROOM || draft.ovenHours() - jarHours < SETTLED_HOURS;
      if (matters && Double.isFinite(low)) {
        lowLess = solve(usable.from(), 1, low, over, low + 1);
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

    /** Hours in the basket that give a rise at the oven, or what stands for never. */
    private double solve(Rise rise, double late, double low, double high, double never) {
      double least = Math.max(low, 0.1);
      double most = Math.min(Math.min(high, lastOven - late - 0.1), endHours);
      if (most <= least) {
        return Math.max(least, most);
      }
      return ShapeHour.find(
              x -> model.riseAtOven(grown, draft.route(), x, draft.proof(), ovenFor(x, late)),
              grown.curve(),
              rise.fraction(),
              least,
              most,
              Math.min(jarHours, most))
          .orElse(Math.min(never, Double.POSITIVE_INFINITY));
    }
  }
}
