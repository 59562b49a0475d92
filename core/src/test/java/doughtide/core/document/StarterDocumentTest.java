package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.forecast.Belief;
import doughtide.core.forecast.Unknown;
import doughtide.core.learning.JarError;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.learning.LearningPrior;
import doughtide.core.quantity.InputException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Invented starters. */
class StarterDocumentTest {
  private static final String DIGEST = "0123456789abcdef".repeat(4);
  private static final List<String> CURVES = List.of("humilis/one", "cerevisiae/two");

  private static Belief narrowed(double vigour, double withLag) {
    double[] mean = new double[Belief.SIZE];
    mean[Unknown.VIGOUR.ordinal()] = vigour;
    mean[Unknown.STRENGTH.ordinal()] = -0.125;
    double[][] covariance = Belief.standard().covariance();
    covariance[0][1] = withLag;
    covariance[1][0] = withLag;
    return Belief.of(mean, covariance);
  }

  private static LearnedStarter starter(Belief posterior) {
    double[] mean = LearningPrior.standard().mean();
    double[] baker = LearningPrior.standard().bakerDeviation();
    double[] bake = LearningPrior.standard().bakeDeviation();
    mean[0] = 0.0625;
    baker[1] = 0.25;
    bake[Belief.SIZE] = 0.015;
    return new LearnedStarter(
        "1.0",
        DIGEST,
        7,
        41,
        LearningPrior.of(mean, baker, bake),
        posterior,
        new JarError(0.02, 0.01),
        Map.of("spiral; \"old\"", 3.5, "hand", 0.25));
  }

  private static final Belief BOTH =
      Belief.byCurve(
          Map.of("humilis/one", narrowed(0.3, 0.05), "cerevisiae/two", narrowed(-0.2, -0.01)),
          Map.of("humilis/one", 0.75, "cerevisiae/two", 0.25));

  private static StarterDocument read(String text) {
    return StarterDocument.read(text.lines().iterator(), CURVES);
  }

  @Test
  void whatIsWrittenIsReadBack() {
    for (Belief posterior : List.of(narrowed(0.3, 0.05), BOTH)) {
      LearnedStarter starter = starter(posterior);
      StarterDocument read = read(StarterDocument.text(starter));

      assertThat(read.starter()).isEqualTo(starter);
      assertThat(read.keptPrior()).isEmpty();
      assertThat(read.leftOut()).isEmpty();
    }
  }

  /** An unknown and a curve of a later model are left out; of what is missing the prior holds. */
  @Test
  void whatIsNotKnownHereOrThereIsNamed() {
    String text =
        StarterDocument.text(starter(BOTH))
            .replace("strength", "stretch")
            .replace("cerevisiae/two", "exigua/three");
    StarterDocument read = read(text);
    Belief learned = read.starter().posterior().under("humilis/one");

    assertThat(read.keptPrior()).containsExactly("strength", "cerevisiae/two");
    assertThat(read.leftOut()).containsExactly("stretch", "exigua/three");
    assertThat(learned.mean()[Unknown.VIGOUR.ordinal()]).isEqualTo(0.3);
    assertThat(learned.mean()[Unknown.STRENGTH.ordinal()]).isZero();
    assertThat(learned.covariance()[0][1]).isEqualTo(0.05);
    assertThat(learned.standardDeviation(Unknown.STRENGTH))
        .isEqualTo(Belief.standard().standardDeviation(Unknown.STRENGTH));
    assertThat(read.starter().prior().mean()[0]).isEqualTo(0.0625);
    assertThat(read.starter().prior().bakerDeviation()[Unknown.STRENGTH.ordinal()])
        .isEqualTo(LearningPrior.standard().bakerDeviation()[Unknown.STRENGTH.ordinal()]);
  }

  /** One belief for all curves does not care which ones are known. */
  @Test
  void aStarterThatKnowsNoCurvesKeepsNoneOfThem() {
    StarterDocument read = read(StarterDocument.text(starter(narrowed(0.3, 0.05))));

    assertThat(read.keptPrior()).isEmpty();
    assertThat(read.starter().posterior().curves()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "form: 2 | form: 3 | it was written in form 3, this program reads form 2",
        "form: 2 | form: two | 'two' is not a number",
        "bakes: 7 |  | there is no line 'bakes: …'",
        "program: 1.0 |  | there is no line 'program: …'",
        "jar: 0.02; 0.01 | jar: 0.02 | 1 part, there must be 2",
        "mixer: hand; 0.25 | mixer: hand; 0.25; 1 | 3 parts, there must be 2",
        "mixer: hand; 0.25 | mixer: hand; warm | 'warm' is not a number",
        "humilis/one;lag;0.0; | humilis/one;lag; | columns, but the heading names 10",
        "humilis/one;lag;0.0; | humilis/one;lag;NaN; | 'NaN' is not a number",
        "curve;unknown;mean; | curve;thing;mean; | is no line 'key: value'",
      })
  void whatIsNoStarterIsRefused(String line, String instead, String part) {
    String text = StarterDocument.text(starter(BOTH));
    assertThat(text).contains(line);

    assertThatThrownBy(() -> read(text.replace(line, instead == null ? "" : instead)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(part);
  }
}
