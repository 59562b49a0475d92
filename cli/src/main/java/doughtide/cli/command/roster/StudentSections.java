package doughtide.cli.command.roster;

import doughtide.cli.answer.IngredientItems;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.ClockTimes;
import doughtide.core.day.BakePlan;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.dough.Ingredients;
import doughtide.report.handout.ClassDayPages;
import doughtide.report.handout.StudentBatches;
import doughtide.report.words.DayWords;
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
  private final Words language;

  private StudentSections(DayPlan day, ClockTimes times, Words language) {
    this.day = day;
    this.times = times;
    this.language = language;
  }

  /** Says who is not there, if anybody. */
  public static void absent(List<String> names, Section.Builder to) {
    if (!names.isEmpty()) {
      to.paragraph().texts("absent", "Absent: ", names);
    }
  }

  /**
   * Adds the students: data to one section, pages to another.
   *
   * @param all in the order in which they are named
   * @param names of the doughs of the day, in its order
   * @param times from hour 0 of the day
   * @param language of students for whom the roster names none
   */
  public static void add(
      List<ClassDayPages.Student> all,
      List<String> names,
      DayPlan day,
      ClockTimes times,
      Words language,
      Section.Builder to) {
    if (all.isEmpty()) {
      return;
    }
    StudentSections sections = new StudentSections(day, times, language);
    Listing.Builder students = to.listing("students", "");
    StudentBatches batches = new StudentBatches(day, all);
    for (int i = 0; i < all.size(); i++) {
      String dough = names.get(all.get(i).dough());
      sections.data(all.get(i), dough, batches.steps(i), students.row());
      sections.page(all.get(i), dough, batches.steps(i), to);
    }
  }

  private void data(
      ClassDayPages.Student student, String dough, List<DayStep> hers, Section.Builder row) {
    BakePlan plan = day.plans().get(student.dough());
    Words words = words(student);
    Ingredients weigh = student.weighs(day);
    row.word("name", "", student.name())
        .word("dough", "", dough)
        .word("flour", "", plan.dough().flour().name())
        .word("language", "", words.language().tag())
        .number("loaves", "", student.loaves(), Unit.COUNT);
    IngredientItems.grams(weigh, row);
    IngredientItems.additions(weigh, row);
    Listing.Builder steps = row.listing("steps", "");
    DayWords said = new DayWords(words);
    for (DayStep step : hers) {
      steps
          .row()
          .word("step", "", said.step(step.step()))
          .at("from", "", step.step().fromHour(), times)
          .at("to", "", step.step().toHour(), times);
    }
  }

  private void page(
      ClassDayPages.Student student, String dough, List<DayStep> hers, Section.Builder to) {
    Words words = words(student);
    DayWords said = new DayWords(words);
    Section.Builder page = to.section("", student.name() + ": " + dough + " × " + student.loaves());
    page.say(grams(student.weighs(day), words));
    Listing.Builder rows = page.listing("", "");
    for (DayStep step : hers) {
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

  private Words words(ClassDayPages.Student student) {
    return student.language().map(language::of).orElse(language);
  }
}
