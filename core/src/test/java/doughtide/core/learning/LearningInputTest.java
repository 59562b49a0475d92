package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.Unknown;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LearningInputTest {
  private static final DoughFormula FORMULA = DoughFormula.builder().build();

  @Test
  void bothLevelsAddUpToTheStandardBelief() {
    Belief sum = LearningPrior.standard().nextBake();
    for (int i = 0; i < Belief.SIZE; i++) {
      Unknown unknown = Unknown.values()[i];
      assertThat(sum.standardDeviation(unknown))
          .as(unknown.name())
          .isCloseTo(Belief.standard().standardDeviation(unknown), within(1e-12));
    }
  }

  @Test
  void aRoutineSplitsTheSamePriorOtherwise() {
    for (StarterRoutine routine : StarterRoutine.values()) {
      assertThat(StarterRoutine.named(" " + routine.key())).isEqualTo(routine);
      for (Unknown unknown : Unknown.values()) {
        if (unknown.isNormal()) {
          assertThat(LearningPrior.of(routine).nextBake().standardDeviation(unknown))
              .isCloseTo(unknown.deviation(), within(1e-12));
        }
      }
    }
    assertThatThrownBy(() -> StarterRoutine.named("lazy"))
        .hasMessage("starter routine 'lazy' is not known: use one of kept, irregular, unknown");
  }

  @Test
  void temperatureComesFromTheReadings() {
    List<Reading> readings =
        List.of(
            Reading.ofRise(2, Rise.ofPercent(5)).withCelsius(25),
            Reading.ofRise(4, Rise.ofPercent(30)).withCelsius(23));
    Bake bake = Bake.measured("a", FORMULA, Optional.of(Temperature.ofCelsius(26)), readings);
    assertThat(bake.temperature().startCelsius()).isEqualTo(26);
    assertThat(bake.temperature().lowestCelsius(6)).isCloseTo(23, within(1e-9));
  }

  @Test
  void aReadingAtTheStartWinsOverTheOneStated() {
    List<Reading> readings = List.of(Reading.ofRise(0, Rise.ofPercent(0)).withCelsius(24));
    Bake bake = Bake.measured("a", FORMULA, Optional.of(Temperature.ofCelsius(26)), readings);
    assertThat(bake.temperature().startCelsius()).isEqualTo(24);
  }

  @Test
  void aBakeWithoutAnyTemperatureIsRefused() {
    assertThatThrownBy(
            () ->
                Bake.measured(
                    "a", FORMULA, Optional.empty(), List.of(Reading.ofRise(1, new Rise(0)))))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no dough temperature");
  }

  @Test
  void readingsMustAscend() {
    assertThatThrownBy(
            () ->
                Bake.measured(
                    "a",
                    FORMULA,
                    Optional.of(Temperature.ofCelsius(25)),
                    List.of(Reading.ofRise(2, new Rise(0)), Reading.ofRise(2, new Rise(0.1)))))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("later");
  }

  @Test
  void valuesOutOfRangeAreNamed() {
    assertThatThrownBy(() -> Reading.ofRise(-1, new Rise(0))).hasMessageContaining("-1 h");
    assertThatThrownBy(() -> Reading.ofRise(1, new Rise(0)).withCelsius(245))
        .hasMessageContaining("did you mean 24.5");
    assertThatThrownBy(() -> Reading.ofRise(1, new Rise(0)).withPh(Double.NaN))
        .hasMessageContaining("pH");
    assertThatThrownBy(() -> new ReadingNoise(0.04, 0, 0.25, 4)).hasMessageContaining("rise");
    assertThatThrownBy(() -> LearningPrior.of(new double[8], new double[8], new double[8]))
        .hasMessageContaining("between bakers");
    assertThatThrownBy(() -> LearningPrior.of(new double[6], new double[8], new double[8]))
        .hasMessageContaining("8 numbers");
  }

  @Test
  void aStarterChecksWhatItHolds() {
    LearnedStarter starter = Learner.standard().learn(List.of()).starter("0.1.0");
    assertThat(starter.withMixerFriction(Map.of("spiral", 6.0)).mixerFrictionCelsius())
        .containsEntry("spiral", 6.0);
    assertThatThrownBy(() -> starter.withMixerFriction(Map.of("spiral", 60.0)))
        .hasMessageContaining("spiral");
    assertThatThrownBy(
            () ->
                new LearnedStarter(
                    "0.1.0",
                    "none",
                    0,
                    0,
                    starter.prior(),
                    starter.posterior(),
                    starter.jar(),
                    Map.of()))
        .hasMessageContaining("64 hexadecimal digits");
  }
}
