package doughtide.cli.command.again;

import doughtide.cli.args.ClockTimes;
import doughtide.core.day.BakeRoute;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.again.Slipped;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Share;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What has happened of a plan: the steps named with their times; every step before one of these as
 * planned; folds before now at their distance from mixing.
 *
 * @param planned the steps as planned, ascending
 * @param steps the same with what has happened
 * @param nowHour what the clock says, on the axis of the day
 */
public record Happened(List<PlanStep> planned, List<PlanStep> steps, double nowHour) {

  private static final Pattern DID =
      Pattern.compile("(\\p{L}[\\p{L} ]*?(?: \\d+)?) +(\\S+(?: ?[ap]\\.?m\\.?)?)");

  /**
   * Reads what was done.
   *
   * @param planned the steps as planned
   * @param did such as {@code shape 14:40}
   * @param nowHour on the axis of the day
   */
  public static Happened of(
      List<PlanStep> planned, List<String> did, ClockTimes times, double nowHour) {
    List<PlanStep> steps = new ArrayList<>(planned);
    did.forEach(text -> named(steps, text, times, nowHour));
    fed(steps, nowHour);
    doneBeforeOthers(steps);
    Happened happened = new Happened(planned, steps, nowHour);
    happened.check();
    happened.moveFolds();
    return happened;
  }

  private static void named(List<PlanStep> steps, String text, ClockTimes times, double nowHour) {
    Matcher matcher = DID.matcher(Quantities.clean(text));
    int index = matcher.matches() ? index(steps, matcher.group(1)) : -1;
    if (index < 0) {
      throw new InputException(
          Quantities.shown("--did", text)
              + " is no step of the plan with its time: write for example --did \"shape 14:40\";"
              + " its steps are "
              + steps.stream()
                  .filter(step -> step.step().kind().handsOn())
                  .map(PlanStep::key)
                  .collect(Collectors.joining(", ")));
    }
    steps.set(index, steps.get(index).at(hour(text, matcher.group(2), times, nowHour), true));
  }

  /** A feeding that was meant for before now has been done, unless another time is told. */
  private static void fed(List<PlanStep> steps, double nowHour) {
    PlanStep first = steps.get(0);
    if (first.step().kind() == Kind.FEED && first.step().fromHour() <= nowHour) {
      steps.set(0, new PlanStep(first.step(), true));
    }
  }

  private static int index(List<PlanStep> steps, String words) {
    String key = words.toLowerCase(Locale.ROOT).replaceFirst(" 1$", "");
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).step().kind().handsOn() && steps.get(i).key().equals(key)) {
        return i;
      }
    }
    return -1;
  }

  /** The last such time that is not after now. */
  private static double hour(String text, String clock, ClockTimes times, double nowHour) {
    ZonedDateTime now = times.after(nowHour);
    ZonedDateTime today = ClockText.moment("--did", clock, now.toLocalDate(), now.getZone());
    boolean yesterday = today.isAfter(now) && !ClockText.isDated(clock);
    double hour = hours(times, yesterday ? today.minusDays(1) : today);
    if (hour > nowHour || hour < nowHour - 96) {
      throw new InputException(
          Quantities.shown("--did", text)
              + " is not in the four days before now: give a time that has passed");
    }
    return hour;
  }

  private static double hours(ClockTimes times, ZonedDateTime moment) {
    return Hours.between(times.start(), moment);
  }

  private static void doneBeforeOthers(List<PlanStep> steps) {
    boolean done = false;
    for (int i = steps.size() - 1; i >= 0; i--) {
      done |= steps.get(i).done();
      // The oven may be switched on before or after the loaves are shaped.
      if (done && steps.get(i).step().kind() != Kind.PREHEAT) {
        steps.set(i, new PlanStep(steps.get(i).step(), true));
      }
    }
  }

  private void check() {
    if (first(each -> is(each, Kind.COOL)).isPresent()) {
      throw new InputException("the bread is out of the oven: nothing is left to plan");
    }
    double before = Double.NEGATIVE_INFINITY;
    for (Kind kind : List.of(Kind.MIX, Kind.SHAPE, Kind.BAKE)) {
      double hour = hour(kind).orElse(before);
      if (hour < before) {
        throw new InputException(
            "--did: mixing, shaping and baking do not come one after the other: check the times");
      }
      before = hour;
    }
  }

  /** Folds keep their distance from mixing. */
  private void moveFolds() {
    if (!isMixed()) {
      return;
    }
    double mixed = hour(Kind.MIX).orElseThrow();
    double meant =
        planned.stream()
            .filter(each -> each.step().kind() == Kind.MIX)
            .mapToDouble(each -> each.step().fromHour())
            .findFirst()
            .orElseThrow();
    for (int i = 0; i < steps.size(); i++) {
      BakeStep step = steps.get(i).step();
      boolean asPlanned = step.equals(planned.get(i).step());
      if (step.kind() == Kind.FOLD && asPlanned && !planned.get(i).done()) {
        double hour = step.fromHour() + mixed - meant;
        steps.set(i, steps.get(i).at(hour, steps.get(i).done() || hour < nowHour));
      }
    }
  }

  private static boolean is(PlanStep step, Kind kind) {
    return step.done() && step.step().kind() == kind;
  }

  private Optional<PlanStep> first(Predicate<PlanStep> which) {
    return steps.stream().filter(which).findFirst();
  }

  /** When a step was first done, if it was. */
  public OptionalDouble hour(Kind kind) {
    return steps.stream()
        .filter(each -> is(each, kind))
        .mapToDouble(each -> each.step().fromHour())
        .findFirst();
  }

  /** Whether the dough is mixed. */
  public boolean isMixed() {
    return hour(Kind.MIX).isPresent();
  }

  /** How far the day of a dough that is mixed has come. */
  public Slipped slipped(PlanFile file) {
    OptionalDouble in = coldHour(Kind.BULK_INTO_COLD, nowHour);
    OptionalDouble out =
        in.isEmpty() ? in : coldHour(Kind.BULK_OUT_OF_COLD, Math.max(nowHour, in.getAsDouble()));
    double mixed = hour(Kind.MIX).orElseThrow();
    return new Slipped(
        new BakeRoute(file.starterPercent(), file.doughCelsius(), mixed, in, out),
        feed(file, mixed),
        nowHour,
        hour(Kind.SHAPE),
        hour(Kind.PREHEAT),
        hour(Kind.BAKE),
        (int) steps.stream().filter(each -> each.step().kind() == Kind.FOLD).count(),
        file.proof(),
        file.proofHours(),
        plannedBake());
  }

  private FeedChoice feed(PlanFile file, double mixed) {
    FeedRatio ratio = file.feed().orElseGet(() -> FeedRatio.oneTo(1, Share.ofPercent(100)));
    double fed = hour(Kind.FEED).orElse(mixed - 1);
    return new FeedChoice(fed, mixed, ratio, mixed - fed, mixed - fed);
  }

  private OptionalDouble coldHour(Kind kind, double soonest) {
    return steps.stream()
        .filter(each -> each.step().kind() == kind)
        .mapToDouble(
            each ->
                each.done() ? each.step().fromHour() : Math.max(each.step().fromHour(), soonest))
        .findFirst();
  }

  /** When the first loaves were meant to be baked. */
  double plannedBake() {
    return planned.stream()
        .filter(each -> each.step().kind() == Kind.BAKE)
        .mapToDouble(each -> each.step().fromHour())
        .findFirst()
        .orElseThrow(() -> new InputException("the plan of --again bakes nothing: plan it anew"));
  }
}
