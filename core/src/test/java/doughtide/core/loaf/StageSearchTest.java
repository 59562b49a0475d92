package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.InnerFault;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Between which hours one dough is shaped right, against its loaf followed to the oven. */
class StageSearchTest {
  private static final Temperature COLD = Temperature.ofCelsius(4);
  private static final DoughFormula FORMULA = DoughFormula.builder().build();
  private static final Rise TARGET = Rise.ofPercent(80);
  private static final Proof NIGHT = Proof.inCold(COLD, 12);
  private static final double WITHIN_HOURS = 0.1; // of halvings between the shape point and the end

  private static RiseCurve bulk(double hours) {
    return RiseModel.of(FORMULA, DoughTemperature.steady(Temperature.ofCelsius(24))).run(hours);
  }

  private static final RiseCurve LONG = bulk(30);

  private static ShapeStages stages(Proof proof, RiseCurve bulk, double likely) {
    Proof aimed = proof.withTarget(TARGET);
    return new StageSearch(FORMULA, aimed, LoafSettings.FULL, bulk, LoafScores.MIDDLE)
        .stages(likely, TARGET);
  }

  private static double shapePoint(Proof proof) {
    Proof aimed = proof.withTarget(TARGET);
    LoafModel loaf = LoafModel.of(FORMULA, aimed, LoafSettings.FULL);
    return new ShapeSearch(LONG, aimed, loaf, LoafScores.MIDDLE).find(5).orElseThrow()
        - aimed.restHours();
  }

  private static PieceCurve loaf(Proof proof, double bulkEnd) {
    return loaf(proof, bulkEnd, TARGET.percent());
  }

  /** A loaf of the size that it has on its way to a height. */
  private static PieceCurve loaf(Proof proof, double bulkEnd, double percent) {
    double from = bulkEnd + proof.restHours();
    return LoafModel.of(FORMULA, proof.withTarget(Rise.ofPercent(percent)), LoafSettings.FULL)
        .run(LONG, from, LoafScores.MIDDLE, proof.hoursToOven(from));
  }

  /** Of a target of 80 %: right from 68 % to 96 %, past its best once it weakens in the oven. */
  @Test
  void limitsAreThoseOfTheLoafAtTheOven() {
    for (Proof proof : new Proof[] {NIGHT, NIGHT.withRest(1.5), Proof.inColdUntil(COLD, 18)}) {
      double likely = shapePoint(proof);
      ShapeStages stages = stages(proof, LONG, likely);
      double past = stages.pastBest().orElseThrow();

      assertThat(loaf(proof, stages.rightFrom(), 68).riseAtEnd().percent())
          .isCloseTo(68, within(0.4));
      assertThat(loaf(proof, stages.rightUntil().orElseThrow(), 96).riseAtEnd().percent())
          .isCloseTo(96, within(0.4));
      assertThat(loaf(proof, past - WITHIN_HOURS).hoursToOver()).isEmpty();
      assertThat(stages.rightFrom()).isLessThan(likely);
      assertThat(past).isGreaterThan(stages.rightUntil().orElseThrow());
    }
  }

  @Test
  void aLoafIsPastItsBestFromTheHourOnAtWhichItWeakensBeforeTheOven() {
    double past = stages(NIGHT, LONG, shapePoint(NIGHT)).pastBest().orElseThrow();

    assertThat(loaf(NIGHT, past + WITHIN_HOURS).hoursToOver()).isPresent();
    assertThat(past).isLessThan(LONG.hoursToOver().orElseThrow());
  }

  /** A likely dough that is an hour later than this one has all of its hours an hour later. */
  @Test
  void allHoursMoveWithTheLikelyOne() {
    double own = shapePoint(NIGHT);
    ShapeStages here = stages(NIGHT, LONG, own);
    ShapeStages later = stages(NIGHT, LONG, own + 1);

    assertThat(later.rightFrom()).isCloseTo(here.rightFrom() + 1, within(0.01));
    assertThat(later.rightUntil().orElseThrow())
        .isCloseTo(here.rightUntil().orElseThrow() + 1, within(0.01));
    assertThat(later.pastBest().orElseThrow())
        .isCloseTo(here.pastBest().orElseThrow() + 1, within(0.01));
  }

  /** In the room until an oven that comes soon no loaf rises too far. */
  @Test
  void whereItNeverRisesTooFarTheLatestHourIsOpenOrTheOvens() {
    RiseCurve first = bulk(6);
    Proof room = Proof.inRoom(Temperature.ofCelsius(24), 0.5);
    ShapeStages open = stages(room, first, 5.5);

    assertThat(first.hoursToOver()).isEmpty();
    assertThat(open.pastBest()).isEmpty();
    assertThat(open.rightUntil()).isEmpty();
    double oven = 8;
    Proof soon = Proof.inColdUntil(COLD, oven);
    ShapeStages until = stages(soon, LONG, shapePoint(soon));
    assertThat(until.pastBest().orElseThrow())
        .isCloseTo(oven - Proof.USUAL_REST_HOURS, within(WITHIN_HOURS));
  }

  /** All at one hour is in order, and never too late is. */
  @Test
  void stagesAreInOrder() {
    OptionalDouble never = OptionalDouble.empty();
    OptionalDouble three = OptionalDouble.of(3);
    OptionalDouble four = OptionalDouble.of(4);
    assertThat(new ShapeStages(3, three, three).pastBest()).hasValue(3);
    assertThat(new ShapeStages(0, never, never).rightUntil()).isEmpty();
    assertThat(new ShapeStages(3, never, four).pastBest()).hasValue(4);
    assertThatThrownBy(() -> new ShapeStages(-0.1, three, four)).isInstanceOf(InnerFault.class);
    assertThatThrownBy(() -> new ShapeStages(3.1, three, four)).isInstanceOf(InnerFault.class);
    assertThatThrownBy(() -> new ShapeStages(3.1, never, three)).isInstanceOf(InnerFault.class);
    assertThatThrownBy(() -> new ShapeStages(1, four, three)).isInstanceOf(InnerFault.class);
  }
}
