package doughtide.cli.hand;

import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.Speech;
import doughtide.cli.args.Words;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.JarRule;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.Temperature;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/** The loaf after its bulk fermentation, as parts of an answer. */
public final class LoafSections {

  private static final int[] CORE_CELSIUS = {10, 7, 5};

  private final Proof proof;
  private final Timeline timeline;
  private final Speech speech;
  private final Optional<ShapeForecast.Night> night;

  private LoafSections(Proof proof, Optional<ShapeForecast.Night> night, Timeline timeline) {
    this.proof = proof;
    this.timeline = timeline;
    this.speech = timeline.speech();
    this.night = night;
  }

  /** Adds when to shape, and what becomes of the loaf until the oven. */
  public static void add(PlannedLoaf loaf, Timeline timeline, Section.Builder body) {
    add(loaf, timeline, 0, body);
  }

  /**
   * The same of a dough in hand.
   *
   * @param nowHours hours from mixing until now: earlier looks at the jar are left out
   */
  static void add(PlannedLoaf loaf, Timeline timeline, double nowHours, Section.Builder body) {
    LoafSections sections = new LoafSections(loaf.proof(), loaf.shape().likely(), timeline);
    sections.shape(
        loaf.shape(), nowHours, body.section("shape", sections.ifNight("loaf.whenToShape")));
    sections.add(sections.ifNight("loaf.atThatRise"), body);
  }

  /** Adds what becomes until the oven of a loaf that has been shaped. */
  static void add(ShapedLoaf loaf, Timeline timeline, Section.Builder body) {
    body.section("shaped", "").moment("shaped", "", OptionalDouble.of(loaf.hours()));
    new LoafSections(loaf.proof(), Optional.of(loaf.night()), timeline)
        .add(timeline.speech().say("loaf.asShaped"), body);
  }

  private void add(String heading, Section.Builder body) {
    if (proof.cold().isPresent()) {
      Section.Builder cold = body.section("cold", heading);
      cold.moment(
          "intoCold",
          ifNight("loaf.intoCold"),
          night.map(ShapeForecast.Night::coldFromHours).orElse(OptionalDouble.empty()));
      core(cold);
      baked(cold);
      night.flatMap(ShapeForecast.Night::warmer).ifPresent(warmer -> warmer(warmer, cold));
    } else {
      Section.Builder proof = body.section("proof", heading);
      proof.moment(
          "intoProof",
          ifNight("loaf.intoProof"),
          Value.of(night, ShapeForecast.Night::proofFromHours));
      baked(proof);
    }
  }

  private void shape(ShapeForecast shape, double nowHours, Section.Builder to) {
    to.window(Section.HERE, ifNight("loaf.endOfBulk"), shape.hours())
        .number("risePercent", "", shape.rise().likely(), Unit.PERCENT)
        .quantity("risePercent", "", range(shape.rise()))
        .number("targetPercent", "", shape.target().percent(), Unit.PERCENT)
        .number("loafRisePercent", "", shape.loafRise().likely(), Unit.PERCENT)
        .quantity("loafRisePercent", "", range(shape.loafRise()));
    spoils(shape.spoils(), to);
    if (night.isPresent()) {
      to.say(speech.say("loaf.watchFor"), watchFor(shape))
          .say(speech.say("loaf.whyThen"), why(shape))
          .say(speech.say("loaf.howSure"), howSure(shape));
      rule(shape.rule(), nowHours, to);
    }
  }

  private String watchFor(ShapeForecast shape) {
    return speech.say(
        "loaf.jar", Map.of("jar", likely(shape.rise()), "loaf", likely(shape.loafRise())));
  }

  private String why(ShapeForecast shape) {
    return speech.say(
        proof.cold().isPresent() ? "loaf.whyCold" : "loaf.whyRoom",
        Map.of("rise", speech.percent(shape.target().percent())));
  }

  /** The range is what other starters would do, not a permission. */
  private String howSure(ShapeForecast shape) {
    if (shape.hours().early().isEmpty() || shape.hours().late().isEmpty()) {
      return speech.say("loaf.byJar");
    }
    return speech.say(
        "loaf.sure",
        Map.of(
            "early", timeline.moment(shape.hours().early()),
            "late", timeline.moment(shape.hours().late())));
  }

  private void spoils(ShapeForecast.Spoils spoils, Section.Builder to) {
    to.section("spoils", "")
        .number("warmerKelvin", "", spoils.warmerCelsius(), Unit.KELVIN)
        .number("laterHours", "", spoils.laterHours(), Unit.HOURS);
    List<String> changes = new ArrayList<>();
    spoils
        .warmerCelsius()
        .ifPresent(
            by -> changes.add(speech.say("loaf.warmer", Map.of("degrees", speech.rounded(by, 1)))));
    spoils
        .laterHours()
        .ifPresent(by -> changes.add(speech.say("loaf.later", Map.of("hours", Words.about(by)))));
    if (night.isPresent() && !changes.isEmpty()) {
      String first = String.join(", " + speech.say("loaf.or") + " ", changes);
      to.say(speech.say("loaf.spoils"), speech.say("loaf.tooFar", Map.of("changes", first)));
    }
  }

