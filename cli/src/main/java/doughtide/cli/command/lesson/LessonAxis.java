package doughtide.cli.command.lesson;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.TemperatureSteps;
import doughtide.cli.args.Variation;
import doughtide.cli.options.DoughOptions;
import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.report.phone.PhoneLesson;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * One thing that is changed, with the value that the dough was given among its values.
 *
 * @param thing what is changed
 * @param values as typed, ascending where they are numbers
 * @param given the number of the dough's own value, from 0
 */
record LessonAxis(PhoneLesson.Thing thing, List<String> values, int given) {

  private static final double SAME = 1e-6; // of a degree or a per cent

  LessonAxis {
    values = List.copyOf(values);
  }

  /** The option whose value is changed. */
  String option() {
    return thing.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** All options that say this thing; a changed value takes the place of each. */
  Set<String> options() {
    return switch (thing) {
      case DOUGH_TEMP, FLOUR -> Set.of(option());
      case STARTER, PREFERMENTED -> Set.of(DoughOptions.STARTER, DoughOptions.PREFERMENTED);
      case HYDRATION -> Set.of(option(), DoughOptions.DOUGH_YIELD);
    };
  }

  PhoneLesson.Axis shown() {
    return new PhoneLesson.Axis(thing, given, values.size());
  }

  static LessonAxis of(Variation vary, DoughOptions dough, Arguments arguments) {
    DoughFormula formula = dough.formula();
    return switch (vary.subject()) {
      case DOUGH_TEMP ->
          numbers(
              PhoneLesson.Thing.DOUGH_TEMP,
              vary.temperatures().stream().map(Temperature::celsius).toList(),
              celsius(dough, arguments),
              "C");
      case STARTER -> shares(PhoneLesson.Thing.STARTER, vary, 100 * formula.starterOfAddedFlour());
      case PREFERMENTED ->
          shares(PhoneLesson.Thing.PREFERMENTED, vary, 100 * formula.prefermentedFlour());
      case HYDRATION -> shares(PhoneLesson.Thing.HYDRATION, vary, formula.hydration().percent());
      case FLOUR -> flours(vary, arguments);
      case RATIO ->
          throw new InputException(
              "--vary of a dough cannot change the ratio of a feed: it can change dough-temp,"
                  + " starter, prefermented, hydration or flour");
    };
  }

  private static double celsius(DoughOptions dough, Arguments arguments) {
    TemperatureSteps steps =
        dough.temperature().orElseThrow(() -> arguments.missing(DoughOptions.DOUGH_TEMP));
    if (steps.steps().size() > 1) {
      throw new InputException(
          "--vary dough-temp is for a dough that begins with one temperature: give for example"
              + " --dough-temp 25C");
    }
    return steps.first().celsius();
  }

  private static LessonAxis shares(PhoneLesson.Thing thing, Variation vary, double given) {
    return numbers(
        thing,
        vary.shares().stream().map(Share::percent).toList(),
        Math.rint(given * 1e4) / 1e4,
        "%");
  }

  private static LessonAxis numbers(
      PhoneLesson.Thing thing, List<Double> typed, double given, String unit) {
    List<Double> all = new ArrayList<>(typed);
    if (all.stream().noneMatch(each -> Math.abs(each - given) < SAME)) {
      all.add(given);
    }
    List<Double> values = all.stream().sorted().distinct().toList();
    int at = 0;
    while (Math.abs(values.get(at) - given) >= SAME) {
      at++;
    }
    return new LessonAxis(
        thing, values.stream().map(each -> Checks.plain(each) + unit).toList(), at);
  }

  /** In the order in which they were typed; the dough's own first where it is none of them. */
  private static LessonAxis flours(Variation vary, Arguments arguments) {
    vary.flours(arguments.catalogue());
    String given = arguments.text(DoughOptions.FLOUR).orElse("white");
    List<String> values = new ArrayList<>(vary.values());
    if (!values.contains(given)) {
      values.add(0, given);
    }
    return new LessonAxis(PhoneLesson.Thing.FLOUR, values, values.indexOf(given));
  }
}
