package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingForecast;
import doughtide.core.feeding.Heights;
import doughtide.core.feeding.RatioAnswer;
import doughtide.core.feeding.RefreshmentPlan;
import doughtide.core.feeding.StarterPhase;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.Temperature;
import doughtide.report.words.FeedWords;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Feeding as an answer. In data and clock times hours count from the first feeding. */
final class FeedSections {

  private static final double LATE_HOURS = 7.5 / 60; // less is the same to five minutes
  private static final int VERSION = 2;
  private static final double LONGEST_HOURS = 240;

  private final FeedResult result;
  private final RefreshmentPlan plan;
  private final Timeline timeline;

  private FeedSections(FeedResult result) {
    this.result = result;
    this.plan = result.plan();
    this.timeline =
        new Timeline(
            result.clock(), plan.asked() > 1 ? "after the first feed" : "after feeding", 0);
  }

  public static Answer of(FeedResult result) {
    FeedSections sections = new FeedSections(result);
    Section.Builder body = Section.loose(sections.timeline);
    result
        .answer()
        .ifPresent(
            answer ->
                body.number("wantedHours", "", answer.wantedHours(), Unit.HOURS)
                    .word("reach", "", Arguments.word(answer.reach()))
                    .number("nearestCelsius", "", sections.nearestCelsius(), Unit.CELSIUS));
    sections.forecast(body, sections.plan.last(), "");
    body.number("readyHours", "", sections.plan.readyHours(), Unit.HOURS);
    sections.steps(body);
    sections.amounts(body);
    sections.clock(body);
    sections.howToTell(body.section("", "How to tell"));
    body.warnings(
        sections.plan.steps().stream()
            .flatMap(step -> step.forecast().warnings().stream())
            .filter(each -> each.kind() != Warning.Kind.RYE) // which is about doughs
            .distinct()
            .toList());
    body.paragraph().texts("remarks", "Note: ", result.remarks());
    sections.understood(body.section("", "Understood"));
    body.cautions(FeedResult.CAUTIONS);
    return Answer.of("feed", VERSION, sections.headline(), body).withTable(sections::events);
  }

  private OptionalDouble nearestCelsius() {
    OptionalInt found = result.nearestCelsius();
    return found.isPresent() ? OptionalDouble.of(found.getAsInt()) : OptionalDouble.empty();
  }

  private String headline() {
    OptionalDouble ready = plan.readyHours();
    String feed = feed();
    if (result.answer().isPresent()) {
      return headline(result.answer().get(), feed);
    }
    return ready.isEmpty()
        ? feed + ": it is not likely to be ripe within ten days."
        : feed + ": plan to use it " + in(ready) + ", the middle of its likely ripe time.";
  }

  private String headline(RatioAnswer answer, String feed) {
    OptionalDouble ready = plan.readyHours();
    String then = ready.isEmpty() ? "not ready in ten days" : "ready " + in(ready);
    return switch (answer.reach()) {
      case ON_TIME -> feed + ": " + then + inTime(answer) + why(answer.ratio());
      case NOT_SO_SOON ->
          "That is too soon. The nearest possible: "
              + lower(feed)
              + ", "
              + then
              + ". Feed earlier"
              + kept("warmer");
      case NOT_SO_LATE ->
          "That is too long. The nearest possible: "
              + lower(feed)
              + ", "
              + then
              + ". Feed "
              + Words.about(answer.wantedHours() - ready.orElse(0))
              + " later"
              + kept("cooler");
    };
  }

  /** In whole parts it may be ripe some minutes later than wanted. */
  private String inTime(RatioAnswer answer) {
    double late = plan.readyHours().orElse(0) - answer.wantedHours();
    return late > LATE_HOURS
        ? ", " + Words.about(late) + " after the hour you want."
        : ", in time.";
  }

  /** Why there is more starter than flour, where there is. */
  private static String why(FeedRatio ratio) {
    return ratio.flourPerStarter() < 1
        ? " More starter than flour, for a thinner feed is ripe too late."
        : "";
  }

  /** How warm or how cool the jar must be, where that is known. */
  private String kept(String word) {
    OptionalInt celsius = result.nearestCelsius();
    if (celsius.isPresent()) {
      Temperature needed = Temperature.ofCelsius(celsius.getAsInt());
      return ", or keep it " + word + ": at " + Words.temperature(needed) + " it would be in time.";
    }
    return result.options().temperature().steps().size() > 1
        ? ", or keep it " + word + "."
        : "; " + word + " alone would not do it.";
  }

  private static String lower(String feed) {
    return "f" + feed.substring(1);
  }

