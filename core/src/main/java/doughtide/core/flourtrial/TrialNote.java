package doughtide.core.flourtrial;

import doughtide.core.Internal;
import java.io.Serializable;
import java.util.List;
import java.util.Map;

/**
 * Something to know before trusting the figures of a trial. The sentence for it stands in the
 * language bundles of the module {@code report}.
 *
 * @param kind what it is about
 * @param numbers by name; the end of a name is its unit
 * @param person whom it is about; empty if nobody
 * @param bowls the two bowls that contradict each other first, the drier one before; else empty
 */
@Internal
public record TrialNote(
    Kind kind, Map<String, Double> numbers, String person, List<GradedBowl> bowls)
    implements Serializable {

  /** What a note is about. */
  @Internal
  public enum Kind {
    /** The prior has the greater say: {@code limitPercent}, {@code sdPoints}. */
    PRIOR_DECIDES,
    /** No bowl was torn: {@code wettestPercent}. */
    NONE_TORN,
    /** Every bowl was torn: {@code driestPercent}. */
    ALL_TORN,
    /** A wetter bowl was graded the drier one: number of {@code pairs}, and the first of them. */
    CONTRADICTION,
    /** A person sets the limit higher than the middle of all: {@code points}. */
    PERSON_HIGHER,
    /** A person sets the limit lower than the middle of all: {@code points}. */
    PERSON_LOWER
  }

  /** Keeps the numbers and bowls as they are now. */
  public TrialNote {
    numbers = Map.copyOf(numbers);
    bowls = List.copyOf(bowls);
  }

  static TrialNote of(Kind kind, Map<String, Double> numbers) {
    return new TrialNote(kind, numbers, "", List.of());
  }
}
