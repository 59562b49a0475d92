package doughtide.report.handout;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.gas.GasCells;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.GasBalance;
import doughtide.core.rise.RiseCurve;
import doughtide.report.chart.LineSeries;
import doughtide.report.chart.MemberQuantiles;
import doughtide.report.chart.Series;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/** Computes what happens unseen in one dough. */
final class WhyContent {

  private static final int POINTS = 121;
  private static final double PAST_BEST = 1.15;

  private final Words words;
  private final HandoutDough dough;
  private final RiseForecast forecast;
  private final RiseCurve likely;
  private final double[] hours;

  WhyContent(Words words, HandoutDough dough, RiseForecast forecast) {
    this.words = words;
    this.dough = dough;
    this.forecast = forecast;
    this.likely = forecast.typical().runFast(forecast.hours());
    double over = likely.hoursToOver().orElse(forecast.hours());
    this.hours = Series.evenly(Math.min(forecast.hours(), over * PAST_BEST), POINTS);
  }

  WhyItRisesPage page(Rise mark) {
    double perDough =
        GasCells.litresPerMol(likely.celsiusAt(0), dough.formula().altitude().pressurePa())
            / dough.formula().doughPerFlour();
    return new WhyItRisesPage(
        new FormulaWords(words).notes(dough),
        line("why.rise", at -> likely.riseAt(at).percent()),
        List.of(
            line("why.inCells", at -> perDough * likely.gasAt(at).inCellsMol()),
            line("why.dissolved", at -> perDough * likely.gasAt(at).dissolvedMol()),
            line("why.lost", at -> perDough * likely.gasAt(at).lostMol())),
        List.of(
            line("why.yeast", at -> 100 * likely.yeastAt(at)),
            line("why.bacteria", at -> 100 * likely.bacteriaAt(at))),
        line("why.acid", likely::phAt),
        line("why.strength", at -> 100 * likely.strengthAt(at)),
        idea(mark),
        List.of(words.say("caution.rawDough")));
  }

  private LineSeries line(String key, DoubleUnaryOperator value) {
    double[] values = new double[hours.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = value.applyAsDouble(hours[i]);
    }
    return new LineSeries(words.say(key), hours, values);
  }

  private String idea(Rise mark) {
    Optional<TimeSpan> when = TimeSpan.of(forecast.hoursToRise(mark));
    Optional<String> dissolved = share(mark, GasBalance::dissolvedMol);
    Optional<String> cells = share(mark, GasBalance::inCellsMol);
    Optional<String> lost = share(mark, GasBalance::lostMol);
    String rise = words.percent(mark.percent(), 0);
    if (when.isEmpty() || dissolved.isEmpty() || cells.isEmpty() || lost.isEmpty()) {
      return words.say("why.ideaNever", Map.of("rise", rise));
    }
    boolean isKept = lost.get().equals(words.percent(0, 0));
    return words.say(
        isKept ? "why.ideaKept" : "why.idea",
        Map.of(
            "rise", rise,
            "hours", words.hoursSpan(when.get()),
            "dissolved", dissolved.get(),
            "cells", cells.get(),
            "lost", lost.get()));
  }

  /** Share of the gas made so far, over the members that reach the mark. */
  private Optional<String> share(Rise mark, ToDoubleFunction<GasBalance> part) {
    return MemberQuantiles.of(
            forecast.curves().stream()
                .filter(curve -> curve.hoursToRise(mark).isPresent())
                .map(curve -> curve.gasAt(curve.hoursToRise(mark).orElseThrow()))
                .mapToDouble(gas -> 100 * part.applyAsDouble(gas) / gas.madeMol()))
        .map(q -> new FormulaWords(words).range(Math.max(0, q.low()), q.high()));
  }
}
