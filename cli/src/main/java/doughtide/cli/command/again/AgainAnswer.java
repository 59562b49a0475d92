package doughtide.cli.command.again;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.cli.hand.Cautions;
import doughtide.cli.hand.LeaveSections;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.DayPlan;
import doughtide.core.day.StepMargin;
import doughtide.core.day.again.RestOfDay;
import doughtide.core.feeding.FeedRatio;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a slipped day has become.
 *
 * @param file the plan it was
 * @param options as typed, with what has changed
 * @param loavesBefore how many loaves were planned
 * @param day with what has changed
 * @param happened what has happened
 * @param rest what is left
 * @param readings of today that were taken into account
 * @param times the clock of the day
 */
public record AgainAnswer(
    PlanFile file,
    Map<String, String> options,
    int loavesBefore,
    BakeDay day,
    Happened happened,
    RestOfDay rest,
    long readings,
    ClockTimes times) {

  private static final int VERSION = 1;
  private static final String BENCH = "at-the-bench";
  private static final double SAME_HOURS = 2.5 / 60;

  private BakePlan plan() {
    return rest.plan();
  }

  /** The day as it is now, for charts and pages. */
  public DayPlan dayPlan() {
    return DayPlan.begun(plan(), steps().stream().map(PlanStep::step).toList());
  }

  /** All steps as they are now, ascending. */
  List<PlanStep> steps() {
    List<PlanStep> steps = new ArrayList<>();
    if (!happened.isMixed()) {
      return unmixedSteps();
    }
    for (PlanStep each : happened.steps()) {
      if (isBeforeShaping(each.step().kind()) && (each.done() || fits(each.step()))) {
        steps.add(each.at(Math.max(each.step().fromHour(), soonest(each)), each.done()));
      }
    }
    rest.steps().forEach(step -> steps.add(afterShaping(step)));
    steps.sort(Comparator.comparingDouble(each -> each.step().fromHour()));
    return steps;
  }

  /** What was done, and all of the plan that is new. */
  private List<PlanStep> unmixedSteps() {
    List<PlanStep> steps = new ArrayList<>();
    happened.steps().stream().filter(PlanStep::done).forEach(steps::add);
    List<String> done = steps.stream().map(PlanStep::key).toList();
    rest.steps().stream()
        .map(step -> new PlanStep(step, false))
        .filter(step -> !done.contains(step.key()))
        .forEach(steps::add);
    return steps;
  }

  private double soonest(PlanStep each) {
    return each.done() ? each.step().fromHour() : happened.nowHour();
  }

  private static boolean isBeforeShaping(Kind kind) {
    return kind.compareTo(Kind.SHAPE) < 0;
  }

  private boolean fits(BakeStep step) {
    return step.toHour() <= plan().bulkEndHour() + 1e-6;
  }

  private PlanStep afterShaping(BakeStep step) {
    OptionalDouble done = happened.hour(step.kind());
    boolean carried = step.kind() == Kind.LOAVES_INTO_COLD && step.fromHour() < happened.nowHour();
    boolean first = step.number() <= 1;
    PlanStep plan = new PlanStep(step, carried);
    return done.isPresent() && first ? plan.at(done.getAsDouble(), true) : plan;
  }

  private OptionalDouble planned(String key) {
    return happened.planned().stream()
        .filter(each -> each.key().equals(key))
        .mapToDouble(each -> each.step().fromHour())
        .findFirst();
  }

  /** The steps that were planned, not done, and are left out now. */
  private List<PlanStep> leftOut() {
    List<String> keys = steps().stream().map(PlanStep::key).toList();
    return happened.planned().stream().filter(each -> !keys.contains(each.key())).toList();
  }

  /** What stands in the calendar, with the number of this planning. */
  public List<DayCalendar.Entry> entries() {
    List<DayCalendar.Entry> entries = new ArrayList<>();
    steps().forEach(each -> entries.add(entry(each, false)));
    leftOut().forEach(each -> entries.add(entry(each, true)));
    entries.removeIf(entry -> entry.key().equals(PlanStep.key(Kind.READY, 0)));
    return entries;
  }

  private DayCalendar.Entry entry(PlanStep each, boolean cancelled) {
    BakeStep step = each.step();
    return new DayCalendar.Entry(
        each.key(), each.words(), detail(each), step.fromHour(), step.toHour(), cancelled);
  }

  private String detail(PlanStep each) {
    if (each.step().kind() == Kind.MIX && !each.done()) {
      return Words.temperature(plan().doughTemperature())
          + ", starter "
          + Words.percent(plan().starterPercent())
          + " of the flour added";
    }
    return each.step().kind() == Kind.SHAPE && !each.done()
        ? "when the jar has risen "
            + Words.percent(Math.rint(plan().shapeRise().percent()))
            + ", not by the clock"
        : "";
  }

  /** The answer. */
  public Answer answer() {
    Section.Builder body = Section.loose(Timeline.sinceMixing(Optional.empty()));
    body.word("zone", "", times.start().getZone().getId())
        .word("planId", "", file.planId())
        .number("readings", "", readings, Unit.COUNT)
        .number("replanned", "", file.replanned() + 1, Unit.COUNT);
    Section.Builder typed = body.section("options", "");
    options.forEach((option, text) -> typed.word(option, "", text));
    data(body.listing("plans", "").row());
    body.paragraph().say(right());
    table(body.listing("", "What is left"));
    if (happened.hour(Kind.SHAPE).isEmpty()) {
      body.paragraph()
          .say(
              "Shape when the jar has risen "
                  + Words.percent(Math.rint(plan().shapeRise().percent()))
                  + ", not by the clock.");
    }
    margins(body);
    leftOut().stream()
        .filter(each -> each.step().kind().handsOn())
        .forEach(each -> body.paragraph().say("Left out now: " + each.words() + "."));
    body.paragraph().cautions(List.of(Cautions.OVEN));
    return Answer.of("bake-day-again", VERSION, headline(), body)
        .withTable(
            () -> {
              Listing.Builder rows =
                  new Listing.Builder("steps", "", Timeline.sinceMixing(Optional.empty()));
              steps().forEach(each -> data(each, rows.row()));
              return rows.build();
            });
  }

  private void margins(Section.Builder body) {
    if (!plan().margins().isEmpty()) {
      Listing.Builder rows = body.listing("", "How much later each step may be");
      for (StepMargin each : plan().margins()) {
        rows.row()
            .say(" ", PlanStep.words(each.kind()))
            .say(" ", Words.duration(each.hours()))
            .say(" ", "then " + PlanStep.limit(each.limit()));
      }
    }
  }

  private String headline() {
    double before = happened.plannedBake();
    boolean same = Math.abs(plan().ovenHour() - before) < SAME_HOURS;
    return "Bake "
        + times.about(plan().ovenHour())
        + (same ? ", as planned: " : " instead of " + times.about(before) + ": ")
        + reasons()
        + ".";
  }

  private String reasons() {
    List<String> reasons = new ArrayList<>();
    if (day.loaves() != loavesBefore) {
      reasons.add(
          Words.counted(day.loaves(), "loaf").replace("loafs", "loaves")
              + " of "
              + Words.grams(day.piece().grams())
              + " instead of "
              + loavesBefore);
    }
    for (int i = 0; i < happened.steps().size(); i++) {
      PlanStep now = happened.steps().get(i);
      double later = now.step().fromHour() - happened.planned().get(i).step().fromHour();
      if (now.done() && now.step().kind() != Kind.FOLD && Math.abs(later) >= SAME_HOURS) {
        reasons.add(
            now.words()
                + " "
                + Words.duration(Math.abs(later))
                + (later > 0 ? " later" : " earlier")
                + " than planned");
      }
    }
    if (!Objects.equals(options.get(BENCH), file.options().get(BENCH))) {
      reasons.add("other hours at the bench");
    }
    if (!happened.isMixed()) {
      reasons.add("the dough is not mixed yet");
    }
    if (readings > 0) {
      reasons.add(Words.counted(readings, "reading") + " of today");
    }
    return reasons.isEmpty() ? "no step that is done was off its time" : String.join("; ", reasons);
  }

  private String right() {
    long tenths = (long) Math.floor(plan().goodShare() * 10 + 1e-9);
    return "All by this plan, "
        + LeaveSections.ofTen(tenths, "comes out right", "come out right")
        + "."
        + (tenths == 0 ? " Bake as soon as a loaf looks ready, and take it for what it is." : "");
  }

  private void table(Listing.Builder rows) {
    for (PlanStep each : steps()) {
      if (!each.done()) {
        OptionalDouble before = planned(each.key());
        boolean mixes = each.step().kind() == Kind.MIX;
        rows.row()
            .say(" ", each.words() + (mixes ? ", " + detail(each) : ""))
            .say("planned", before.isPresent() ? times.about(before.getAsDouble()) : "–")
            .say("now", times.about(each.step().fromHour()));
      }
    }
  }

  private void data(Section.Builder row) {
    Section.Builder dough = row.listing("doughs", "").row();
    dough
        .number("loaves", "", day.loaves(), Unit.COUNT)
        .number("pieceGrams", "", day.piece().grams(), Unit.GRAMS)
        .number("starterOfAddedFlourPercent", "", plan().starterPercent(), Unit.PERCENT)
        .number("doughCelsius", "", plan().doughTemperature().celsius(), Unit.CELSIUS)
        .number("shapeRisePercent", "", plan().shapeRise().percent(), Unit.PERCENT)
        .word("proof", "", plan().proofKind(), "")
        .number("proofHours", "", plan().proofHours(), Unit.HOURS)
        .at("ovenAt", "", plan().ovenHour(), times)
        .number("goodShare", "", plan().goodShare(), Unit.SHARE);
    file.feed().ifPresent(ratio -> feed(ratio, dough.section("feed", "").section("ratio", "")));
    Listing.Builder margins = dough.listing("margins", "");
    for (StepMargin each : plan().margins()) {
      margins
          .row()
          .word("step", "", PlanStep.words(each.kind()))
          .number("hours", "", each.hours(), Unit.HOURS)
          .word("limit", "", PlanStep.limit(each.limit()));
    }
    Listing.Builder rows = row.listing("steps", "");
    steps().forEach(each -> data(each, rows.row()));
  }

  private static void feed(FeedRatio ratio, Section.Builder row) {
    row.number("starter", "", ratio.starter(), Unit.NONE)
        .number("flour", "", ratio.flour(), Unit.NONE)
        .number("water", "", ratio.water(), Unit.NONE);
  }

  private void data(PlanStep each, Section.Builder row) {
    BakeStep step = each.step();
    row.word("step", "", each.words())
        .word("kind", "", Arguments.word(step.kind()))
        .number("number", "", step.number(), Unit.COUNT)
        .at("plannedFrom", "", planned(each.key()), times)
        .at("from", "", step.fromHour(), times)
        .at("to", "", step.toHour(), times)
        .flag("handsOn", "", step.kind().handsOn())
        .flag("done", "", each.done())
        .word("detail", "", detail(each));
  }
}
