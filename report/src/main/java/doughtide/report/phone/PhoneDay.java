package doughtide.report.phone;

import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.report.handout.ClassDayPages;
import doughtide.report.handout.StudentBatches;
import doughtide.report.words.DayWords;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * The doughs of a planned day.
 *
 * @param pages the day, its doughs and its students
 * @param words of the language
 */
record PhoneDay(ClassDayPages pages, Words words) {

  List<PhoneDough> doughs() {
    List<String> shown = day().plans().size() == 1 ? List.of(pages.title()) : shownNames();
    List<PhoneDough> doughs = new ArrayList<>();
    for (int i = 0; i < day().plans().size(); i++) {
      doughs.add(dough(i, shown.get(i)));
    }
    return doughs;
  }

  private PhoneDough dough(int number, String name) {
    BakePlan plan = day().plans().get(number);
    RiseForecaster usual = plan.day().forecaster();
    RiseForecaster forecaster =
        day().plans().size() == 1 ? usual : usual.withMembers(PhonePart.MOST_MEMBERS_OF_MANY);
    RiseForecast forecast = forecaster.forecast(plan.dough(), plan.temperature());
    ZonedDateTime mixed = pages.zero().plusSeconds(Math.round(plan.mixHour() * 3600));
    return PhoneDough.of(name, mixed, forecast, plan.shapeRise())
        .with(new PhoneDough.Plan(shape(plan), steps(number, plan)));
  }

  /** Hours since mixing; the likely one is that of the plan's step, which is to five minutes. */
  private static TimeWindow shape(BakePlan plan) {
    TimeWindow jar = plan.shapeWindow().plus(-plan.mixHour());
    double planned = plan.bulkEndHour() - plan.mixHour();
    boolean within =
        jar.early().orElse(planned) <= planned && planned <= jar.late().orElse(planned);
    return jar.likely().isPresent() && within
        ? new TimeWindow(jar.early(), OptionalDouble.of(planned), jar.late(), jar.reachedShare())
        : jar;
  }

  private List<PhoneDough.Step> steps(int number, BakePlan plan) {
    DayWords say = new DayWords(words);
    return day().steps().stream()
        .filter(each -> each.doughs().contains(number))
        .map(
            each ->
                new PhoneDough.Step(
                    say.step(each.step()),
                    each.step().fromHour() - plan.mixHour(),
                    detail(say, each, number),
                    each.step().kind() == BakeStep.Kind.SHAPE))
        .toList();
  }

  /**
   * The names of the doughs. Where no roster names the students the doughs have their names, of
   * which only the first word is shown, with a number where two would be alike.
   */
  private List<String> shownNames() {
    if (!pages.students().isEmpty()) {
      return pages.names();
    }
    List<String> first = pages.names().stream().map(PhoneDay::firstName).toList();
    List<String> shown = new ArrayList<>();
    for (String each : first) {
      boolean alone = Collections.frequency(first, each) == 1;
      shown.add(alone ? each : each + " " + (shown.size() + 1));
    }
    return shown;
  }

  private static String firstName(String name) {
    return name.strip().split("\\s+")[0];
  }

  /** Of a batch in the oven, whose loaves are in it. */
  private String detail(DayWords say, DayStep step, int dough) {
    if (step.step().kind() != BakeStep.Kind.BAKE) {
      return say.detail(day(), step);
    }
    StudentBatches batches = new StudentBatches(day(), pages.students());
    return day().loads().stream()
        .filter(load -> load.fromHour() == step.step().fromHour())
        .flatMap(load -> batches.in(load).stream())
        .map(pages.students()::get)
        .filter(student -> student.dough() == dough)
        .map(student -> firstName(student.name()))
        .collect(Collectors.joining(", "));
  }

  private DayPlan day() {
    return pages.day();
  }
}
