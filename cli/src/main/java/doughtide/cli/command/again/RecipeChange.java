package doughtide.cli.command.again;

import doughtide.cli.args.Words;
import doughtide.core.day.BakePlan;
import doughtide.core.feeding.FeedRatio;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What of the recipe of a dough that is not mixed yet is otherwise than its plan said.
 *
 * @param before its plan
 * @param now what it is now
 * @param feed how its starter is fed now, or was; empty where it is not fed so
 */
record RecipeChange(PlanFile.Dough before, BakePlan now, Optional<FeedRatio> feed) {

  private static final double SAME = 0.05;

  /** Such as {@code starter 30 % instead of 20 %, dough at 22 °C instead of 28 °C}; or empty. */
  String words() {
    List<String> all = new ArrayList<>();
    if (Math.abs(now.starterPercent() - before.starterPercent()) > SAME) {
      all.add(
          "starter "
              + Words.percent(now.starterPercent())
              + " instead of "
              + Words.percent(before.starterPercent())
              + " of the flour added");
    }
    double celsius = now.doughTemperature().celsius();
    if (Math.abs(celsius - before.doughCelsius()) > SAME) {
      all.add("dough at " + degrees(celsius) + " instead of " + degrees(before.doughCelsius()));
    }
    feed.flatMap(this::fed).ifPresent(all::add);
    return String.join(", ", all);
  }

  private Optional<String> fed(FeedRatio ratio) {
    return before
        .feed()
        .filter(meant -> !meant.text().equals(ratio.text()))
        .map(meant -> "feed " + ratio.text() + " instead of " + meant.text());
  }

  private static String degrees(double celsius) {
    return Words.rounded(celsius, 1) + " °C";
  }
}
