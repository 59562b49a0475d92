package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.forecast.Ensemble;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.Unknowns;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Readings that fit narrow the window of half risen, over invented doughs of known truth. */
class ReadingsNarrowPropertyTest {
  private static final Rise HALF = Rise.ofPercent(50);

  /** As far as a dough is looked at. */
  private static final double LONGEST_HOURS = 168;

  /** Above this share of the weight the other kind of yeast is not ruled out. */
  private static final double DOUBT = 0.02;

  private static final Map<String, String> KINDS = new HashMap<>();

  static {
    RiseParameters.standard().curves().forEach(each -> KINDS.put(each.key(), each.kind()));
  }

  /**
   * What readings did to one dough.
   *
   * @param narrowing width of the window after them over the width before
   * @param otherKind share of the kind of yeast that is less likely after them
   */
  private record History(int seed, double narrowing, double otherKind) {
    static History of(int seed) {
      Bake all = new SimulatedBaker(seed, SimulatedBaker.Setting.PLAIN).bakes(1, 12).get(0).bake();
      Bake bake = all.until(all.lastHours() * 0.5);
      LiveDough before =
          LiveDough.of(
              RiseForecaster.standard(), JarError.standard(), bake.formula(), bake.temperature());
      LiveDough after = before;
      for (Reading reading : bake.readings()) {
        after = after.with(reading);
      }
      return new History(seed, width(after) / width(before), otherKind(after));
    }

    private static double width(LiveDough dough) {
      TimeWindow half = dough.forecast().hoursToRise(HALF);
      double early = half.early().orElseThrow();
      double likely = half.likely().orElseThrow();
      double late = half.late().orElse(LONGEST_HOURS);
      assertThat(likely).isBetween(early, late);
      return late - early;
    }

    private static double otherKind(LiveDough dough) {
      Ensemble ensemble = dough.forecast().ensemble();
      double[] weights = ensemble.weights();
      List<Unknowns> members = ensemble.members();
      Map<String, Double> byKind = new HashMap<>();
      double all = 0;
      for (int i = 0; i < weights.length; i++) {
        byKind.merge(KINDS.get(members.get(i).curves()), weights[i], Double::sum);
        all += weights[i];
      }
      double largest = byKind.values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
      return 1 - largest / all;
    }

    boolean isDoubted() {
      return otherKind > DOUBT;
    }
  }

  private static List<History> histories(int from, int count) {
    return IntStream.range(from, from + count).mapToObj(History::of).toList();
  }

  private static double mean(List<History> all) {
    return all.stream().mapToDouble(History::narrowing).average().orElseThrow();
  }

  private static List<History> wider(List<History> all) {
    return all.stream().filter(each -> each.narrowing() > 1.1 && !each.isDoubted()).toList();
  }

  @Test
  void readingsNarrowTheWindowOfTwentyDoughs() {
    List<History> all = histories(1, 20);
    assertThat(mean(all)).isLessThan(0.8);
    assertThat(wider(all)).isEmpty();
  }

  @Test
  @Tag("long")
  void noneOfAThousandWindowsWidensUnlessTheKindIsInDoubt() {
    int from = Integer.getInteger("histories.from", 1);
    List<History> all = histories(from, Integer.getInteger("histories.count", 1000));
    long wideInDoubt = all.stream().filter(each -> each.narrowing() > 1.1).count();
    System.out.printf(
        "histories %d, narrowing on average to %.3f, widest %.3f, wider by a tenth %d, of them"
            + " without doubt of the kind %s%n",
        all.size(),
        mean(all),
        all.stream().mapToDouble(History::narrowing).max().orElseThrow(),
        wideInDoubt,
        wider(all));
    assertThat(mean(all)).isLessThan(0.8);
    assertThat(wider(all)).isEmpty();
  }
}
