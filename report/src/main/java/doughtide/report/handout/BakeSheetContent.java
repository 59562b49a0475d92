package doughtide.report.handout;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.Warning;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.RiseChart;
import doughtide.report.chart.RiseChartData;
import doughtide.report.words.Advice;
import doughtide.report.words.StrengthWords;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Computes a bake sheet. */
public final class BakeSheetContent {

  private static final double[] MARKS = {30, 50, 75, 100};

  private final Words words;
  private final FormulaWords say;
  private final HandoutDough dough;
  private final RiseForecast forecast;

  BakeSheetContent(Words words, HandoutDough dough, RiseForecast forecast) {
    this.words = words;
    this.say = new FormulaWords(words);
    this.dough = dough;
    this.forecast = forecast;
  }

  BakeSheet sheet(Optional<String> title, Optional<ZonedDateTime> mixedAt, Optional<Proof> proof) {
    RiseChartData.Builder rise =
        RiseChartData.of(forecast, MARKS)
            .title(title.orElseGet(() -> words.say("sheet.title")))
            .subtitle(notes(mixedAt, proof))
            .mixedAt(mixedAt);
    List<BakeSheet.Step> steps = new ArrayList<>();
    steps.add(step("step.mix", TimeSpan.at(0), ""));
    Optional<String> answer = Optional.empty();
    List<Warning> warnings = new ArrayList<>(forecast.warnings());
    if (proof.isPresent()) {
      ShapeForecast shape = ShapeForecaster.of(forecast, proof.get()).forecast();
      rise.shape(forecast, proof.get(), shape);
      answer = answer(shape, mixedAt);
      steps.addAll(withShape(shape, proof.get()));
      warnings.addAll(shape.warnings());
    } else {
      steps.addAll(bulkOnly());
    }
    return new BakeSheet(
        answer,
        rise.warnings(
                warnings.stream()
                    .map(each -> Advice.of(words, each).sentences())
                    .distinct()
                    .toList())
            .build(),
        steps,
        List.of(words.say("caution.rawDough") + " " + words.say("caution.steam")));
  }

  private List<String> notes(Optional<ZonedDateTime> mixedAt, Optional<Proof> proof) {
    List<String> day = new ArrayList<>();
    day.add(say.temperatureLine(dough));
    say.altitude(dough.formula()).ifPresent(day::add);
    mixedAt.ifPresent(time -> day.add(say.mixed(time)));
    proof.flatMap(Proof::target).ifPresent(target -> day.add(target(target)));
    proof.ifPresent(each -> day.add(say.piece(each)));
    return List.of(say.formula(dough.formula()), String.join(" ", day));
  }

  private String target(Rise target) {
    return words.say("sheet.target", Map.of("rise", say.percent(target.percent())));
  }

  private BakeSheet.Step step(String key, TimeSpan when, String seen) {
    return new BakeSheet.Step(words.say(key), when, seen);
  }

  private Optional<BakeSheet.Step> folds(OptionalDouble bulkEnd) {
    StrengthPlan plan = StrengthPlan.of(dough.formula()).during(forecast, bulkEnd);
    if (plan.folds() == 0) {
      return Optional.empty();
    }
    return Optional.of(
        new BakeSheet.Step(
            words.say(
                "step.folds",
                Map.of(
                    "folds", words.plain(plan.folds()),
                    "kinds", new StrengthWords(words).kinds(plan))),
            new TimeSpan(plan.spacingHours(), plan.lastFoldHours()),
            ""));
  }

  private List<BakeSheet.Step> bulkOnly() {
    List<BakeSheet.Step> steps = new ArrayList<>();
    folds(OptionalDouble.empty()).ifPresent(steps::add);
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

  private List<BakeSheet.Step> withShape(ShapeForecast shape, Proof proof) {
    List<BakeSheet.Step> steps = new ArrayList<>();
    Optional<TimeSpan> end = TimeSpan.of(shape.hours());
    if (end.isEmpty() || shape.likely().isEmpty()) {
      return bulkOnly();
    }
    folds(shape.hours().likely()).ifPresent(steps::add);
    steps.add(step("step.bulkEnd", end.get(), rise(shape.rise())));
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
    String likely = say.percent(Math.rint(range.likely().getAsDouble()));
    String all = say.range(range.low().getAsDouble(), range.high().getAsDouble());
    return words.say("sheet.rise", Map.of("rise", likely)) + " (" + all + ")";
  }

  /** The moment that matters most, in a sentence, then what other starters would do. */
  private Optional<String> answer(ShapeForecast shape, Optional<ZonedDateTime> mixedAt) {
    if (shape.hours().likely().isEmpty() || shape.rise().likely().isEmpty()) {
      return Optional.empty();
    }
    String jar = say.percent(Math.rint(shape.rise().likely().getAsDouble()));
    String shaped =
        words.say(
            "sheet.answer",
            Map.of("time", moment(shape.hours().likely().getAsDouble(), mixedAt), "rise", jar));
    if (shape.hours().early().isEmpty() || shape.hours().late().isEmpty()) {
      return Optional.of(shaped);
    }
    String others =
        words.say(
            "sheet.others",
            Map.of(
                "early", moment(shape.hours().early().getAsDouble(), mixedAt),
                "late", moment(shape.hours().late().getAsDouble(), mixedAt)));
    return Optional.of(shaped + " " + others);
  }

  private String moment(double hours, Optional<ZonedDateTime> mixedAt) {
    TimeSpan at = TimeSpan.at(hours);
    return mixedAt
        .map(mixed -> RiseChart.clockSpan(at, mixed, words))
        .orElseGet(() -> words.say("sheet.afterMixing", Map.of("hours", words.hours(hours))));
  }
}