  private void rule(JarRule rule, double nowHours, Section.Builder to) {
    Listing.Builder rows = to.listing("jarRule", "");
    for (JarRule.AtHour look : lookingAhead(rule, nowHours)) {
      List<String> steps = new ArrayList<>();
      for (JarRule.Wait wait : look.waits()) {
        rows.row()
            .moment("look", "", OptionalDouble.of(look.hours()))
            .number("jarPercent", "", wait.risePercent(), Unit.PERCENT)
            .number("waitHours", "", wait.hours(), Unit.HOURS);
        steps.add(
            speech.say(
                wait.hours() == 0 ? "loaf.orMore" : "loaf.wait",
                Map.of("rise", whole(wait.risePercent()), "hours", Words.about(wait.hours()))));
      }
      to.say(
          speech.say("loaf.jarAt", Map.of("time", shortMoment(look.hours()))),
          speech.joined(steps));
    }
  }

  private static List<JarRule.AtHour> lookingAhead(JarRule rule, double nowHours) {
    return rule.looks().stream().filter(look -> look.hours() >= nowHours).toList();
  }

  private String shortMoment(double hours) {
    return timeline.clock().map(clock -> clock.at(hours)).orElseGet(() -> Words.about(hours));
  }

  private void core(Section.Builder cold) {
    for (int celsius : CORE_CELSIUS) {
      Distribution cools =
          night.map(at -> at.coreAt(Temperature.ofCelsius(celsius))).orElse(Distribution.NEVER);
      cold.window("coreAt" + celsius + "C", "", cools.window());
      if (night.isPresent()) {
        cold.say(
            speech.say("loaf.middle", Map.of("celsius", Integer.toString(celsius))), cooled(cools));
      }
    }
  }

  private String cooled(Distribution cools) {
    long never = Math.round(10 * (1 - cools.reached()));
    String when = cools.window().likely().isPresent() ? timeline.words(cools.window()) : "";
    String not =
        never == 0 ? "" : speech.say("loaf.neverIn", Map.of("doughs", Long.toString(never)));
    return speech.joined(Stream.of(when, not).filter(part -> !part.isEmpty()).toList());
  }

  private void baked(Section.Builder to) {
    ShapeForecast.RiseRange rise =
        night.map(ShapeForecast.Night::riseAtBake).orElse(ShapeForecast.RiseRange.NONE);
    to.moment("oven", ifNight("loaf.oven"), Value.of(night, ShapeForecast.Night::ovenHours));
    if (night.isPresent()) {
      to.say(speech.say("loaf.risenThen"), range(rise).text(speech));
    }
    to.section("riseAtBakePercent", "")
        .number("low", "", rise.low(), Unit.PERCENT)
        .number("likely", "", rise.likely(), Unit.PERCENT)
        .number("high", "", rise.high(), Unit.PERCENT);
    baked(to, "bakeFrom", "loaf.goodFrom", ShapeForecast.Night::bakeFrom);
    baked(to, "bakeUntil", "loaf.goodUntil", ShapeForecast.Night::bakeUntil);
    baked(to, "pastBest", "loaf.pastBest", ShapeForecast.Night::over);
  }

  private void baked(
      Section.Builder to,
      String key,
      String words,
      Function<ShapeForecast.Night, Distribution> when) {
    TimeWindow hours = night.map(when).orElse(Distribution.NEVER).window();
    to.moment(key, "", hours.likely()).window(key, ifNight(words), hours);
  }

  private void warmer(ShapeForecast.WarmerCold warmer, Section.Builder cold) {
    OptionalDouble until = warmer.bakeUntil();
    Map<String, String> values =
        Map.of(
            "degrees", Words.rounded(warmer.byCelsius(), 0),
            "rise", whole(warmer.riseAtBakePercent()),
            "until", timeline.moment(until));
    cold.say(
            speech.say("loaf.warmerCold"),
            speech.say(until.isPresent() ? "loaf.ifWarmerUntil" : "loaf.ifWarmer", values))
        .section("warmerCold", "")
        .number("byCelsius", "", OptionalDouble.of(warmer.byCelsius()), Unit.KELVIN, 1)
        .number("riseAtBakePercent", "", warmer.riseAtBakePercent(), Unit.PERCENT)
        .moment("bakeUntil", "", until);
  }

  /** A label that a page shows only where there is a shape point. */
  private String ifNight(String key) {
    return night.isPresent() ? speech.say(key) : "";
  }

  /** A rise with its range, per cent. */
  public static Value.Range range(ShapeForecast.RiseRange rise) {
    return new Value.Range(rise.low(), rise.likely(), rise.high(), Unit.PERCENT);
  }

  /** The likely rise as a page prints it. */
  public static String likely(ShapeForecast.RiseRange rise) {
    return rise.likely().isPresent() ? whole(rise.likely().getAsDouble()) : Value.NONE;
  }

  /** Whole per cent. */
  public static String whole(double percent) {
    return Words.rounded(percent, 0) + " %";
  }
}
