package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.List;
import org.junit.jupiter.api.Test;

class FirstEveningTest {
  private static final FirstEvening EVENING = FirstEvening.of(Temperature.ofCelsius(24), 2.5, 6.5);

  @Test
  void eachJarIsABakeWithOneReading() {
    List<Bake> bakes = EVENING.withWarmHours(2).bakes();

    assertThat(EVENING.bakes()).hasSize(2);
    assertThat(bakes).extracting(Bake::name).doesNotHaveDuplicates().hasSize(3);
    assertThat(bakes).extracting(Bake::riseReadings).containsOnly(1);
    assertThat(bakes).extracting(Bake::lastHours).containsExactly(2.5, 6.5, 2.0);
    assertThat(bakes.get(0).formula().prefermentedFlour()).isCloseTo(1 / 3.0, within(1e-9));
    assertThat(bakes.get(1).formula().prefermentedFlour()).isCloseTo(0.5 / 10.5, within(1e-9));
    assertThat(bakes.get(0).formula().salt().fraction()).isZero();
    assertThat(bakes.get(2).temperature().startCelsius()).isEqualTo(33);
  }

  @Test
  void aQuickEveningMakesTheNextDoughQuickAndItsWindowNarrow() {
    Learner learner = Learner.standard().with(LearningPrior.of(StarterRoutine.KEPT));
    Learned slow = learner.learn(FirstEvening.of(Temperature.ofCelsius(24), 3.5, 9).bakes());
    Learned quick = learner.learn(FirstEvening.of(Temperature.ofCelsius(24), 1.75, 5).bakes());
    DoughFormula dough = DoughFormula.builder().build();
    DoughTemperature warm = DoughTemperature.steady(Temperature.ofCelsius(24));

    Learned.Narrowing slower = slow.narrowing(dough, warm, FirstEvening.MARK);
    Learned.Narrowing quicker = quick.narrowing(dough, warm, FirstEvening.MARK);

    assertThat(quicker.after().late().orElseThrow())
        .isLessThan(slower.after().early().orElseThrow());
    assertThat(quicker.share().orElseThrow()).isGreaterThan(0.4);
  }

  @Test
  void refusesHoursThatNoJarNeeds() {
    assertThatThrownBy(() -> FirstEvening.of(Temperature.ofCelsius(24), 0, 6))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("1:1:1");
    assertThatThrownBy(() -> EVENING.withWarmHours(60)).isInstanceOf(InputException.class);
  }
}
