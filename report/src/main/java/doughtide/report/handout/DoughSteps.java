package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Rise;
import doughtide.report.words.StrengthWords;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The steps of a dough's day in the words of a language. */
@Internal
public final class DoughSteps {

  static final double[] MARKS = {30, 50, 75, 100};

  private final Words words;
  private final FormulaWords say;
  private final RiseForecast forecast;

  /** Of a dough for which hours can be given. */
  public DoughSteps(Words words, RiseForecast forecast) {
    this.words = words;
    this.say = new FormulaWords(words);
    this.forecast = forecast;
  }

  private BakeSheet.Step step(String key, TimeSpan when, String seen) {
    return new BakeSheet.Step(words.say(key), when, seen);
  }

  /** Mixing, at hour 0. */
  public BakeSheet.Step mix() {
    return step("step.mix", TimeSpan.at(0), "");
  }

  /**
   * All folds as one step; empty if there are none.
   *
   * @param bulkEnd likely end of bulk fermentation, if it is known
   */
  public Optional<BakeSheet.Step> folds(OptionalDouble bulkEnd) {
    StrengthPlan plan = StrengthPlan.of(forecast.formula()).during(forecast, bulkEnd);
    if (plan.folds() == 0) {
      return Optional.empty();
    }
    return Optional.of(
        new BakeSheet.Step(
            words.say(
                plan.folds() == 1 ? "step.fold" : "step.folds",
                Map.of(
                    "folds", words.plain(plan.folds()),
                    "kinds", new StrengthWords(words).kinds(plan))),
            new TimeSpan(plan.spacingHours(), plan.lastFoldHours()),
            ""));
  }

  /** Looks at the dough until it is past its best. */
  public List<BakeSheet.Step> bulkOnly() {
    List<BakeSheet.Step> steps = new ArrayList<>();
    for (double mark : MARKS) {
      TimeSpan.of(forecast.hoursToRise(Rise.ofPercent(mark)))
          .ifPresent(
              span ->
                  steps.add(
                      step(
                          "step.look",
                          span,
                          words.say("sheet.rise", Map.of("rise", say.percent(mark))))));
    }
    TimeSpan.of(forecast.hoursToOver()).ifPresent(span -> steps.add(step("step.past", span, "")));
    return steps;
  }

  /**
   * From the end of bulk fermentation to the oven; as {@link #bulkOnly} if there is no shape point.
   *
   * @param shape when to shape
   * @param proof what comes after
   */
  public List<BakeSheet.Step> withShape(ShapeForecast shape, Proof proof) {
    List<BakeSheet.Step> steps = new ArrayList<>();
    Optional<TimeSpan> end = TimeSpan.of(shape.hours());
    if (end.isEmpty() || shape.likely().isEmpty()) {
      return bulkOnly();
    }
    steps.add(step("step.bulkEnd", end.get(), likely(shape.rise())));
    TimeSpan shaped = end.get().later(proof.restHours());
    TimeSpan atBench =
        new TimeSpan(end.get().earlyHours(), end.get().likelyHours(), shaped.lateHours());
    steps.add(step("step.shape", atBench, ""));
    ShapeForecast.Night night = shape.likely().get();
    proof
        .room()
        .ifPresent(
            room ->
                steps.add(
                    new BakeSheet.Step(
                        words.say("step.proof", Map.of("temperature", say.temperature(room))),
                        shaped,
                        "")));
    proof
        .cold()
        .filter(cold -> night.coldFromHours().isPresent())
        .ifPresent(
            cold ->
                steps.add(
                    new BakeSheet.Step(
                        words.say("step.cold", Map.of("temperature", say.temperature(cold))),
                        shaped.later(proof.room().isPresent() ? proof.roomHours() : 0),
                        "")));
    steps.add(step("step.bake", oven(shaped, proof, night), rise(night.riseAtBake())));
    return steps;
  }

  private static TimeSpan oven(TimeSpan shaped, Proof proof, ShapeForecast.Night night) {
    if (proof.ovenHour().isPresent()) {
      return TimeSpan.at(night.ovenHours());
    }
    return shaped.later(night.ovenHours() - night.proofFromHours());
  }

  private String rise(ShapeForecast.RiseRange range) {
    if (range.likely().isEmpty() || range.low().isEmpty() || range.high().isEmpty()) {
      return "";
    }
    String all = say.range(range.low().getAsDouble(), range.high().getAsDouble());
    return likely(range) + " (" + all + ")";
  }

  /** The one rise at which every dough is shaped. */
  private String likely(ShapeForecast.RiseRange range) {
    return range.likely().isEmpty()
        ? ""
        : words.say(
            "sheet.rise", Map.of("rise", say.percent(Math.rint(range.likely().getAsDouble()))));
  }
}
