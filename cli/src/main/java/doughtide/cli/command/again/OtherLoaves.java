package doughtide.cli.command.again;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.report.handout.ClassDayPages;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Reads how many loaves the doughs of a day become, such as {@code rye 3, wheat 2}. A name may hold
 * spaces, digits and commas: all ways to read the text are tried.
 */
public final class OtherLoaves {
  private static final int MOST_LOAVES = 500;
  private static final int LONGEST_TEXT = 1000;
  private static final String END = "\\s*(?:[,;]\\s*|$)";

  private final String option;
  private final String text;
  private final DayNames names;
  private final List<Map<Integer, Integer>> readings = new ArrayList<>();

  private OtherLoaves(String option, String text, DayNames names) {
    this.option = option;
    this.text = text;
    this.names = names;
  }

  /**
   * The loaves of the doughs that are named, by the number of the dough.
   *
   * @param option it is given for, for messages
   * @param names of two doughs or more
   * @throws InputException if it cannot be read, or in two ways
   */
  public static Map<Integer, Integer> read(String option, String text, DayNames names) {
    return new OtherLoaves(option, Quantities.clean(text), names).read();
  }

  /**
   * The students of a class whose dough becomes other loaves: those of one alone are hers.
   *
   * @param dough its number
   * @param name what it is called
   * @throws InputException if several students share it
   */
  public static List<ClassDayPages.Student> students(
      List<ClassDayPages.Student> all, int dough, String name, int loaves) {
    if (all.stream().filter(each -> each.dough() == dough).count() > 1) {
      throw new InputException(
          "--loaves: '"
              + name
              + "' is shared by students of the roster, each with her own loaves: leave it out, or"
              + " plan the day anew with another roster");
    }
    return all.stream()
        .map(
            each ->
                each.dough() == dough
                    ? new ClassDayPages.Student(each.name(), dough, loaves, each.language())
                    : each)
        .toList();
  }

  private Map<Integer, Integer> read() {
    Checks.inRange("length of " + option, text.length(), 1, LONGEST_TEXT, "characters");
    readFrom(0, Map.of());
    List<Map<Integer, Integer>> different = readings.stream().distinct().toList();
    if (different.isEmpty()) {
      throw new InputException(
          Quantities.shown(option, text)
              + " does not say how many loaves of which dough: write for example "
              + option
              + " \""
              + names.before(0)
              + "3, "
              + names.before(1)
              + "2\"; the doughs are "
              + String.join(", ", names.names()));
    }
    if (different.size() > 1) {
      throw new InputException(
          Quantities.shown(option, text)
              + " can be read as "
              + words(different.get(0))
              + " or as "
              + words(different.get(1))
              + ": plan the day anew with names of doughs that differ more");
    }
    different
        .get(0)
        .forEach(
            (dough, loaves) ->
                Checks.inRange(
                    option + " of '" + names.names().get(dough) + "'", loaves, 1, MOST_LOAVES, ""));
    return different.get(0);
  }

  private void readFrom(int at, Map<Integer, Integer> before) {
    if (at == text.length() && !before.isEmpty()) {
      readings.add(before);
    }
    if (readings.size() > 1 || at == text.length()) {
      return;
    }
    IntStream.range(0, names.names().size())
        .filter(dough -> !before.containsKey(dough))
        .forEach(
            dough -> {
              String name = Pattern.quote(names.names().get(dough));
              readFrom(at, name + "(?:\\s*[:=×]\\s*|\\s+)(\\d{1,6})", dough, before);
              readFrom(at, "(\\d{1,6})(?:\\s*×\\s*|\\s+)" + name, dough, before);
            });
  }

  private void readFrom(int at, String item, int dough, Map<Integer, Integer> before) {
    Matcher matcher =
        Pattern.compile(item + END, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE).matcher(text);
    if (matcher.region(at, text.length()).lookingAt()) {
      Map<Integer, Integer> with = new TreeMap<>(before);
      with.put(dough, Integer.parseInt(matcher.group(1)));
      readFrom(matcher.end(), with);
    }
  }

  private String words(Map<Integer, Integer> reading) {
    return reading.entrySet().stream()
        .map(each -> each.getValue() + " of '" + names.names().get(each.getKey()) + "'")
        .collect(Collectors.joining(" and "));
  }
}
