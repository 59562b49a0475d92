package doughtide.report.handout;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.MemberQuantiles;
import doughtide.report.chart.RiseChartData;
import doughtide.report.words.Refusal;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;

/** Computes a comparison. */
final class ComparisonContent {

  private static final ZonedDateTime EXERCISE_START =
      ZonedDateTime.of(2026, 1, 5, 8, 0, 0, 0, ZoneOffset.UTC); // eight in the morning of any day

  private static final int MOST_LESSON_HOURS = 15; // still the same day

  /** How well a class reads hours off a chart (starting value). */
  static final double READING_ERROR_HOURS = 0.25;

  /** A dough with its forecast. */
  private record Entry(String name, RiseForecast forecast, Optional<TimeSpan> mark) {}

  private final Words words;
  private final FormulaWords say;
  private final Comparison comparison;
  private final Rise mark;
  private final List<Entry> entries = new ArrayList<>();

  ComparisonContent(Words words, RiseForecaster forecaster, Comparison comparison, Rise mark) {
    this.words = words;
    this.say = new FormulaWords(words);
    this.comparison = comparison;
    this.mark = mark;
    for (HandoutDough dough : comparison.doughs()) {
      RiseForecast forecast =
          Refusal.ifImpossible(forecaster.forecast(dough.formula(), dough.doughTemperature()));
      entries.add(new Entry(name(dough), forecast, TimeSpan.of(forecast.hoursToRise(mark))));
    }
  }

  ComparisonPage page(Optional<String> title) {
    List<ComparisonPage.Case> cases =
        entries.stream()
            .map(
                entry ->
                    new ComparisonPage.Case(
                        entry.name(), RiseChartData.of(entry.forecast()).build(), entry.mark()))
            .toList();
    return new ComparisonPage(
        title.orElseGet(() -> words.say("compare.title." + comparison.subject().name())),
        notes(),
        mark.percent(),
        cases,
        numbers() + " " + reason(),
        questions(),
        List.of(words.say("caution.rawDough")));
  }

  private String name(HandoutDough dough) {
    return switch (comparison.subject()) {
      case TEMPERATURE -> say.temperature(dough.temperature());
      case STARTER ->
          say.percent(100 * dough.formula().starterOfAddedFlour())
              + " ("
              + say.percent(100 * dough.formula().prefermentedFlour())
              + ")";
      case HYDRATION -> say.percent(dough.formula().hydration().percent());
      case FLOUR -> say.flour(dough.formula().flour());
    };
  }

  private List<String> notes() {
    List<String> notes = new ArrayList<>();
    HandoutDough base = comparison.base();
    String temperature =
        words.say(
            "formula.temperature", Map.of("temperature", say.temperature(base.temperature())));
    switch (comparison.subject()) {
      case TEMPERATURE -> notes.add(say.formula(base.formula()));
      case STARTER -> {
        notes.add(say.withoutStarter(base.formula()) + " " + temperature);
        notes.add(words.say("compare.starterNames"));
      }
      case HYDRATION ->
          notes.add(
              words.capitalized(
                      words.say(
                          "formula.withoutWater",
                          Map.of(
                              "flour", say.flour(base.formula().flour()),
                              "starter", say.starter(base.formula()),
                              "salt", say.percent(base.formula().salt().percent()))))
                  + " "
                  + temperature);
      case FLOUR ->
          notes.add(
              words.capitalized(
                      words.say(
                          "formula.withoutFlour",
                          Map.of(
                              "water", say.water(base.formula()),
                              "starter", say.starter(base.formula()),
                              "salt", say.percent(base.formula().salt().percent()))))
                  + " "
                  + temperature);
    }
    say.altitude(base.formula()).ifPresent(notes::add);
    notes.add(words.say("compare.key", Map.of("rise", say.percent(mark.percent()))));
    return notes;
  }

  private Optional<Entry> extreme(boolean isSlowest) {
    return entries.stream()
        .filter(entry -> entry.forecast().hoursToRise(mark).likely().isPresent())
        .reduce(
            (a, b) -> {
              OptionalDouble first = a.forecast().hoursToRise(mark).likely();
              OptionalDouble second = b.forecast().hoursToRise(mark).likely();
              boolean isLater = second.orElseThrow() > first.orElseThrow();
              return isLater == isSlowest ? b : a;
            });
  }

  private String numbers() {
    List<String> never = entries.stream().filter(e -> e.mark().isEmpty()).map(Entry::name).toList();
    String missing =
        never.isEmpty()
            ? ""
            : words.say(
                    "compare.never",
                    Map.of("doughs", String.join("; ", never), "rise", say.percent(mark.percent())))
                + " ";
    Optional<Entry> slow = extreme(true);
    Optional<Entry> fast = extreme(false);
    if (slow.isEmpty() || slow.equals(fast)) {
      return missing.strip();
    }
    return missing + pace(slow.get(), fast.orElseThrow());
  }