  private String feed() {
    FeedRatio ratio = first().ratio();
    String what =
        result.amounts().size() != 1
            ? ratio.text() + " (" + FeedWords.english().parts(ratio) + ")"
            : weigh(result.amounts().get(0)) + " (" + ratio.text() + ")";
    String times = plan.asked() > 1 ? " each time, " + plan.asked() + " times" : "";
    String at =
        result
            .clock()
            .map(clock -> (plan.asked() > 1 ? ", first " : ", ") + clock.at(0))
            .orElse("");
    return "Feed " + what + times + at;
  }

  private static String weigh(FeedAmounts amounts) {
    return Words.grams(amounts.starterGrams())
        + " starter, "
        + Words.grams(amounts.flourGrams())
        + " flour, "
        + Words.grams(amounts.waterGrams())
        + " water";
  }

  /** A moment in a sentence. */
  private String in(OptionalDouble hours) {
    String text = new Value.Moment(hours, timeline).text();
    return result.clock().isPresent() ? text : "about " + text;
  }

  private Feeding first() {
    return plan.steps().get(0).forecast().feeding();
  }

  /**
   * Adds when a feed is ripe and how high it gets.
   *
   * @param labelled not empty where it is for people, too
   */
  private static void forecast(Section.Builder to, RefreshmentPlan.Step step, String labelled) {
    FeedingForecast forecast = step.forecast();
    boolean page = !labelled.isEmpty();
    to.window("doubled", page ? "Doubled" : "", forecast.doubled().plus(step.fromHours()))
        .window("ripe", page ? "Ripe from" : "", forecast.ripe().plus(step.fromHours()))
        .window(
            "beginsToFall", page ? "Begins to fall" : "", forecast.falling().plus(step.fromHours()))
        .window("fallen", page ? "Fallen by 5 %" : "", forecast.fallen().plus(step.fromHours()));
    TimeWindow ripe = forecast.ripeFor();
    to.number("ripeForHours", "", ripe.likely(), Unit.HOURS)
        .range(
            "ripeForHours",
            page ? "Stays ripe for" : "",
            ripe.early(),
            ripe.likely(),
            ripe.late(),
            Unit.HOURS);
    OptionalDouble height = height(forecast, 1);
    to.number("heightTimes", "", height, Unit.TIMES)
        .range(
            "heightTimes",
            page && height.isPresent() ? "Greatest height" : "",
            height(forecast, 0),
            height,
            height(forecast, 2),
            Unit.TIMES);
  }

  private static OptionalDouble height(FeedingForecast forecast, int part) {
    if (forecast.heights().isEmpty()) {
      return OptionalDouble.empty();
    }
    Heights heights = forecast.heights().get();
    return OptionalDouble.of(
        part == 0 ? heights.low() : part == 1 ? heights.likely() : heights.high());
  }

  private void steps(Section.Builder body) {
    Listing.Builder all = body.listing("refreshments", "");
    for (int i = 0; i < plan.steps().size(); i++) {
      RefreshmentPlan.Step step = plan.steps().get(i);
      String since = plan.steps().size() > 1 ? "after this feed" : "after feeding";
      Section.Builder row =
          all.row(heading(i), new Timeline(result.clock(), since, step.fromHours()));
      row.number("fedHours", "", step.fromHours(), Unit.HOURS);
      result.clock().ifPresent(clock -> row.at("fedAt", "", step.fromHours(), clock));
      forecast(row, step, "page");
      row.number("readyHours", "", step.readyHours(), Unit.HOURS);
    }
    boolean gaps =
        plan.steps().stream().anyMatch(step -> step.forecast().fallen().late().isEmpty());
    if (gaps) {
      body.paragraph().say("–: not in ten days.");
    }
  }

  private String heading(int i) {
    if (plan.steps().size() == 1) {
      return "";
    }
    OptionalDouble fed = OptionalDouble.of(plan.steps().get(i).fromHours());
    return "Feed " + (i + 1) + (i == 0 ? "" : ", " + new Value.Moment(fed, timeline).text());
  }

  private void amounts(Section.Builder body) {
    List<FeedAmounts> amounts = result.amounts();
    if (amounts.isEmpty()) {
      return;
    }
    boolean salt = result.options().feeding().salt().percent() > 0;
    Listing.Builder all = body.listing("amounts", "Weigh");
    for (int i = 0; i < amounts.size(); i++) {
      FeedAmounts each = amounts.get(i);
      Section.Builder row = all.row();
      if (amounts.size() > 1) {
        row.say("feed", Integer.toString(i + 1));
      }
      row.number("starterGrams", "starter", each.starterGrams(), Unit.GRAMS)
          .number("flourGrams", "flour", each.flourGrams(), Unit.GRAMS)
          .number("waterGrams", "water", each.waterGrams(), Unit.GRAMS)
          .number("saltGrams", salt ? "salt" : "", each.saltGrams(), Unit.GRAMS)
          .number("totalGrams", "in the jar", each.totalGrams(), Unit.GRAMS)
          .number("useGrams", "", each.useGrams(), Unit.GRAMS)
          .number("keepGrams", "", each.keepGrams(), Unit.GRAMS);
    }
    FeedAmounts last = amounts.get(amounts.size() - 1);
    body.paragraph()
        .say(
            "When it is ripe use "
                + Words.grams(last.useGrams())
                + " and keep back "
                + Words.grams(last.keepGrams())
                + (result.options().keep().isEmpty() ? " for the same feed again." : "."));
  }

