package doughtide.report.handout;

import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.RiseChart;
import doughtide.report.words.Advice;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Moments and heights of a jar in words, and why there are none.
 *
 * @param mixedAt when the dough was mixed; hours are then clock times
 */
record JarMoment(Words words, Optional<ZonedDateTime> mixedAt) {

  String moment(double hours) {
    return mixedAt
        .map(mixed -> RiseChart.clockSpan(TimeSpan.at(hours), mixed, words))
        .orElseGet(() -> words.say("sheet.afterMixing", Map.of("hours", words.hours(hours))));
  }

  /** Under an axis. */
  String label(double hours) {
    return mixedAt
        .map(mixed -> words.clock(mixed.plusMinutes(Math.round(hours * 60))))
        .orElseGet(() -> words.plain(hours));
  }

  String rise(double percent) {
    return words.percent(Math.rint(percent), 0);
  }

  InputException noHour(ShapeForecast shape) {
    return new InputException(
        shape.warnings().stream()
            .map(each -> Advice.of(words, each).sentences())
            .collect(Collectors.joining(" ")));
  }

  InputException never(HandoutDough dough, Rise rise) {
    String formula = new FormulaWords(words).formulaWithin(dough.formula());
    return new InputException(
        words.say("compare.never", Map.of("rise", rise(rise.percent()), "doughs", formula)));
  }
}