  private String pace(Entry slow, Entry fast) {
    TimeSpan slowSpan = slow.mark().orElseThrow();
    TimeSpan fastSpan = fast.mark().orElseThrow();
    String hours =
        words.say(
            "compare.hours",
            Map.of(
                "slow", slow.name(),
                "slowHours", words.hoursSpan(slowSpan),
                "fast", fast.name(),
                "fastHours", words.hoursSpan(fastSpan),
                "rise", say.percent(mark.percent())));
    boolean isApart = slowSpan.earlyHours() > fastSpan.lateHours();
    String apart = words.say(isApart ? "compare.apart" : "compare.overlap");
    return times(slow, fast)
        .map(
            times -> hours + " " + words.say("compare.times", Map.of("times", times)) + " " + apart)
        .orElse(hours + " " + apart);
  }

  private Optional<String> times(Entry slow, Entry fast) {
    return MemberQuantiles.timesAsLong(slow.forecast(), fast.forecast(), mark).flatMap(this::times);
  }

  /** A range, or less where its ends look alike; nothing where the doughs do. */
  private Optional<String> times(MemberQuantiles ratio) {
    String one = words.number(1, 1);
    String low = words.number(Math.max(1, ratio.low()), 1);
    String high = words.number(ratio.high(), 1);
    if (high.equals(one) || ratio.high() < 1) {
      return Optional.empty();
    }
    if (low.equals(high)) {
      return Optional.of(words.say("compare.about", Map.of("times", high)));
    }
    return Optional.of(
        low.equals(one) ? words.say("compare.atMost", Map.of("times", high)) : low + "–" + high);
  }

  private String reason() {
    return words.say("compare.why." + comparison.subject().name());
  }

  private List<ComparisonPage.Question> questions() {
    List<ComparisonPage.Question> questions = new ArrayList<>();
    limit().ifPresent(hours -> questions.add(inTime(hours)));
    Optional<Entry> slow = extreme(true);
    Optional<Entry> fast = extreme(false);
    if (slow.isPresent() && fast.isPresent() && !slow.equals(fast)) {
      times(slow.get(), fast.get())
          .ifPresent(
              times ->
                  questions.add(
                      new ComparisonPage.Question(
                          words.say("exercise.times"),
                          words.say("exercise.timesAnswer", Map.of("times", times)))));
    }
    questions.add(new ComparisonPage.Question(words.say("exercise.why"), reason()));
    return questions;
  }

  /**
   * A deadline in half hours that one dough surely meets, as far from every early and late end as a
   * class can read a chart, so that no reading falls on a border.
   */
  private Optional<Double> limit() {
    List<TimeSpan> spans =
        entries.stream()
            .flatMap(entry -> entry.mark().stream())
            .filter(TimeSpan::isClosed)
            .toList();
    double first = spans.stream().mapToDouble(TimeSpan::lateHours).min().orElse(MOST_LESSON_HOURS);
    for (double hours = Math.ceil(2 * first) / 2; hours < MOST_LESSON_HOURS; hours += 0.5) {
      double deadline = hours;
      if (spans.stream().allMatch(span -> isClearOf(span, deadline))) {
        return Optional.of(deadline);
      }
    }
    return Optional.empty();
  }

  private static boolean isClearOf(TimeSpan span, double hours) {
    return Math.abs(span.earlyHours() - hours) >= READING_ERROR_HOURS
        && Math.abs(span.lateHours() - hours) >= READING_ERROR_HOURS;
  }

  private ComparisonPage.Question inTime(double hours) {
    String text =
        words.say(
            "exercise.inTime",
            Map.of(
                "from", words.clock(EXERCISE_START),
                "to", words.clock(EXERCISE_START.plusMinutes(Math.round(60 * hours))),
                "rise", say.percent(mark.percent())));
    String answer =
        words.say(
            "exercise.inTimeAnswer",
            Map.of(
                "sure", those(span -> span.lateHours() <= hours),
                "perhaps", those(span -> span.lateHours() > hours && span.earlyHours() <= hours)));
    return new ComparisonPage.Question(text, answer);
  }

  private String those(Predicate<TimeSpan> test) {
    List<String> names =
        entries.stream()
            .filter(entry -> entry.mark().map(test::test).orElse(false))
            .map(Entry::name)
            .toList();
    return names.isEmpty() ? words.say("exercise.none") : String.join("; ", names);
  }
}
