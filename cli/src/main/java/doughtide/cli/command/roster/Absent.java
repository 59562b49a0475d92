package doughtide.cli.command.roster;

import doughtide.cli.args.OptionSpec;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads which students of a class are not there. A name may hold commas. */
public final class Absent {
  /** The option's name. */
  public static final String OPTION = "absent";

  private static final int MOST_LISTED = 30;
  private static final int LONGEST_SHOWN = 40;

  private final List<String> names;

  private Absent(List<String> names) {
    this.names = names;
  }

  /** The option. */
  public static OptionSpec spec() {
    return OptionSpec.value(
        OPTION,
        "NAMES",
        "Ann, Björn",
        "Students of the roster who are not there, with commas: no page, grams or loaves for them,"
            + " and no dough that only they make. With --again too: a dough that is mixed keeps"
            + " its loaves.");
  }

  /**
   * The absent students as the roster writes them.
   *
   * @param text as typed
   * @param names of all students
   * @throws InputException if one is not among them, or nobody is left
   */
  public static List<String> read(String text, List<String> names) {
    List<String> absent =
        new Absent(names)
            .names(Quantities.clean(text).split(" ?[,;] ?")).stream().distinct().toList();
    if (absent.size() == names.size()) {
      throw new InputException(
          "--" + OPTION + ": all students of the roster are absent, there is no class to plan");
    }
    return absent;
  }

  private List<String> names(String[] pieces) {
    List<String> found = new ArrayList<>();
    for (int from = 0; from < pieces.length; ) {
      int next = from;
      for (int to = pieces.length; to > from && next == from; to--) {
        Optional<String> name = named(String.join(", ", List.of(pieces).subList(from, to)));
        if (name.isPresent()) {
          found.add(name.get());
          next = to;
        }
      }
      if (next == from) {
        throw unknown(pieces[from]);
      }
      from = next;
    }
    return found;
  }

  /** As it is written, else the one that differs by capitals alone. */
  private Optional<String> named(String text) {
    Optional<String> exact =
        names.stream().filter(name -> Quantities.clean(name).equals(text)).findFirst();
    List<String> alike =
        names.stream().filter(name -> Quantities.clean(name).equalsIgnoreCase(text)).toList();
    return exact.isPresent() || alike.size() != 1 ? exact : Optional.of(alike.get(0));
  }

  private InputException unknown(String piece) {
    int more = names.size() - MOST_LISTED;
    return new InputException(
        Quantities.shown("--" + OPTION, Shorten.to(piece, LONGEST_SHOWN))
            + " is no student of the roster: write names as it does, commas between them; its"
            + " students are "
            + String.join("; ", names.subList(0, Math.min(names.size(), MOST_LISTED)))
            + (more > 0 ? " and " + more + " more" : ""));
  }
}
