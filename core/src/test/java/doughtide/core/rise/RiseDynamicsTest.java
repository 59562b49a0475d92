package doughtide.core.rise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.kinetics.AcidBuffer;
import doughtide.core.quantity.Share;
import org.junit.jupiter.api.Test;

/** Rates at a state, by the laws that the model page states. */
class RiseDynamicsTest {
  private static final RiseParameters PARAMETERS = RiseParameters.standard();
  private static final DoughFormula DOUGH = DoughFormula.builder().build();
  private static final double REFERENCE = 25; // °C, where every rate curve is 1

  private static RiseDynamics dynamics(DoughFormula formula, Unknowns unknowns) {
    return new RiseDynamics(formula, PARAMETERS, unknowns, REFERENCE);
  }

  private static RiseDynamics dynamics(DoughFormula formula) {
    return dynamics(formula, Unknowns.typical());
  }

  private static double[] rates(RiseDynamics dynamics, double[] state) {
    double[] rates = new double[RiseDynamics.SIZE];
    dynamics.derivatives(REFERENCE, state, rates);
    return rates;
  }

  private static double yeastRate(DoughFormula formula) {
    RiseDynamics dynamics = dynamics(formula);
    return rates(dynamics, dynamics.startState())[RiseDynamics.READINESS];
  }

  private static Unknowns with(
      double vigour, double lag, double rate, double air, double strength) {
    return new Unknowns(vigour, lag, 0, rate, 0, air, strength, Unknowns.typical().curves());
  }

  /** With 70 % of water, of the flour's 14 % besides, and no salt, white flour grows as stated. */
  @Test
  void waterSaltAndAshChangeTheRateOfYeast() {
    RiseParameters.Growth growth = PARAMETERS.growth();
    DoughFormula plain =
        DOUGH.toBuilder().hydration(Share.ofPercent(70)).salt(Share.ofPercent(0)).build();
    double moisture = plain.flour().composition().moisture();
    double plainRate = yeastRate(plain);
    double ash = plain.flour().composition().ash();
    double own = 1 + growth.ashGain() * (ash - 0.005);
    double water = saturated(0.70 + moisture) / saturated(0.84);

    assertThat(plainRate).isCloseTo(growth.yeastPerHour() * own * water, within(1e-9));
    DoughFormula salted = plain.toBuilder().salt(Share.ofPercent(2)).build();
    double phase = 0.02 / (0.70 + moisture) * 0.86;
    assertThat(yeastRate(salted) / plainRate)
        .isCloseTo(Math.exp(-growth.yeastSalt() * phase), within(1e-9));
    DoughFormula dark = plain.toBuilder().flour(FlourClass.WHOLEMEAL_RYE.flour()).build();
    double darkOwn = 1 + growth.ashGain() * (dark.flour().composition().ash() - 0.005);
    double darkWater = saturated(0.70 + dark.flour().composition().moisture()) / saturated(0.84);
    assertThat(yeastRate(dark) / plainRate)
        .isCloseTo(darkOwn * darkWater / (own * water), within(1e-9));
  }

  private static double saturated(double water) {
    double free = water - PARAMETERS.growth().boundWater();
    return free / (free + PARAMETERS.growth().freeWaterHalf());
  }

  /** What is unknown scales what it is named after and nothing else. */
  @Test
  void unknownsScaleTheirOwnRates() {
    RiseDynamics typical = dynamics(DOUGH);
    RiseDynamics other = dynamics(DOUGH, with(1, 1, 1.5, Unknowns.USUAL_STARTING_AIR, 3));
    double[] state = typical.startState();
    double[] usual = rates(typical, state);
    double[] quick = rates(other, state);

    for (int i : new int[] {RiseDynamics.YEAST, RiseDynamics.READINESS, RiseDynamics.BACTERIA}) {
      assertThat(quick[i]).isCloseTo(1.5 * usual[i], within(1e-12));
    }
    assertThat(quick[RiseDynamics.MADE]).isCloseTo(1.5 * usual[RiseDynamics.MADE], within(1e-12));
    assertThat(quick[RiseDynamics.ACID]).isCloseTo(1.5 * usual[RiseDynamics.ACID], within(1e-12));
    assertThat(quick[RiseDynamics.STRENGTH])
        .isCloseTo(3 * usual[RiseDynamics.STRENGTH], within(1e-12));
    assertThat(usual[RiseDynamics.CELSIUS])
        .isCloseTo(50_200 * usual[RiseDynamics.MADE], within(1e-9));
    RiseDynamics lively = dynamics(DOUGH, with(2, 0.5, 1, Unknowns.USUAL_STARTING_AIR, 1));
    assertThat(lively.startState()[RiseDynamics.YEAST])
        .isCloseTo(Math.log(2 * DOUGH.prefermentedFlour()), within(1e-12));
    assertThat(readyAfter(lively)).isCloseTo(readyAfter(typical) / 2, within(1e-9));
  }

