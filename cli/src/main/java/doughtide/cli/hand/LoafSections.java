package doughtide.cli.hand;

import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.Words;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.JarRule;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.Temperature;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** The loaf after its bulk fermentation, as parts of an answer. */
public final class LoafSections {

  private static final int[] CORE_CELSIUS = {10, 7, 5};

  private final Proof proof;
  private final Timeline timeline;
  private final Optional<ShapeForecast.Night> night;

  private LoafSections(Proof proof, Optional<ShapeForecast.Night> night, Timeline timeline) {
    this.proof = proof;
    this.timeline = timeline;
    this.night = night;
  }

  /** Adds when to shape, and what becomes of the loaf until the oven. */
  public static void add(PlannedLoaf loaf, Timeline timeline, Section.Builder body) {
    LoafSections sections = new LoafSections(loaf.proof(), loaf.shape().likely(), timeline);
    sections.shape(loaf.shape(), body.section("shape", sections.ifNight("When to shape")));
    sections.add(sections.ifNight("The loaf, shaped at that rise"), body);
  }

  /** Adds what becomes until the oven of a loaf that has been shaped. */
  static void add(ShapedLoaf loaf, Timeline timeline, Section.Builder body) {
    body.section("shaped", "").moment("shaped", "", OptionalDouble.of(loaf.hours()));
    new LoafSections(loaf.proof(), Optional.of(loaf.night()), timeline)
        .add("The loaf as it was shaped", body);
  }

  private void add(String heading, Section.Builder body) {
    if (proof.cold().isPresent()) {
      Section.Builder cold = body.section("cold", heading);
      cold.moment(
          "intoCold",
          ifNight("into the cold"),
          night.map(ShapeForecast.Night::coldFromHours).orElse(OptionalDouble.empty()));
      core(cold);
      baked(cold);
      night.flatMap(ShapeForecast.Night::warmer).ifPresent(warmer -> warmer(warmer, cold));
    } else {
      Section.Builder proof = body.section("proof", heading);
      proof.moment(
          "intoProof", ifNight("into proof"), Value.of(night, ShapeForecast.Night::proofFromHours));
      baked(proof);
    }
  }

  private void shape(ShapeForecast shape, Section.Builder to) {
    to.window(Section.HERE, ifNight("end of bulk"), shape.hours())
        .number("risePercent", "", shape.rise().likely(), Unit.PERCENT)
        .quantity("risePercent", "", range(shape.rise()))
        .number("targetPercent", "", shape.target().percent(), Unit.PERCENT)
        .number("loafRisePercent", "", shape.loafRise().likely(), Unit.PERCENT)
        .quantity("loafRisePercent", "", range(shape.loafRise()));
    spoils(shape.spoils(), to);
    if (night.isPresent()) {
      to.say("watch for", "a jar that has risen " + likely(shape.rise()) + "; " + justShaped(shape))
          .say("why then", why() + Unit.PERCENT.text(shape.target().percent()))
          .say("how sure", howSure(shape));
      rule(shape.rule(), to);
    }
  }

  private static String justShaped(ShapeForecast shape) {
    return "nobody folds or shapes the jar, the loaf just shaped is at " + likely(shape.loafRise());
  }

  private String why() {
    return (proof.cold().isPresent()
            ? "the loaf goes on rising until its middle is cold, and the warmer and livelier the"
                + " dough, the further"
            : "the loaf goes on rising through rest and proof")
        + "; at the oven it should have risen ";
  }

  /** The range is what other starters would do, not a permission. */
  private String howSure(ShapeForecast shape) {
    if (shape.hours().early().isEmpty() || shape.hours().late().isEmpty()) {
      return "go by the jar and by what it says below";
    }
    return "a lively starter gets there "
        + timeline.moment(shape.hours().early())
        + ", a sluggish one "
        + timeline.moment(shape.hours().late())
        + "; go by the jar";
  }