  private void clock(Section.Builder body) {
    result
        .clock()
        .ifPresent(
            clock -> {
              body.word("zone", "", clock.start().getZone().getId())
                  .at("fedAt", "", 0, clock)
                  .at("readyAt", "", plan.readyHours(), clock);
              wanted(clock, body);
            });
  }

  private void wanted(ClockTimes clock, Section.Builder body) {
    if (result.readyAt().isEmpty()) {
      return;
    }
    double hours = Hours.between(clock.start(), result.readyAt().get());
    double since = hours - plan.last().fromHours();
    Section.Builder wanted = body.section("atWantedTime", "").at("at", "", hours, clock);
    if (since < 0 || since > LONGEST_HOURS) {
      return;
    }
    List<String> shares = new ArrayList<>();
    for (StarterPhase phase : StarterPhase.values()) {
      double share = plan.last().forecast().shareIn(phase, since);
      String key =
          phase == StarterPhase.PAST_BEST ? "pastBestShare" : Arguments.word(phase) + "Share";
      wanted.number(key, "", share, Unit.SHARE);
      shares.add(FeedWords.english().phase(phase) + " in " + Math.round(100 * share));
    }
    body.paragraph()
        .say(
            "Of 100 starters that fit what you gave, at "
                + clock.at(hours)
                + ": "
                + String.join(", ", shares)
                + ".");
  }

  private void howToTell(Section.Builder to) {
    for (StarterPhase phase : StarterPhase.values()) {
      to.say(FeedWords.english().phase(phase), FeedWords.english().look(phase));
    }
  }

  private void understood(Section.Builder to) {
    Feeding feeding = first();
    FeedRatio ratio = feeding.ratio();
    to.section("ratio", "")
        .number("starter", "", ratio.starter(), Unit.NONE)
        .number("flour", "", ratio.flour(), Unit.NONE)
        .number("water", "", ratio.water(), Unit.NONE);
    to.word("ratioInWords", "Feed", FeedWords.english().parts(ratio));
    String condition = Arguments.word(feeding.starter().condition());
    to.section("starter", "")
        .word("condition", "", condition)
        .word("flour", "", feeding.starter().flour().name())
        .number("hydrationPercent", "", feeding.starter().hydration().percent(), Unit.PERCENT);
    to.say(
            "Starter fed",
            condition
                + ", "
                + feeding.starter().flour().name()
                + ", hydration "
                + Words.percent(feeding.starter().hydration()))
        .word("flour", "Flour given", feeding.flour().name())
        .number("hydrationAfterFeedingPercent", "", feeding.hydration().percent(), Unit.PERCENT)
        .number("saltPercent", "", feeding.salt().percent(), Unit.PERCENT)
        .say("After feeding", afterFeeding(feeding))
        .say("Temperature", result.options().temperature().words());
    Listing.Builder temperature = to.listing("temperature", "");
    result
        .options()
        .temperature()
        .steps()
        .forEach(
            step ->
                temperature
                    .row()
                    .number("fromHours", "", step.hours(), Unit.HOURS)
                    .number("celsius", "", step.temperature().celsius(), Unit.CELSIUS));
    result.clock().ifPresent(clock -> to.say("First fed", clock.startInWords()));
  }

  private static String afterFeeding(Feeding feeding) {
    String salt =
        feeding.salt().percent() > 0
            ? "salt " + Words.percent(feeding.salt()) + " of the flour given"
            : "no salt";
    return "hydration " + Words.percent(feeding.hydration()) + ", " + salt;
  }

  /** For CSV: a row for each feed and event. */
  private Listing events() {
    Listing.Builder all = new Listing.Builder("events", "", timeline);
    for (int i = 0; i < plan.steps().size(); i++) {
      RefreshmentPlan.Step step = plan.steps().get(i);
      event(all.row(), i, "doubled", step, step.forecast().doubled());
      event(all.row(), i, "ripe", step, step.forecast().ripe());
      event(all.row(), i, "begins to fall", step, step.forecast().falling());
      event(all.row(), i, "fallen", step, step.forecast().fallen());
    }
    return all.build();
  }

  private static void event(
      Section.Builder row, int feed, String event, RefreshmentPlan.Step step, TimeWindow window) {
    row.number("feed", "", feed + 1, Unit.COUNT)
        .word("event", "", event)
        .window(Section.HERE, "", window.plus(step.fromHours()));
  }
}
