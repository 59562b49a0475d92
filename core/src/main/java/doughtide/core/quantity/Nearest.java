package doughtide.core.quantity;

import doughtide.core.Internal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Finds the known name that was probably meant. */
@Internal
public final class Nearest {

  /** Longer words are not names of anything; comparing them would only take time. */
  private static final int LONGEST_WORD = 64;

  private Nearest() {}

  /**
   * The name nearest to what was typed, if one is near enough: at most a third of its letters
   * differ.
   *
   * @param typed what was typed
   * @param names the names known; the first of equally near ones wins
   */
  public static Optional<String> to(String typed, Collection<String> names) {
    return allTo(typed, names).stream().findFirst();
  }

  /**
   * All names that are nearest to what was typed, equally near ones in the order given.
   *
   * @param typed what was typed
   * @param names the names known
   */
  public static List<String> allTo(String typed, Collection<String> names) {
    if (typed.isBlank() || typed.length() > LONGEST_WORD) {
      return List.of();
    }
    String wanted = typed.toLowerCase(Locale.ROOT);
    List<String> best = new ArrayList<>();
    int bestDistance = Integer.MAX_VALUE;
    for (String name : names) {
      int distance = distance(wanted, name.toLowerCase(Locale.ROOT));
      if (distance > bestDistance || distance > allowed(wanted, name)) {
        continue;
      }
      if (distance < bestDistance) {
        best.clear();
        bestDistance = distance;
      }
      best.add(name);
    }
    return best;
  }

  private static int allowed(String typed, String name) {
    return Math.max(1, Math.min(typed.length(), name.length()) / 3);
  }

  /**
   * Letters to insert, delete, replace or swap; a beginning of three letters or more is near, and
   * so is a name with a word more or less at its front or end.
   */
  private static int distance(String typed, String name) {
    if (typed.length() >= 3 && (name.startsWith(typed) || wordsApart(typed, name))) {
      return 1;
    }
    int[][] d = new int[typed.length() + 1][name.length() + 1];
    for (int i = 0; i <= typed.length(); i++) {
      for (int j = 0; j <= name.length(); j++) {
        d[i][j] = i == 0 || j == 0 ? i + j : cheapest(d, typed, name, i, j);
      }
    }
    return d[typed.length()][name.length()];
  }

  private static boolean wordsApart(String typed, String name) {
    return name.endsWith("-" + typed) || typed.startsWith(name + "-");
  }

  private static int cheapest(int[][] d, String a, String b, int i, int j) {
    int replaced = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
    int least = Math.min(replaced, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
    boolean swapped =
        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
    return swapped ? Math.min(least, d[i - 2][j - 2] + 1) : least;
  }
}
