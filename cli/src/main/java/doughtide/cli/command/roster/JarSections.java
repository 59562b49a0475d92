package doughtide.cli.command.roster;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.Words;
import doughtide.cli.file.ReadingsFile;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.learning.Bake;
import doughtide.core.learning.Reading;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.DrawnChart;
import doughtide.report.chart.JarsChart;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The jars of a class against their forecasts: each by its last reading of the rise while it still
 * rose, and when that rise was forecast.
 */
public final class JarSections {

  private static final int VERSION = 1;
  private static final Timeline SINCE_MIXING = Timeline.sinceMixing(Optional.empty());

  /**
   * One jar.
   *
   * @param name of the file
   * @param readings how many of the rise
   * @param last the highest reading of the rise; empty if there is none
   * @param forecast when that rise was forecast, without the readings
   * @param warnings about its dough
   */
  private record Jar(
      String name,
      int readings,
      Optional<Reading> last,
      Optional<TimeWindow> forecast,
      List<Warning> warnings) {

    private static final Rise LEAST = Rise.ofPercent(5);

    static Jar of(Bake bake, RiseForecaster forecaster) {
      RiseForecast forecast = forecaster.forecast(bake.formula(), bake.temperature());
      Optional<Reading> top =
          bake.readings().stream()
              .filter(each -> each.rise().isPresent())
              .filter(each -> each.rise().get().fraction() >= LEAST.fraction())
              .max(Comparator.comparingDouble(each -> each.rise().orElseThrow().fraction()));
      return new Jar(
          bake.name(),
          bake.riseReadings(),
          top,
          top.filter(each -> forecast.isPossible())
              .map(each -> forecast.hoursToRise(each.rise().orElseThrow())),
          forecast.warnings());
    }

    /** How much sooner than likely it was there, hours; negative if later. */
    OptionalDouble aheadHours() {
      return forecast.isPresent() && forecast.get().likely().isPresent()
          ? OptionalDouble.of(forecast.get().likely().getAsDouble() - last.orElseThrow().hours())
          : OptionalDouble.empty();
    }

    Verdict verdict() {
      if (forecast.isEmpty()) {
        return Verdict.UNKNOWN;
      }
      double hours = last.orElseThrow().hours();
      if (hours < forecast.get().early().orElse(Double.POSITIVE_INFINITY)) {
        return Verdict.EARLIER;
      }
      return hours > forecast.get().late().orElse(Double.POSITIVE_INFINITY)
          ? Verdict.LATER
          : Verdict.INSIDE;
    }
  }

  /** Where a jar lies by its forecast's window. */
  private enum Verdict {
    INSIDE,
    EARLIER,
    LATER,
    UNKNOWN;

    String word() {
      return this == UNKNOWN ? "not known" : name().toLowerCase(Locale.ROOT);
    }
  }

  private final List<Jar> jars;

  /**
   * @param files one a jar
   * @param forecaster belief and parameters before the readings
   */
  public JarSections(List<ReadingsFile> files, RiseForecaster forecaster) {
    this.jars = files.stream().map(file -> Jar.of(file.bake(), forecaster)).toList();
  }

  /** All jars that were forecast, in one picture. */
  public DrawnChart chart(doughtide.report.words.Words words) {
    List<JarsChart.Jar> rows = new ArrayList<>();
    for (Jar jar : jars) {
      jar.forecast()
          .ifPresent(
              window -> {
                Reading last = jar.last().orElseThrow();
                double percent = last.rise().orElseThrow().percent();
                rows.add(new JarsChart.Jar(jar.name(), percent, last.hours(), window));
              });
    }
    return JarsChart.of(rows, words);
  }

