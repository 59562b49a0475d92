package doughtide.report.phone;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.RiseChartData;
import doughtide.report.chart.Series;
import doughtide.report.handout.FormulaWords;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A lesson filled in: the dough as given, sliders, and every other dough as numbers. */
final class LessonBody {

  private static final int POINTS = 49;
  private static final double AFTER_LATE = 1.1;
  private static final double HIGHEST_PERCENT = 250;

  private final PhoneLesson lesson;
  private final Words words;
  private final PhoneWords say;
  private final FormulaWords formula;
  private final List<RiseChartData> drawn;
  private final double end;

  LessonBody(PhoneLesson lesson, Words words) {
    this.lesson = lesson;
    this.words = words;
    this.say = new PhoneWords(words, false);
    this.formula = new FormulaWords(words);
    this.drawn =
        lesson.doughs().stream()
            .map(dough -> RiseChartData.of(dough, lesson.asked().percent()).build())
            .toList();
    this.end = lesson.doughs().stream().mapToDouble(this::end).max().orElseThrow();
  }

  /** Soon after most of the doughs have risen so far. */
  private double end(RiseForecast dough) {
    TimeWindow asked = dough.hoursToRise(lesson.asked());
    OptionalDouble last = asked.late().isPresent() ? asked.late() : asked.likely();
    return Math.min(dough.hours(), last.orElse(dough.hours()) * AFTER_LATE);
  }

  Markup markup() {
    RiseForecast given = lesson.doughs().get(lesson.given());
    double[] x = Series.evenly(end, POINTS);
    return Template.of("lesson.html")
        .fill(
            Map.ofEntries(
                entry("given", Integer.toString(lesson.given())),
                entry("hours", Double.toString(end)),
                entry("points", Integer.toString(POINTS)),
                entry("top", Double.toString(top(x))),
                entry("rise", percent(lesson.asked())),
                entry("row", Integer.toString(lesson.rises().indexOf(lesson.asked()))),
                entry("percent", Double.toString(lesson.asked().percent())),
                entry("answer", sentence(given)),
                entry("try", say.say("lesson.try")),
                Map.entry("sliders", sliders()),
                entry("back", say.say("lesson.back")),
                entry("dotsWhat", say.say("lesson.dots")),
                entry("chartWhat", say.say("lesson.chart")),
                entry("timesHeading", say.say("lesson.times")),
                entry("rowHeading", words.say("chart.rise")),
                entry("early", say.say("early")),
                entry("likely", say.say("likely")),
                entry("late", say.say("late")),
                entry("asGiven", say.say("lesson.asGiven")),
                entry("eightOfTen", say.say("eightOfTen")),
                Map.entry("rows", rows(given)),
                entry("formula", formula.formula(given.formula())),
                entry("caution", words.say("caution.rawDough")),
                Map.entry("cells", cells(x))));
  }

  private static Map.Entry<String, Markup> entry(String place, String text) {
    return Map.entry(place, Markup.text(text));
  }

  private double top(double[] x) {
    double highest =
        drawn.stream()
            .flatMapToDouble(data -> Arrays.stream(at(data, data.earlyPercent(), x)))
            .filter(Double::isFinite)
            .max()
            .orElseThrow();
    return Math.ceil(Math.min(HIGHEST_PERCENT, Math.max(lesson.asked().percent(), highest)) / 25)
        * 25;
  }

  private String percent(Rise rise) {
    return formula.percent(rise.percent());
  }

  private String sentence(RiseForecast dough) {
    TimeWindow when = dough.hoursToRise(lesson.asked());
    if (when.likely().isEmpty()) {
      return say.say("never", Map.of("rise", percent(lesson.asked())));
    }
    String main =
        say.say(
            "lesson.risen",
            Map.of(
                "rise", percent(lesson.asked()),
                "hours", words.hours(when.likely().getAsDouble())));
    String early = words.hours(when.early().orElseThrow());
    String range =
        when.late().isPresent()
            ? say.say(
                "lesson.window",
                Map.of("early", early, "late", words.hours(when.late().getAsDouble())))
            : say.say("lesson.open", Map.of("early", early));
    return main + " " + range;
  }

