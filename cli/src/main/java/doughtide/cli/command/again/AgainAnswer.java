package doughtide.cli.command.again;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.IngredientItems;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.cli.command.roster.StudentSections;
import doughtide.cli.command.stage.DayStages;
import doughtide.cli.hand.Cautions;
import doughtide.cli.hand.LeaveSections;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.day.StepMargin;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedRatio;
import doughtide.report.words.FeedWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What a slipped day has become.
 *
 * @param command that gives the answer
 * @param file the plan it was
 * @param options of all doughs as typed, with what has changed
 * @param happened what has happened
 * @param rest what is left, and what was done from shaping on
 * @param readings of today that were taken into account, one number a dough
 * @param absent students of a class who are not there
 * @param times the clock of the day
 */
public record AgainAnswer(
    String command,
    PlanFile file,
    Map<String, String> options,
    Happened happened,
    DayPlan rest,
    List<Long> readings,
    List<String> absent,
    ClockTimes times) {

  private static final int VERSION = 1;
  private static final String BENCH = "at-the-bench";
  private static final double SAME_HOURS = 2.5 / 60;
  private static final int MOST_NAMED = 3;

  private DayNames names() {
    return happened.names();
  }

  private BakePlan plan(int dough) {
    return rest.plans().get(dough);
  }

  private IntStream doughs() {
    return IntStream.range(0, rest.plans().size());
  }

  /** The day as it is now, for charts and pages. */
  public DayPlan dayPlan() {
    return rest.with(steps().stream().map(PlanStep::day).toList());
  }

  /** All steps as they are now, ascending: those that are done as they were. */
  List<PlanStep> steps() {
    List<PlanStep> steps = new ArrayList<>();
    happened.steps().stream().filter(PlanStep::done).forEach(steps::add);
    List<String> done = steps.stream().map(each -> names().key(each.day())).toList();
    rest.steps().stream()
        .filter(step -> !done.contains(names().key(step)))
        .forEach(step -> steps.add(new PlanStep(step, isOver(step))));
    steps.sort(Comparator.comparingDouble(each -> each.step().fromHour()));
    return steps;
  }

  /** Loaves that are shaped are carried into the cold, and those in the oven come out of it. */
  private boolean isOver(DayStep step) {
    return step.step().fromHour() < happened.nowHour() - 1e-6;
  }

  /**
   * When a step was planned for its first dough: that of its kind with the same place in order, of
   * folds that with the same number.
   */
  private OptionalDouble planned(PlanStep each) {
    int dough = each.day().doughs().get(0);
    List<PlanStep> before = same(happened.planned(), dough, each.step().kind());
    if (isFold(each)) {
      return before.stream()
          .filter(fold -> fold.step().number() == each.step().number())
          .mapToDouble(fold -> fold.step().fromHour())
          .findFirst();
    }
    List<PlanStep> now = same(steps(), dough, each.step().kind());
    int place = now.indexOf(each);
    return place >= 0 && place < before.size()
        ? OptionalDouble.of(before.get(place).step().fromHour())
        : OptionalDouble.empty();
  }

  private static List<PlanStep> same(List<PlanStep> steps, int dough, Kind kind) {
    return steps.stream().filter(each -> each.isOf(dough) && each.step().kind() == kind).toList();
  }

  /** The steps that were planned, not done, and are left out now. */
  private List<PlanStep> leftOut() {
    List<String> keys = steps().stream().map(each -> names().key(each.day())).toList();
    return happened.planned().stream()
        .filter(each -> !keys.contains(names().key(each.day())))
        .toList();
  }

  /** What stands in the calendar, with the number of this planning. */
  public List<DayCalendar.Entry> entries() {
    List<DayCalendar.Entry> entries = new ArrayList<>();
    steps().forEach(each -> entries.add(entry(each, false)));
    leftOut().forEach(each -> entries.add(entry(each, true)));
    entries.removeIf(entry -> entry.key().startsWith(PlanStep.key(Kind.READY, 0)));
    return entries;
  }

  private DayCalendar.Entry entry(PlanStep each, boolean cancelled) {
    return new DayCalendar.Entry(
        names().key(each.day()),
        names().summary(each.words(), each.day()),
        detail(each),
        each.step().fromHour(),
        each.step().toHour(),
        cancelled);
  }

  private String detail(PlanStep each) {
    BakePlan plan = plan(each.day().doughs().get(0));
    if (each.step().kind() == Kind.MIX && !each.done()) {
      return MixText.mix(plan)
          + "; starter "
          + Words.percent(plan.starterPercent())
          + " of the flour added";
    }
    if (each.step().kind() == Kind.AUTOLYSE && !each.done()) {
      return MixText.water(plan);
    }
    if (each.step().kind() == Kind.FEED && !each.done()) {
      return PlanStep.detail(rest, each.day());
    }
    return each.step().kind() == Kind.SHAPE && !each.done() ? ShapeRule.detail(plan) : "";
  }

  /**
   * The answer.
   *
   * @param language of students for whom the roster names none
   */
  public Answer answer(doughtide.report.words.Words language) {
    Section.Builder body = Section.loose(Timeline.sinceMixing(Optional.empty()));
    body.word("zone", "", times.start().getZone().getId())
        .number("hands", "", names().hands(), Unit.COUNT)
        .word("planId", "", file.planId())
        .number("readings", "", allReadings(), Unit.COUNT)
        .number("replanned", "", file.replanned() + 1, Unit.COUNT);
    texts(options, body.section("options", ""));
    if (file.doughs().stream().anyMatch(dough -> !dough.options().isEmpty())) {
      own(file.doughs().stream().map(PlanFile.Dough::options).toList(), body);
    }
    data(body.listing("plans", "").row());
    doughs().forEach(dough -> right(dough, body));
    table(body.listing("", "What is left"));
    needs(body);
    doughs().filter(dough -> !happened.isMixed(dough)).forEach(dough -> weigh(dough, body));
    stages().tables(rest, dough -> !happened.isMixed(dough), body);
    doughs().forEach(dough -> shape(dough, body));
    margins(body);
    leftOut().stream()
        .filter(each -> each.step().kind().handsOn())
        .forEach(each -> body.paragraph().say("Left out now: " + summary(each) + "."));
    StudentSections.absent(absent, body);
    doughs()
        .filter(
            dough ->
                !absent.isEmpty()
                    && file.students().stream().noneMatch(each -> each.dough() == dough))
        .forEach(
            dough ->
                body.paragraph()
                    .say(
                        "Nobody of the roster makes "
                            + names().names().get(dough)
                            + " now; it is mixed, and planned on."));
    StudentSections.add(file.students(), names().names(), dayPlan(), times, language, body);
    body.paragraph().cautions(List.of(Cautions.OVEN));
    return Answer.of(command + "-again", VERSION, headline(), body)
        .withTable(
            () -> {
              Listing.Builder rows =
                  new Listing.Builder("steps", "", Timeline.sinceMixing(Optional.empty()));
              steps().forEach(each -> data(each, rows.row()));
              return rows.build();
            });
  }

  private DayStages stages() {
    return new DayStages(names().names(), times);
  }

  private long allReadings() {
    return readings.stream().mapToLong(each -> each).sum();
  }

  /** The options that each dough has of its own, as typed. */
  public static void own(List<Map<String, String>> own, Section.Builder body) {
    if (!own.isEmpty()) {
      Listing.Builder rows = body.listing("doughOptions", "");
      own.forEach(typed -> texts(typed, rows.row()));
    }
  }

  private static void texts(Map<String, String> texts, Section.Builder to) {
    texts.forEach((option, text) -> to.word(option, "", text));
  }

  private String summary(PlanStep each) {
    return names().isOne()
        ? each.words()
        : each.words() + " of " + names().doughs(each.day().doughs());
  }

  private void shape(int dough, Section.Builder body) {
    if (happened.hour(dough, Kind.SHAPE).isEmpty()) {
      body.paragraph()
          .say(new ShapeRule(names(), times, happened.nowHour()).sentence(dough, plan(dough)));
    }
  }

  private void margins(Section.Builder body) {
    if (rest.plans().stream().allMatch(plan -> plan.margins().isEmpty())) {
      return;
    }
    Listing.Builder rows = body.listing("", "How much later each step may be");
    doughs()
        .forEach(
            dough ->
                plan(dough)
                    .margins()
                    .forEach(
                        each ->
                            rows.row()
                                .say(" ", of(dough, PlanStep.words(each.kind())))
                                .say(" ", Words.duration(each.hours()))
                                .say(" ", "then " + PlanStep.limit(each.limit()))));
  }

  private String of(int dough, String words) {
    return names().isOne() ? words : names().names().get(dough) + ": " + words;
  }

  private String headline() {
    List<Integer> moved =
        doughs().filter(dough -> Math.abs(later(dough)) >= SAME_HOURS).boxed().toList();
    return new ShapeRule(names(), times, happened.nowHour()).overdue(rest.plans())
        + "Bake "
        + (names().isOne() ? oneBake() : bakes(moved))
        + lateBread().words()
        + ": "
        + reasons()
        + ".";
  }

  private LateBread lateBread() {
    return new LateBread(rest.plans(), steps(), names(), times);
  }

  private double later(int dough) {
    return plan(dough).ovenHour() - happened.plannedBake(dough);
  }

  private String oneBake() {
    return times.about(plan(0).ovenHour())
        + (Math.abs(later(0)) < SAME_HOURS ? ", as planned" : instead(0));
  }

  private String instead(int dough) {
    return " instead of " + times.about(happened.plannedBake(dough));
  }

  private String bakes(List<Integer> moved) {
    if (moved.isEmpty()) {
      return "all as planned";
    }
    String some =
        moved.stream()
            .limit(MOST_NAMED)
            .map(
                dough ->
                    names().before(dough) + times.about(plan(dough).ovenHour()) + instead(dough))
            .collect(Collectors.joining(", "));
    int more = moved.size() - MOST_NAMED;
    return some
        + (more > 0 ? ", " + more + " more at other hours" : "")
        + (moved.size() < rest.plans().size() ? ", the others as planned" : "");
  }

  private String reasons() {
    List<String> reasons = new ArrayList<>();
    doughs().forEach(dough -> loaves(dough).ifPresent(reasons::add));
    for (int i = 0; i < happened.steps().size(); i++) {
      PlanStep now = happened.steps().get(i);
      double later = now.step().fromHour() - happened.planned().get(i).step().fromHour();
      if (now.done() && !isFold(now) && Math.abs(later) >= SAME_HOURS) {
        reasons.add(
            summary(now)
                + " "
                + Words.duration(Math.abs(later))
                + (later > 0 ? " later" : " earlier")
                + " than planned");
      }
    }
    reasons.addAll(notDone());
    if (!Objects.equals(options.get(BENCH), file.options().get(BENCH))) {
      reasons.add("other hours at the bench");
    }
    doughs()
        .filter(dough -> !happened.isMixed(dough))
        .forEach(
            dough ->
                reasons.add(
                    (names().isOne() ? "the dough" : names().names().get(dough))
                        + " is not mixed yet"
                        + (change(dough).words().isEmpty()
                            ? ""
                            : ", its recipe changes: weigh anew")));
    if (!absent.isEmpty()) {
      reasons.add("absent: " + String.join(", ", absent));
    }
    if (allReadings() > 0) {
      reasons.add(Words.counted(allReadings(), "reading") + " of today");
    }
    return reasons.isEmpty() ? notDoneYet() : String.join("; ", reasons);
  }

  /** The first step still to come that was meant for before now, if there is any. */
  private String notDoneYet() {
    return steps().stream()
        .filter(each -> !each.done() && each.step().kind().handsOn())
        .filter(each -> planned(each).orElse(happened.nowHour()) < happened.nowHour())
        .findFirst()
        .map(each -> summary(each) + " is not done yet, it was meant for " + meant(each))
        .orElse("no step that is done was off its time");
  }

  private String meant(PlanStep each) {
    return times.about(planned(each).orElseThrow());
  }

  /** What has become of steps that were not done; that a dough is not mixed is said of all. */
  private List<String> notDone() {
    List<PlanStep> still =
        happened.notDone().stream().filter(each -> each.step().kind() != Kind.MIX).toList();
    List<String> said = new ArrayList<>();
    for (PlanStep each : still) {
      String key = names().key(each.day());
      steps().stream()
          .filter(now -> names().key(now.day()).equals(key))
          .map(now -> times.about(now.step().fromHour()))
          .forEach(hour -> said.add(summary(each) + " was not done, it comes " + hour));
    }
    still.stream()
        .filter(AgainAnswer::isFold)
        .map(each -> each.day().doughs())
        .distinct()
        .forEach(doughs -> foldsLeftOut(doughs).ifPresent(said::add));
    return said;
  }

  private Optional<String> foldsLeftOut(List<Integer> doughs) {
    List<String> folds =
        leftOut().stream()
            .filter(each -> isFold(each) && each.day().doughs().equals(doughs))
            .map(PlanStep::words)
            .toList();
    String whose = names().isOne() ? "" : " of " + names().doughs(doughs);
    return folds.isEmpty()
        ? Optional.empty()
        : Optional.of(
            String.join(", ", folds)
                + whose
                + (folds.size() == 1 ? " is left out" : " are left out"));
  }

  private static boolean isFold(PlanStep each) {
    return each.step().kind() == Kind.FOLD;
  }

  private Optional<String> loaves(int dough) {
    BakeDay day = plan(dough).day();
    int before = file.doughs().get(dough).loaves();
    return day.loaves() == before
        ? Optional.empty()
        : Optional.of(
            (names().isOne() ? "" : names().names().get(dough) + " ")
                + Words.counted(day.loaves(), "loaf").replace("loafs", "loaves")
                + " of "
                + Words.grams(day.piece().grams())
                + " instead of "
                + before);
  }

  private void right(int dough, Section.Builder body) {
    long tenths = (long) Math.floor(plan(dough).goodShare() * 10 + 1e-9);
    body.paragraph()
        .say(
            (names().isOne()
                    ? "All by this plan"
                    : names().names().get(dough) + ", all by this plan")
                + ": "
                + LeaveSections.ofTen(tenths, "comes out right", "come out right")
                + "."
                + (tenths == 0
                    ? " Bake as soon as a loaf looks ready, and take it for what it is."
                    : ""));
  }

  private void table(Listing.Builder rows) {
    for (PlanStep each : steps()) {
      if (!each.done()) {
        OptionalDouble before = planned(each);
        rows.row()
            .say(" ", names().summary(each.words(), each.day()))
            .say("planned", before.isPresent() ? times.about(before.getAsDouble()) : "–")
            .say("now", times.about(each.step().fromHour()));
      }
    }
  }

  /** What is still to be fed and mixed, and how. */
  private void needs(Section.Builder body) {
    Section.Builder lines = body.paragraph();
    steps().stream()
        .filter(each -> each.step().kind().compareTo(Kind.MIX) <= 0 && !each.done())
        .filter(each -> !detail(each).isEmpty())
        .forEach(
            each -> lines.say(names().summary(each.words(), each.day()) + "; " + detail(each)));
  }

  /** What to weigh for a dough that is still to be mixed, and what of its recipe has changed. */
  private void weigh(int dough, Section.Builder body) {
    Section.Builder lines = body.paragraph();
    String whose = names().isOne() ? "" : names().names().get(dough) + ": ";
    lines.say(whose + Words.weigh(plan(dough).ingredients()));
    String change = change(dough).words();
    if (!change.isEmpty()) {
      lines.say(
          whose
              + "The recipe is another than planned, so weigh by this: "
              + change
              + mixedAnew(dough)
              + ".");
    }
    MixText.note(plan(dough)).ifPresent(said -> lines.say(whose + said));
  }

  private RecipeChange change(int dough) {
    boolean staged = plan(dough).day().stages().isPresent();
    return new RecipeChange(
        file.doughs().get(dough), plan(dough), staged ? Optional.empty() : feed(dough));
  }

  private String mixedAnew(int dough) {
    return same(steps(), dough, Kind.MIX).stream()
        .findFirst()
        .filter(each -> Math.abs(laterThanPlanned(each)) >= SAME_HOURS)
        .map(
            each ->
                "; such a dough is mixed "
                    + times.about(each.step().fromHour())
                    + " instead of "
                    + meant(each))
        .orElse("");
  }

  private double laterThanPlanned(PlanStep each) {
    double now = each.step().fromHour();
    return now - planned(each).orElse(now);
  }

  private void data(Section.Builder row) {
    Listing.Builder rows = row.listing("doughs", "");
    doughs().forEach(dough -> data(dough, rows.row()));
    Listing.Builder steps = row.listing("steps", "");
    steps().forEach(each -> data(each, steps.row()));
  }

  private void data(int dough, Section.Builder row) {
    BakePlan plan = plan(dough);
    PlanFile.Dough before = file.doughs().get(dough);
    row.word("name", "", before.name())
        .number("loaves", "", plan.day().loaves(), Unit.COUNT)
        .number("pieceGrams", "", plan.day().piece().grams(), Unit.GRAMS)
        .number("starterOfAddedFlourPercent", "", plan.starterPercent(), Unit.PERCENT)
        .number("doughCelsius", "", plan.doughTemperature().celsius(), Unit.CELSIUS)
        .number("shapeRisePercent", "", plan.shapeRise().percent(), Unit.PERCENT)
        .flag("shapeByJar", "", plan.overdueJar().isEmpty())
        .word("proof", "", plan.proofKind(), "")
        .number("proofHours", "", plan.proofHours(), Unit.HOURS)
        .at("ovenAt", "", plan.ovenHour(), times)
        .number("laterThanWantedHours", "", lateBread().hours(dough), Unit.HOURS)
        .number("goodShare", "", plan.goodShare(), Unit.SHARE);
    plan.overdueJar()
        .ifPresent(jar -> row.number("overdueJarPercent", "", jar.percent(), Unit.PERCENT));
    if (plan.day().stages().isPresent() && !happened.isMixed(dough)) {
      stages().data(plan, row);
    } else {
      feed(dough).ifPresent(ratio -> feed(ratio, dough, row.section("feed", "")));
    }
    if (!happened.isMixed(dough)) {
      mixing(dough, row);
    }
    Listing.Builder margins = row.listing("margins", "");
    for (StepMargin each : plan.margins()) {
      margins
          .row()
          .word("step", "", PlanStep.words(each.kind()))
          .number("hours", "", each.hours(), Unit.HOURS)
          .word("limit", "", PlanStep.limit(each.limit()));
    }
  }

  /** As it was fed, or is to be. */
  private Optional<FeedRatio> feed(int dough) {
    boolean fed = happened.hour(dough, Kind.FEED).isPresent();
    return fed || file.doughs().get(dough).feed().isEmpty()
        ? file.doughs().get(dough).feed()
        : Optional.of(plan(dough).feed().ratio());
  }

  private void feed(FeedRatio ratio, int dough, Section.Builder row) {
    row.section("ratio", "")
        .number("starter", "", ratio.starter(), Unit.NONE)
        .number("flour", "", ratio.flour(), Unit.NONE)
        .number("water", "", ratio.water(), Unit.NONE);
    if (happened.hour(dough, Kind.FEED).isEmpty()) {
      FeedAmounts amounts = plan(dough).feedAmounts();
      row.word("ratioInWords", "", FeedWords.english().parts(ratio))
          .number("starterGrams", "", amounts.starterGrams(), Unit.GRAMS)
          .number("flourGrams", "", amounts.flourGrams(), Unit.GRAMS)
          .number("waterGrams", "", amounts.waterGrams(), Unit.GRAMS);
    }
  }

  private void mixing(int dough, Section.Builder row) {
    BakePlan plan = plan(dough);
    row.number("waterCelsius", "", MixText.waterCelsius(plan), Unit.CELSIUS)
        .word("recipeChange", "", change(dough).words());
    IngredientItems.add(plan.ingredients(), row);
  }

  private void data(PlanStep each, Section.Builder row) {
    BakeStep step = each.step();
    row.word("step", "", each.words())
        .texts("doughs", "", each.day().doughs().stream().map(names().names()::get).toList())
        .word("person", "", DayNames.person(each.day()))
        .word("kind", "", Arguments.word(step.kind()))
        .number("number", "", step.number(), Unit.COUNT)
        .at("plannedFrom", "", planned(each), times)
        .at("from", "", step.fromHour(), times)
        .at("to", "", step.toHour(), times)
        .flag("handsOn", "", step.kind().handsOn())
        .flag("done", "", each.done())
        .word("detail", "", detail(each));
  }
}
