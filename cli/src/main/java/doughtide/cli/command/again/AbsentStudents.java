package doughtide.cli.command.again;

import doughtide.cli.command.roster.Absent;
import doughtide.core.quantity.InputException;
import doughtide.report.handout.ClassDayPages;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The plan of a class without students who are not there: a dough that is not mixed becomes fewer
 * loaves, one that is mixed stays what it is.
 */
public final class AbsentStudents {
  private static final String LOAVES = "loaves";

  private final PlanFile file;
  private final Happened happened;
  private final List<ClassDayPages.Student> there;

  private AbsentStudents(PlanFile file, Happened happened, List<String> absent) {
    this.file = file;
    this.happened = happened;
    this.there = file.students().stream().filter(each -> !absent.contains(each.name())).toList();
  }

  /**
   * The absent students as the plan writes them.
   *
   * @param text as typed
   * @throws InputException if one is not in it
   */
  public static List<String> names(String text, PlanFile file) {
    if (file.students().isEmpty()) {
      throw new InputException("--" + Absent.OPTION + ": the plan has no roster: leave it out");
    }
    return Absent.read(text, file.students().stream().map(ClassDayPages.Student::name).toList());
  }

  /**
   * The plan without them.
   *
   * @param happened of it
   * @param absent as the plan writes them
   * @throws InputException if nobody is left for a dough that is not mixed
   */
  public static PlanFile without(List<String> absent, PlanFile file, Happened happened) {
    return absent.isEmpty() ? file : new AbsentStudents(file, happened, absent).plan();
  }

  private PlanFile plan() {
    PlanFile plan = file.with(there);
    for (int dough = 0; dough < file.doughs().size(); dough++) {
      int loaves = loaves(file.students(), dough) - loaves(there, dough);
      if (loaves > 0 && !happened.isMixed(dough)) {
        plan = plan.with(dough, fewer(dough, loaves), there);
      }
    }
    return plan;
  }

  private static int loaves(List<ClassDayPages.Student> students, int dough) {
    return students.stream()
        .filter(each -> each.dough() == dough)
        .mapToInt(ClassDayPages.Student::loaves)
        .sum();
  }

  private Map<String, String> fewer(int dough, int fewer) {
    PlanFile.Dough planned = file.doughs().get(dough);
    if (planned.loaves() <= fewer) {
      throw new InputException(
          "--"
              + Absent.OPTION
              + ": nobody is left for '"
              + planned.name()
              + "', which is not mixed: plan the day anew with class-day --roster and --"
              + Absent.OPTION);
    }
    Map<String, String> own = new LinkedHashMap<>(planned.options());
    own.put(LOAVES, "" + (planned.loaves() - fewer));
    return own;
  }
}
