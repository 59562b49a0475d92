package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.IngredientItems;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.cli.command.again.AgainAnswer;
import doughtide.cli.command.again.DayNames;
import doughtide.cli.command.again.MixText;
import doughtide.cli.command.bench.BenchSections;
import doughtide.cli.command.roster.RosterGroup;
import doughtide.cli.command.roster.StudentSections;
import doughtide.cli.command.stage.DayStages;
import doughtide.cli.hand.Cautions;
import doughtide.cli.options.ProofOptions;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.DayAnswer;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.day.OvenLoad;
import doughtide.core.day.StepMargin;
import doughtide.core.day.bench.BenchBatches;
import doughtide.core.dough.Ingredients;
import doughtide.core.dough.Starter;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.forecast.DoughWarnings;
import doughtide.core.forecast.Warning;
import doughtide.report.words.FeedWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The plans of a day as an answer: of one dough each with its windows and margins, of several one
 * timeline, the oven and a row for each dough.
 */
final class DaySections {

  private static final int VERSION = 2;
  private static final Timeline NO_TIMELINE = Timeline.sinceMixing(Optional.empty());

  private final String command;
  private final DayOptions options;
  private final DayAnswer found;
  private final List<DayText> texts;
  private final ClockTimes times;
  private final doughtide.report.words.Words language;

  /**
   * @param language of students for whom the roster names none
   */
  DaySections(
      String command, DayOptions options, DayAnswer found, doughtide.report.words.Words language) {
    this.command = command;
    this.options = options;
    this.found = found;
    this.language = language;
    this.texts = found.days().stream().map(day -> new DayText(options, day)).toList();
    this.times = options.clock().times();
  }

  Answer answer() {
    Section.Builder body = Section.loose(NO_TIMELINE);
    body.at("readyAt", "", options.clock().readyHour(), times)
        .word("zone", "", options.clock().readyAt().getZone().getId())
        .number("hands", "", options.hands(), Unit.COUNT)
        .number("ovenCapacity", "", first().oven().loaves(), Unit.COUNT)
        .flag("searchComplete", "", found.complete());
    body.word("planId", "", options.planId()).number("replanned", "", 0, Unit.COUNT);
    Section.Builder typed = body.section("options", "");
    options.typed().forEach((option, text) -> typed.word(option, "", text));
    AgainAnswer.own(options.own(), body);
    found.choice().ifPresent(choice -> reason(choice, body.section("reason", "")));
    Listing.Builder plans = body.listing("plans", "");
    for (int i = 0; i < texts.size(); i++) {
      data(texts.get(i), plans.row());
      page(i, body);
    }
    StudentSections.absent(options.absent(), body);
    StudentSections.add(
        RosterGroup.students(options.groups()), options.names(), best(), times, language, body);
    if (!found.complete()) {
      body.paragraph().say("Note: the search was ended by its limit; there may be better plans.");
    }
    times
        .clockChange(options.clock().readyHour())
        .ifPresent(said -> body.paragraph().say("Note: " + said + "."));
    additions(body);
    understood(body.section("", "Understood"));
    body.paragraph().cautions(List.of(Cautions.OVEN));
    return Answer.of(command, VERSION, headline(), body).withTable(this::table);
  }

  private static void reason(DayAnswer.Choice choice, Section.Builder row) {
    row.word("criterion", "", Arguments.word(choice.criterion()))
        .number("value", "", choice.value(), Unit.NONE)
        .number("other", "", choice.other(), Unit.NONE)
        .word("text", "", DayText.choice(choice));
  }

  private void saysWhy(Section.Builder to) {
    found.choice().ifPresent(choice -> to.say(DayText.choice(choice)));
  }

  /** What the model does not cover of what is kneaded in. */
  private void additions(Section.Builder body) {
    List<Warning> warnings =
        options.doughs().stream()
            .flatMap(dough -> DoughWarnings.ofContents(dough.dough()).stream())
            .distinct()
            .toList();
    if (!warnings.isEmpty()) {
      body.warnings(warnings);
    }
  }

  private BakeDay first() {
    return options.doughs().get(0);
  }

  private boolean isOneDough() {
    return options.doughs().size() == 1;
  }

  private String headline() {
    DayStep first = best().steps().get(0);
    return options.title()
        + ": begin "
        + times.about(first.step().fromHour())
        + " ("
        + DayText.step(first.step())
        + "). Margin "
        + Words.duration(best().marginHours())
        + ". "
        + leastSure();
  }