  private void spoils(ShapeForecast.Spoils spoils, Section.Builder to) {
    to.section("spoils", "")
        .number("warmerKelvin", "", spoils.warmerCelsius(), Unit.KELVIN)
        .number("laterHours", "", spoils.laterHours(), Unit.HOURS);
    List<String> changes = new ArrayList<>();
    spoils
        .warmerCelsius()
        .ifPresent(by -> changes.add("the cold " + Words.rounded(by, 1) + " °C warmer"));
    spoils.laterHours().ifPresent(by -> changes.add("shaping " + Words.about(by) + " later"));
    if (night.isPresent() && !changes.isEmpty()) {
      to.say(
          "spoils it first", String.join(", or ", changes) + ": one loaf in ten more goes too far");
    }
  }

  private void rule(JarRule rule, Section.Builder to) {
    Listing.Builder rows = to.listing("jarRule", "");
    for (JarRule.AtHour look : rule.looks()) {
      List<String> steps = new ArrayList<>();
      for (JarRule.Wait wait : look.waits()) {
        rows.row()
            .moment("look", "", OptionalDouble.of(look.hours()))
            .number("jarPercent", "", wait.risePercent(), Unit.PERCENT)
            .number("waitHours", "", wait.hours(), Unit.HOURS);
        steps.add(
            wait.hours() == 0
                ? whole(wait.risePercent()) + " or more, shape now"
                : whole(wait.risePercent()) + ", wait " + Words.about(wait.hours()));
      }
      to.say("jar at " + shortMoment(look.hours()), String.join("; ", steps));
    }
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
        cold.say("middle " + celsius + " °C", cooled(cools));
      }
    }
  }

  private String cooled(Distribution cools) {
    long never = Math.round(10 * (1 - cools.reached()));
    String when = cools.window().likely().isPresent() ? timeline.words(cools.window()) : "";
    String not = never == 0 ? "" : "never in " + never + " of 10";
    return when + (when.isEmpty() || not.isEmpty() ? "" : "; ") + not;
  }

  private void baked(Section.Builder to) {
    ShapeForecast.RiseRange rise =
        night.map(ShapeForecast.Night::riseAtBake).orElse(ShapeForecast.RiseRange.NONE);
    to.moment("oven", ifNight("into the oven"), Value.of(night, ShapeForecast.Night::ovenHours));
    if (night.isPresent()) {
      to.say("risen then", words(rise));
    }
    to.section("riseAtBakePercent", "")
        .number("low", "", rise.low(), Unit.PERCENT)
        .number("likely", "", rise.likely(), Unit.PERCENT)
        .number("high", "", rise.high(), Unit.PERCENT);
    baked(to, "bakeFrom", "good from", ShapeForecast.Night::bakeFrom);
    baked(to, "bakeUntil", "good until", ShapeForecast.Night::bakeUntil);
    baked(to, "pastBest", "past its best", ShapeForecast.Night::over);
  }

  private void baked(
      Section.Builder to,
      String key,
      String label,
      Function<ShapeForecast.Night, Distribution> when) {
    TimeWindow hours = night.map(when).orElse(Distribution.NEVER).window();
    to.moment(key, "", hours.likely()).window(key, ifNight(label), hours);
  }

  private void warmer(ShapeForecast.WarmerCold warmer, Section.Builder cold) {
    OptionalDouble until = warmer.bakeUntil();
    cold.say(
            "a warmer cold",
            "if it is "
                + Words.rounded(warmer.byCelsius(), 0)
                + " °C warmer than believed, the loaf has risen "
                + whole(warmer.riseAtBakePercent())
                + " at the oven"
                + (until.isPresent() ? ", good until " + timeline.moment(until) : ""))
        .section("warmerCold", "")
        .number("byCelsius", "", OptionalDouble.of(warmer.byCelsius()), Unit.KELVIN, 1)
        .number("riseAtBakePercent", "", warmer.riseAtBakePercent(), Unit.PERCENT)
        .moment("bakeUntil", "", until);
  }

  /** A label that a page shows only where there is a shape point. */
  private String ifNight(String label) {
    return night.isPresent() ? label : "";
  }

  /** A rise with its range, per cent. */
  public static Value.Range range(ShapeForecast.RiseRange rise) {
    return new Value.Range(rise.low(), rise.likely(), rise.high(), Unit.PERCENT);
  }

  private static String words(ShapeForecast.RiseRange rise) {
    return range(rise).text();
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
