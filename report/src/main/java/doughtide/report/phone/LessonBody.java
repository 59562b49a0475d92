package doughtide.report.phone;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.RiseChartData;
import doughtide.report.chart.Series;
import doughtide.report.handout.FormulaWords;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    this.end =
        IntStream.range(0, lesson.doughs().size()).mapToDouble(this::end).max().orElseThrow();
  }

  /** When a dough is to be shaped, or has risen so far. */
  private TimeWindow answered(int number) {
    return windows(number).get(row());
  }

  private int row() {
    return lesson.loaf().isPresent() ? 0 : lesson.rises().indexOf(lesson.asked());
  }

  /** Of each row. */
  private List<TimeWindow> windows(int number) {
    RiseForecast dough = lesson.doughs().get(number);
    List<TimeWindow> all = new ArrayList<>();
    shape(number).ifPresent(each -> all.add(each.hours()));
    lesson.rises().forEach(rise -> all.add(dough.hoursToRise(rise)));
    all.add(dough.hoursToOver());
    return all;
  }

  private Optional<ShapeForecast> shape(int number) {
    return lesson.loaf().map(each -> each.shapes().get(number));
  }

  /** Soon after most of the doughs are there. */
  private double end(int number) {
    RiseForecast dough = lesson.doughs().get(number);
    TimeWindow asked = answered(number);
    OptionalDouble last = asked.late().isPresent() ? asked.late() : asked.likely();
    return Math.min(dough.hours(), last.orElse(dough.hours()) * AFTER_LATE);
  }

  Markup markup() {
    int given = lesson.given();
    double[] x = Series.evenly(end, POINTS);
    return Template.of("lesson.html")
        .fill(
            Map.ofEntries(
                entry("given", Integer.toString(given)),
                entry("hours", Double.toString(end)),
                entry("points", Integer.toString(POINTS)),
                entry("top", Double.toString(top(x))),
                entry("rise", percent(lesson.asked())),
                entry("row", Integer.toString(row())),
                entry("key", lesson.loaf().isPresent() ? "shape" : "rise"),
                entry("percent", Double.toString(lesson.asked().percent())),
                entry("answer", sentence(given)),
                entry("try", say.say("lesson.try")),
                Map.entry("sliders", sliders()),
                entry("back", say.say("lesson.back")),
                entry("dotsWhat", say.say("lesson.dots")),
                entry("chartWhat", say.say("lesson.chart")),
                entry("timesHeading", say.say("lesson.times")),
                entry("rowHeading", say.say("lesson.column")),
                entry("early", say.say("early")),
                entry("likely", say.say("likely")),
                entry("late", say.say("late")),
                entry("asGiven", say.say("lesson.asGiven")),
                entry("eightOfTen", say.say("eightOfTen")),
                Map.entry("rows", rows(given)),
                entry("night", lesson.loaf().map(each -> formula.title(each.proof())).orElse("")),
                entry("formula", formula.formula(lesson.doughs().get(given).formula())),
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

  private String sentence(int number) {
    TimeWindow when = answered(number);
    if (when.likely().isEmpty()) {
      return lesson.loaf().isPresent()
          ? say.say("lesson.noShape")
          : say.say("never", Map.of("rise", percent(lesson.asked())));
    }
    String early = words.hours(when.early().orElseThrow());
    String range =
        when.late().isPresent()
            ? say.say(
                "lesson.window",
                Map.of("early", early, "late", words.hours(when.late().getAsDouble())))
            : say.say("lesson.open", Map.of("early", early));
    return main(number, words.hours(when.likely().getAsDouble())) + " " + range;
  }

  private String main(int number, String hours) {
    return shape(number)
        .map(each -> words.percent(Math.rint(each.rise().likely().orElseThrow()), 0))
        .map(jar -> say.say("lesson.shape", Map.of("rise", jar, "hours", hours)))
        .orElseGet(
            () -> say.say("lesson.risen", Map.of("rise", percent(lesson.asked()), "hours", hours)));
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

  private Markup rows(int given) {
    List<String> names = new ArrayList<>();
    shape(given).ifPresent(each -> names.add(words.say("step.bulkEnd")));
    lesson.rises().forEach(rise -> names.add(percent(rise)));
    names.add(words.say("step.past"));
    List<TimeWindow> windows = windows(given);
    return Markup.all(
        IntStream.range(0, names.size()).mapToObj(i -> row(names.get(i), windows.get(i))).toList());
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
    for (RiseChartData data : drawn) {
      int number = cells.size();
      cells.add(
          cell.fill(
              Map.ofEntries(
                  entry("windows", numbers(windows(number))),
                  entry("dots", numbers(RiseChartData.Twenty.of(when(number)).hours())),
                  entry(
                      "jar",
                      number(shape(number).map(LessonBody::jar).orElse(OptionalDouble.empty()))),
                  entry("low", curve(data, data.latePercent(), x)),
                  entry("middle", curve(data, data.likelyPercent(), x)),
                  entry("high", curve(data, data.earlyPercent(), x)))));
    }
    return Markup.all(cells);
  }

  private Distribution when(int number) {
    return shape(number)
        .map(ShapeForecast::bulkEnd)
        .orElseGet(() -> lesson.doughs().get(number).passes(lesson.asked()));
  }

  private static OptionalDouble jar(ShapeForecast shape) {
    return shape.rise().likely();
  }

  /** Early, likely and late of each row; nothing for never. */
  private static String numbers(List<TimeWindow> windows) {
    return windows.stream()
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