  /** The lag of Baranyi &amp; Roberts 1994: ln(1 + 1/q) over the rate. */
  private static double readyAfter(RiseDynamics dynamics) {
    return Math.log1p(Math.exp(-dynamics.startState()[RiseDynamics.READINESS]));
  }

  /** One volume of air in some share of the dough, which hands take out by shares. */
  @Test
  void airIsAShareOfTheDoughAndTakenOutByShares() {
    RiseDynamics dynamics = dynamics(DOUGH, with(1, 1, 1, 0.1, 1));
    double[] state = dynamics.startState();
    state[RiseDynamics.MADE] = 0;

    assertThat(dynamics.gasShare(REFERENCE, state)).isCloseTo(0.1, within(1e-9));
    dynamics.takeOut(0.25, REFERENCE, state);
    double left = 0.1 * 0.75;
    assertThat(dynamics.gasShare(REFERENCE, state)).isCloseTo(left / (left + 0.9), within(1e-9));
    assertThat(dynamics.air().lostMol()).isCloseTo(dynamics.air().mixedInMol() / 4, within(1e-12));
    double[] risen = dynamics.startState();
    risen[RiseDynamics.MADE] = 1;
    double before = dynamics.inCellsMol(REFERENCE, risen);
    dynamics.takeOut(0.5, REFERENCE, risen);
    assertThat(risen[RiseDynamics.LOST]).isCloseTo(before / 2, within(1e-12));
  }

  /** At the greatest height that a dough can hold half of the new gas escapes. */
  @Test
  void aFullDoughLetsHalfOfItsNewGasGo() {
    RiseDynamics dynamics = dynamics(DOUGH);
    double[] state = dynamics.startState();
    double low = 0.01;
    double high = 6;
    for (int i = 0; i < 60; i++) {
      state[RiseDynamics.MADE] = (low + high) / 2;
      if (dynamics.rise(REFERENCE, state) < dynamics.fullRise(state)) {
        low = state[RiseDynamics.MADE];
      } else {
        high = state[RiseDynamics.MADE];
      }
    }
    double[] rates = rates(dynamics, state);
    double cells = dynamics.inCellsMol(REFERENCE, state);
    double seeps = PARAMETERS.retention().leakPerHour() * cells / 4;

    assertThat(dynamics.fullRise(state)).isBetween(1.0, 6.0);
    assertThat(rates[RiseDynamics.LOST])
        .isCloseTo(rates[RiseDynamics.MADE] / 2 + seeps, within(1e-9));
    assertThat(dynamics.startLitres() * (1 + dynamics.fullRise(state)))
        .isGreaterThan(dynamics.startLitres());
    double[] sour = state.clone();
    sour[RiseDynamics.ACID] = PARAMETERS.retention().acidTolerated() + 0.05;
    double share = fullShare(dynamics, state);
    assertThat(fullShare(dynamics, sour))
        .isCloseTo(share - 0.05 * PARAMETERS.retention().acidWeakening(), within(1e-9));
  }

  /** The gas share of a dough as high as it can be: what is not gas keeps its volume. */
  private static double fullShare(RiseDynamics dynamics, double[] state) {
    double[] start = dynamics.startState();
    double rest = 1 - dynamics.gasShare(REFERENCE, start);
    return 1 - rest / (1 + dynamics.fullRise(state));
  }

