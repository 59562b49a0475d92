package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.SobolPoints;
import doughtide.core.forecast.Unknown;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;

class LoafScoresTest {
  private static final int MEMBERS = 512;

  @Test
  void everySliceOfARangeHasOneMember() {
    assertThat(ranks(LoafScores::hands)).isEqualTo(IntStream.range(0, MEMBERS).toArray());
  }

  private static int[] ranks(ToDoubleFunction<LoafScores> of) {
    return IntStream.range(0, MEMBERS)
        .map(member -> (int) (MEMBERS * of.applyAsDouble(LoafScores.of(member))))
        .sorted()
        .toArray();
  }

  @Test
  void errorsOfTheColdAreStandardNormalAndWithoutALean() {
    for (ToDoubleFunction<LoafScores> of : of()) {
      assertThat(scores(of).sum() / MEMBERS)
          .isCloseTo(0, within(0.01)); // all stand at one place in their slices
      assertThat(scores(of).filter(each -> each < 1).count() / (double) MEMBERS)
          .isCloseTo(0.8413, within(1.0 / MEMBERS)); // table of the normal distribution
      assertThat(scores(of).map(each -> each * each).sum() / MEMBERS).isCloseTo(1, within(0.02));
    }
  }

  @Test
  void theUnknownsOfALoafAreIndependentOfEachOther() {
    double together =
        IntStream.range(0, MEMBERS)
            .mapToObj(LoafScores::of)
            .mapToDouble(each -> each.air() * each.film())
            .sum();
    assertThat(together / MEMBERS).isCloseTo(0, within(0.05));
  }

  @Test
  void theirDimensionsFollowThoseOfTheDoughUnderFixedRandomDigits() {
    Well19937c random = new Well19937c(20_261_126);
    for (int passedOver = 0; passedOver < 61 * 3; passedOver++) {
      random.nextLong();
    }
    int first = Unknown.values().length;
    long air = random.nextLong() >>> 12;
    long film = random.nextLong() >>> 12;
    long hands = random.nextLong() >>> 12;
    assertThat(LoafScores.of(7))
        .isEqualTo(
            new LoafScores(
                SobolPoints.normalScore(SobolPoints.rank(7, first, air)),
                SobolPoints.normalScore(SobolPoints.rank(7, first + 1, film)),
                SobolPoints.rank(7, first + 2, hands)));
  }

  @Test
  void shapePointsOfTheUsualSizeAreThoseOfManyMembers() {
    ShapeForecaster.Point usual = point(MEMBERS);
    ShapeForecaster.Point many = point(4096);

    assertThat(usual.hours().likely().orElseThrow())
        .isCloseTo(many.hours().likely().orElseThrow(), within(0.08)); // five minutes
    assertThat(usual.rise().likely().orElseThrow())
        .isCloseTo(many.rise().likely().orElseThrow(), within(1.0));
  }

  private static ShapeForecaster.Point point(int members) {
    DoughFormula dough =
        DoughFormula.builder()
            .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(20)))
            .hydration(Share.ofPercent(72))
            .build();
    return ShapeForecaster.of(
            RiseForecaster.standard()
                .withMembers(members)
                .forecast(dough, DoughTemperature.steady(Temperature.ofCelsius(25))),
            Proof.inColdUntil(Temperature.ofCelsius(4), 22))
        .with(new LoafSettings(8, 0.25, members, 64))
        .point();
  }

  private static Iterable<ToDoubleFunction<LoafScores>> of() {
    return List.of(LoafScores::air, LoafScores::film);
  }

  private static DoubleStream scores(ToDoubleFunction<LoafScores> of) {
    return IntStream.range(0, MEMBERS).mapToObj(LoafScores::of).mapToDouble(of);
  }
}
