package doughtide.report.handout;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.Starter;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.learning.FirstEvening;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.report.chart.RiseChart;
import doughtide.report.page.Table;
import doughtide.report.words.Refusal;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.TypedWords;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Computes the worksheet of a first evening with a starter, see {@link FirstEvening}. */
final class FirstEveningContent {

  /** What stands in each jar: enough to be measured, little enough to waste (common practice). */
  private static final double GRAMS = 105;

  private static final int LINES = 7;
  private static final int SPARE_LINES = 3;

  private final Words words;
  private final TypedWords typed;
  private final FormulaWords say;
  private final RiseForecaster forecaster;

  FirstEveningContent(Words words, RiseForecaster forecaster) {
    this.words = words;
    this.typed = new TypedWords(words);
    this.say = new FormulaWords(words);
    this.forecaster = forecaster;
  }

  /** A jar: parts of flour and of water given to one of starter, and where it stands. */
  private record Jar(double parts, Temperature temperature) {
    String feed() {
      long whole = Math.round(parts);
      return "1:" + whole + ":" + whole;
    }

    double starterGrams() {
      return GRAMS / (1 + 2 * parts);
    }
  }

  private static List<Jar> jars(Temperature temperature) {
    return List.of(
        new Jar(FirstEvening.SMALL_FEED, temperature),
        new Jar(FirstEvening.LARGE_FEED, temperature),
        new Jar(FirstEvening.SMALL_FEED, Temperature.ofCelsius(FirstEvening.WARM_CELSIUS)));
  }

  BlankForm form(
      Optional<String> title,
      Starter starter,
      Flour flour,
      Temperature temperature,
      Optional<ZonedDateTime> fedAt) {
    List<Jar> jars = jars(temperature);
    List<String> explanation =
        List.of(
            words.say("evening.why"),
            words.say("evening.marks", Map.of("warm", say.temperature(jars.get(2).temperature()))),
            words.say(
                "evening.typed",
                Map.of(
                    "columns", typed.columns("time", "height"),
                    "occasion", typed.key("occasion"))));
    return new BlankForm(
        title.orElseGet(() -> words.say("evening.title")),
        explanation,
        List.of(),
        List.of(weighed(jars, starter, flour, fedAt), head(jars, starter, flour), readings(jars)),
        List.of(words.say("caution.jar") + " " + words.say("caution.rawDough")),
        SPARE_LINES);
  }

  private Table weighed(
      List<Jar> jars, Starter starter, Flour flour, Optional<ZonedDateTime> fedAt) {
    List<Table.Column> columns =
        List.of(
            new Table.Column(words.say("evening.jar"), 1, Table.Kind.STRONG),
            new Table.Column(words.say("evening.starter"), 1.6, Table.Kind.TEXT),
            new Table.Column(words.say("evening.flour"), 1.4, Table.Kind.TEXT),
            new Table.Column(words.say("evening.water"), 1.4, Table.Kind.TEXT),
            new Table.Column(words.say("evening.kept"), 2.4, Table.Kind.TEXT),
            new Table.Column(
                words.say(fedAt.isPresent() ? "evening.markClock" : "evening.markHours"),
                4.4,
                Table.Kind.STRONG));
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < jars.size(); i++) {
      Jar jar = jars.get(i);
      rows.add(
          List.of(
              words.number(i + 1, 0),
              grams(jar.starterGrams()),
              grams(jar.parts() * jar.starterGrams()),
              grams(jar.parts() * jar.starterGrams()),
              say.temperature(jar.temperature()),
              mark(jar, starter, flour, fedAt)));
    }
    return new Table(columns, rows);
  }

  private String grams(double grams) {
    return words.number(grams, 0) + "\u00a0g";
  }

  /** When the jar stands half as high again. */
  private String mark(Jar jar, Starter starter, Flour flour, Optional<ZonedDateTime> fedAt) {
    DoughFormula formula = DoughFormula.feed(starter, 1, jar.parts(), jar.parts(), flour);
    DoughTemperature temperature = DoughTemperature.steady(jar.temperature());
    Optional<TimeSpan> span =
        TimeSpan.of(
            Refusal.ifImpossible(forecaster.forecast(formula, temperature))
                .hoursToRise(FirstEvening.MARK));
    return span.map(
            hours ->
                fedAt
                    .map(fed -> RiseChart.clockTimes(hours, fed, words))
                    .orElseGet(() -> words.quarterHours(hours)))
        .orElseGet(() -> words.say("hours.never"));
  }

  /** The lines of the head of each jar's file. */
  private Table head(List<Jar> jars, Starter starter, Flour flour) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(row("feed", jars.stream().map(Jar::feed).toList()));
    rows.add(row("flour", same(flour.hasOwnName() ? "" : typed.flour(flour), jars)));
    rows.add(row("starter-hydration", same(typed.percent(starter.hydration().percent()), jars)));
    rows.add(row("occasion", same(ReadingsLogContent.ROOM_TO_WRITE, jars)));
    rows.add(row("dough-temp", same(ReadingsLogContent.ROOM_TO_WRITE + typed.degrees(), jars)));
    rows.add(row("mixed-at", same("", jars)));
    rows.add(row("start-height", same(ReadingsLogContent.ROOM_TO_WRITE + "mm", jars)));
    return new Table(heads(words.say("log.word"), jars), rows);
  }

  private static List<String> same(String text, List<Jar> jars) {
    return Collections.nCopies(jars.size(), text);
  }

  private List<String> row(String key, List<String> values) {
    List<String> row = new ArrayList<>(List.of(typed.key(key) + ":"));
    row.addAll(values);
    return row;
  }

  private List<Table.Column> heads(String first, List<Jar> jars) {
    List<Table.Column> heads = new ArrayList<>();
    heads.add(new Table.Column(first, 1.3, Table.Kind.WRITE));
    IntStream.rangeClosed(1, jars.size())
        .mapToObj(i -> words.say("evening.jar") + " " + words.number(i, 0))
        .forEach(head -> heads.add(new Table.Column(head, 1, Table.Kind.WRITE)));
    return heads;
  }

  private Table readings(List<Jar> jars) {
    List<String> blank = Collections.nCopies(jars.size() + 1, "");
    return new Table(
        heads(typed.column("time") + " / " + typed.column("height"), jars),
        Collections.nCopies(LINES, blank));
  }
}