  /** How many doughs come out right, of the dough of which the fewest do. */
  private String leastSure() {
    List<BakePlan> plans = best().plans();
    BakePlan least =
        plans.stream().min(Comparator.comparingDouble(BakePlan::goodShare)).orElseThrow();
    String whose =
        isOneDough()
            ? ""
            : "Of '" + options.names().get(plans.indexOf(least)) + "', the least sure, ";
    return whose + DayText.doughsRight(least) + " by the clock alone: shape by the jar.";
  }

  private DayPlan best() {
    return found.days().get(0);
  }

  private void data(DayText text, Section.Builder row) {
    DayPlan day = text.day();
    BakePlan tight = day.plans().get(day.tightDough());
    row.number("marginHours", "", day.marginHours(), Unit.HOURS)
        .word("tightStep", "", DayText.step(tight.tight().kind()))
        .word("loosening", "", text.loosening());
    Listing.Builder doughs = row.listing("doughs", "");
    for (int i = 0; i < day.plans().size(); i++) {
      Section.Builder dough = doughs.row();
      dough(options.names().get(i), day.plans().get(i), dough);
      if (BenchSections.matters(day, i, options.handling())) {
        BenchSections.data(BenchSections.of(day, i, options.handling()), times, dough);
      }
    }
    Listing.Builder steps = row.listing("steps", "");
    for (DayStep each : day.steps()) {
      Section.Builder step = steps.row();
      step(text, each, step);
      step.word("kind", "", Arguments.word(each.step().kind()))
          .number("number", "", each.step().number(), Unit.COUNT);
    }
    loads(day, row.listing("ovenLoads", ""));
  }

  private void dough(String name, BakePlan plan, Section.Builder row) {
    row.word("name", "", name)
        .word("flour", "", plan.dough().flour().name())
        .number("hydrationPercent", "", plan.dough().hydration().percent(), Unit.PERCENT)
        .word("starterFlour", "", plan.day().dough().starter().flour().name())
        .word("starterCondition", "", Arguments.word(plan.day().dough().starter().condition()))
        .number("loaves", "", plan.day().loaves(), Unit.COUNT)
        .number("pieceGrams", "", plan.day().piece().grams(), Unit.GRAMS)
        .number("doughCelsius", "", plan.doughTemperature().celsius(), Unit.CELSIUS)
        .number("waterCelsius", "", MixText.waterCelsius(plan), Unit.CELSIUS)
        .number("starterOfAddedFlourPercent", "", plan.starterPercent(), Unit.PERCENT)
        .number(
            "prefermentedFlourPercent", "", 100 * plan.dough().prefermentedFlour(), Unit.PERCENT)
        .at("mixedAt", "", plan.mixHour(), times)
        .flag("bulkPartlyCold", "", plan.bulkColdFrom().isPresent())
        .number("shapeRisePercent", "", plan.shapeRise().percent(), Unit.PERCENT);
    ClockTimes fromMixing = ClockTimes.from(times.after(plan.mixHour()));
    row.section("jar", "", Timeline.sinceMixing(Optional.of(fromMixing)))
        .window(Section.HERE, "", plan.shapeWindow().plus(-plan.mixHour()));
    row.word("proof", "", plan.proofKind(), "")
        .number("proofHours", "", plan.proofHours(), Unit.HOURS)
        .at("ovenAt", "", plan.ovenHour(), times)
        .number("goodShare", "", plan.goodShare(), Unit.SHARE)
        .number("marginHours", "", plan.marginHours(), Unit.HOURS)
        .word("tightStep", "", DayText.step(plan.tight().kind()));
    amounts(plan, row);
    Listing.Builder margins = row.listing("margins", "");
    for (StepMargin each : plan.margins()) {
      margins
          .row()
          .word("step", "", DayText.step(each.kind()))
          .number("hours", "", each.hours(), Unit.HOURS)
          .word("limit", "", DayText.limit(each.limit()));
    }
  }

  private void amounts(BakePlan plan, Section.Builder row) {
    IngredientItems.add(plan.ingredients(), row);
    if (plan.day().starterInColdHours().isPresent()) {
      return;
    }
    if (plan.day().stages().isPresent()) {
      stages().data(plan, row);
      return;
    }
    FeedRatio ratio = plan.feed().ratio();
    FeedAmounts amounts = plan.feedAmounts();
    Section.Builder feed = row.section("feed", "");
    feed.section("ratio", "")
        .number("starter", "", ratio.starter(), Unit.NONE)
        .number("flour", "", ratio.flour(), Unit.NONE)
        .number("water", "", ratio.water(), Unit.NONE);
    feed.word("ratioInWords", "", FeedWords.english().parts(ratio))
        .number("starterGrams", "", amounts.starterGrams(), Unit.GRAMS)
        .number("flourGrams", "", amounts.flourGrams(), Unit.GRAMS)
        .number("waterGrams", "", amounts.waterGrams(), Unit.GRAMS);
  }

