package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.IngredientItems;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.Words;
import doughtide.cli.hand.Cautions;
import doughtide.cli.hand.LoafSections;
import doughtide.cli.options.ProofOptions;
import doughtide.core.dough.Ingredients;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.SampleJar;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.StrengthPlan;
import doughtide.report.words.Advice;
import doughtide.report.words.StrengthWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What rise found out, put together as an answer. */
final class RiseSections {

  private static final int VERSION = 2;
  private static final List<Double> SHOWN_HOURS = List.of(1.0, 2.0, 4.0, 6.0, 8.0, 12.0, 16.0);

  private final RiseAnswer found;
  private final Timeline timeline;
  private final Optional<ShapeForecast.Night> night;

  private RiseSections(RiseAnswer found) {
    this.found = found;
    this.timeline = Timeline.sinceMixing(found.clock());
    this.night = found.night();
  }

  public static Answer of(RiseAnswer found) {
    RiseSections sections = new RiseSections(found);
    Section.Builder body = Section.loose(sections.timeline);
    sections.rises(body);
    body.later(sections::curve);
    sections.warmth(body);
    found.weigh().ifPresent(weigh -> weigh(weigh, body));
    sections.folds(body);
    found.proof().ifPresent(loaf -> LoafSections.add(loaf, sections.timeline, body));
    found.temperature().jar().ifPresent(jar -> sections.jar(jar.mass().grams(), body));
    body.warnings(found.warnings());
    Narrowing.add(found.widens(), body);
    sections.understood(body.section("understood", "Understood"));
    body.cautions(List.of(Cautions.RAW));
    return Answer.of("rise", VERSION, sections.headline(), body).withTable(sections::curve);
  }

  private static void weigh(Ingredients weigh, Section.Builder body) {
    IngredientItems.add(weigh, body);
    body.paragraph().say(Words.weigh(weigh) + " Together " + Words.grams(weigh.doughGrams()) + ".");
  }

  private String headline() {
    if (!found.isPossible()) {
      return "No hours can be given for this dough.";
    }
    return night.map(this::headline).orElseGet(this::headlineOfBulk);
  }

  private String headlineOfBulk() {
    RiseAnswer.Passing asked = found.asked();
    String rise = Words.percent(asked.rise().percent());
    String when =
        asked.when().likely().isPresent()
            ? "Risen " + rise + " about " + timeline.words(asked.when())
            : "Half of such doughs never rise " + rise;
    OptionalDouble over = found.over().likely();
    String best = over.isPresent() ? "; past its best likely from " + timeline.moment(over) : "";
    return found.proof().map(loaf -> whyNoShape(loaf.shape()) + " ").orElse("") + when + best + ".";
  }

  /** The answer to when to shape, where it is that no hour is right; the reason comes last. */
  private static String whyNoShape(ShapeForecast shape) {
    return Advice.english(shape.warnings().get(shape.warnings().size() - 1)).text();
  }

  private String headline(ShapeForecast.Night at) {
    ShapeForecast shape = found.proof().orElseThrow().shape();
    return "Shape about "
        + timeline.momentSince(shape.hours().likely())
        + ", when the sample jar has risen "
        + LoafSections.likely(shape.rise())
        + "; the loaf is then at "
        + LoafSections.likely(shape.loafRise())
        + ". Into the oven "
        + timeline.moment(OptionalDouble.of(at.ovenHours()))
        + (at.bakeFrom().window().likely().isEmpty()
            ? "."
            : ", good to bake from "
                + timeline.moment(at.bakeFrom().window().likely())
                + until(at));
  }

  private String until(ShapeForecast.Night at) {
    OptionalDouble until = at.bakeUntil().window().likely();
    return until.isPresent() ? " until " + timeline.moment(until) + "." : " on.";
  }

  private void rises(Section.Builder body) {
    Listing.Builder rises = body.listing("rises", "");
    for (RiseAnswer.Passing passing : found.passings()) {
      double percent = passing.rise().percent();
      rises
          .row()
          .number("risePercent", "", percent, Unit.PERCENT)
          .window(Section.HERE, shown("risen " + Words.percent(percent)), passing.when());
    }
    body.window("pastBest", shown("past its best"), found.over());
    if (found.isPossible()) {
      body.paragraph().say(legend());
      found
          .clock()
          .flatMap(times -> times.clockChange(found.forecast().hours()))
          .ifPresent(change -> body.paragraph().say("Clock: " + change + "."));
    }
  }

  private String legend() {
    boolean gaps =
        found.over().late().isEmpty()
            || found.passings().stream().anyMatch(each -> each.when().late().isEmpty());
    String unreached =
        gaps
            ? " –: not reached in the "
                + Words.rounded(found.forecast().hours(), 0)
                + " hours looked at."
            : "";
    return "One dough in ten is there before the early time, half before the likely one, nine in"
        + " ten before the late one."
        + unreached;
  }

