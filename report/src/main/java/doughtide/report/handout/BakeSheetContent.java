package doughtide.report.handout;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.Warning;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.RiseChart;
import doughtide.report.chart.RiseChartData;
import doughtide.report.words.Advice;
import doughtide.report.words.ShapeWords;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Computes a bake sheet. */
final class BakeSheetContent {

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
        RiseChartData.of(forecast, DoughSteps.MARKS)
            .title(title.orElseGet(() -> words.say("sheet.title")))
            .subtitle(notes(mixedAt, proof))
            .mixedAt(mixedAt);
    DoughSteps day = new DoughSteps(words, forecast);
    List<BakeSheet.Step> steps = new ArrayList<>();
    steps.add(day.mix());
    Optional<String> answer = Optional.empty();
    List<Warning> warnings = new ArrayList<>(forecast.warnings());
    if (proof.isPresent()) {
      ShapeForecast shape = ShapeForecaster.of(forecast, proof.get()).forecast();
      rise.shape(forecast, proof.get(), shape);
      answer = answer(shape, mixedAt);
      day.folds(shape.hours().likely()).ifPresent(steps::add);
      steps.addAll(day.withShape(shape, proof.get()));
      warnings.addAll(shape.warnings());
    } else {
      day.folds(OptionalDouble.empty()).ifPresent(steps::add);
      steps.addAll(day.bulkOnly());
    }
    RiseChartData drawn =
        rise.warnings(
                warnings.stream()
                    .map(each -> Advice.of(words, each).sentences())
                    .distinct()
                    .toList())
            .build();
    return new BakeSheet(
        proof.isPresent() ? answer : RiseChart.answer(drawn, words),
        drawn,
        steps,
        say.cautions(dough.formula()));
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

  /** The moment that matters most, in a sentence, then what other starters would do. */
  private Optional<String> answer(ShapeForecast shape, Optional<ZonedDateTime> mixedAt) {
    if (shape.hours().likely().isEmpty() || shape.rise().likely().isEmpty()) {
      return Optional.empty();
    }
    ShapeWords led = new ShapeWords(words);
    String shaped =
        led.answer(
            moment(shape.hours().likely().getAsDouble(), mixedAt),
            shape.rise().likely().getAsDouble());
    if (shape.hours().early().isEmpty() || shape.hours().late().isEmpty()) {
      return Optional.of(shaped);
    }
    String others =
        led.others(
            moment(shape.hours().early().getAsDouble(), mixedAt),
            moment(shape.hours().late().getAsDouble(), mixedAt));
    return Optional.of(shaped + " " + others);
  }

  private String moment(double hours, Optional<ZonedDateTime> mixedAt) {
    TimeSpan at = TimeSpan.at(hours);
    return mixedAt
        .map(mixed -> RiseChart.clockSpan(at, mixed, words))
        .orElseGet(() -> words.say("sheet.afterMixing", Map.of("hours", words.hours(hours))));
  }
}
