package doughtide.core.learning;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.Unknown;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.Well19937c;

/** An invented baker whose true values are known; the same seed gives the same bakes. */
final class SimulatedBaker {
  private static final List<RiseParameters.RateCurves> CURVES = RiseParameters.standard().curves();

  /**
   * Where the truth comes from.
   *
   * @param routine how the baker keeps the starter
   * @param widening of the deviations between bakers, 1 as believed
   * @param kind of yeast, empty for any
   * @param thermometerOff of every bake, up or down, K
   * @param outlierShare of readings that are wrong
   */
  record Setting(
      StarterRoutine routine,
      double widening,
      String kind,
      double thermometerOff,
      double outlierShare) {
    static final Setting PLAIN = new Setting(StarterRoutine.UNKNOWN, 1, "", 0, 0);
  }

  /** A bake with the truth behind it. */
  record TrueBake(Bake bake, RiseModel truth, double[] coordinates) {
    double hoursTo(double percent) {
      return truth.runFast(60).hoursToRise(Rise.ofPercent(percent)).orElse(60);
    }
  }

  private final Well19937c random;
  private final Setting setting;
  private final LearningPrior prior;
  private final double[] mean = new double[LearningPrior.SIZE];
  private final String curves;

  SimulatedBaker(long seed, Setting setting) {
    this(seed, setting, LearningPrior.of(setting.routine()));
  }

  SimulatedBaker(long seed, Setting setting, LearningPrior prior) {
    this.random = new Well19937c(seed);
    this.prior = prior;
    this.setting = setting;
    for (int i = 0; i < mean.length; i++) {
      mean[i] =
          prior.mean()[i] + setting.widening() * prior.bakerDeviation()[i] * random.nextGaussian();
    }
    double sign = random.nextBoolean() ? 1 : -1;
    if (setting.thermometerOff() > 0) {
      mean[Unknown.TEMPERATURE.ordinal()] = sign * setting.thermometerOff();
    }
    List<RiseParameters.RateCurves> possible =
        CURVES.stream().filter(each -> each.kind().contains(setting.kind())).toList();
    this.curves = possible.get(random.nextInt(possible.size())).key();
  }

  double[] mean() {
    return mean.clone();
  }

  List<TrueBake> bakes(int count, int readings) {
    List<TrueBake> bakes = new ArrayList<>();
    for (int b = 0; b < count; b++) {
      bakes.add(bake("bake " + (b + 1), readings));
    }
    return bakes;
  }

  static List<Bake> given(List<TrueBake> bakes) {
    return bakes.stream().map(TrueBake::bake).toList();
  }

  TrueBake bake(String name, int readings) {
    return bake(name, readings, today());
  }

  /** What holds in one bake, or in all jars of one evening. */
  private double[] today() {
    double[] x = mean.clone();
    for (int i = 0; i < x.length; i++) {
      x[i] += prior.bakeDeviation()[i] * random.nextGaussian();
    }
    return x;
  }

  /**
   * The evening of two or three jars: the hours at which each looks half as high again, noted to
   * five minutes.
   */
  FirstEvening firstEvening(boolean withWarmJar) {
    double[] x = today();
    Temperature room = Temperature.ofCelsius(between(22, 27));
    FirstEvening empty = FirstEvening.of(room, 1, 1);
    FirstEvening two =
        FirstEvening.of(
            room,
            hoursToMark(empty.formula(FirstEvening.SMALL_FEED), room, x),
            hoursToMark(empty.formula(FirstEvening.LARGE_FEED), room, x));
    Temperature warm = Temperature.ofCelsius(FirstEvening.WARM_CELSIUS);
    return withWarmJar
        ? two.withWarmHours(hoursToMark(empty.formula(FirstEvening.SMALL_FEED), warm, x))
        : two;
  }

  private double hoursToMark(DoughFormula formula, Temperature at, double[] x) {
    double error = ReadingNoise.standard().riseDeviation(FirstEvening.MARK) * random.nextGaussian();
    double height = (FirstEvening.MARK.heightTimes() + error) / Math.exp(x[LearningPrior.JAR]);
    RiseCurve curve =
        RiseModel.of(formula, DoughTemperature.steady(at))
            .with(Belief.unknownsAt(x, curves))
            .runFast(48);
    double hours = curve.hoursToRise(new Rise(height - 1)).orElse(48);
    return Math.max(Math.rint(hours * 12) / 12, 0.1);
  }

  private TrueBake bake(String name, int readings, double[] x) {
    return bake(name, readings, x, between(22, 27));
  }

  /** A bake at given coordinates, jar last, and at the temperature noted. */
  TrueBake bake(String name, int readings, double[] x, double celsius) {
    DoughFormula formula =
        DoughFormula.builder()
            .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(between(12, 25))))
            .hydration(Share.ofPercent(between(64, 76)))
            .build();
    DoughTemperature noted = DoughTemperature.steady(Temperature.ofCelsius(celsius));
    Unknowns unknowns = Belief.unknownsAt(x, curves);
    RiseModel truth = RiseModel.of(formula, noted).with(unknowns);
    RiseCurve curve = truth.runFast(60);
    double end = curve.hoursToRise(Rise.ofPercent(90)).orElse(20);
    List<Reading> all = new ArrayList<>();
    for (int i = 1; i <= readings; i++) {
      double hours = Math.rint(100 * end * i / readings) / 100;
      all.add(Reading.ofRise(hours, read(curve.riseAt(hours), x[LearningPrior.JAR])));
    }
    return new TrueBake(new Bake(name, formula, noted, all), truth, x);
  }

  private Rise read(Rise rise, double jar) {
    double height = rise.heightTimes() * Math.exp(jar);
    double deviation =
        ReadingNoise.standard().riseDeviation(new Rise(height - 1)) * random.nextGaussian();
    boolean outlier = random.nextDouble() < setting.outlierShare();
    double slip = outlier ? (random.nextBoolean() ? 0.4 : -0.4) : 0;
    return new Rise(Math.max(height + deviation + slip, 0.6) - 1);
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }
}
