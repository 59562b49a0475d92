package doughtide.cli.command.roster;

import doughtide.core.document.Catalogue;
import doughtide.core.document.RosterDocument;
import doughtide.core.document.RosterEntry;
import doughtide.core.dough.Flour;
import doughtide.core.quantity.Shorten;
import doughtide.report.handout.ClassDayPages;
import doughtide.report.words.Language;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The students who make one dough with one flour: they are planned together.
 *
 * @param dough as the roster names it
 * @param flour the flour they bring; empty where it is that of the dough
 * @param name of what they make: the dough, and its flour where others make it with another
 * @param students in the order of the roster
 */
public record RosterGroup(
    String dough, Optional<Flour> flour, String name, List<RosterEntry> students) {

  private static final int LONGEST_NAME = 24;

  /** Copies the list. */
  public RosterGroup {
    students = List.copyOf(students);
  }

  /** A dough and a flour, as a key. */
  private record Kind(String dough, Optional<Flour> flour) {}

  /** The groups of a roster, in the order in which it first names them. */
  public static List<RosterGroup> of(RosterDocument roster) {
    Map<Kind, List<RosterEntry>> kinds = new LinkedHashMap<>();
    for (RosterEntry entry : roster.entries()) {
      kinds
          .computeIfAbsent(new Kind(entry.dough(), entry.flour()), kind -> new ArrayList<>())
          .add(entry);
    }
    List<RosterGroup> groups = new ArrayList<>();
    List<String> names = new ArrayList<>();
    kinds.forEach(
        (kind, students) -> {
          String name = name(kind, kinds.keySet(), names);
          names.add(name);
          groups.add(new RosterGroup(kind.dough(), kind.flour(), name, students));
        });
    return groups;
  }

  /** The dough, with its flour where there is another with it, and a number where that is cut. */
  private static String name(Kind kind, Collection<Kind> all, List<String> taken) {
    boolean alone = all.stream().filter(each -> each.dough().equals(kind.dough())).count() == 1;
    String whole =
        kind.dough() + (alone ? "" : kind.flour().map(flour -> ": " + flour.name()).orElse(""));
    String name = Shorten.to(whole, LONGEST_NAME);
    for (int number = 2; taken.contains(name); number++) {
      name = Shorten.to(whole, LONGEST_NAME - 3) + " " + number;
    }
    return name;
  }

  /** All students, those of one dough together. */
  public static List<ClassDayPages.Student> students(List<RosterGroup> groups) {
    List<ClassDayPages.Student> students = new ArrayList<>();
    for (int dough = 0; dough < groups.size(); dough++) {
      for (RosterEntry each : groups.get(dough).students()) {
        students.add(
            new ClassDayPages.Student(
                each.name(), dough, each.loaves(), each.language().map(Language::of)));
      }
    }
    return students;
  }

  /** Loaves of all its students. */
  public int loaves() {
    return students.stream().mapToInt(RosterEntry::loaves).sum();
  }

  /** The flour as options take it. */
  public Optional<String> flourText() {
    return flour.map(Catalogue::text);
  }
}