  private DayStages stages() {
    return new DayStages(options.names(), times);
  }

  private void step(DayText text, DayStep step, Section.Builder row) {
    row.word("step", "", DayText.step(step.step()))
        .texts("doughs", "", step.doughs().stream().map(options.names()::get).toList())
        .word("person", "", DayNames.person(step))
        .at("from", "", step.step().fromHour(), times)
        .at("to", "", step.step().toHour(), times)
        .flag("handsOn", "", step.step().kind().handsOn())
        .word("detail", "", text.detail(step));
  }

  private void loads(DayPlan day, Listing.Builder loads) {
    for (OvenLoad load : day.loads()) {
      Section.Builder row =
          loads
              .row()
              .at("from", "", load.fromHour(), times)
              .at("to", "", load.toHour(), times)
              .number("loaves", "", load.loaves(), Unit.COUNT);
      Listing.Builder portions = row.listing("portions", "");
      for (OvenLoad.Portion each : load.portions()) {
        portions
            .row()
            .word("dough", "", options.names().get(each.dough()))
            .number("loaves", "", each.loaves(), Unit.COUNT);
      }
    }
  }

  /** A row for each step of each plan. */
  private Listing table() {
    Listing.Builder rows = new Listing.Builder("steps", "", NO_TIMELINE);
    for (int i = 0; i < texts.size(); i++) {
      for (DayStep step : texts.get(i).day().steps()) {
        step(texts.get(i), step, rows.row().number("plan", "", i + 1, Unit.COUNT));
      }
    }
    return rows.build();
  }

  private void page(int number, Section.Builder body) {
    DayText text = texts.get(number);
    if (isOneDough()) {
      onePage(number, text, body);
    } else {
      timeline(text, body.listing("", "The day"));
      stages().tables(text.day(), dough -> true, body);
      oven(text, body.listing("", "Oven"));
      doughs(text, body);
      weigh(text, body.listing("", "Weigh (starter in per cent of the flour added)"));
      body.paragraph().say(text.tight());
      saysWhy(body.paragraph());
    }
    bench(text, body);
  }

  /** What it costs that loaves are shaped and baked one after another. */
  private void bench(DayText text, Section.Builder body) {
    for (int i = 0; i < text.day().plans().size(); i++) {
      if (BenchSections.matters(text.day(), i, options.handling())) {
        String whose = isOneDough() ? "" : options.names().get(i) + ": ";
        BenchBatches bench = BenchSections.of(text.day(), i, options.handling());
        body.paragraph().say(whose + BenchSections.words(bench, times));
      }
    }
  }

  private void onePage(int number, DayText text, Section.Builder body) {
    BakePlan plan = text.day().plans().get(0);
    body.section("", "Plan " + (number + 1) + " of " + texts.size() + ": " + DayText.kind(plan))
        .say(
            "Margin "
                + Words.duration(plan.marginHours())
                + "; all by plan, "
                + DayText.doughsRight(plan)
                + ". "
                + text.tight());
    if (number == 0) {
      saysWhy(body.paragraph());
    }
    timeline(text, body.paragraph().listing("", ""));
    stages().tables(text.day(), dough -> true, body);
    Section.Builder rest = body.paragraph();
    rest.say(
            Words.weigh(plan.ingredients())
                + " Starter "
                + Words.percent(plan.starterPercent())
                + " of the flour added = "
                + Words.percent(100 * plan.dough().prefermentedFlour())
                + " prefermented flour.")
        .say(DayText.strength(plan));
    MixText.note(plan).ifPresent(rest::say);
    margins(plan, body);
  }

  private void margins(BakePlan plan, Section.Builder body) {
    body.paragraph()
        .say(
            "The jar is there between "
                + plan.shapeWindow().early().stream().mapToObj(times::about).findFirst().orElse("–")
                + " and "
                + plan.shapeWindow().late().stream()
                    .mapToObj(times::about)
                    .findFirst()
                    .orElse("later")
                + " (8 doughs in 10). How much later each step may be:");
    Listing.Builder rows = body.paragraph().listing("", "");
    for (StepMargin each : plan.margins()) {
      rows.row()
          .say(" ", DayText.step(each.kind()))
          .say(" ", Words.duration(each.hours()))
          .say(" ", "then " + DayText.limit(each.limit()));
    }
  }

