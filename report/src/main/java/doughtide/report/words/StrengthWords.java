package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Share;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** How a dough is folded, in the words of a language. */
@Internal
public final class StrengthWords {

  private final Words words;

  public StrengthWords(Words words) {
    this.words = words;
  }

  /** The words for an English terminal. */
  public static StrengthWords english() {
    return new StrengthWords(Words.in(Language.ENGLISH));
  }

  /** The name of a fold. */
  public String kind(StrengthPlan.Fold fold) {
    return words.say("fold." + fold.kind().name());
  }

  /** The names of all folds in order; those alike that follow each other are named once. */
  public String kinds(StrengthPlan plan) {
    return plan.steps().stream().map(this::kind).distinct().collect(Collectors.joining(", "));
  }

  /**
   * How many folds and why, what would change it, and what to look for; one sentence each.
   *
   * @param wanted what flour and water ask for
   * @param plan what the dough leaves time for
   * @param hydration of the dough
   */
  public List<String> sentences(StrengthPlan wanted, StrengthPlan plan, Share hydration) {
    OptionalDouble below = wanted.pointsBelowLimit();
    if (below.isEmpty()) {
      return List.of(words.say("strength.none"));
    }
    List<String> said = new ArrayList<>();
    said.add(
        words.say(
            "strength.why",
            Map.of(
                "folds", words.plain(wanted.folds()),
                "hydration", words.percent(hydration.percent(), 0),
                "limit", words.percent(hydration.percent() + below.getAsDouble(), 0))));
    if (plan.folds() < wanted.folds()) {
      said.add(words.say("strength.tooQuick"));
    }
    wanted
        .pointsToOneMore()
        .ifPresent(more -> said.add(changed("strength.more", hydration.percent() + more)));
    wanted
        .pointsToOneFewer()
        .ifPresent(less -> said.add(changed("strength.fewer", hydration.percent() - less)));
    if (plan.folds() > 0) {
      said.add(words.say("strength.look"));
    }
    return List.copyOf(said);
  }

  private String changed(String key, double percent) {
    return words.say(key, Map.of("hydration", words.percent(percent, 0)));
  }
}
