package doughtide.report.phone;

import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.learning.JarError;
import doughtide.core.learning.Reading;
import doughtide.core.loaf.JarRule;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.RiseChart;
import doughtide.report.chart.RiseChartData;
import doughtide.report.handout.BakeSheet;
import doughtide.report.handout.DoughSteps;
import doughtide.report.handout.FormulaWords;
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
import java.util.stream.Collectors;

/** A dough, mixed at hour 0, that is shaped or has risen so far. */
final class DoughSubject implements PhoneSubject {

  private static final int MOST_WIDENS = 2;
  private static final String SHAPE = "shape";
  private static final String PAST = "past";

  private final PhoneDough dough;
  private final RiseForecast forecast;
  private final RiseForecast now;
  private final Words words;
  private final List<PhoneEvent> events;

  DoughSubject(PhoneDough dough, Words words) {
    this.dough = dough;
    this.forecast = dough.forecast();
    this.now = dough.now();
    this.words = words;
    this.events = List.copyOf(found());
  }

  @Override
  public String name() {
    return dough.name();
  }

  @Override
  public ZonedDateTime zero() {
    return dough.mixedAt();
  }

  @Override
  public RiseForecast forecast() {
    return forecast;
  }

  @Override
  public JarError jar() {
    return dough.jar();
  }

  @Override
  public int members() {
    int all = forecast.ensemble().size();
    return dough.shaped().isPresent() ? Math.min(shapeHours().length, all) : all;
  }

  @Override
  public boolean namesEveryDay() {
    return dough.plan().isPresent();
  }

  @Override
  public List<Reading> readings() {
    return dough.told().map(PhoneDough.Told::readings).orElse(List.of());
  }

  @Override
  public PhoneWords say() {
    return new PhoneWords(words, false);
  }

  @Override
  public String formula() {
    return new FormulaWords(words).formula(forecast.formula());
  }

  @Override
  public String begun() {
    return words.say(
        "formula.mixed",
        Map.of(
            "date", words.date(dough.mixedAt().toLocalDate()),
            "time", words.clock(dough.mixedAt())));
  }

  @Override
  public List<PhoneEvent> events() {
    return events;
  }

