package doughtide.cli.command.again;

import doughtide.core.day.BakeStep;
import doughtide.core.day.DayStep;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The doughs of a day by name, and what is done for whom.
 *
 * @param names of the doughs
 * @param hands how many persons work
 */
public record DayNames(List<String> names, int hands) {

  /** Copies the list. */
  public DayNames {
    names = List.copyOf(names);
  }

  /** Whether the day has one dough. */
  public boolean isOne() {
    return names.size() == 1;
  }

  /** Whose a step is. */
  public String doughs(List<Integer> doughs) {
    return doughs.size() == names.size() && doughs.size() > 2
        ? "all"
        : doughs.stream().map(names::get).collect(Collectors.joining(", "));
  }

  /** Who does a step; empty where nobody is needed. */
  public static String person(DayStep step) {
    return step.person() < 0 ? "" : Character.toString('A' + step.person());
  }

  /**
   * What is done, for which doughs and by whom, where there are several.
   *
   * @param words what is done
   */
  public String summary(String words, DayStep step) {
    String who = hands == 1 || step.person() < 0 ? "" : " (" + person(step) + ")";
    return isOne() ? words : words + ": " + doughs(step.doughs()) + who;
  }

  /** The name of a step in calendars: the same for the same step, whenever it is. */
  public String key(DayStep step) {
    String key = PlanStep.key(step.step().kind(), step.step().number());
    boolean load =
        step.step().kind() == BakeStep.Kind.BAKE || step.step().kind() == BakeStep.Kind.COOL;
    return isOne() || load ? key : key + " of dough " + (step.doughs().get(0) + 1);
  }

  /** The name of one dough before a word; empty where there is only one. */
  public String before(int dough) {
    return isOne() ? "" : names.get(dough) + " ";
  }

  /** The dough whose name begins a text, with a space after it: the longest that does. */
  Optional<Integer> begins(String text) {
    return longest(name -> text.toLowerCase(Locale.ROOT).startsWith(name + " "));
  }

  /** The dough whose name ends a text, with a space before it: the longest that does. */
  Optional<Integer> ends(String text) {
    return longest(name -> text.toLowerCase(Locale.ROOT).endsWith(" " + name));
  }

  private Optional<Integer> longest(Predicate<String> which) {
    return IntStream.range(0, names.size())
        .boxed()
        .filter(number -> which.test(names.get(number).toLowerCase(Locale.ROOT)))
        .max(Comparator.comparingInt(number -> names.get(number).length()));
  }
}
