package doughtide.core.rise;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.dough.StarterShare;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Doughs drawn from everything the model accepts, one a seed. */
final class RandomDough {
  private static final List<RiseParameters.RateCurves> CURVES = RiseParameters.standard().curves();

  private final SplittableRandom random;

  private RandomDough(long seed) {
    this.random = new SplittableRandom(seed);
  }

  /** Any dough, steady or stepped. */
  static RiseModel of(long seed) {
    RandomDough dough = new RandomDough(seed);
    DoughFormula formula = dough.formula();
    DoughTemperature temperature = dough.random.nextInt(3) == 0 ? dough.stepped() : dough.steady();
    return RiseModel.of(formula, temperature).with(dough.unknowns());
  }

  /** Any dough at one temperature. */
  static RiseModel steady(long seed) {
    RandomDough dough = new RandomDough(seed);
    return RiseModel.of(dough.formula(), dough.steady()).with(dough.unknowns());
  }

  /** Any dough that drifts towards a room which itself changes. */
  static RiseModel inRoom(long seed) {
    RandomDough dough = new RandomDough(seed);
    DoughTemperature temperature =
        DoughTemperature.inRoom(
            dough.celsius(18, 30), dough.steps(4, 30), dough.between(0.3, 6), 4500);
    return RiseModel.of(dough.formula(), temperature).with(dough.unknowns());
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private Temperature celsius(double low, double high) {
    return Temperature.ofCelsius(between(low, high));
  }

  private DoughTemperature steady() {
    return DoughTemperature.steady(celsius(1, 34.5));
  }

  private DoughTemperature stepped() {
    return DoughTemperature.following(steps(1, 34.5));
  }

  private TemperatureTrace steps(double low, double high) {
    List<TemperatureTrace.Step> steps = new ArrayList<>();
    double hours = 0;
    int count = 2 + random.nextInt(3);
    for (int i = 0; i < count; i++) {
      steps.add(new TemperatureTrace.Step(hours, celsius(low, high)));
      hours += between(0.5, 8);
    }
    return TemperatureTrace.steps(steps);
  }

  private Flour flour() {
    FlourClass[] classes = FlourClass.values();
    int count = 1 + random.nextInt(3);
    List<Flour.Part> parts = new ArrayList<>();
    double left = 1;
    for (int i = 0; i < count; i++) {
      double share = i == count - 1 ? left : left * between(0.1, 0.9);
      left -= share;
      Flour flour = classes[random.nextInt(classes.length)].flour();
      parts.add(new Flour.Part(flour, Share.ofFraction(share)));
    }
    return Flour.mix(parts);
  }

  private DoughFormula formula() {
    double hydration = between(0.5, 1.5);
    double prefermented = Math.exp(between(Math.log(0.005), Math.log(0.5)));
    double starterHydration = between(0.4, Math.min(2, hydration / prefermented));
    StarterCondition[] conditions = StarterCondition.values();
    return DoughFormula.builder()
        .flour(flour())
        .hydration(Share.ofFraction(hydration))
        .salt(Share.ofPercent(between(0, 3.5)))
        .starter(
            new Starter(
                Share.ofFraction(starterHydration),
                flour(),
                conditions[random.nextInt(conditions.length)]))
        .starterShare(StarterShare.prefermented(Share.ofFraction(prefermented)))
        .altitude(Altitude.ofMetres(between(-400, 4000)))
        .build();
  }

  private Unknowns unknowns() {
    return new Unknowns(
        Math.exp(between(-1, 1)),
        Math.exp(between(-1, 1)),
        between(-2, 2),
        Math.exp(between(-0.4, 0.4)),
        between(-0.06, 0.06),
        between(0.02, 0.15),
        Math.exp(between(-0.4, 0.4)),
        CURVES.get(random.nextInt(CURVES.size())).key());
  }
}
