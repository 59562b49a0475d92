package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.file.FileProblem;
import doughtide.report.type.Fonts;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;

/** Says which names given by the user the font of printed pages and charts lacks letters of. */
public final class PrintedNames {
  private static final int MOST_NAMED = 5;

  private PrintedNames() {}

  /** Keeps a line beside the answer where a name cannot be printed as it is. */
  public static void tell(Collection<String> names, Arguments arguments) {
    List<String> lacking = names.stream().distinct().filter(name -> !Fonts.canPrint(name)).toList();
    if (lacking.isEmpty()) {
      return;
    }
    String named =
        lacking.stream()
            .limit(MOST_NAMED)
            .map(name -> FileProblem.quoted(name) + " (printed as " + Fonts.printable(name) + ")")
            .collect(Collectors.joining(", "));
    int more = lacking.size() - MOST_NAMED;
    arguments.note(
        "the font of printed pages lacks letters of "
            + named
            + (more > 0 ? " and " + more + " more" : "")
            + ": write the name by hand, or give it in Latin letters");
  }
}
