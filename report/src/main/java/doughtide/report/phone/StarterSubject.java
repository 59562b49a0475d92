package doughtide.report.phone;

import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingForecast;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.learning.JarError;
import doughtide.core.learning.Reading;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.FeedChart;
import doughtide.report.handout.FormulaWords;
import doughtide.report.words.Advice;
import doughtide.report.words.FeedWords;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A starter, fed at hour 0, that is ripe for a while. */
final class StarterSubject implements PhoneSubject {

  private static final Rise DOUBLED = Rise.ofPercent(100);
  private static final String RIPE = "ripe";
  private static final String FALLS = "falls";

  private final PhoneStarter starter;
  private final FeedingForecast forecast;
  private final RiseForecast rise;
  private final Words words;
  private final PhoneWords say;
  private final List<PhoneEvent> events;

  StarterSubject(PhoneStarter starter, Words words) {
    this.starter = starter;
    this.forecast = starter.forecast();
    this.rise = forecast.rise();
    this.words = words;
    this.say = new PhoneWords(words, true);
    this.events =
        List.of(
            event(
                "doubled",
                OptionalDouble.of(100),
                forecast.doubled(),
                rise.hoursOfMembers(DOUBLED)),
            event(RIPE, OptionalDouble.empty(), forecast.ripe(), rise.ripeOfMembers()),
            event(FALLS, OptionalDouble.empty(), forecast.falling(), rise.peakOfMembers()),
            event("fallen", OptionalDouble.empty(), forecast.fallen(), rise.fallenOfMembers()));
  }

  private PhoneEvent event(String key, OptionalDouble percent, TimeWindow when, double[] hours) {
    return new PhoneEvent(key, words.say("starterStep." + key), percent, when, hours);
  }

  @Override
  public String name() {
    return starter.name();
  }

  @Override
  public ZonedDateTime zero() {
    return starter.fedAt();
  }

  @Override
  public RiseForecast forecast() {
    return rise;
  }

  @Override
  public JarError jar() {
    return starter.jar();
  }

  @Override
  public int members() {
    return rise.ensemble().size();
  }

  @Override
  public boolean namesEveryDay() {
    return false;
  }

  @Override
  public List<Reading> readings() {
    return List.of();
  }

  @Override
  public List<PhoneEvent> events() {
    return events;
  }

  @Override
  public String asked() {
    return RIPE;
  }

  @Override
  public OptionalDouble risePercent() {
    return OptionalDouble.empty();
  }

  @Override
  public String until() {
    return FALLS;
  }

  /** With the hour that the program plans for. */
  @Override
  public String sentence(PhoneClock clock) {
    if (forecast.readyHours().isEmpty()) {
      return say.say("never");
    }
    return say.say(
            "ready",
            Map.of(
                "time", clock.at(forecast.readyHours()),
                "from", clock.at(forecast.ripe().likely()),
                "until", clock.at(forecast.falling().likely())))
        + " "
        + clock.eightOfTen(forecast.ripe(), say);
  }

  @Override
  public Distribution when() {
    return rise.ripe();
  }

  @Override
  public OptionalDouble expectedHours() {
    return forecast.ripe().likely();
  }

  @Override
  public String look() {
    return "";
  }

  @Override
  public Chart chart() {
    Optional<ZonedDateTime> fedAt = Optional.of(starter.fedAt());
    return new Chart(
        FeedChart.withoutHead(forecast, fedAt, words),
        FeedChart.caption(starter.name(), forecast, fedAt, words),
        true);
  }

  @Override
  public List<Step> steps(PhoneClock clock) {
    FeedWords feeds = new FeedWords(words);
    List<Step> steps = new ArrayList<>();
    for (PhoneStarter.Feed feed : starter.feeds()) {
      String weigh = feeds.line(feed.ratio(), feed.amounts());
      steps.add(
          new Step(words.say("dayStep.feed"), feed.hours(), "", clock.at(feed.hours()), weigh));
    }
    TimeSpan.of(forecast.ripe()).ifPresent(span -> steps.add(step(RIPE, span, clock)));
    forecast
        .readyHours()
        .ifPresent(
            at -> steps.add(new Step(words.say("starterStep.use"), at, "ready", clock.at(at), "")));
    TimeSpan.of(forecast.falling()).ifPresent(span -> steps.add(step(FALLS, span, clock)));
    return steps;
  }

  private Step step(String event, TimeSpan span, PhoneClock clock) {
    double likely = span.likelyHours().orElse(span.earlyHours());
    String look = words.say("starterStep." + event + ".look");
    return new Step(words.say("starterStep." + event), likely, event, clock.of(span), look);
  }

  @Override
  public List<String> rule(PhoneClock clock) {
    return List.of();
  }

  @Override
  public List<String> why() {
    return List.of(say.say("goByTheJar"));
  }

  @Override
  public List<String> cautions() {
    List<String> cautions = new ArrayList<>();
    forecast.warnings().stream()
        .map(each -> Advice.of(words, each).sentences())
        .distinct()
        .forEach(cautions::add);
    cautions.add(words.say("caution.jar"));
    cautions.add(words.say("caution.mould"));
    cautions.add(words.say("caution.rawDough"));
    return cautions;
  }

  @Override
  public String formula() {
    Feeding feeding = forecast.feeding();
    FormulaWords formula = new FormulaWords(words);
    return words.say(
        "starter.line",
        Map.of(
            "kept", formula.kept(feeding.starter()),
            "keptFlour", formula.flour(feeding.starter().flour()),
            "flour", formula.flour(feeding.flour())));
  }

  @Override
  public String begun() {
    return say.say(
        "fed",
        Map.of(
            "date", words.date(starter.fedAt().toLocalDate()),
            "time", words.clock(starter.fedAt())));
  }

  @Override
  public PhoneWords say() {
    return say;
  }
}
