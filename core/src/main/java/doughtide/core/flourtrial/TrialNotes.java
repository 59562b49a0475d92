package doughtide.core.flourtrial;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Map;

/** Finds what has to be said about a set of grades. */
final class TrialNotes {
  /** Above this the prior has the greater say. */
  private static final double PRIOR_DECIDES = 0.5;

  private static final double FAR_APART_POINTS = 2;

  private TrialNotes() {}

  static List<TrialNote> of(AbsorptionFit fit) {
    List<TrialNote> notes = new ArrayList<>();
    addPrior(notes, fit);
    addRange(notes, fit.bowls());
    addContradictions(notes, fit.bowls());
    addPeople(notes, fit);
    return List.copyOf(notes);
  }

  private static void addPrior(List<TrialNote> notes, AbsorptionFit fit) {
    if (fit.priorWeight() > PRIOR_DECIDES) {
      notes.add(
          TrialNote.of(
              TrialNote.Kind.PRIOR_DECIDES,
              Map.of(
                  "limitPercent", fit.prior().limitPercent(), "sdPoints", fit.prior().sdPoints())));
    }
  }

  private static void addRange(List<TrialNote> notes, List<GradedBowl> bowls) {
    DoubleSummaryStatistics percent =
        bowls.stream().mapToDouble(GradedBowl::hydrationPercent).summaryStatistics();
    if (bowls.stream().noneMatch(bowl -> bowl.grade() == Grade.TORN)) {
      notes.add(TrialNote.of(TrialNote.Kind.NONE_TORN, Map.of("wettestPercent", percent.getMax())));
    }
    if (bowls.stream().allMatch(bowl -> bowl.grade() == Grade.TORN)) {
      notes.add(TrialNote.of(TrialNote.Kind.ALL_TORN, Map.of("driestPercent", percent.getMin())));
    }
  }

  private static void addContradictions(List<TrialNote> notes, List<GradedBowl> bowls) {
    List<List<GradedBowl>> pairs = new ArrayList<>();
    for (int i = 0; i < bowls.size(); i++) {
      for (int j = i + 1; j < bowls.size() && sameHands(bowls.get(i), bowls.get(j)); j++) {
        if (contradict(bowls.get(i), bowls.get(j))) {
          pairs.add(List.of(bowls.get(i), bowls.get(j)));
        }
      }
    }
    if (!pairs.isEmpty()) {
      notes.add(
          new TrialNote(
              TrialNote.Kind.CONTRADICTION,
              Map.of("pairs", (double) pairs.size()),
              pairs.get(0).get(0).person(),
              pairs.get(0)));
    }
  }

  private static boolean sameHands(GradedBowl one, GradedBowl other) {
    return one.trial().equals(other.trial()) && one.person().equals(other.person());
  }

  /** The bowls are ordered by hydration within one trial and person. */
  private static boolean contradict(GradedBowl drier, GradedBowl wetter) {
    return drier.hydrationPercent() < wetter.hydrationPercent()
        && drier.grade().compareTo(wetter.grade()) > 0;
  }

  private static void addPeople(List<TrialNote> notes, AbsorptionFit fit) {
    for (String person : fit.people()) {
      double points = fit.leniencyPoints(person);
      if (Math.abs(points) > FAR_APART_POINTS) {
        TrialNote.Kind kind =
            points > 0 ? TrialNote.Kind.PERSON_HIGHER : TrialNote.Kind.PERSON_LOWER;
        notes.add(new TrialNote(kind, Map.of("points", Math.abs(points)), person, List.of()));
      }
    }
  }
}