  private Markup sliders() {
    Template template = Template.of("slider.html");
    return Markup.all(
        IntStream.range(0, lesson.axes().size())
            .mapToObj(
                i -> {
                  PhoneLesson.Axis axis = lesson.axes().get(i);
                  return template.fill(
                      Map.of(
                          "label", Markup.text(say.say("lesson." + axis.thing())),
                          "stride", Markup.text(Integer.toString(lesson.stride(i))),
                          "given", Markup.text(Integer.toString(axis.given())),
                          "last", Markup.text(Integer.toString(axis.count() - 1)),
                          "value", Markup.text(value(i, axis.given())),
                          "values", values(i, axis)));
                })
            .toList());
  }

  private Markup values(int number, PhoneLesson.Axis axis) {
    Template line = Template.of("line.html");
    return Markup.all(
        IntStream.range(0, axis.count())
            .mapToObj(i -> line.fill(Map.of("text", Markup.text(value(number, i)))))
            .toList());
  }

  private String value(int number, int i) {
    RiseForecast dough = lesson.with(number, i);
    DoughFormula made = dough.formula();
    return switch (lesson.axes().get(number).thing()) {
      case DOUGH_TEMP -> words.temperature(dough.temperature().startCelsius());
      case STARTER -> formula.percent(100 * made.starterOfAddedFlour());
      case PREFERMENTED -> formula.percent(100 * made.prefermentedFlour());
      case HYDRATION -> formula.percent(made.hydration().percent());
      case FLOUR -> formula.flour(made.flour());
    };
  }

  private Markup rows(RiseForecast given) {
    List<Markup> rows = new ArrayList<>();
    for (Rise rise : lesson.rises()) {
      rows.add(row(percent(rise), given.hoursToRise(rise)));
    }
    rows.add(row(words.say("step.past"), given.hoursToOver()));
    return Markup.all(rows);
  }

  private Markup row(String name, TimeWindow when) {
    return Template.of("lesson-row.html")
        .fill(
            Map.ofEntries(
                entry("name", name),
                entry("early", hours(when.early())),
                entry("likely", hours(when.likely())),
                entry("late", hours(when.late()))));
  }

  /** In a narrow column minutes may stand under hours. */
  private String hours(OptionalDouble hours) {
    return hours.isPresent() ? words.hours(hours.getAsDouble()).replace("h\u00a0", "h ") : "–";
  }

  private Markup cells(double[] x) {
    Template cell = Template.of("cell.html");
    List<Markup> cells = new ArrayList<>();
    for (RiseForecast dough : lesson.doughs()) {
      RiseChartData data = drawn.get(cells.size());
      cells.add(
          cell.fill(
              Map.ofEntries(
                  entry("windows", windows(dough)),
                  entry(
                      "dots",
                      numbers(RiseChartData.Twenty.of(dough.passes(lesson.asked())).hours())),
                  entry("low", curve(data, data.latePercent(), x)),
                  entry("middle", curve(data, data.likelyPercent(), x)),
                  entry("high", curve(data, data.earlyPercent(), x)))));
    }
    return Markup.all(cells);
  }

  /** Early, likely and late of each row; nothing for never. */
  private String windows(RiseForecast dough) {
    List<TimeWindow> all = new ArrayList<>();
    lesson.rises().forEach(rise -> all.add(dough.hoursToRise(rise)));
    all.add(dough.hoursToOver());
    return all.stream()
        .map(each -> number(each.early()) + "," + number(each.likely()) + "," + number(each.late()))
        .collect(Collectors.joining(" "));
  }

  private static String number(OptionalDouble hours) {
    return hours.isPresent() ? Double.toString(hours.getAsDouble()) : "";
  }

  private static String numbers(double[] values) {
    return Arrays.stream(values).mapToObj(Double::toString).collect(Collectors.joining(" "));
  }

  /** Percent at even hours, as far as the dough was followed. */
  private String curve(RiseChartData data, double[] percent, double[] x) {
    double[] at = at(data, percent, x);
    return MemberNumbers.between(0, HIGHEST_PERCENT, at).text();
  }

  private static double[] at(RiseChartData data, double[] percent, double[] x) {
    double[] at = Series.at(data.hours(), percent, x);
    for (int i = 0; i < x.length; i++) {
      at[i] = x[i] <= data.lastHour() ? at[i] : Double.POSITIVE_INFINITY;
    }
    return at;
  }
}