  private List<PhoneEvent> found() {
    List<PhoneEvent> all = new ArrayList<>();
    dough.shaped().ifPresent(loaf -> all.add(shape(loaf)));
    dough.plan().ifPresent(plan -> all.add(shape(plan)));
    for (Rise rise : dough.rises()) {
      all.add(
          event(
              rise(rise),
              words.say("sheet.rise", Map.of("rise", percent(rise))),
              OptionalDouble.of(rise.percent()),
              isPlanned(rise) ? dough.plan().orElseThrow().shape() : now.hoursToRise(rise),
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

  /** Whether a plan has its own window for a rise, of the doughs that it was weighed by. */
  private boolean isPlanned(Rise rise) {
    return dough.plan().isPresent() && dough.told().isEmpty() && rise.equals(dough.asked());
  }

  private boolean isShaped() {
    return dough.shaped().isPresent() || dough.plan().isPresent();
  }

  private PhoneEvent event(
      String key, String name, OptionalDouble percent, TimeWindow window, double[] hours) {
    return new PhoneEvent(key, name, percent, window, hours);
  }

  private static String rise(Rise rise) {
    return "rise" + rise.percent();
  }

  private String percent(Rise rise) {
    return new FormulaWords(words).percent(rise.percent());
  }

  @Override
  public String asked() {
    return isShaped() ? SHAPE : rise(dough.asked());
  }

  @Override
  public OptionalDouble risePercent() {
    return dough.shaped().isPresent()
        ? OptionalDouble.empty()
        : OptionalDouble.of(dough.asked().percent());
  }

  @Override
  public String until() {
    return "";
  }

  @Override
  public OptionalDouble expectedHours() {
    return dough
        .told()
        .map(PhoneDough.Told::expectedHours)
        .orElseGet(() -> answered().window().likely());
  }

  private PhoneEvent answered() {
    return events.stream().filter(each -> each.key().equals(asked())).findFirst().orElseThrow();
  }

  /** When the doughs are there that the page tells of when it is opened. */
  @Override
  public Distribution when() {
    return dough
        .shaped()
        .map(loaf -> loaf.shape().bulkEnd())
        .orElseGet(() -> now.passes(dough.asked()));
  }

  @Override
  public String look() {
    return dough.told().map(DoughSubject::look).orElse("");
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

  @Override
  public String sentence(PhoneClock clock) {
    PhoneEvent asked = answered();
    if (asked.window().likely().isEmpty()) {
      return say().say("never", Map.of("rise", percent(dough.asked())));
    }
    boolean isShape = asked.key().equals(SHAPE);
    String rise =
        isShape ? words.percent(Math.rint(shows().orElseThrow()), 0) : percent(dough.asked());
    String main =
        words.say(
            isShape ? "sheet.answer" : "phone.risen",
            Map.of("time", clock.at(asked.window().likely()), "rise", rise));
    return main + " " + clock.eightOfTen(asked.window(), say());
  }

  @Override
  public Chart chart() {
    RiseChartData.Builder data =
        RiseChartData.of(
                now,
                dough.rises().stream()
                    .filter(rise -> !isPlanned(rise)) // the point to shape tells of it
                    .mapToDouble(Rise::percent)
                    .toArray())
            .title(dough.name())
            .mixedAt(Optional.of(dough.mixedAt()));
    dough.shaped().ifPresent(loaf -> data.shape(now, loaf.proof(), loaf.shape()));
    dough.plan().ifPresent(plan -> draw(plan, data));
    RiseChartData drawn = data.build();
    return new Chart(RiseChart.withoutHead(drawn, words), RiseChart.caption(drawn, words), false);
  }

  /** The hour to shape that was planned, and twenty doughs at its rise. */
  private void draw(PhoneDough.Plan plan, RiseChartData.Builder data) {
    TimeWindow shape = plan.shape();
    if (shape.early().isPresent() && shape.likely().isPresent()) {
      data.shape(
          new RiseChartData.ShapePoint(
              shape.early().getAsDouble(),
              shape.likely().getAsDouble(),
              shape.late(),
              dough.asked().percent()));
    }
    data.twenty(RiseChartData.Twenty.of(when()));
  }

  @Override
  public List<Step> steps(PhoneClock clock) {
    return dough
        .plan()
        .map(plan -> plan.steps().stream().map(each -> step(each, clock)).toList())
        .orElseGet(() -> days().stream().map(each -> step(each, clock)).toList());
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

  private Step step(PhoneDough.Step step, PhoneClock clock) {
    TimeSpan shape = TimeSpan.of(dough.plan().orElseThrow().shape()).orElse(TimeSpan.at(0));
    String time = step.atShape() ? clock.of(shape) : clock.at(step.hours());
    return new Step(step.name(), step.hours(), step.atShape() ? SHAPE : "", time, step.detail());
  }

  private Step step(BakeSheet.Step step, PhoneClock clock) {
    TimeSpan when = step.when();
    double likely = when.likelyHours().orElse(when.earlyHours());
    boolean moves = when.likelyHours().isPresent() && when.earlyHours() < when.lateHours();
    Optional<PhoneEvent> same =
        events.stream().filter(each -> moves && each.isAt(likely)).findFirst();
    String event = same.map(PhoneEvent::key).orElse(moves ? "after" : "");
    return new Step(step.name(), likely, event, clock.of(when), step.forecast());
  }

  @Override
  public List<String> rule(PhoneClock clock) {
    return dough.shaped().stream()
        .flatMap(loaf -> loaf.shape().rule().looks().stream())
        .map(look -> rule(look, clock))
        .toList();
  }

  private String rule(JarRule.AtHour look, PhoneClock clock) {
    String waits = look.waits().stream().map(this::rule).collect(Collectors.joining("; "));
    return say().say("ruleAt", Map.of("time", clock.at(look.hours()))) + " \u2013 " + waits + ".";
  }

  private String rule(JarRule.Wait wait) {
    String rise = words.percent(Math.rint(wait.risePercent()), 0);
    return wait.hours() == 0
        ? say().say("ruleNow", Map.of("rise", rise))
        : say().say("ruleWait", Map.of("rise", rise, "hours", words.hours(wait.hours())));
  }

  @Override
  public List<String> why() {
    List<String> why = new ArrayList<>();
    dough.widens().stream()
        .limit(MOST_WIDENS)
        .map(each -> Advice.of(words, each))
        .forEach(each -> why.add(each.text() + ": " + each.remedy() + "."));
    why.add(say().say("goByTheJar"));
    return why;
  }

  @Override
  public List<String> cautions() {
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
}