  private void timeline(DayText text, Listing.Builder rows) {
    for (DayStep step : text.day().steps()) {
      String detail = text.detail(step);
      String whose = isOneDough() ? "" : ": " + text.names().doughs(step.doughs());
      String rest = detail.isEmpty() ? "" : (isOneDough() ? ": " : "; ") + detail;
      Section.Builder row = rows.row().say(" ", times.about(step.step().fromHour()));
      if (options.hands() > 1) {
        row.say(" ", DayNames.person(step));
      }
      row.say(" ", DayText.step(step.step()) + whose + rest);
    }
  }

  private void oven(DayText text, Listing.Builder rows) {
    for (OvenLoad load : text.day().loads()) {
      rows.row()
          .say(" ", span(load.fromHour(), load.toHour()))
          .say(" ", DayText.loaves(load.loaves()))
          .say(" ", text.portions(load));
    }
  }

  private String span(double from, double to) {
    String end = times.about(to);
    return times.about(from) + "–" + end.substring(end.indexOf(' ') + 1);
  }

  private void doughs(DayText text, Section.Builder body) {
    Listing.Builder rows =
        body.listing(
            "", "Doughs; margin: how much later the tightest step of each may be, see --help");
    for (int i = 0; i < text.day().plans().size(); i++) {
      BakePlan plan = text.day().plans().get(i);
      rows.row()
          .say(" ", options.names().get(i))
          .say("dough", Words.rounded(plan.doughTemperature().celsius(), 1) + " °C")
          .say("starter", Words.percent(plan.starterPercent()))
          .say("proof", DayText.proof(plan))
          .say("right", DayText.right(plan))
          .say("margin", Words.duration(plan.marginHours()))
          .say("tightest", Arguments.word(plan.tight().kind()));
    }
  }

  private void weigh(DayText text, Listing.Builder rows) {
    for (int i = 0; i < text.day().plans().size(); i++) {
      Ingredients weigh = text.day().plans().get(i).ingredients();
      rows.row()
          .say(" ", options.names().get(i))
          .say("flour", Words.grams(weigh.flourGrams()))
          .say("water", Words.grams(weigh.waterGrams()))
          .say("starter", Words.grams(weigh.starterGrams()))
          .say("salt", Words.grams(weigh.saltGrams()) + Words.additions(weigh));
    }
  }

  private void understood(Section.Builder to) {
    BakeDay first = first();
    to.say(
        "Bread ready by",
        times.at(options.clock().readyHour()) + ", " + options.clock().readyAt().getZone().getId());
    int loaves = options.doughs().stream().mapToInt(BakeDay::loaves).sum();
    if (isOneDough()) {
      to.say(
          "Loaves",
          first.loaves()
              + " of "
              + Words.grams(first.piece().grams())
              + ", "
              + first.form().key()
              + first.shaping().map(how -> ", " + how.key()).orElse("")
              + "; "
              + first.dough().flour().name()
              + ", hydration "
              + Words.percent(first.dough().hydration())
              + ", salt "
              + Words.percent(first.dough().salt()));
    } else {
      to.say("Doughs", options.doughs().size() + ", " + DayText.loaves(loaves) + " in all")
          .say(
              "Oven",
              DayText.loaves(first.oven().loaves())
                  + " at once, baked "
                  + Words.duration(first.oven().bakeHours()))
          .say("Hands", options.hands() == 1 ? "1 person" : options.hands() + " persons");
    }
    to.say(
        "Starter",
        options.doughs().stream()
            .map(DaySections::starter)
            .distinct()
            .collect(Collectors.joining("; ")));
    to.say(
            "Room",
            PlanClock.roomInWords(options.room())
                + first
                    .cold()
                    .map(cold -> "; cold " + ProofOptions.words(cold))
                    .orElse("; no cold"))
        .say("At the bench", bench());
  }

  private static String starter(BakeDay day) {
    Starter starter = day.dough().starter();
    return starter.flour().name()
        + ", hydration "
        + Words.percent(starter.hydration())
        + ", "
        + (day.starterInColdHours().isPresent()
            ? "not fed, waits in the cold"
            : day.stages().map(DaySections::built).orElseGet(() -> fed(starter)));
  }

  private static String built(BuildTimes times) {
    int stages = times.stages().size();
    return "built in " + (stages == 1 ? "one stage" : stages + " stages");
  }

  private static String fed(Starter starter) {
    return Arguments.word(starter.condition()) + " when it is fed";
  }

  private String bench() {
    double from =
        found.days().stream()
            .mapToDouble(day -> day.steps().get(0).step().fromHour())
            .min()
            .orElseThrow();
    List<String> hours = new ArrayList<>();
    for (BenchInterval at : first().bench().intervals()) {
      if (at.toHour() > from && at.fromHour() < options.clock().readyHour()) {
        hours.add(span(at.fromHour(), at.toHour()));
      }
    }
    return String.join(", ", hours);
  }
}
