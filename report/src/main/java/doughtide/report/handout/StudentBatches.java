package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.day.OvenLoad;
import java.util.ArrayList;
import java.util.List;

/**
 * Whose loaves are in which batch of the oven: what is shaped first is baked first, and the
 * students of a dough shape in the order in which they are named.
 *
 * @param day the plan
 * @param students all, those of one dough in the order in which they shape
 */
@Internal
public record StudentBatches(DayPlan day, List<ClassDayPages.Student> students) {

  /** Copies the list. */
  public StudentBatches {
    students = List.copyOf(students);
  }

  /**
   * What a student takes part in: the steps of her dough, of the oven only the batches with loaves
   * of hers, and when the last of these can be sliced.
   *
   * @param number of the student, from 0
   */
  public List<DayStep> steps(int number) {
    int dough = students.get(number).dough();
    List<OvenLoad> hers = loads(number);
    return day.steps().stream()
        .filter(step -> step.doughs().contains(dough))
        .filter(step -> isHers(step.step(), hers))
        .map(step -> step.step().kind() == BakeStep.Kind.READY ? ready(step, hers) : step)
        .toList();
  }

  /** The numbers of the students with loaves in a batch. */
  public List<Integer> in(OvenLoad load) {
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < students.size(); i++) {
      if (loads(i).contains(load)) {
        numbers.add(i);
      }
    }
    return numbers;
  }

  private static boolean isHers(BakeStep step, List<OvenLoad> hers) {
    return switch (step.kind()) {
      case BAKE -> hers.isEmpty() || hers.stream().anyMatch(load -> same(load.fromHour(), step));
      case COOL -> hers.isEmpty() || hers.stream().anyMatch(load -> same(load.toHour(), step));
      default -> true;
    };
  }

  private static boolean same(double hour, BakeStep step) {
    return Math.abs(hour - step.fromHour()) < 1e-3;
  }

  private DayStep ready(DayStep step, List<OvenLoad> hers) {
    double cool = day.plans().get(step.doughs().get(0)).day().oven().coolHours();
    double hour =
        hers.stream()
            .mapToDouble(load -> load.toHour() + cool)
            .filter(at -> at < step.step().fromHour())
            .max()
            .orElse(step.step().fromHour());
    BakeStep at = new BakeStep(BakeStep.Kind.READY, hour, hour, step.step().number());
    return new DayStep(at, step.doughs(), step.person());
  }

  /** The batches with loaves of a student; the last of her dough where it has too few. */
  private List<OvenLoad> loads(int number) {
    int dough = students.get(number).dough();
    int first =
        students.stream()
            .limit(number)
            .filter(each -> each.dough() == dough)
            .mapToInt(ClassDayPages.Student::loaves)
            .sum();
    int next = first + students.get(number).loaves();
    List<OvenLoad> hers = new ArrayList<>();
    int baked = 0;
    for (OvenLoad load : of(dough)) {
      int more = baked + loaves(load, dough);
      if (first < more && baked < next) {
        hers.add(load);
      }
      baked = more;
    }
    return hers.isEmpty() ? of(dough).stream().reduce((a, b) -> b).stream().toList() : hers;
  }

  private List<OvenLoad> of(int dough) {
    return day.loads().stream().filter(load -> loaves(load, dough) > 0).toList();
  }

  private static int loaves(OvenLoad load, int dough) {
    return load.portions().stream()
        .filter(each -> each.dough() == dough)
        .mapToInt(OvenLoad.Portion::loaves)
        .sum();
  }
}
