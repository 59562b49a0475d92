package doughtide.report.phone;

import doughtide.core.document.ReadingsDocument;
import doughtide.core.forecast.Ensemble;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.learning.Bake;
import doughtide.core.learning.LiveDough;
import doughtide.core.learning.Reading;
import doughtide.report.chart.ChartSize;
import doughtide.report.chart.RiseChartData;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** One article of a page: its places filled, its members as numbers. */
final class PhonePart {

  private static final double GRID_STEP_HOURS = 0.375;
  private static final double EVEN_UNTIL_HOURS = 12;
  private static final double BEFORE_JUMP_HOURS = 1e-6;
  private static final int MOST_JUMPS = 64;
  static final int MOST_MEMBERS_OF_MANY = 128;

  private final PhoneSubject subject;
  private final RiseForecast forecast;
  private final Words words;
  private final PhoneWords say;
  private final String id;
  private final boolean isOneOfMany;
  private final int members;
  private final PhoneClock clock;
  private final List<PhoneEvent> events;
  private final Map<String, Markup> places = new TreeMap<>();

  /**
   * Of a dough or a starter.
   *
   * @param number of the article on its page, from 1
   * @param all how many articles the page has
   */
  PhonePart(PhoneSubject subject, Words words, int number, int all) {
    this.subject = subject;
    this.forecast = subject.forecast();
    this.words = words;
    this.say = subject.say();
    this.id = "d" + number;
    this.isOneOfMany = all > 1;
    int most = isOneOfMany ? MOST_MEMBERS_OF_MANY : Ensemble.USUAL_SIZE;
    this.members = Math.min(subject.members(), most);
    this.clock = new PhoneClock(subject.zero(), forecast.hours(), subject.namesEveryDay(), words);
    this.events = subject.events().stream().map(each -> each.withMembers(members)).toList();
  }

  /** A line of the list of doughs, which leads to it. */
  Markup line() {
    return Template.of("link.html")
        .fill(
            Map.of(
                "id", Markup.text(id),
                "name", Markup.text(subject.name()),
                "time", Markup.text(clock.at(asked().window().likely()))));
  }

  Markup markup() {
    numbers();
    headings();
    answer();
    put("charts", charts());
    put("steps", steps());
    Template row = Template.of("event.html");
    put("events", Markup.all(events.stream().map(each -> each.row(row, clock)).toList()));
    put("rule", rule());
    put("why", lines(subject.why()));
    put("cautions", lines(subject.cautions()));
    return Template.of("dough.html").fill(places);
  }

  private void put(String place, Markup markup) {
    places.put(place, markup);
  }

  private void put(String place, String text) {
    put(place, Markup.text(text));
  }

  private void say(String place, String key) {
    put(place, say.say(key));
  }

  private void headings() {
    put("id", id);
    put(
        "heading",
        isOneOfMany
            ? Template.of("heading.html").fill(Map.of("text", Markup.text(subject.name())))
            : Markup.NONE);
    say("dotsWhat", "dots");
    say("dashed", "dashed");
    put("crosses", words.say("chart.readings"));
    say("readHeading", "read");
    say("heightLabel", "height");
    say("unitLabel", "unit");
    say("unitPercent", "percent");
    say("unitMillimetres", "millimetres");
    say("startLabel", "start");
    put("whenLabel", say.say("when", Map.of("zone", subject.zero().getZone().getId())));
    put("temperatureLabel", say.say("temperature", Map.of("unit", isFahrenheit() ? "°F" : "°C")));
    say("add", "add");
    say("soFar", "soFar");
    say("none", "none");
    say("stepsHeading", "steps");
    say("timesHeading", "times");
    say("rowHeading", "what");
    say("early", "early");
    say("likely", "likely");
    say("late", "late");
    say("eightOfTen", "eightOfTen");
    say("whyHeading", "why");
    say("cautionHeading", "cautions");
    say("takeHeading", "take");
    say("takeWhy", "takeWhy");
    say("copy", "copy");
    say("share", "share");
    say("download", "download");
    put("fileName", fileName() + ".txt");
    put("formula", subject.formula());
    put("begun", subject.begun());
    put("zoneLine", say.say("zone", Map.of("zone", subject.zero().getZone().getId())));
  }

  private boolean isFahrenheit() {
    return words.degrees() == Words.Degrees.FAHRENHEIT;
  }

  /** Letters and digits alone, which every system takes. */
  private String fileName() {
    String plain = subject.name().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String name = plain.replaceAll("^-+|-+$", "");
    return name.isEmpty() ? "dough" : name.substring(0, Math.min(40, name.length()));
  }

  private void numbers() {
    double[] grid = grid();
    double[] curves = curves(grid);
    MemberNumbers heights = MemberNumbers.of(curves);
    MemberNumbers factors = MemberNumbers.of(subject.jar().factorsOfMembers(members));
    put("name", subject.name());
    put("store", "doughtide " + subject.name() + "\n" + head());
    put("mixed", Long.toString(clock.epoch()));
    put("offsets", clock.offsets());
    put("days", clock.days());
    put("named", clock.namesEveryDay() ? "all" : "others");
    put("hours", Double.toString(forecast.hours()));
    put("grid", joined(grid));
    put("curves", heights.text());
    put("floor", Double.toString(heights.low()));
    put("top", Double.toString(heights.high()));
    put("factors", factors.text());
    put("factorLow", Double.toString(factors.low()));
    put("factorHigh", Double.toString(factors.high()));
    put("noise", noise());
    put("warmth", warmth());
    put("scale", isFahrenheit() ? "F" : "C");
    put("head", head());
    put("readings", readings());
  }

