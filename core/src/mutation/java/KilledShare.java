import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Prints how many mutants of each package were killed, from the table that PIT writes. Run as a
 * source file by the profile {@code mutation}: {@code java KilledShare.java mutations.csv}.
 */
final class KilledShare {
  private static final int CLASS_COLUMN = 1;
  private static final int STATUS_COLUMN = 5;
  private static final Set<String> KILLED =
      Set.of("KILLED", "TIMED_OUT", "MEMORY_ERROR", "RUN_ERROR");

  private KilledShare() {}

  /** Mutants of a package. */
  private record Count(int killed, int all) {
    Count plus(boolean isKilled) {
      return new Count(killed + (isKilled ? 1 : 0), all + 1);
    }

    String told(String name) {
      double percent = all == 0 ? 0 : 100.0 * killed / all;
      return String.format(
          Locale.ROOT, "%-32s %5d of %5d killed, %5.1f %%", name, killed, all, percent);
    }
  }

  public static void main(String[] args) throws IOException {
    Map<String, Count> packages = new TreeMap<>();
    Count all = new Count(0, 0);
    for (String line : Files.readAllLines(Path.of(args[0]))) {
      String[] cells = line.split(",");
      boolean killed = KILLED.contains(cells[STATUS_COLUMN]);
      String name = cells[CLASS_COLUMN].substring(0, cells[CLASS_COLUMN].lastIndexOf('.'));
      packages.put(name, packages.getOrDefault(name, new Count(0, 0)).plus(killed));
      all = all.plus(killed);
    }
    packages.forEach((name, count) -> System.out.println(count.told(name)));
    System.out.println(all.told("all"));
  }
}
