package doughtide.cli.command.roster;

import doughtide.cli.answer.IngredientItems;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.ClockTimes;
import doughtide.core.day.BakePlan;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.document.RosterEntry;
import doughtide.core.dough.Ingredients;
import doughtide.report.words.DayWords;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.List;

/**
 * What each student of a class weighs and when she does what, in her own language. Names are
 * written as they are.
 */
public final class StudentSections {

  private final DayPlan day;
  private final ClockTimes times;

  private StudentSections(DayPlan day, ClockTimes times) {
    this.day = day;
    this.times = times;
  }

  /**
   * Adds the students: data to one section, pages to another.
   *
   * @param groups one a dough of the day, in its order
   * @param times from hour 0 of the day
   */
  public static void add(
      List<RosterGroup> groups, DayPlan day, ClockTimes times, Section.Builder to) {
    if (groups.isEmpty()) {
      return;
    }
    StudentSections sections = new StudentSections(day, times);
    Listing.Builder students = to.listing("students", "");
    for (int dough = 0; dough < groups.size(); dough++) {
      for (RosterEntry student : groups.get(dough).students()) {
        sections.data(student, dough, groups.get(dough), students.row());
        sections.page(student, dough, groups.get(dough), to);
      }
    }
  }

  /** What one student weighs: her part of the dough by her loaves. */
  static Ingredients weigh(RosterEntry student, BakePlan plan) {
    return plan.ingredients().times((double) student.loaves() / plan.day().loaves());
  }

  private void data(RosterEntry student, int dough, RosterGroup group, Section.Builder row) {
    BakePlan plan = day.plans().get(dough);
    Words words = words(student);
    Ingredients weigh = weigh(student, plan);
    row.word("name", "", student.name())
        .word("dough", "", group.name())
        .word("flour", "", plan.dough().flour().name())
        .word("language", "", words.language().tag())
        .number("loaves", "", student.loaves(), Unit.COUNT);
    IngredientItems.grams(weigh, row);
    IngredientItems.additions(weigh, row);
    Listing.Builder steps = row.listing("steps", "");
    DayWords said = new DayWords(words);
    for (DayStep step : hers(dough)) {
      steps
          .row()
          .word("step", "", said.step(step.step()))
          .at("from", "", step.step().fromHour(), times)
          .at("to", "", step.step().toHour(), times);
    }
  }

  /** What she takes part in; the starter is fed for all. */
  private List<DayStep> hers(int dough) {
    return day.steps().stream().filter(step -> step.doughs().contains(dough)).toList();
  }

  private void page(RosterEntry student, int dough, RosterGroup group, Section.Builder to) {
    Words words = words(student);
    DayWords said = new DayWords(words);
    Section.Builder page =
        to.section("", student.name() + ": " + group.name() + " × " + student.loaves());
    page.say(grams(weigh(student, day.plans().get(dough)), words));
    Listing.Builder rows = page.listing("", "");
    for (DayStep step : hers(dough)) {
      rows.row()
          .say(" ", words.dayAndClock(times.after(step.step().fromHour())))
          .say(" ", plain(said.step(step.step())));
    }
  }

  private static String grams(Ingredients weigh, Words words) {
    List<String> parts = new ArrayList<>();
    parts.add(part("FLOUR", weigh.flourGrams(), words));
    parts.add(part("WATER", weigh.waterGrams(), words));
    parts.add(part("STARTER", weigh.starterGrams(), words));
    parts.add(part("SALT", weigh.saltGrams(), words));
    for (Ingredients.Addition each : weigh.additions()) {
      parts.add(each.name() + " " + words.number(each.grams(), 0) + " g");
    }
    return plain(String.join(", ", parts));
  }

  private static String part(String ingredient, double grams, Words words) {
    int decimals = grams < 10 ? 1 : 0;
    return words.say("ingredient." + ingredient) + " " + words.number(grams, decimals) + " g";
  }

  private static String plain(String text) {
    return text.replace('\u00a0', ' ');
  }

  private Words words(RosterEntry student) {
    return Words.in(student.language().map(Language::of).orElse(Language.ENGLISH));
  }
}
