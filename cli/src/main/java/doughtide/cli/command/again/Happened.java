package doughtide.cli.command.again;

import doughtide.cli.args.Arguments;
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
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What has happened of a plan: the steps named with their times; every step of the same dough
 * before one of these as planned; folds before now at their distance from mixing. Of several
 * doughs, one of which nothing is told goes as planned.
 *
 * @param planned the steps as planned, ascending
 * @param steps the same with what has happened
 * @param nowHour what the clock says, on the axis of the day
 * @param names of the doughs
 * @param notDone the steps of which it is said that they were not done
 */
public record Happened(
    List<PlanStep> planned,
    List<PlanStep> steps,
    double nowHour,
    DayNames names,
    List<PlanStep> notDone) {

  private static final double SAME_HOURS = 1e-3;

  private static final Pattern DID = Pattern.compile("(.+?) +(\\S+(?: ?[ap]\\.?m\\.?)?)");

  /**
   * Reads what was done.
   *
   * @param file the plan
   * @param did such as {@code shape 14:40}, or {@code rye shape 14:40} where there are several
   *     doughs; a step that serves several is done for the one that is named alone
   * @param notDone such as {@code feed} or {@code rye feed}: neither it nor what comes after it of
   *     the same dough has been done, unless it is a fold and a later step is told; what comes
   *     before it has, as planned
   * @param nowHour on the axis of the day
   */
  public static Happened of(
      PlanFile file, List<String> did, List<String> notDone, ClockTimes times, double nowHour) {
    List<PlanStep> planned = new ArrayList<>(file.steps(times));
    List<PlanStep> steps = new ArrayList<>(planned);
    List<PlanStep> still = new ArrayList<>();
    Happened happened = new Happened(planned, steps, nowHour, file.names(), still);
    Set<Integer> told = new HashSet<>();
    Set<Integer> fed = new HashSet<>();
    for (String text : did) {
      Told each = happened.named(text, times);
      told.addAll(each.doughs());
      if (each.kind() == Kind.FEED) {
        fed.addAll(each.doughs());
      }
    }
    notDone.forEach(text -> still.add(happened.notDone(text)));
    happened.asPlanned(told, fed);
    happened.doneBeforeOthers();
    happened.checkNotDone();
    happened.check();
    happened.moveFolds();
    return happened;
  }

  /** What was done, and the doughs of which that tells something. */
  private record Told(Kind kind, List<Integer> doughs) {}

  /**
   * A way to read what was done.
   *
   * @param dough that is named, if one is
   * @param indices of the steps that can be meant
   */
  private record Reading(Optional<Integer> dough, List<Integer> indices) {}

  /** Takes a step as done. */
  private Told named(String text, ClockTimes times) {
    Matcher matcher = DID.matcher(Quantities.clean(text));
    List<Reading> readings = matcher.matches() ? readings(matcher.group(1)) : List.of();
    if (readings.isEmpty()) {
      throw new InputException(
          Quantities.shown("--did", text)
              + " is no step of the plan with its time: write for example --did \""
              + names.before(0)
              + "shape 14:40\", or --not-done "
              + quotedIfSeveral("feed")
              + " for what was not done; "
              + allowed());
    }
    int index = only(Quantities.shown("--did", text), "--did", readings, " " + matcher.group(2));
    steps.set(index, steps.get(index).at(hour(text, matcher.group(2), times, nowHour), true));
    return new Told(steps.get(index).step().kind(), steps.get(index).day().doughs());
  }

  /** Finds a step that was not done. */
  private PlanStep notDone(String text) {
    String shown = Quantities.shown("--not-done", text);
    List<Reading> readings = readings(Quantities.clean(text));
    if (readings.isEmpty()) {
      throw new InputException(
          shown
              + " is no step of the plan: write for example --not-done "
              + quotedIfSeveral("feed")
              + "; "
              + allowed());
    }
    return steps.get(only(shown, "--not-done", readings, ""));
  }

  private String quotedIfSeveral(String step) {
    return names.isOne() ? step : "\"" + names.before(0) + step + "\"";
  }

  /** The one step that can be meant, apart from what it serves beside the dough that is named. */
  private int only(String shown, String option, List<Reading> readings, String time) {
    List<Integer> found = readings.stream().flatMap(each -> each.indices().stream()).toList();
    if (found.size() > 1) {
      throw new InputException(
          shown
              + " can be of several doughs: write whose, for example "
              + option
              + " \""
              + found.stream()
                  .map(index -> whole(index) + time)
                  .limit(2)
                  .collect(Collectors.joining("\" or \""))
              + "\"");
    }
    Optional<Integer> dough = readings.get(0).dough();
    return dough.map(number -> apart(found.get(0), number)).orElse(found.get(0));
  }

  /** With the dough before the step or behind it, or without one. */
  private List<Reading> readings(String words) {
    List<Reading> readings = new ArrayList<>();
    readings.add(new Reading(Optional.empty(), indices(words, Optional.empty())));
    if (!names.isOne()) {
      names
          .begins(words)
          .map(dough -> reading(words.substring(names.before(dough).length()), dough))
          .ifPresent(readings::add);
      names
          .ends(words)
          .map(
              dough ->
                  reading(words.substring(0, words.length() - names.before(dough).length()), dough))
          .ifPresent(readings::add);
    }
    return readings.stream().filter(each -> !each.indices().isEmpty()).toList();
  }

  private Reading reading(String step, int dough) {
    return new Reading(Optional.of(dough), indices(step.strip(), Optional.of(dough)));
  }

  /** A step with its dough, as it can be told. */
  private String whole(int index) {
    return names.before(steps.get(index).day().doughs().get(0)) + steps.get(index).key();
  }

  /** Of a step that serves several doughs, the part of one; the oven is switched on for all. */
  private int apart(int index, int dough) {
    List<Integer> doughs = planned.get(index).day().doughs();
    if (doughs.size() > 1 && planned.get(index).step().kind() != Kind.PREHEAT) {
      List<Integer> others = doughs.stream().filter(other -> other != dough).toList();
      for (List<PlanStep> list : List.of(planned, steps)) {
        PlanStep whole = list.get(index);
        list.set(index, whole.of(List.of(dough)));
        list.add(index + 1, whole.of(others));
      }
    }
    return index;
  }

  private String allowed() {
    String all =
        steps.stream()
            .filter(step -> step.step().kind().handsOn())
            .map(PlanStep::key)
            .distinct()
            .collect(Collectors.joining(", "));
    return "its steps are "
        + all
        + (names.isOne() ? "" : "; its doughs " + String.join(", ", names.names()));
  }

  /**
   * A feeding that was meant for before now has been done, unless one of the same dough is told: of
   * a starter built in stages, those after it are still to come. Of several doughs, one of which
   * nothing is told goes as planned.
   *
   * @param told doughs of which something is told
   * @param fed doughs of which a feeding is told
   */
  private void asPlanned(Set<Integer> told, Set<Integer> fed) {
    boolean several = !names.isOne() || !notDone.isEmpty();
    for (int i = 0; i < steps.size(); i++) {
      PlanStep each = steps.get(i);
      boolean goesOn = several && each.day().doughs().stream().noneMatch(told::contains);
      boolean assumed =
          each.step().kind() == Kind.FEED
              ? each.day().doughs().stream().noneMatch(fed::contains)
              : goesOn && each.step().kind().handsOn();
      if (assumed && !waits(each) && each.step().fromHour() <= nowHour) {
        steps.set(i, each.nowDone());
      }
    }
  }

  /** Whether a step was not done because it is said that it or one before it was not. */
  private boolean waits(PlanStep each) {
    return notDone.stream().anyMatch(first -> isNotBefore(each, first) && !isPassed(first));
  }

  /** Whether a step is the same or a later one of the same dough. */
  private static boolean isNotBefore(PlanStep each, PlanStep first) {
    return each.step().fromHour() >= first.step().fromHour()
        && each.day().doughs().stream().anyMatch(first::isOf);
  }

  /** A fold alone can be left out. */
  private void checkNotDone() {
    for (PlanStep first : notDone) {
      if (first.step().kind() != Kind.FOLD && isPassed(first)) {
        throw new InputException(
            "--not-done "
                + first.key()
                + ": --did tells of a later step, before which it was done: leave one of them out");
      }
    }
  }

  /** The steps that are meant: by number, or the first of its kind of the dough. */
  private List<Integer> indices(String words, Optional<Integer> dough) {
    String key = words.toLowerCase(Locale.ROOT).replaceFirst(" 1$", "");
    List<Integer> exact = indices(dough, each -> each.key().equals(key));
    return exact.isEmpty() && dough.isPresent()
        ? indices(dough, each -> Arguments.word(each.step().kind()).equals(key)).stream()
            .limit(1)
            .toList()
        : exact;
  }

  private List<Integer> indices(Optional<Integer> dough, Predicate<PlanStep> which) {
    return IntStream.range(0, steps.size())
        .filter(i -> steps.get(i).step().kind().handsOn() && which.test(steps.get(i)))
        .filter(i -> dough.isEmpty() || steps.get(i).isOf(dough.get()))
        .boxed()
        .toList();
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

  /** Whether a later step of the same dough is done, or the step itself. */
  private boolean isPassed(PlanStep step) {
    return steps.stream()
        .filter(each -> each.done() && isNotBefore(each, step))
        .map(each -> each.step().kind())
        // The oven may be switched on before or after all else.
        .anyMatch(kind -> kind != Kind.PREHEAT || kind == step.step().kind());
  }

  /** Whether it is said of a step that it was not done. */
  private boolean isSaidNotDone(PlanStep step) {
    return notDone.stream()
        .anyMatch(
            each ->
                each.step().kind() == step.step().kind()
                    && each.step().number() == step.step().number()
                    && each.day().doughs().equals(step.day().doughs()));
  }

  private void doneBeforeOthers() {
    Set<Integer> done = new HashSet<>();
    Set<Integer> inTheOven = new HashSet<>();
    for (int i = steps.size() - 1; i >= 0; i--) {
      PlanStep each = steps.get(i);
      List<Integer> doughs = each.day().doughs();
      Kind kind = each.step().kind();
      // The oven may be switched on before or after the loaves are shaped.
      Set<Integer> later = kind == Kind.PREHEAT ? inTheOven : done;
      boolean before = doughs.stream().anyMatch(later::contains) && !isSaidNotDone(each);
      if (each.done() || before) {
        steps.set(i, each.nowDone());
        if (kind != Kind.PREHEAT) {
          done.addAll(doughs);
        }
        if (kind.compareTo(Kind.BAKE) >= 0) {
          inTheOven.addAll(doughs);
        }
      }
    }
  }

  private IntStream doughs() {
    return IntStream.range(0, names.names().size());
  }

  private void check() {
    if (doughs().allMatch(this::isOut)) {
      throw new InputException("the bread is out of the oven: nothing is left to plan");
    }
    doughs().forEach(this::checkOrder);
  }

  private boolean isOut(int dough) {
    return steps.stream()
        .filter(each -> each.isOf(dough) && each.step().kind() == Kind.COOL)
        .allMatch(PlanStep::done);
  }

  private void checkOrder(int dough) {
    List<Double> fed = feedings(dough);
    if (!fed.equals(fed.stream().sorted().toList())) {
      throw new InputException(
          "--did: the stages of the starter "
              + (names.isOne() ? "" : "of '" + names.names().get(dough) + "' ")
              + "do not come one after the other: check the times");
    }
    double before = Double.NEGATIVE_INFINITY;
    for (Kind kind : List.of(Kind.MIX, Kind.SHAPE, Kind.BAKE)) {
      double hour = hour(dough, kind).orElse(before);
      if (hour < before) {
        throw new InputException(
            "--did: mixing, shaping and baking "
                + (names.isOne() ? "" : "of '" + names.names().get(dough) + "' ")
                + "do not come one after the other: check the times");
      }
      before = hour;
    }
  }

  /** Folds keep their distance from mixing; those before now were done, unless that is told. */
  private void moveFolds() {
    for (int i = 0; i < steps.size(); i++) {
      BakeStep step = steps.get(i).step();
      boolean asPlanned = step.equals(planned.get(i).step());
      int dough = steps.get(i).day().doughs().get(0);
      if (step.kind() == Kind.FOLD && asPlanned && !planned.get(i).done() && isMixed(dough)) {
        double hour = step.fromHour() + hour(dough, Kind.MIX).orElseThrow() - meantMixing(dough);
        boolean told = isSaidNotDone(planned.get(i)) || waits(planned.get(i));
        boolean done = steps.get(i).done() || hour < nowHour && !told;
        steps.set(i, steps.get(i).at(hour, done));
      }
    }
  }

  private double meantMixing(int dough) {
    return meant(dough, Kind.MIX)
        .orElseThrow(() -> new InputException("the plan of --again mixes nothing: plan it anew"));
  }

  private OptionalDouble meant(int dough, Kind kind) {
    return first(planned, each -> each.isOf(dough) && each.step().kind() == kind);
  }

  private static OptionalDouble first(List<PlanStep> steps, Predicate<PlanStep> which) {
    return steps.stream().filter(which).mapToDouble(each -> each.step().fromHour()).findFirst();
  }

  /** When a step of a dough was first done, if it was. */
  public OptionalDouble hour(int dough, Kind kind) {
    return first(steps, each -> each.done() && each.isOf(dough) && each.step().kind() == kind);
  }

  /** When the starter of a dough was fed: of one built in stages, for each that is done. */
  public List<Double> feedings(int dough) {
    return steps.stream()
        .filter(each -> each.done() && each.isOf(dough) && each.step().kind() == Kind.FEED)
        .sorted(Comparator.comparingInt(each -> each.step().number()))
        .map(each -> each.step().fromHour())
        .toList();
  }

  /** Whether a dough is mixed. */
  public boolean isMixed(int dough) {
    return hour(dough, Kind.MIX).isPresent();
  }

  /** How far the day of a dough that is mixed has come. */
  public Slipped slipped(int dough, PlanFile.Dough planned) {
    OptionalDouble in = coldHour(dough, Kind.BULK_INTO_COLD, nowHour);
    OptionalDouble out =
        in.isEmpty()
            ? in
            : coldHour(dough, Kind.BULK_OUT_OF_COLD, Math.max(nowHour, in.getAsDouble()));
    double mixed = hour(dough, Kind.MIX).orElseThrow();
    List<PlanStep> own = steps.stream().filter(each -> each.isOf(dough)).toList();
    return new Slipped(
        new BakeRoute(planned.starterPercent(), planned.doughCelsius(), mixed, in, out),
        feed(dough, planned, mixed),
        nowHour,
        hour(dough, Kind.SHAPE),
        intoColdHour(dough),
        hour(dough, Kind.PREHEAT),
        hour(dough, Kind.BAKE),
        (int) own.stream().filter(each -> each.done() && each.step().kind() == Kind.FOLD).count(),
        planned.proof(),
        planned.proofHours(),
        plannedBake(dough),
        own.stream()
            .filter(each -> !each.done() && isOfBulk(each.step().kind()) && !isPassed(each))
            .map(PlanStep::step)
            .toList());
  }

  /** Loaves that were to go into the cold from the bench did so, unless something else is said. */
  private OptionalDouble intoColdHour(int dough) {
    OptionalDouble done = hour(dough, Kind.LOAVES_INTO_COLD);
    OptionalDouble meant = meant(dough, Kind.LOAVES_INTO_COLD);
    if (meant.isEmpty() || done.isPresent() && !done.equals(meant)) {
      return done;
    }
    if (meant.getAsDouble() > meantInBasket(dough) + SAME_HOURS) {
      return done;
    }
    return isSaidNotDone(dough, Kind.LOAVES_INTO_COLD)
        ? OptionalDouble.empty()
        : hour(dough, Kind.SHAPE);
  }

  private double meantInBasket(int dough) {
    return planned.stream()
        .filter(each -> each.isOf(dough) && each.step().kind() == Kind.SHAPE)
        .mapToDouble(each -> each.step().toHour())
        .findFirst()
        .orElseThrow(() -> new InputException("the plan of --again shapes nothing: plan it anew"));
  }

  private boolean isSaidNotDone(int dough, Kind kind) {
    return notDone.stream().anyMatch(each -> each.isOf(dough) && each.step().kind() == kind);
  }

  private static boolean isOfBulk(Kind kind) {
    return kind.compareTo(Kind.MIX) > 0 && kind.compareTo(Kind.SHAPE) < 0;
  }

  private FeedChoice feed(int dough, PlanFile.Dough planned, double mixed) {
    FeedRatio ratio = planned.feed().orElseGet(() -> FeedRatio.oneTo(1, Share.ofPercent(100)));
    double fed = hour(dough, Kind.FEED).orElse(mixed - 1);
    return new FeedChoice(fed, mixed, ratio, mixed - fed, mixed - fed);
  }

  private OptionalDouble coldHour(int dough, Kind kind, double soonest) {
    return steps.stream()
        .filter(each -> each.isOf(dough) && each.step().kind() == kind)
        .mapToDouble(
            each ->
                each.done() ? each.step().fromHour() : Math.max(each.step().fromHour(), soonest))
        .findFirst();
  }

  /** When the first loaves of a dough were meant to be baked. */
  double plannedBake(int dough) {
    return meant(dough, Kind.BAKE)
        .orElseThrow(() -> new InputException("the plan of --again bakes nothing: plan it anew"));
  }
}
