package doughtide.core.flourtrial;

import doughtide.core.quantity.Checks;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Warnings about a set of grades. */
final class TrialNotes {
  /** Above this the prior has the greater say. */
  private static final double PRIOR_DECIDES = 0.5;

  private static final double FAR_APART_POINTS = 2;

  private TrialNotes() {}

  static List<String> of(AbsorptionFit fit) {
    List<String> notes = new ArrayList<>();
    addPrior(notes, fit);
    addRange(notes, fit);
    addContradictions(notes, fit.bowls());
    addPeople(notes, fit);
    return List.copyOf(notes);
  }

  private static void addPrior(List<String> notes, AbsorptionFit fit) {
    if (fit.priorWeight() > PRIOR_DECIDES) {
      notes.add(
          "the bowls say little about the limit; it rests mostly on what was expected beforehand ("
              + oneDecimal(fit.prior().limitPercent())
              + " % ± "
              + oneDecimal(fit.prior().sdPoints())
              + " points): grade more bowls near the limit");
    }
  }

  private static String oneDecimal(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  private static void addRange(List<String> notes, AbsorptionFit fit) {
    List<GradedBowl> bowls = fit.bowls();
    if (bowls.stream().noneMatch(bowl -> bowl.grade() == Grade.TORN)) {
      double wettest = bowls.stream().mapToDouble(GradedBowl::hydrationPercent).max().orElseThrow();
      notes.add(
          "no bowl was torn, so the limit lies beyond the bowls: add bowls wetter than "
              + Checks.plain(wettest)
              + " %");
    }
    if (bowls.stream().allMatch(bowl -> bowl.grade() == Grade.TORN)) {
      double driest = bowls.stream().mapToDouble(GradedBowl::hydrationPercent).min().orElseThrow();
      notes.add("every bowl was torn: add bowls drier than " + Checks.plain(driest) + " %");
    }
  }

  private static void addContradictions(List<String> notes, List<GradedBowl> bowls) {
    int pairs = 0;
    String first = "";
    for (int i = 0; i < bowls.size(); i++) {
      for (int j = i + 1; j < bowls.size() && sameHands(bowls.get(i), bowls.get(j)); j++) {
        if (contradict(bowls.get(i), bowls.get(j))) {
          pairs++;
          first = first.isEmpty() ? named(bowls.get(i), bowls.get(j)) : first;
        }
      }
    }
    if (pairs > 0) {
      notes.add(
          "the wetter bowl was graded the drier one in "
              + pairs
              + (pairs == 1 ? " pair" : " pairs")
              + " of bowls ("
              + first
              + "), which makes the limit less certain: judge these again");
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

  private static String named(GradedBowl drier, GradedBowl wetter) {
    return drier.trial()
        + ", "
        + drier.person()
        + ": "
        + Checks.plain(drier.hydrationPercent())
        + " % "
        + drier.grade().words()
        + ", "
        + Checks.plain(wetter.hydrationPercent())
        + " % "
        + wetter.grade().words();
  }

  private static void addPeople(List<String> notes, AbsorptionFit fit) {
    for (String person : fit.people()) {
      double points = fit.leniencyPoints(person);
      if (Math.abs(points) > FAR_APART_POINTS) {
        notes.add(
            person
                + " sets the limit "
                + oneDecimal(Math.abs(points))
                + " points "
                + (points > 0 ? "higher" : "lower")
                + " than the middle of all who judged: use each person's own limit");
      }
    }
  }
}