  private Listing curve() {
    Listing.Builder curve = new Listing.Builder("curve", "", timeline);
    found.curve().forEach(point -> point(curve.row(), point));
    point(curve.like(), new RiseForecast.BandPoint(0, 0, 0, 0, 0));
    return curve.build();
  }

  private void point(Section.Builder row, RiseForecast.BandPoint point) {
    row.number("hours", "", point.hours(), Unit.HOURS)
        .range(
            "risePercent",
            "",
            point.riseLatePercent(),
            point.riseLikelyPercent(),
            point.riseEarlyPercent(),
            Unit.PERCENT)
        .number("pH", "", point.ph(), Unit.PH);
    found.clock().ifPresent(clock -> row.at("clock", "", point.hours(), clock));
  }

  /** How the dough gets its strength in the hours that it leaves. */
  private void folds(Section.Builder body) {
    if (!found.isPossible()) {
      return;
    }
    OptionalDouble end =
        found.proof().map(loaf -> loaf.shape().hours().likely()).orElse(OptionalDouble.empty());
    StrengthPlan wanted = StrengthPlan.of(found.dough().formula());
    StrengthPlan plan = wanted.during(found.forecast(), end);
    Section.Builder strength = body.section("strength", "Folds");
    strength
        .number("folds", "", plan.folds(), Unit.COUNT)
        .number("pointsBelowLimit", "", wanted.pointsBelowLimit(), Unit.NONE);
    Listing.Builder steps = strength.listing("steps", "");
    for (StrengthPlan.Fold fold : plan.steps()) {
      steps
          .row()
          .word("kind", "fold", fold.kind(), StrengthWords.english().kind(fold))
          .moment("hours", "after", OptionalDouble.of(fold.hours()));
    }
    List<String> said =
        StrengthWords.english().sentences(wanted, plan, found.dough().formula().hydration());
    strength.say(String.join(" ", said));
  }

  /** The dough's own temperature, where it changes. */
  private void warmth(Section.Builder body) {
    if (!found.drifts()) {
      return;
    }
    Listing.Builder all = body.listing("doughTemperatures", "");
    List<String> course = new ArrayList<>();
    for (RiseAnswer.Warmth each : found.warmth()) {
      all.row()
          .number("hours", "", each.hours(), Unit.HOURS)
          .number("celsius", "", OptionalDouble.of(each.celsius()), Unit.CELSIUS, 2);
      if (SHOWN_HOURS.contains(each.hours())) {
        course.add(Words.about(each.hours()) + " " + Words.rounded(each.celsius(), 1) + " °C");
      }
    }
    body.paragraph().say("The dough itself, likely, after: " + String.join(", ", course) + ".");
  }

  private void jar(double grams, Section.Builder body) {
    Optional<SampleJar> jar = found.jar();
    ShapeForecast.RiseRange reads = jar.map(SampleJar::reads).orElse(ShapeForecast.RiseRange.NONE);
    body.section("jar", "")
        .number("riseReadsPercent", "", reads.likely(), Unit.PERCENT)
        .quantity("riseReadsPercent", "", LoafSections.range(reads))
        .number(
            "doughWarmerKelvin", "", Value.of(jar, SampleJar::doughWarmerKelvin), Unit.KELVIN, 2)
        .number("doughRisePercent", "", Value.of(jar, j -> j.point().percent()), Unit.PERCENT)
        .number("hours", "", Value.of(jar, SampleJar::hours), Unit.HOURS);
    jar.filter(each -> each.reads().likely().isPresent())
        .ifPresent(
            each ->
                body.paragraph()
                    .say(
                        "Sample jar of "
                            + Words.grams(grams)
                            + ": when the dough has risen "
                            + LoafSections.whole(each.point().percent())
                            + ", the jar reads "
                            + LoafSections.range(reads).text()
                            + ". It takes on the room's temperature sooner: the dough is then at "
                            + Words.rounded(each.doughCelsius(), 1)
                            + " °C, the jar at "
                            + Words.rounded(each.jarCelsius(), 1)
                            + " °C."));
  }

  private void understood(Section.Builder to) {
    found.dough().describe(to, found.temperature().words());
    found.temperature().vessel().ifPresent(vessel -> to.word("vessel", "Vessel", vessel));
    found.proof().ifPresent(loaf -> to.word("loaf", "Loaf", ProofOptions.words(loaf.proof())));
    to.number("members", "", found.forecast().ensemble().size(), Unit.COUNT);
    found
        .clock()
        .ifPresent(
            times ->
                to.say("Mixed", times.startInWords())
                    .at("mixedAt", "", 0, times)
                    .word("zone", "", times.start().getZone().getId()));
  }

  /** A label that a page shows only where hours can be given. */
  private String shown(String label) {
    return found.isPossible() ? label : "";
  }
}
