package doughtide.cli.command;

import doughtide.cli.answer.TextPage;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.cli.text.Understood;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingForecast;
import doughtide.core.feeding.Heights;
import doughtide.core.feeding.RatioAnswer;
import doughtide.core.feeding.RefreshmentPlan;
import doughtide.core.feeding.StarterPhase;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.report.words.Advice;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/** Feeding as a page of text. */
public final class FeedPage {

  private static final String NEVER = "not in ten days";

  private final FeedResult result;
  private final TextPage page = new TextPage();

  private FeedPage(FeedResult result) {
    this.result = result;
  }

  public static List<String> of(FeedResult result) {
    FeedPage page = new FeedPage(result);
    page.understood();
    page.answer();
    page.steps();
    page.ready();
    page.amounts();
    page.phases();
    page.warnings();
    return page.page.lines();
  }

  private void understood() {
    Feeding first = result.plan().steps().get(0).forecast().feeding();
    Understood understood = new Understood();
    understood.add("Feed", first.ratio().words());
    if (result.plan().asked() > 1) {
      understood.add("", "each time, " + result.plan().asked() + " times");
    }
    understood.add(
        "Starter fed",
        Arguments.word(first.starter().condition())
            + ", "
            + first.starter().flour().name()
            + ", hydration "
            + Words.percent(first.starter().hydration()));
    understood.add("Flour given", first.flour().name());
    understood.add("After feeding", afterFeeding(first));
    understood.add("Temperature", result.options().temperature().words());
    result.clock().ifPresent(clock -> understood.add("First fed", clock.startInWords()));
    page.understood(understood);
  }

  private static String afterFeeding(Feeding feeding) {
    String salt =
        feeding.salt().percent() > 0
            ? "salt " + Words.percent(feeding.salt()) + " of the flour given"
            : "no salt";
    return "hydration " + Words.percent(feeding.hydration()) + ", " + salt;
  }

  private void answer() {
    result.answer().ifPresent(this::answer);
  }

  private void answer(RatioAnswer answer) {
    page.gap();
    String ratio = answer.ratio().text() + " (" + answer.ratio().words() + ")";
    OptionalDouble ready = answer.plan().readyHours();
    switch (answer.reach()) {
      case ON_TIME -> page.sentence("Feed " + ratio + " to be ready in time.");
      case NOT_SO_SOON ->
          page.sentence(
              "That is too soon. The nearest possible: feed "
                  + ratio
                  + ready(ready)
                  + ". Feed earlier, or keep it warmer.");
      case NOT_SO_LATE ->
          page.sentence(
              "That is too long. The nearest possible: feed "
                  + ratio
                  + ready(ready)
                  + ". Feed "
                  + duration(answer.wantedHours() - ready.orElse(0))
                  + " later, or keep it cooler.");
    }
  }

  private String ready(OptionalDouble hours) {
    return hours.isEmpty()
        ? ", which is not ready in ten days"
        : ", ready after " + duration(hours.getAsDouble()) + at(hours.getAsDouble());
  }

  private void steps() {
    List<RefreshmentPlan.Step> steps = result.plan().steps();
    for (int i = 0; i < steps.size(); i++) {
      page.gap();
      if (steps.size() > 1) {
        page.line(
            "Feed "
                + (i + 1)
                + (i == 0 ? "" : ", " + duration(steps.get(i).fromHours()) + " after the first")
                + at(steps.get(i).fromHours()));
      }
      step(steps.get(i));
    }
  }

