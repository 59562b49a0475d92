package doughtide.report.handout;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.JarRule;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.report.page.StripBlock;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Computes the marks of a strip for the jar. */
final class JarStripContent {

  private static final double LOOK_BEFORE_HOURS = 1; // time to come back to it (starting value)
  private static final double LOWEST_MM = 20;
  private static final double HIGHEST_MM = 200;

  private final Words words;
  private final FormulaWords say;
  private final HandoutDough dough;
  private final RiseForecast forecast;
  private final JarMoment jar;
  private final double startMm;
  private final List<StripBlock.Mark> marks = new ArrayList<>();

  JarStripContent(
      Words words,
      HandoutDough dough,
      RiseForecast forecast,
      Optional<ZonedDateTime> mixedAt,
      double startMm) {
    this.words = words;
    this.say = new FormulaWords(words);
    this.dough = dough;
    this.forecast = forecast;
    this.jar = new JarMoment(words, mixedAt);
    this.startMm = startMm;
    Checks.inRange("height of the dough in the jar", startMm, LOWEST_MM, HIGHEST_MM, "mm");
  }

  /** For a loaf with a shape point. */
  JarStrip forLoaf(Optional<String> title, Proof proof) {
    ShapeForecast shape = ShapeForecaster.of(forecast, proof).forecast();
    if (shape.hours().likely().isEmpty() || shape.rise().likely().isEmpty()) {
      throw jar.noHour(shape);
    }
    double likely = shape.hours().likely().getAsDouble();
    around(likely, "strip.shape", shape.rise().likely().getAsDouble());
    shape.rule().looks().stream()
        .filter(look -> Math.abs(look.hours() - likely) > 0.5)
        .forEach(look -> steer(look, likely));
    shape.spoils().laterHours().ifPresent(later -> mark("strip.late", tooLate(likely, later)));
    return strip(title);
  }

  /** Above every mark at which a dough is shaped, by the margin of the likely one. */
  private double tooLate(double likely, double laterHours) {
    double margin =
        forecast.likelyPercentAt(inside(likely + laterHours)) / forecast.likelyPercentAt(likely);
    double highest = marks.stream().mapToDouble(StripBlock.Mark::mm).max().orElse(0);
    return margin * 100 * highest / startMm;
  }

  /** For a bulk that ends at a rise. */
  JarStrip forRise(Optional<String> title, Rise rise) {
    OptionalDouble likely = forecast.hoursToRise(rise).likely();
    if (likely.isEmpty()) {
      throw jar.never(dough, rise);
    }
    around(likely.getAsDouble(), "strip.end", rise.percent());
    forecast
        .hoursToOver()
        .likely()
        .ifPresent(over -> mark("strip.past", forecast.likelyPercentAt(inside(over))));
    return strip(title);
  }

  private void around(double likely, String key, double percent) {
    marks.add(
        new StripBlock.Mark(
            0, words.say("strip.start", Map.of("height", words.number(startMm, 0))), false));
    double look = Math.max(0, likely - LOOK_BEFORE_HOURS);
    mark("strip.look", forecast.likelyPercentAt(look));
    marks.add(
        new StripBlock.Mark(
            startMm * percent / 100,
            words.say(key, Map.of("rise", jar.rise(percent), "time", jar.moment(likely))),
            true));
  }

  /** What a dough that gets there sooner or later is shaped at. */
  private void steer(JarRule.AtHour look, double likely) {
    String key = look.hours() < likely ? "strip.lively" : "strip.sluggish";
    look.waits().stream()
        .filter(wait -> wait.hours() == 0)
        .findFirst()
        .ifPresent(
            now ->
                marks.add(
                    new StripBlock.Mark(
                        startMm * now.risePercent() / 100,
                        words.say(
                            key,
                            Map.of(
                                "rise",
                                jar.rise(now.risePercent()),
                                "time",
                                jar.moment(look.hours()))),
                        false)));
  }

  private void mark(String key, double percent) {
    marks.add(
        new StripBlock.Mark(
            startMm * percent / 100, words.say(key, Map.of("rise", jar.rise(percent))), false));
  }

  private double inside(double hours) {
    return Math.min(forecast.hours(), hours);
  }

  private JarStrip strip(Optional<String> title) {
    marks.sort(Comparator.comparingDouble(StripBlock.Mark::mm));
    List<String> notes = new ArrayList<>(say.notes(dough));
    notes.add(words.say("strip.explain", Map.of("height", words.number(startMm, 0))));
    return new JarStrip(
        title.orElseGet(() -> words.say("strip.title")),
        notes,
        marks,
        List.of(words.say("caution.jar") + " " + words.say("caution.rawDough")));
  }
}
