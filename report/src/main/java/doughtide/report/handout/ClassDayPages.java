package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.dough.Ingredients;
import doughtide.core.quantity.Hours;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The pages of a class that bakes on one day: one for each student in her own language, then a
 * timetable in large print for each person who works.
 *
 * @param title of the timetables
 * @param day the plan
 * @param names of the doughs, in their order
 * @param zero the moment of hour 0 of the plan's axis
 * @param students may be none
 */
@Internal
public record ClassDayPages(
    String title, DayPlan day, List<String> names, ZonedDateTime zero, List<Student> students)
    implements Handout {

  /** Copies the lists. */
  public ClassDayPages {
    names = List.copyOf(names);
    students = List.copyOf(students);
  }

  /**
   * A student.
   *
   * @param name printed as it is
   * @param dough its number in the day, from 0
   * @param loaves how many she makes
   * @param language of her page; empty for that of the class
   */
  @Internal
  public record Student(String name, int dough, int loaves, Optional<Language> language) {

    /** What she weighs: her part of the dough by her loaves. */
    public Ingredients weighs(DayPlan day) {
      var plan = day.plans().get(dough);
      return plan.ingredients().times((double) loaves / plan.day().loaves());
    }
  }

  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    List<Page> pages = new ArrayList<>();
    StudentBatches batches = new StudentBatches(day, students);
    for (int i = 0; i < students.size(); i++) {
      Student student = students.get(i);
      Words own = student.language().map(words::of).orElse(words);
      pages.addAll(page(student, batches.steps(i), own).pages(format, own, date));
    }
    for (int person = 0; person < day.hands(); person++) {
      pages.addAll(new Timetable(this, person, words).sides(format.largePrint(), date));
    }
    return pages;
  }

  /** The day and clock time of an hour, in one piece. */
  String clock(double hour, Words own) {
    return own.dayAndClock(Hours.after(zero, hour)).replace(' ', '\u00a0');
  }

  private StudentPage page(Student student, List<DayStep> hers, Words own) {
    return new StudentPage(
        student.name(),
        student.loaves(),
        student.weighs(day),
        new StudentDay(this, student.dough(), own).dough(hers),
        own);
  }
}
