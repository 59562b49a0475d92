package doughtide.report.phone;

import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayPlan;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.report.words.DayWords;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The doughs of a planned day.
 *
 * @param title of the day
 * @param day the plan
 * @param names of the doughs
 * @param zero hour 0 of the plan's axis
 * @param words of the language
 */
record PhoneDay(String title, DayPlan day, List<String> names, ZonedDateTime zero, Words words) {

  List<PhoneDough> doughs() {
    List<String> shown = day.plans().size() == 1 ? List.of(title) : firstNames();
    List<PhoneDough> doughs = new ArrayList<>();
    for (int i = 0; i < day.plans().size(); i++) {
      doughs.add(dough(i, shown.get(i)));
    }
    return doughs;
  }

  /** The first word of each name, with its number where two would be alike. */
  private List<String> firstNames() {
    List<String> first = names.stream().map(each -> each.strip().split("\\s+")[0]).toList();
    List<String> shown = new ArrayList<>();
    for (String each : first) {
      boolean alone = Collections.frequency(first, each) == 1;
      shown.add(alone ? each : each + " " + (shown.size() + 1));
    }
    return shown;
  }

  private PhoneDough dough(int number, String name) {
    BakePlan plan = day.plans().get(number);
    RiseForecaster usual = plan.day().forecaster();
    RiseForecaster forecaster =
        day.plans().size() == 1 ? usual : usual.withMembers(PhonePart.MOST_MEMBERS_OF_MANY);
    RiseForecast forecast = forecaster.forecast(plan.dough(), plan.temperature());
    ZonedDateTime mixed = zero.plusSeconds(Math.round(plan.mixHour() * 3600));
    return PhoneDough.of(name, mixed, forecast, plan.shapeRise())
        .with(new PhoneDough.Plan(plan.shapeWindow().plus(-plan.mixHour()), steps(number, plan)));
  }

  private List<PhoneDough.Step> steps(int number, BakePlan plan) {
    DayWords say = new DayWords(words);
    return day.steps().stream()
        .filter(each -> each.doughs().contains(number))
        .map(
            each ->
                new PhoneDough.Step(
                    say.step(each.step()),
                    each.step().fromHour() - plan.mixHour(),
                    say.detail(day, each),
                    each.step().kind() == BakeStep.Kind.SHAPE))
        .toList();
  }
}