  private static String joined(double[] values) {
    return Arrays.stream(values).mapToObj(Double::toString).collect(Collectors.joining(" "));
  }

  /** Of few members fewer need to be left. */
  private String noise() {
    ReadingNoise noise = ReadingNoise.standard();
    return joined(
        new double[] {
          noise.heightShare(),
          noise.risePoints(),
          noise.degreesOfFreedom(),
          ReadingNoise.MOST_INDEPENDENT,
          LiveDough.LEAST_CHANCE,
          LiveDough.FEWEST_MEMBERS * Math.min(1, members / (double) Ensemble.USUAL_SIZE)
        });
  }

  /** Hours of the curves: closer while the dough is young, and on both sides of every jump. */
  private double[] grid() {
    DoubleStream.Builder hours = DoubleStream.builder();
    double end = forecast.hours();
    for (double at = 0; at < end; at += GRID_STEP_HOURS * Math.max(1, at / EVEN_UNTIL_HOURS)) {
      hours.add(at);
    }
    Arrays.stream(forecast.temperature().jumps(end))
        .limit(MOST_JUMPS)
        .forEach(jump -> hours.add(jump - BEFORE_JUMP_HOURS).add(jump));
    return hours.add(end).build().sorted().distinct().toArray();
  }

  /** Hour by hour of the grid. */
  private double[] curves(double[] grid) {
    double[] curves = new double[members * grid.length];
    for (int i = 0; i < grid.length; i++) {
      System.arraycopy(forecast.risesOfMembers(grid[i]), 0, curves, i * members, members);
    }
    return curves;
  }

  /** The dough's own temperature at whole hours. */
  private String warmth() {
    DoubleUnaryOperator likely = forecast.likelyCelsius();
    return IntStream.rangeClosed(0, (int) forecast.hours())
        .mapToObj(hour -> String.format(Locale.ROOT, "%d:%.2f", hour, likely.applyAsDouble(hour)))
        .collect(Collectors.joining(" "));
  }

  private String head() {
    Bake bake =
        new Bake(
            subject.name().isBlank() ? fileName() : subject.name(),
            forecast.formula(),
            forecast.temperature(),
            List.of());
    return ReadingsDocument.text(bake, Optional.of(subject.zero()));
  }

  private String readings() {
    return subject.heights().map(PhonePart::reading).collect(Collectors.joining(" "));
  }

  private static String reading(Reading reading) {
    return reading.hours() + ":" + reading.rise().orElseThrow().fraction();
  }

  private PhoneEvent asked() {
    return events.stream()
        .filter(each -> each.key().equals(subject.asked()))
        .findFirst()
        .orElseThrow();
  }

  private void answer() {
    put("answerKey", subject.asked());
    put("rise", PhoneEvent.number(subject.risePercent()));
    put("until", subject.until());
    put("answer", subject.sentence(clock));
    put("dots", joined(RiseChartData.Twenty.of(subject.when()).hours()));
    put("expected", PhoneEvent.number(subject.expectedHours()));
    put("look", subject.look());
  }

  private Markup charts() {
    PhoneSubject.Chart chart = subject.chart();
    if (isOneOfMany) {
      return EmbeddedChart.of(chart, ChartSize.TELEPHONE, id + "-only");
    }
    return Markup.all(
        List.of(
            EmbeddedChart.of(chart, ChartSize.TELEPHONE, id + "-narrow"),
            EmbeddedChart.of(chart, ChartSize.A5_LANDSCAPE, id + "-wide")));
  }

  private Markup rule() {
    List<String> rule = subject.rule(clock);
    return rule.isEmpty()
        ? Markup.NONE
        : Template.of("rule.html")
            .fill(Map.of("heading", Markup.text(say.say("rule")), "lines", lines(rule)));
  }

  private Markup steps() {
    List<Markup> rows = new ArrayList<>();
    subject.steps(clock).forEach(each -> rows.add(step(each, rows.size() + 1)));
    return Markup.all(rows);
  }

  private Markup step(PhoneSubject.Step step, int number) {
    return Template.of("step.html")
        .fill(
            Map.ofEntries(
                Map.entry("id", Markup.text(id)),
                Map.entry("key", Markup.text(number + " " + step.name())),
                Map.entry("hours", Markup.text(Double.toString(step.hours()))),
                Map.entry("event", Markup.text(step.event())),
                Map.entry("ics", StepAlarm.of(subject.name(), step.name(), words)),
                Map.entry("name", Markup.text(step.name())),
                Map.entry("clock", Markup.text(step.time())),
                Map.entry("seen", Markup.text(step.detail())),
                Map.entry("file", Markup.text(fileName() + "-" + number + ".ics")),
                Map.entry("alarm", Markup.text(say.say("alarm"))),
                Map.entry(
                    "alarmFor", Markup.text(say.say("alarmFor", Map.of("step", step.name()))))));
  }

  private static Markup lines(List<String> texts) {
    Template line = Template.of("line.html");
    return Markup.all(
        texts.stream().map(each -> line.fill(Map.of("text", Markup.text(each)))).toList());
  }
}
