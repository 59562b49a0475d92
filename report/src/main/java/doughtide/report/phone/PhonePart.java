package doughtide.report.phone;

import doughtide.core.document.ReadingsDocument;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.Ensemble;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.learning.Bake;
import doughtide.core.learning.LiveDough;
import doughtide.core.learning.Reading;
import doughtide.core.learning.ReadingNoise;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.report.chart.ChartCaption;
import doughtide.report.chart.ChartSize;
import doughtide.report.chart.PrintedChart;
import doughtide.report.chart.RiseChart;
import doughtide.report.chart.RiseChartData;
import doughtide.report.handout.BakeSheet;
import doughtide.report.handout.DoughSteps;
import doughtide.report.handout.FormulaWords;
import doughtide.report.words.Advice;
import doughtide.report.words.StrengthWords;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** One dough of a page: its places filled, its members as numbers. */
final class PhonePart {

  private static final double GRID_STEP_HOURS = 0.375;
  private static final double EVEN_UNTIL_HOURS = 12;
  private static final double BEFORE_JUMP_HOURS = 1e-6;
  private static final int MOST_JUMPS = 64;
  private static final int MOST_WIDENS = 2;
  static final int MOST_MEMBERS_OF_MANY = 128;
  private static final String SHAPE = "shape";
  private static final String PAST = "past";

  private final PhoneDough dough;
  private final RiseForecast forecast;
  private final RiseForecast now;
  private final Words words;
  private final String id;
  private final boolean isOneOfMany;
  private final int members;
  private final PhoneClock clock;
  private final List<PhoneEvent> events;
  private final Map<String, Markup> places = new TreeMap<>();

  /**
   * Of a dough.
   *
   * @param number of the dough on its page, from 1
   * @param all how many doughs the page has
   */
  PhonePart(PhoneDough dough, Words words, int number, int all) {
    this.dough = dough;
    this.forecast = dough.forecast();
    this.now = dough.now();
    this.words = words;
    this.id = "d" + number;
    this.isOneOfMany = all > 1;
    int most = isOneOfMany ? MOST_MEMBERS_OF_MANY : Ensemble.USUAL_SIZE;
    int known = dough.shaped().isPresent() ? shapeHours().length : forecast.ensemble().size();
    this.members = Math.min(Math.min(known, forecast.ensemble().size()), most);
    this.clock = new PhoneClock(dough.mixedAt(), forecast.hours(), dough.plan().isPresent(), words);
    this.events = events();
  }