  private void step(RefreshmentPlan.Step step) {
    FeedingForecast forecast = step.forecast();
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("Hours after this feed", "early", "likely", "late"));
    window(rows, "Ripe from", forecast.ripe(), step.fromHours());
    window(rows, "Begins to fall", forecast.falling(), step.fromHours());
    window(rows, "Fallen by 5 %", forecast.fallen(), step.fromHours());
    TimeWindow ripeFor = forecast.ripeFor();
    rows.add(row("Stays ripe for", ripeFor));
    forecast.heights().ifPresent(heights -> rows.add(row(heights)));
    page.table(rows);
  }

  private void window(List<List<String>> rows, String label, TimeWindow window, double from) {
    rows.add(row(label, window));
    result
        .clock()
        .ifPresent(
            clock ->
                rows.add(
                    List.of(
                        "",
                        clock(clock, window.early(), from),
                        clock(clock, window.likely(), from),
                        clock(clock, window.late(), from))));
  }

  private static List<String> row(String label, TimeWindow window) {
    return List.of(label, hours(window.early()), hours(window.likely()), hours(window.late()));
  }

  private static List<String> row(Heights heights) {
    return List.of(
        "Greatest height", times(heights.low()), times(heights.likely()), times(heights.high()));
  }

  private static String times(double height) {
    return Words.rounded(height, 1) + " times";
  }

  private static String hours(OptionalDouble hours) {
    return hours.isPresent() ? duration(hours.getAsDouble()) : NEVER;
  }

  private static String clock(ClockTimes clock, OptionalDouble hours, double from) {
    return hours.isPresent() ? clock.at(from + fiveMinutes(hours.getAsDouble())) : "";
  }

  /** To five minutes: the window is much wider. */
  public static String duration(double hours) {
    return Words.duration(fiveMinutes(hours));
  }

  private static double fiveMinutes(double hours) {
    return Math.round(hours * 12) / 12.0;
  }

  private String at(double hours) {
    return result.clock().map(clock -> " (" + clock.at(hours) + ")").orElse("");
  }

  private void ready() {
    page.gap();
    OptionalDouble ready = result.plan().readyHours();
    if (ready.isEmpty()) {
      page.sentence("It is not likely to be ripe within ten days: no hour to plan for.");
      return;
    }
    String first = result.plan().asked() > 1 ? "the first feed" : "feeding";
    page.sentence(
        "Plan to use it "
            + duration(ready.getAsDouble())
            + " after "
            + first
            + at(ready.getAsDouble())
            + ": the middle of its likely ripe time.");
    result.clock().ifPresent(this::wanted);
  }

  private void wanted(ClockTimes clock) {
    if (result.readyAt().isEmpty()) {
      return;
    }
    RefreshmentPlan.Step last = result.plan().last();
    double hours = FeedClock.hoursBetween(clock.start(), result.readyAt().get());
    double since = hours - last.fromHours();
    if (since < 0 || since > 240) {
      return;
    }
    List<String> shares = new ArrayList<>();
    for (StarterPhase phase : StarterPhase.values()) {
      long percent = Math.round(100 * last.forecast().shareIn(phase, since));
      shares.add(phase.words() + " in " + percent);
    }
    page.sentence(
        "Of 100 starters that fit what you gave, at "
            + clock.at(hours)
            + ": "
            + String.join(", ", shares)
            + ".");
  }

  private void amounts() {
    List<FeedAmounts> amounts = result.amounts();
    if (amounts.isEmpty()) {
      return;
    }
    page.gap();
    List<List<String>> rows = new ArrayList<>();
    rows.add(cells("Weigh", "starter", "flour", "water", "salt", "in the jar"));
    for (int i = 0; i < amounts.size(); i++) {
      FeedAmounts each = amounts.get(i);
      rows.add(
          cells(
              amounts.size() > 1 ? "Feed " + (i + 1) : "",
              grams(each.starterGrams()),
              grams(each.flourGrams()),
              grams(each.waterGrams()),
              grams(each.saltGrams()),
              grams(each.totalGrams())));
    }
    page.table(rows);
    FeedAmounts last = amounts.get(amounts.size() - 1);
    page.sentence(
        "When it is ripe use "
            + grams(last.useGrams())
            + " and keep back "
            + grams(last.keepGrams())
            + (result.options().keep().isEmpty() ? " for the same feed again." : "."));
  }

  /** Without the column of salt where none is given. */
  private List<String> cells(
      String label, String starter, String flour, String water, String salt, String all) {
    return result.options().feeding().salt().percent() > 0
        ? List.of(label, starter, flour, water, salt, all)
        : List.of(label, starter, flour, water, all);
  }

  /** A tenth of a gram matters where little is weighed. */
  private static String grams(double grams) {
    return Words.rounded(grams, grams < 20 ? 1 : 0) + " g";
  }

  private void phases() {
    page.gap();
    page.line("How to tell");
    List<List<String>> rows = new ArrayList<>();
    for (StarterPhase phase : StarterPhase.values()) {
      rows.add(List.of("  " + phase.words(), phase.look()));
    }
    page.table(rows);
  }

  private void warnings() {
    page.gap();
    Set<String> said = new LinkedHashSet<>(result.remarks());
    for (RefreshmentPlan.Step step : result.plan().steps()) {
      for (Warning warning : step.forecast().warnings()) {
        said.add("Note: " + Advice.english(warning).sentences());
      }
    }
    said.forEach(page::sentence);
    FeedResult.CAUTIONS.forEach(caution -> page.sentence("Caution: " + caution));
  }
}