  /**
   * Much water loosens gluten: half of what it can at 90 %, and in rye, without gluten, nothing.
   */
  @Test
  void waterLowersTheHeightThatADoughHolds() {
    for (FlourClass kind : new FlourClass[] {FlourClass.WHITE, FlourClass.RYE}) {
      double drop = PARAMETERS.retention().slackDrop() * kind.flour().gluten();
      for (double percent : new double[] {60, 90, 100}) {
        DoughFormula dough =
            DOUGH.toBuilder().flour(kind.flour()).hydration(Share.ofPercent(percent)).build();
        RiseDynamics dynamics = dynamics(dough);
        double slack = 1 / (1 + Math.exp(-(percent / 100 - 0.9) / 0.06));
        double[] state = dynamics.startState();
        state[RiseDynamics.ACID] = 0;
        assertThat(fullShare(dynamics, state))
            .isCloseTo(kind.flour().retention() - drop * slack, within(1e-9));
      }
    }
  }

  /** Salt in the water stops bacteria by the third power of its part of what they stand. */
  @Test
  void saltSlowsTheBacteria() {
    DoughFormula plain = DOUGH.toBuilder().salt(Share.ofPercent(0)).build();
    double water = plain.hydration().fraction() + plain.flour().composition().moisture();
    double part = 0.02 / water / PARAMETERS.growth().bacteriaSaltLimit();
    DoughFormula salted = plain.toBuilder().salt(Share.ofPercent(2)).build();
    double ratio = bacteriaRate(dynamics(salted), 5.25) / bacteriaRate(dynamics(plain), 5.25);

    assertThat(ratio).isCloseTo(1 - part * part * part, within(1e-6));
    double[] start = dynamics(DOUGH).startState();
    double own = AcidBuffer.of(DOUGH.starter().flour()).acidAt(3.9);
    assertThat(start[RiseDynamics.ACID]).isCloseTo(DOUGH.prefermentedFlour() * own, within(1e-12));
  }

  /** Bacteria grow best at pH 5.25, not at all at 3.8 and 6.7, at the mean of the two by Rosso. */
  @Test
  void acidSlowsTheBacteria() {
    RiseDynamics dynamics = dynamics(DOUGH);
    double best = bacteriaRate(dynamics, 5.25);

    assertThat(bacteriaRate(dynamics, 3.79)).isZero();
    assertThat(bacteriaRate(dynamics, 3.9) / best).isBetween(0.01, 0.25);
    double product = (4.5 - 3.8) * (4.5 - 6.7);
    assertThat(bacteriaRate(dynamics, 4.5) / best)
        .isCloseTo(product / (product - 0.75 * 0.75), within(1e-3));
  }

  private static double bacteriaRate(RiseDynamics dynamics, double ph) {
    double[] state = dynamics.startState();
    double low = 0;
    double high = 3;
    for (int i = 0; i < 80; i++) {
      state[RiseDynamics.ACID] = (low + high) / 2;
      if (dynamics.ph(state) > ph) {
        low = state[RiseDynamics.ACID];
      } else {
        high = state[RiseDynamics.ACID];
      }
    }
    return rates(dynamics, state)[RiseDynamics.BACTERIA];
  }

  /** A starter that was run itself brings its own microbes, acid and gas by its share of flour. */
  @Test
  void aSeedBringsWhatItHasByItsShareOfFlour() {
    DoughBasis basis = new DoughBasis(DOUGH, PARAMETERS);
    Unknowns lively = with(1.5, 1, 1, Unknowns.USUAL_STARTING_AIR, 1);
    double asleep = -9;
    SeedState seed = new SeedState(0.8, 0.6, asleep, 0.12, 0.03);
    double[] state = new RiseDynamics(basis, lively, REFERENCE, seed).startState();
    double share = DOUGH.prefermentedFlour();

    assertThat(Math.exp(state[RiseDynamics.YEAST])).isCloseTo(share * 1.5 * 0.8, within(1e-12));
    assertThat(Math.exp(state[RiseDynamics.BACTERIA])).isCloseTo(share * 1.5 * 0.6, within(1e-12));
    assertThat(state[RiseDynamics.READINESS]).isEqualTo(asleep);
    assertThat(state[RiseDynamics.ACID]).isCloseTo(share * 0.12, within(1e-12));
    assertThat(state[RiseDynamics.MADE]).isCloseTo(share * 0.03, within(1e-12));
    SeedState awake = new SeedState(0.8, 0.6, 9, 0.12, 0.03);
    assertThat(
            new RiseDynamics(basis, lively, REFERENCE, awake).startState()[RiseDynamics.READINESS])
        .isEqualTo(
            new RiseDynamics(basis, lively, REFERENCE, null).startState()[RiseDynamics.READINESS]);
  }
}