  /** A line of the list of doughs, which leads to it. */
  Markup line() {
    return Template.of("link.html")
        .fill(
            Map.of(
                "id", Markup.text(id),
                "name", Markup.text(dough.name()),
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
    put("why", lines(why()));
    put("cautions", lines(cautions()));
    return Template.of("dough.html").fill(places);
  }

  private void put(String place, Markup markup) {
    places.put(place, markup);
  }

  private void put(String place, String text) {
    put(place, Markup.text(text));
  }

  private void say(String place, String key) {
    put(place, words.say("phone." + key));
  }

  private void headings() {
    put("id", id);
    put(
        "heading",
        isOneOfMany
            ? Template.of("heading.html").fill(Map.of("text", Markup.text(dough.name())))
            : Markup.NONE);
    say("dotsWhat", "dots");
    say("dashed", "dashed");
    say("readHeading", "read");
    say("heightLabel", "height");
    say("unitLabel", "unit");
    say("unitPercent", "percent");
    say("unitMillimetres", "millimetres");
    say("startLabel", "start");
    put("whenLabel", words.say("phone.when", Map.of("zone", dough.mixedAt().getZone().getId())));
    put(
        "temperatureLabel",
        words.say("phone.temperature", Map.of("unit", isFahrenheit() ? "°F" : "°C")));
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
    FormulaWords formula = new FormulaWords(words);
    put("formula", formula.formula(forecast.formula()));
    put("mixedLine", mixed());
    put("zoneLine", words.say("phone.zone", Map.of("zone", dough.mixedAt().getZone().getId())));
  }

  private String mixed() {
    return words.say(
        "formula.mixed",
        Map.of(
            "date", words.date(dough.mixedAt().toLocalDate()),
            "time", words.clock(dough.mixedAt())));
  }

  private boolean isFahrenheit() {
    return words.degrees() == Words.Degrees.FAHRENHEIT;
  }

  /** Letters and digits alone, which every system takes. */
  private String fileName() {
    String plain = dough.name().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String name = plain.replaceAll("^-+|-+$", "");
    return name.isEmpty() ? "dough" : name.substring(0, Math.min(40, name.length()));
  }

  private void numbers() {
    double[] grid = grid();
    double[] curves = curves(grid);
    MemberNumbers heights = MemberNumbers.of(curves);
    MemberNumbers factors = MemberNumbers.of(dough.jar().factorsOfMembers(members));
    put("name", dough.name());
    put("store", "doughtide " + dough.name() + "\n" + head());
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

  /** Member by member. */
  private double[] curves(double[] grid) {
    double[] curves = new double[members * grid.length];
    for (int i = 0; i < grid.length; i++) {
      double[] rises = forecast.risesOfMembers(grid[i]);
      for (int m = 0; m < members; m++) {
        curves[m * grid.length + i] = rises[m];
      }
    }
    return curves;
  }

  /** The dough's own temperature as stated, at whole hours. */
  private String warmth() {
    RiseCurve likely =
        RiseModel.of(forecast.formula(), forecast.temperature()).runFast(forecast.hours());
    return IntStream.rangeClosed(0, (int) forecast.hours())
        .mapToObj(hour -> String.format(Locale.ROOT, "%d:%.2f", hour, likely.celsiusAt(hour)))
        .collect(Collectors.joining(" "));
  }

  private String head() {
    Bake bake =
        new Bake(
            dough.name().isBlank() ? fileName() : dough.name(),
            forecast.formula(),
            forecast.temperature(),
            List.of());
    return ReadingsDocument.text(bake, Optional.of(dough.mixedAt()));
  }

  private String readings() {
    return heights().map(PhonePart::reading).collect(Collectors.joining(" "));
  }

  private Stream<Reading> heights() {
    return dough.told().stream()
        .flatMap(told -> told.readings().stream())
        .filter(each -> each.rise().isPresent());
  }

  private static String reading(Reading reading) {
    return reading.hours() + ":" + reading.rise().orElseThrow().fraction();
  }

  private List<PhoneEvent> events() {
    List<PhoneEvent> all = new ArrayList<>();
    dough.shaped().ifPresent(loaf -> all.add(shape(loaf)));
    dough.plan().ifPresent(plan -> all.add(shape(plan)));
    for (Rise rise : dough.rises()) {
      all.add(
          event(
              rise(rise),
              words.say("sheet.rise", Map.of("rise", percent(rise))),
              OptionalDouble.of(rise.percent()),
              now.hoursToRise(rise),
              forecast.hoursOfMembers(rise)));
    }
    all.add(
        event(
            PAST,
            words.say("step.past"),
            OptionalDouble.empty(),
            now.hoursToOver(),
            forecast.pastBestOfMembers()));
    return all;
  }

  private PhoneEvent shape(PhoneDough.Loaf loaf) {
    return event(
        SHAPE,
        words.say("step.bulkEnd"),
        OptionalDouble.empty(),
        loaf.shape().hours(),
        shapeHours());
  }

  /** Of the members before any reading. */
  private double[] shapeHours() {
    return dough.loaf().orElseThrow().shape().bulkEndOfMembers().stream()
        .mapToDouble(each -> each)
        .toArray();
  }

  private PhoneEvent shape(PhoneDough.Plan plan) {
    return event(
        SHAPE,
        words.say("step.bulkEnd"),
        OptionalDouble.empty(),
        plan.shape(),
        forecast.hoursOfMembers(dough.asked()));
  }

  private boolean isShaped() {
    return dough.shaped().isPresent() || dough.plan().isPresent();
  }

  private PhoneEvent event(
      String key, String name, OptionalDouble percent, TimeWindow window, double[] hours) {
    return new PhoneEvent(key, name, percent, window, Arrays.copyOf(hours, members));
  }

  private static String rise(Rise rise) {
    return "rise" + rise.percent();
  }

  private String percent(Rise rise) {
    return new FormulaWords(words).percent(rise.percent());
  }

  private PhoneEvent asked() {
    String key = isShaped() ? SHAPE : rise(dough.asked());
    return events.stream().filter(each -> each.key().equals(key)).findFirst().orElseThrow();
  }

  private void answer() {
    PhoneEvent asked = asked();
    put("answerKey", asked.key());
    put("answer", sentence(asked));
    put("dots", joined(RiseChartData.Twenty.of(when()).hours()));
    put(
        "expected",
        PhoneEvent.number(
            dough.told().map(PhoneDough.Told::expectedHours).orElse(asked.window().likely())));
    put("look", dough.told().map(PhonePart::look).orElse(""));
  }

  /** When the doughs are there that the page tells of when it is opened. */
  private Distribution when() {
    return dough
        .shaped()
        .map(loaf -> loaf.shape().bulkEnd())
        .orElseGet(() -> now.passes(dough.asked()));
  }

  private static String look(PhoneDough.Told told) {
    return told.nextLookHours().isPresent()
        ? Double.toString(told.nextLookHours().getAsDouble())
        : "now";
  }

  private OptionalDouble shows() {
    if (dough.plan().isPresent()) {
      return OptionalDouble.of(dough.asked().percent());
    }
    return dough.shaped().map(loaf -> loaf.shape().rise().likely()).orElse(OptionalDouble.empty());
  }

  private String sentence(PhoneEvent asked) {
    if (asked.window().likely().isEmpty()) {
      return words.say("phone.never", Map.of("rise", percent(dough.asked())));
    }
    boolean isShape = asked.key().equals(SHAPE);
    String rise =
        isShape ? words.percent(Math.rint(shows().orElseThrow()), 0) : percent(dough.asked());
    String main =
        words.say(
            isShape ? "sheet.answer" : "phone.risen",
            Map.of("time", clock.at(asked.window().likely()), "rise", rise));
    return main + " " + clock.eightOfTen(asked.window());
  }

  private Markup charts() {
    RiseChartData.Builder data =
        RiseChartData.of(now, dough.rises().stream().mapToDouble(Rise::percent).toArray())
            .title(dough.name())
            .mixedAt(Optional.of(dough.mixedAt()))
            .readings(heights().map(RiseChartData.JarReading::of).toList());
    dough.shaped().ifPresent(loaf -> data.shape(now, loaf.proof(), loaf.shape()));
    RiseChartData drawn = data.build();
    PrintedChart chart = RiseChart.withoutHead(drawn, words);
    ChartCaption caption = RiseChart.caption(drawn, words);
    if (isOneOfMany) {
      return EmbeddedChart.of(chart, ChartSize.TELEPHONE, caption, id + "-only");
    }
    return Markup.all(
        List.of(
            EmbeddedChart.of(chart, ChartSize.TELEPHONE, caption, id + "-narrow"),
            EmbeddedChart.of(chart, ChartSize.A5_LANDSCAPE, caption, id + "-wide")));
  }

  private Markup steps() {
    List<Markup> rows = new ArrayList<>();
    dough
        .plan()
        .ifPresentOrElse(
            plan -> plan.steps().forEach(each -> rows.add(step(each, rows.size() + 1))),
            () -> days().forEach(each -> rows.add(step(each, rows.size() + 1))));
    return Markup.all(rows);
  }

  /** The day of a dough that was not planned. */
  private List<BakeSheet.Step> days() {
    DoughSteps day = new DoughSteps(words, now);
    List<BakeSheet.Step> steps = new ArrayList<>();
    steps.add(day.mix());
    OptionalDouble end =
        dough.shaped().map(loaf -> loaf.shape().hours().likely()).orElse(OptionalDouble.empty());
    StrengthWords strength = new StrengthWords(words);
    for (StrengthPlan.Fold fold : StrengthPlan.of(now.formula()).during(now, end).steps()) {
      steps.add(new BakeSheet.Step(strength.kind(fold), TimeSpan.at(fold.hours()), ""));
    }
    steps.addAll(
        dough
            .shaped()
            .map(loaf -> day.withShape(loaf.shape(), loaf.proof()))
            .orElseGet(day::bulkOnly));
    return steps;
  }

  private Markup step(PhoneDough.Step step, int number) {
    TimeSpan shape = TimeSpan.of(dough.plan().orElseThrow().shape()).orElse(TimeSpan.at(0));
    String time = step.atShape() ? clock.of(shape) : clock.at(step.hours());
    return step(
        number, step.name(), step.hours(), step.atShape() ? SHAPE : "", time, step.detail());
  }

  private Markup step(BakeSheet.Step step, int number) {
    TimeSpan when = step.when();
    double likely = when.likelyHours().orElse(when.earlyHours());
    boolean moves = when.likelyHours().isPresent() && when.earlyHours() < when.lateHours();
    Optional<PhoneEvent> same =
        events.stream().filter(each -> moves && each.isAt(likely)).findFirst();
    String event = same.map(PhoneEvent::key).orElse(moves ? "after" : "");
    return step(number, step.name(), likely, event, clock.of(when), step.forecast());
  }

  private Markup step(
      int number, String name, double hours, String event, String time, String seen) {
    return Template.of("step.html")
        .fill(
            Map.ofEntries(
                Map.entry("id", Markup.text(id)),
                Map.entry("key", Markup.text(number + " " + name)),
                Map.entry("hours", Markup.text(Double.toString(hours))),
                Map.entry("event", Markup.text(event)),
                Map.entry("ics", StepAlarm.of(dough.name(), name, words)),
                Map.entry("name", Markup.text(name)),
                Map.entry("clock", Markup.text(time)),
                Map.entry("seen", Markup.text(seen)),
                Map.entry("file", Markup.text(fileName() + "-" + number + ".ics")),
                Map.entry("alarm", Markup.text(words.say("phone.alarm"))),
                Map.entry(
                    "alarmFor", Markup.text(words.say("phone.alarmFor", Map.of("step", name))))));
  }

  private List<String> why() {
    List<String> why = new ArrayList<>();
    dough.widens().stream()
        .limit(MOST_WIDENS)
        .map(each -> Advice.of(words, each))
        .forEach(each -> why.add(each.text() + ": " + each.remedy() + "."));
    why.add(words.say("phone.goByTheJar"));
    return why;
  }

  private List<String> cautions() {
    List<String> cautions = new ArrayList<>();
    dough.warnings().stream()
        .map(each -> Advice.of(words, each).sentences())
        .distinct()
        .forEach(cautions::add);
    cautions.add(words.say("caution.rawDough"));
    cautions.add(words.say("caution.jar"));
    cautions.add(words.say("caution.steam"));
    return cautions;
  }

  private static Markup lines(List<String> texts) {
    Template line = Template.of("line.html");
    return Markup.all(
        texts.stream().map(each -> line.fill(Map.of("text", Markup.text(each)))).toList());
  }
}