  /**
   * The answer.
   *
   * @param cautions what to be careful with
   */
  public Answer answer(List<String> cautions) {
    Section.Builder body = Section.loose(SINCE_MIXING);
    body.number("inside", "", count(jars, Verdict.INSIDE), Unit.COUNT)
        .number("earlier", "", count(jars, Verdict.EARLIER), Unit.COUNT)
        .number("later", "", count(jars, Verdict.LATER), Unit.COUNT)
        .number("middleAheadHours", "", middle(jars), Unit.HOURS);
    rows(jars, body.listing("jars", "Jars, latest against their forecasts first"));
    body.paragraph()
        .say(
            "Read: the highest reading of the rise, and when. Forecast: when that rise was to be"
                + " there for a starter nobody knows, or yours with --starter-file; eight doughs in"
                + " ten fall between early and late.");
    body.warnings(jars.stream().flatMap(jar -> jar.warnings().stream()).distinct().toList());
    body.cautions(cautions);
    return Answer.of("class-day-jars", VERSION, headline(jars), body).withTable(() -> table(jars));
  }

  private static long count(List<Jar> jars, Verdict verdict) {
    return jars.stream().filter(jar -> jar.verdict() == verdict).count();
  }

  private static OptionalDouble middle(List<Jar> jars) {
    double[] ahead =
        jars.stream().flatMapToDouble(jar -> jar.aheadHours().stream()).sorted().toArray();
    return ahead.length == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of((ahead[(ahead.length - 1) / 2] + ahead[ahead.length / 2]) / 2);
  }

  private static String headline(List<Jar> jars) {
    OptionalDouble middle = middle(jars);
    String all = jars.size() == 1 ? "1 jar" : jars.size() + " jars";
    String inside = count(jars, Verdict.INSIDE) + " of " + all + " inside their windows";
    if (middle.isEmpty()) {
      return inside + ".";
    }
    return inside + "; the middle one was " + ahead(middle.getAsDouble()) + ".";
  }

  private static String ahead(double hours) {
    if (Math.abs(hours) < 1.0 / 24) {
      return "there when it was forecast";
    }
    return Words.about(Math.abs(hours)) + (hours > 0 ? " earlier" : " later") + " than forecast";
  }

  private static void rows(List<Jar> jars, Listing.Builder rows) {
    List<Jar> sorted = new ArrayList<>(jars);
    sorted.sort(Comparator.comparingDouble(jar -> jar.aheadHours().orElse(99)));
    for (Jar jar : sorted) {
      Section.Builder row = rows.row();
      data(jar, row);
      row.say(" ", jar.name())
          .say(
              "read",
              jar.last()
                  .map(
                      each ->
                          Words.rounded(each.rise().orElseThrow().percent(), 0)
                              + " % at "
                              + Words.about(each.hours()))
                  .orElse("nothing yet"))
          .say("forecast", jar.forecast().map(JarSections::span).orElse("–"))
          .say(
              "it was",
              jar.aheadHours().isPresent()
                  ? jar.verdict().word() + ", " + shortAhead(jar.aheadHours().getAsDouble())
                  : jar.verdict().word());
    }
  }

  private static String shortAhead(double hours) {
    return Words.about(Math.abs(hours)) + (hours >= 0 ? " early" : " late");
  }

  private static String span(TimeWindow window) {
    return Stream.of(window.early(), window.likely(), window.late())
        .map(each -> each.isPresent() ? Words.about(each.getAsDouble()) : "–")
        .collect(Collectors.joining(" / "));
  }

  private static void data(Jar jar, Section.Builder row) {
    row.word("name", "", jar.name())
        .number("riseReadings", "", jar.readings(), Unit.COUNT)
        .number("readHours", "", number(jar.last().map(Reading::hours)), Unit.HOURS)
        .number(
            "readPercent",
            "",
            number(jar.last().map(each -> each.rise().orElseThrow().percent())),
            Unit.PERCENT)
        .window("forecast", "", jar.forecast().orElse(TimeWindow.NEVER))
        .number("aheadHours", "", jar.aheadHours(), Unit.HOURS)
        .word("verdict", "", jar.verdict().word());
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }

  private static Listing table(List<Jar> jars) {
    Listing.Builder rows = new Listing.Builder("jars", "", SINCE_MIXING);
    jars.forEach(jar -> data(jar, rows.row()));
    return rows.build();
  }
}
