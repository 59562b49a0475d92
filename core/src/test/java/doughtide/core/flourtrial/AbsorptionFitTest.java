package doughtide.core.flourtrial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.FlourClass;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class AbsorptionFitTest {
  private static final AbsorptionPrior PRIOR = new AbsorptionPrior(73, 5);

  private static List<GradedBowl> bowls(String person, double shift, Grade... grades) {
    List<GradedBowl> bowls = new ArrayList<>();
    for (int i = 0; i < grades.length; i++) {
      bowls.add(new GradedBowl("first", person, 65 + shift + 4 * i, grades[i]));
    }
    return bowls;
  }

  private static AbsorptionFit separable() {
    return AbsorptionFit.of(
        bowls("A", 0, Grade.FIRM, Grade.THIN_WINDOW, Grade.TEARS_FAR, Grade.TORN, Grade.TORN),
        PRIOR);
  }

  @Test
  void aCleanTrialPutsTheLimitBetweenTheLastBowlThatHeldAndTheFirstThatTore() {
    AbsorptionFit fit = separable();
    assertThat(fit.limit().likelyPercent()).isBetween(73.0, 77.0);
    assertThat(fit.comfortable().fromPercent()).isBetween(64.0, 69.0);
    assertThat(fit.comfortable().toPercent()).isBetween(69.0, 73.0);
    assertThat(fit.demanding().toPercent()).isEqualTo(fit.tooWetFromPercent());
    assertThat(fit.limit().widthPoints()).isBetween(2.0, 6.0);
    assertThat(fit.notes()).isEmpty();
  }

  @Test
  void workingHydrationLiesBelowTheLimitByExperience() {
    AbsorptionFit fit = separable();
    double limit = fit.limit().likelyPercent();
    assertThat(fit.workingHydration(Experience.BEGINNER).percent())
        .isCloseTo(limit - 5, within(1e-9));
    assertThat(fit.workingHydration(Experience.EXPERIENCED).percent())
        .isCloseTo(limit - 2, within(1e-9));
    assertThat(fit.workingHydration(Experience.PRACTISED).percent())
        .isCloseTo(limit - 1, within(1e-9));
  }

  @Test
  void oneBowlLeavesTheWordToThePriorAndSaysSo() {
    AbsorptionFit fit = AbsorptionFit.of(bowls("A", 0, Grade.THIN_WINDOW), PRIOR);
    assertThat(fit.priorWeight()).isGreaterThan(0.3);
    assertThat(fit.limit().likelyPercent()).isBetween(68.0, 76.0);
    assertThat(fit.notes()).anyMatch(note -> note.kind() == TrialNote.Kind.NONE_TORN);
    AbsorptionFit stiff = AbsorptionFit.of(bowls("A", -15, Grade.TOO_STIFF), PRIOR);
    assertThat(stiff.notes()).anyMatch(note -> note.kind() == TrialNote.Kind.PRIOR_DECIDES);
  }

  @Test
  void contradictingGradesWidenTheIntervalAndAreNamed() {
    AbsorptionFit fit =
        AbsorptionFit.of(
            bowls("A", 0, Grade.TORN, Grade.THIN_WINDOW, Grade.TEARS_FAR, Grade.FIRM, Grade.TORN),
            PRIOR);
    assertThat(fit.limit().widthPoints()).isGreaterThan(1.3 * separable().limit().widthPoints());
    assertThat(fit.notes())
        .anyMatch(
            note ->
                note.kind() == TrialNote.Kind.CONTRADICTION
                    && note.numbers().equals(Map.of("pairs", 5.0))
                    && note.bowls()
                        .equals(
                            List.of(
                                new GradedBowl("first", "A", 65, Grade.TORN),
                                new GradedBowl("first", "A", 69, Grade.THIN_WINDOW))));
  }

  @Test
  void nothingTornPutsTheLimitBeyondAndEverythingTornBelow() {
    AbsorptionFit window =
        AbsorptionFit.of(bowls("A", 4, Grade.THIN_WINDOW, Grade.THIN_WINDOW), PRIOR);
    assertThat(window.limit().likelyPercent()).isGreaterThan(73);
    AbsorptionFit torn = AbsorptionFit.of(bowls("A", 0, Grade.TORN, Grade.TORN), PRIOR);
    assertThat(torn.limit().likelyPercent()).isLessThan(67);
    assertThat(torn.notes())
        .anyMatch(
            note ->
                note.equals(TrialNote.of(TrialNote.Kind.ALL_TORN, Map.of("driestPercent", 65.0))));
  }

  @Test
  void peopleWhoDifferHaveLimitsOfTheirOwn() {
    Grade[] grades = {Grade.FIRM, Grade.THIN_WINDOW, Grade.TEARS_FAR, Grade.TORN};
    List<GradedBowl> all = new ArrayList<>(bowls("lenient", 8, grades));
    all.addAll(bowls("strict", 0, grades));
    AbsorptionFit fit = AbsorptionFit.of(all, PRIOR);
    double lenient = fit.limitOf("lenient").likelyPercent();
    double strict = fit.limitOf("strict").likelyPercent();
    assertThat(lenient - strict).isBetween(3.0, 8.0);
    assertThat(fit.limit().likelyPercent()).isCloseTo((lenient + strict) / 2, within(1e-9));
    assertThat(fit.leniencyPoints("lenient"))
        .isCloseTo(-fit.leniencyPoints("strict"), within(1e-9));
    assertThat(fit.people()).containsExactly("lenient", "strict");
    assertThatThrownBy(() -> fit.limitOf("nobody"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("lenient, strict");
  }

  @Test
  void oneJudgesOwnLimitIsTheLimit() {
    AbsorptionFit fit = separable();
    assertThat(fit.limitOf("A").likelyPercent())
        .isCloseTo(fit.limit().likelyPercent(), within(1e-9));
    assertThat(fit.leniencyPoints("A")).isZero();
  }

  @Test
  void halfOfTheBowlsAtTheLimitAreTorn() {
    AbsorptionFit fit = separable();
    Share limit = Share.ofPercent(fit.limit().likelyPercent());
    assertThat(fit.probability(Grade.TORN, limit)).isCloseTo(0.5, within(1e-9));
    assertThat(fit.probability(Grade.TORN, Share.ofPercent(90))).isGreaterThan(0.999);
    assertThat(fit.probability(Grade.TOO_STIFF, Share.ofPercent(40))).isGreaterThan(0.999);
  }

  @Test
  void moreBowlsWeighMoreThanThePrior() {
    List<GradedBowl> many = new ArrayList<>();
    for (int trial = 0; trial < 6; trial++) {
      for (GradedBowl bowl :
          bowls("A", trial % 4, Grade.FIRM, Grade.THIN_WINDOW, Grade.TEARS_FAR, Grade.TORN)) {
        many.add(new GradedBowl("t" + trial, "A", bowl.hydrationPercent(), bowl.grade()));
      }
    }
    AbsorptionFit low = AbsorptionFit.of(many, new AbsorptionPrior(65, 5));
    AbsorptionFit high = AbsorptionFit.of(many, new AbsorptionPrior(85, 5));
    assertThat(high.limit().likelyPercent() - low.limit().likelyPercent()).isBetween(0.0, 3.0);
  }

  @Test
  void thePriorRisesWithProteinBranAndDryness() {
    double white = AbsorptionPrior.of(FlourClass.WHITE.flour()).limitPercent();
    double strong = AbsorptionPrior.of(FlourClass.STRONG_WHITE.flour()).limitPercent();
    double wholemeal = AbsorptionPrior.of(FlourClass.WHOLEMEAL_WHEAT.flour()).limitPercent();
    double dry =
        AbsorptionPrior.of(FlourClass.WHITE.flour().withMoisture(Share.ofPercent(11)))
            .limitPercent();
    assertThat(strong).isGreaterThan(white);
    assertThat(wholemeal).isGreaterThan(strong);
    assertThat(dry).isGreaterThan(white + 3);
    assertThat(AbsorptionPrior.of(FlourClass.RYE.flour()).sdPoints()).isEqualTo(8);
  }

  @Test
  void noBowlIsRefused() {
    assertThatThrownBy(() -> AbsorptionFit.of(List.of(), PRIOR))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("grade at least one");
    assertThatThrownBy(() -> separable().beginning(Grade.TOO_STIFF))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no beginning");
  }
}
