package doughtide.cli.batch;

import doughtide.cli.args.CommandSpec;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Nearest;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The names by which a batch calls the options of a dough: {@code dough_temp} is {@code
 * --dough-temp}. Capitals, spaces, dashes and underscores do not matter.
 */
public final class BatchColumns {

  public static final String ID = "id";

  private static final Pattern OPTION = Pattern.compile("--([a-z0-9]+(?:-[a-z0-9]+)*)");

  private final List<String> known = new ArrayList<>();

  public BatchColumns(CommandSpec dough) {
    known.add(ID);
    dough.options().forEach(option -> known.add(option.name()));
  }

  /**
   * The option a column stands for, or {@link #ID}.
   *
   * @throws InputException if there is none
   */
  public String option(String column) {
    String name = plain(column);
    if (known.contains(name)) {
      return name;
    }
    String hint =
        Nearest.to(name, known)
            .map(near -> "did you mean " + column(near) + "?")
            .orElse("the columns are " + all() + "; leave others out");
    throw new InputException("column '" + Shorten.to(column, 40) + "' is not known here: " + hint);
  }

  /**
   * The options of a whole header.
   *
   * @throws InputException if a column is not known or stands there twice
   */
  public List<String> options(List<String> header) {
    List<String> options = header.stream().map(this::option).toList();
    Set<String> seen = new HashSet<>();
    for (String option : options) {
      if (!seen.add(option)) {
        throw new InputException("column " + column(option) + " stands there twice: leave one out");
      }
    }
    return options;
  }

  private String all() {
    return String.join(", ", known.stream().map(BatchColumns::column).toList());
  }

  private static String plain(String column) {
    return Quantities.clean(column).toLowerCase(Locale.ROOT).replace(' ', '-').replace('_', '-');
  }

  private static String column(String option) {
    return option.replace('-', '_');
  }

  /** A message about options, in words about columns. */
  public String inColumns(String message) {
    return OPTION
        .matcher(message)
        .replaceAll(
            found -> known.contains(found.group(1)) ? column(found.group(1)) : found.group());
  }
}
