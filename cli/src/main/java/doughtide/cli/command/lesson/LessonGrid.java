package doughtide.cli.command.lesson;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Variation;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.options.PageOptions;
import doughtide.cli.options.TemperatureOptions;
import doughtide.cli.session.Environment;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.report.phone.PhoneLesson;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Every dough of a page on which one thing or two can be changed. */
public final class LessonGrid {

  public static final String VARY = "vary";
  private static final int MOST_DOUGHS = 49;
  private static final int MOST_LOAVES = 25; // each takes about a second of one core

  private final Arguments arguments;
  private final Environment environment;
  private final List<LessonAxis> axes;

  private LessonGrid(Arguments arguments, Environment environment, List<LessonAxis> axes) {
    this.arguments = arguments;
    this.environment = environment;
    this.axes = axes;
  }

  /** The option, which makes the page one to try things out. */
  public static OptionSpec spec() {
    return OptionSpec.value(
            VARY,
            "LIST",
            "dough-temp:20C,23C,26C",
            "Makes the page a lesson with a slider: what dough-temp, starter, prefermented,"
                + " hydration or flour (flours apart by semicolons) change; at most two and "
                + MOST_DOUGHS
                + " doughs, "
                + MOST_LOAVES
                + " with a proof.")
        .repeatable();
  }

  /**
   * The grid, if one is asked for; every value is checked.
   *
   * @param shaped whether loaves are planned of the doughs
   */
  public static Optional<LessonGrid> read(
      Arguments arguments, DoughOptions dough, boolean shaped, Environment environment) {
    List<Variation> varied = arguments.all(VARY).stream().map(Variation::parse).toList();
    if (varied.isEmpty()) {
      return Optional.empty();
    }
    arguments.needs(VARY, PageOptions.PAGE, "x.html");
    Checks.inRange("number of --vary", varied.size(), 1, 2, "");
    List<LessonAxis> axes =
        varied.stream().map(each -> LessonAxis.of(each, dough, arguments)).toList();
    if (axes.stream().map(LessonAxis::options).distinct().count() < axes.size()) {
      throw new InputException("--vary changes two different things, not one thing twice");
    }
    Checks.inRange(
        "number of doughs of --vary with the one given",
        axes.stream().mapToDouble(each -> each.values().size()).reduce(1, (a, b) -> a * b),
        2,
        shaped ? MOST_LOAVES : MOST_DOUGHS,
        "");
    return Optional.of(new LessonGrid(arguments, environment, axes));
  }

  /**
   * The lesson, every dough forecast as if its values had been given.
   *
   * @param name of the page
   * @param rises whose times are shown, ascending
   * @param asked the one that is told of where there is no proof
   * @param proof what each dough is shaped for, if that is asked
   */
  public PhoneLesson lesson(
      String name,
      RiseForecaster forecaster,
      Optional<ClockTimes> clock,
      List<Rise> rises,
      Rise asked,
      Optional<Proof> proof) {
    List<RiseForecast> doughs = new ArrayList<>();
    Set<String> without = new TreeSet<>();
    axes.forEach(each -> without.addAll(each.options()));
    for (Map<String, String> changed : choices()) {
      Arguments other = arguments.with(changed, without);
      DoughOptions dough = DoughOptions.read(other, environment);
      TemperatureOptions temperature = TemperatureOptions.read(other, dough, clock, environment);
      doughs.add(forecaster.forecast(dough.formula(), temperature.dough()));
    }
    return new PhoneLesson(
        name,
        axes.stream().map(LessonAxis::shown).toList(),
        doughs,
        rises,
        asked,
        proof.map(each -> PhoneLesson.Loaf.of(each, doughs)));
  }

  /** By option, the values of the last axis changing fastest. */
  private List<Map<String, String>> choices() {
    List<Map<String, String>> choices = List.of(Map.of());
    for (LessonAxis axis : axes) {
      List<Map<String, String>> more = new ArrayList<>();
      for (Map<String, String> choice : choices) {
        for (String value : axis.values()) {
          Map<String, String> next = new LinkedHashMap<>(choice);
          next.put(axis.option(), value);
          more.add(next);
        }
      }
      choices = more;
    }
    return choices;
  }
}
