package doughtide.core.validation;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.gas.CarbonDioxide;
import doughtide.core.gas.GasCells;
import doughtide.core.kinetics.AcidBuffer;
import doughtide.core.kinetics.BaranyiRoberts;
import doughtide.core.kinetics.RateCurve;
import doughtide.core.kinetics.RateForm;
import doughtide.core.kinetics.YeastKind;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.GasBalance;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.TemperatureTrace;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.util.Pair;

/** Asks the model for the quantity of a published check. */
final class Measurements {
  private static final double MOLAR_MASS_CO2 = 44.0095; // g/mol, IUPAC
  private static final double MOLAR_MASS_HEXOSE = 180.156; // g/mol, IUPAC
  private static final double ONE_ATMOSPHERE = 101_325;

  private Measurements() {}

  static Measured of(Check c) {
    return switch (c.quantity()) {
      case "hoursToRise" -> Measured.of(hoursToRise(c, c.number("celsius")));
      case "hoursToTarget" -> Measured.of(hoursToTarget(c));
      case "hoursToRipe" -> Measured.of(forecastOfFeed(feed(c, c.text("parts")), c).hoursToRipe());
      case "heightTimes" -> heightTimes(c);
      default -> Measured.of(value(c));
    };
  }

  private static double value(Check c) {
    return switch (c.quantity()) {
      case "optimum" -> optimum(curve(c));
      case "relativeRate" -> curve(c).rate(c.number("celsius")) / curve(c).rate(optimum(curve(c)));
      case "rateRatio" -> curve(c).rate(c.number("warm")) / curve(c).rate(c.number("cold"));
      case "growthBelowPh38" -> growthBelowPh38();
      case "lowestPh" -> longRun().phAt(120);
      case "saltFactor" -> saltFactor(c);
      case "baranyiDifference" -> baranyiDifference(c);
      case "integratorDifference" -> integratorDifference(c);
      case "henry" -> CarbonDioxide.henryMolPerM3Pa(c.number("celsius"));
      case "henrySlope" -> henrySlope(c.number("celsius"));
      case "henryTableDifference" -> henryTableDifference();
      case "molarVolume" -> molarVolume(c.number("celsius"));
      case "saltingOut" -> saltingOut(c);
      case "gasPerHexose" -> 2 * MOLAR_MASS_CO2 / MOLAR_MASS_HEXOSE;
      case "ceilingSugar" ->
          RiseParameters.standard().gas().ceilingMol() / 2 * MOLAR_MASS_HEXOSE / 1000 * 100;
      case "madeOverCeiling" ->
          longRun().gasAt(240).madeMol() / RiseParameters.standard().gas().ceilingMol();
      case "specificVolume" -> specificVolume(c);
      case "heldAtTarget" -> held(c, Event.TARGET);
      case "heldAtPeak" -> held(c, Event.PEAK);
      case "gompertz" -> gompertz(run(c, 24));
      case "ratioOfLikely" -> likely(c, c.number("celsius")) / likely(c, c.number("against"));
      case "percentPerDegree" -> percentPerDegree(c);
      case "halvingDegrees" -> halvingDegrees(c);
      case "hoursGiven" -> hoursToRise(c, c.number("celsius")).equals(TimeWindow.NEVER) ? 0 : 1;
      case "outsideWarnings" -> outsideWarnings(c);
      case "ripeRatio" ->
          likelyRipe(c, feed(c, c.text("parts"))) / likelyRipe(c, feed(c, c.text("againstParts")));
      case "ripeRatioOfCondition" -> ripeRatioOfCondition(c);
      case "ripeRatioOfSalt" -> ripeRatioOfSalt(c);
      case "peakOverDoubled" -> peakOverDoubled(c);
      case "likelySpecificVolume" -> likelySpecificVolume(c);
      case "ph" -> run(c, 24).phAt(c.number("at"));
      case "phAtRipe" -> phAtRipe(c);
      case "phOfAcid" -> AcidBuffer.of(FlourClass.WHITE.flour()).phAt(c.number("acid") / 1000);
      case "yeastRatio" ->
          run(c, 24).yeastAt(c.number("late")) / run(c, 24).yeastAt(c.number("early"));
      case "ashRatio" ->
          AcidBuffer.of(FlourClass.WHOLEMEAL_WHEAT.flour()).acidAt(c.number("ph"))
              / AcidBuffer.of(FlourClass.WHITE.flour()).acidAt(c.number("ph"));
      default -> throw new AssertionError("unknown quantity " + c.quantity());
    };
  }

  // microbes

  private static RateCurve curve(Check c) {
    RateForm form = RateForm.valueOf(c.text("form"));
    YeastKind kind = c.has("kind") ? YeastKind.valueOf(c.text("kind")) : YeastKind.HUMILIS;
    return c.text("microbe").equals("yeast") ? form.yeast(kind) : form.bacteria();
  }

  private static double optimum(RateCurve curve) {
    return new BrentOptimizer(1e-8, 1e-10)
        .optimize(
            new MaxEval(500),
            GoalType.MAXIMIZE,
            new UnivariateObjectiveFunction(curve::rate),
            new SearchInterval(20, 38))
        .getPoint();
  }

  /** A starter fed with plenty and left for ten days. */
  private static RiseCurve longRun() {
    DoughFormula formula =
        DoughFormula.builder()
            .starterShare(StarterShare.prefermented(Share.ofPercent(20)))
            .salt(Share.ofPercent(0))
            .build();
    return RiseModel.of(formula, steady(25)).run(240);
  }

  private static double growthBelowPh38() {
    RiseCurve curve = longRun();
    double at = curveHour(curve, 3.8);
    return Math.abs(Math.log(curve.bacteriaAt(240) / curve.bacteriaAt(at)));
  }

  private static double curveHour(RiseCurve curve, double ph) {
    double low = 0;
    double high = curve.endHours();
    while (high - low > 1e-9) {
      double middle = (low + high) / 2;
      if (curve.phAt(middle) > ph) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** Growth in the first minute with and without salt, per microbe. */
  private static double saltFactor(Check c) {
    double waterPhase = c.number("saltInWater") / 100;
    double salt = 0.04;
    double hydration = salt / waterPhase - FlourClass.WHITE.flour().composition().moisture();
    return growth(c, hydration, salt) / growth(c, hydration, 0);
  }

  private static double growth(Check c, double hydration, double salt) {
    DoughFormula formula =
        DoughFormula.builder()
            .hydration(Share.ofFraction(hydration))
            .salt(Share.ofFraction(salt))
            .build();
    RiseCurve curve = RiseModel.of(formula, steady(25)).run(0.02);
    return c.text("microbe").equals("yeast")
        ? Math.log(curve.yeastAt(0.02) / curve.yeastAt(0))
        : Math.log(curve.bacteriaAt(0.02) / curve.bacteriaAt(0));
  }

  private static double baranyiDifference(Check c) {
    double mu = c.number("rate");
    double start = c.number("start");
    double h0 = c.number("work");
    double t = c.number("hours");
    double a = t + Math.log(Math.exp(-mu * t) + Math.exp(-h0) - Math.exp(-mu * t - h0)) / mu;
    double y0 = Math.log(start);
    double published = y0 + mu * a - Math.log(1 + (Math.exp(mu * a) - 1) / Math.exp(0 - y0));
    return Math.abs(new BaranyiRoberts(start, mu, h0).populationAt(t) - Math.exp(published));
  }

  private static double integratorDifference(Check c) {
    DoughFormula formula =
        DoughFormula.builder().hydration(Share.ofPercent(70)).salt(Share.ofPercent(0)).build();
    RiseModel model = RiseModel.of(formula, steady(c.number("celsius")));
    RiseCurve curve = model.run(24);
    double rate = model.parameters().growth().yeastPerHour();
    double work = rate * StarterCondition.RIPE.lagHours() * Unknowns.typical().lagFactor();
    BaranyiRoberts exact = new BaranyiRoberts(formula.prefermentedFlour(), rate, work);
    return IntStream.rangeClosed(0, 240)
        .mapToDouble(i -> Math.abs(curve.yeastAt(i / 10.0) - exact.populationAt(i / 10.0)))
        .max()
        .orElseThrow();
  }

  // gas

  private static double henrySlope(double celsius) {
    double step = 0.01;
    double kelvin = celsius + 273.15;
    double difference =
        Math.log(CarbonDioxide.henryMolPerM3Pa(celsius + step))
            - Math.log(CarbonDioxide.henryMolPerM3Pa(celsius - step));
    return difference / (1 / (kelvin + step) - 1 / (kelvin - step));
  }

  private static double henryTableDifference() {
    Path file = Path.of(System.getProperty("doughtide.testdata")).resolve("co2-in-water.csv");
    try {
      return Files.readAllLines(file).stream()
          .filter(line -> !line.startsWith("#"))
          .skip(1)
          .map(line -> line.split(",", -1))
          .mapToDouble(
              f ->
                  CarbonDioxide.henryMolPerM3Pa(Double.parseDouble(f[0])) / Double.parseDouble(f[2])
                      - 1)
          .map(Math::abs)
          .max()
          .orElseThrow();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static double molarVolume(double celsius) {
    double dry = ONE_ATMOSPHERE - CarbonDioxide.waterVapourPa(celsius);
    return GasCells.litresPerMol(celsius, ONE_ATMOSPHERE) * dry / ONE_ATMOSPHERE;
  }

  private static double saltingOut(Check c) {
    double water = c.number("hydration") / 100 + FlourClass.WHITE.flour().composition().moisture();
    return 100 * (1 - CarbonDioxide.saltFactor(c.number("salt") / 100 / water));
  }

  private enum Event {
    TARGET,
    PEAK
  }

  private static double held(Check c, Event event) {
    RiseCurve curve = run(c, 48);
    double at =
        event == Event.PEAK
            ? curve.hoursToPeak().orElseThrow()
            : curve.hoursToRise(formula(c).flour().targetRise()).orElseThrow();
    GasBalance gas = curve.gasAt(at);
    return 100 * (gas.madeMol() - gas.lostMol()) / gas.madeMol();
  }

  private static double specificVolume(Check c) {
    RiseCurve curve = run(c, 48);
    double gasShare = curve.gasShareAt(curve.hoursToPeak().orElseThrow());
    double density = DoughProperties.of(formula(c)).densityKgPerM3(c.number("celsius"));
    return 1000 / density / (1 - gasShare);
  }

  /** Coefficient of determination of A·exp(−exp(µe/A·(λ − t) + 1)), Zwietering et al. 1990. */
  private static double gompertz(RiseCurve curve) {
    double end = curve.hoursToPeak().orElseThrow();
    double[] hours = IntStream.rangeClosed(0, 100).mapToDouble(i -> end * i / 100).toArray();
    double[] rises = Arrays.stream(hours).map(t -> curve.riseAt(t).fraction()).toArray();
    double[] residuals =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(new double[] {rises[100], rises[100] / end * 2, end / 4})
                    .target(rises)
                    .model(gompertzModel(hours))
                    .maxEvaluations(2000)
                    .maxIterations(2000)
                    .build())
            .getResiduals()
            .toArray();
    double mean = Arrays.stream(rises).average().orElseThrow();
    double all = Arrays.stream(rises).map(r -> (r - mean) * (r - mean)).sum();
    return 1 - Arrays.stream(residuals).map(r -> r * r).sum() / all;
  }

  private static MultivariateJacobianFunction gompertzModel(double[] hours) {
    return vector -> {
      double[] p = vector.toArray();
      double[] values = gompertzAt(hours, p);
      double[][] jacobian = new double[hours.length][p.length];
      for (int j = 0; j < p.length; j++) {
        double[] moved = p.clone();
        moved[j] += 1e-7;
        double[] other = gompertzAt(hours, moved);
        for (int i = 0; i < hours.length; i++) {
          jacobian[i][j] = (other[i] - values[i]) / 1e-7;
        }
      }
      return new Pair<>(new ArrayRealVector(values), new Array2DRowRealMatrix(jacobian));
    };
  }

  private static double[] gompertzAt(double[] hours, double[] p) {
    return Arrays.stream(hours)
        .map(t -> p[0] * Math.exp(-Math.exp(p[1] * Math.E / p[0] * (p[2] - t) + 1)))
        .toArray();
  }

  // doughs

  private static DoughTemperature steady(double celsius) {
    return DoughTemperature.steady(Temperature.ofCelsius(celsius));
  }

  private static DoughTemperature temperature(Check c) {
    if (!c.has("then")) {
      return steady(c.number("celsius"));
    }
    String[] then = c.text("then").split(":");
    return DoughTemperature.following(
        TemperatureTrace.steps(
            List.of(
                new TemperatureTrace.Step(0, Temperature.ofCelsius(c.number("celsius"))),
                new TemperatureTrace.Step(
                    Double.parseDouble(then[0]),
                    Temperature.ofCelsius(Double.parseDouble(then[1]))))));
  }

  private static DoughFormula formula(Check c) {
    return DoughFormula.builder()
        .flour(flour(c.has("flour") ? c.text("flour") : "white:100"))
        .starterShare(StarterShare.prefermented(Share.ofPercent(c.number("prefermented"))))
        .hydration(Share.ofPercent(c.number("hydration")))
        .salt(Share.ofPercent(c.number("salt", 2)))
        .build();
  }

  private static Flour flour(String text) {
    List<Flour.Part> parts = new ArrayList<>();
    for (String part : text.split(";")) {
      String[] pair = part.split(":");
      parts.add(
          new Flour.Part(
              FlourClass.named(pair[0]).flour(), Share.ofPercent(Double.parseDouble(pair[1]))));
    }
    return Flour.mix(parts);
  }

  private static RiseCurve run(Check c, double hours) {
    return RiseModel.of(formula(c), temperature(c)).run(hours);
  }

  private static TimeWindow hoursToRise(Check c, double celsius) {
    return RiseForecaster.standard()
        .forecast(formula(c), steady(celsius))
        .hoursToRise(Rise.ofPercent(c.number("rise")));
  }

  private static TimeWindow hoursToTarget(Check c) {
    return RiseForecaster.standard()
        .forecast(formula(c), temperature(c))
        .hoursToRise(formula(c).flour().targetRise());
  }

  private static double likely(Check c, double celsius) {
    return hoursToRise(c, celsius).likely().orElse(Double.POSITIVE_INFINITY);
  }

  private static double percentPerDegree(Check c) {
    double cool = likely(c, c.number("celsius"));
    double warm = likely(c, c.number("against"));
    return 100 * (cool - warm) / cool / (c.number("against") - c.number("celsius"));
  }

  private static double halvingDegrees(Check c) {
    double ratio = likely(c, c.number("celsius")) / likely(c, c.number("against"));
    return (c.number("against") - c.number("celsius")) * Math.log(2) / Math.log(ratio);
  }

  private static double outsideWarnings(Check c) {
    return RiseForecaster.standard().forecast(formula(c), temperature(c)).warnings().stream()
        .filter(warning -> warning.kind() == Warning.Kind.OUTSIDE_GROWTH)
        .count();
  }

  // starters

  private static DoughFormula feed(Check c, String parts) {
    String[] p = parts.split(":");
    return DoughFormula.feed(
        Starter.ripe(Share.ofPercent(c.number("starterHydration"))),
        Double.parseDouble(p[0]),
        Double.parseDouble(p[1]),
        Double.parseDouble(p[2]),
        FlourClass.WHITE.flour());
  }

  private static RiseForecast forecastOfFeed(DoughFormula feed, Check c) {
    return RiseForecaster.standard().forecast(feed, temperature(c));
  }

  private static double likelyRipe(Check c, DoughFormula feed) {
    return forecastOfFeed(feed, c).hoursToRipe().likely().orElseThrow();
  }

  private static double ripeRatioOfCondition(Check c) {
    DoughFormula ripe = feed(c, c.text("parts"));
    StarterCondition condition = StarterCondition.valueOf(c.text("condition"));
    DoughFormula other = ripe.toBuilder().starter(ripe.starter().in(condition)).build();
    return likelyRipe(c, other) / likelyRipe(c, ripe);
  }

  private static double ripeRatioOfSalt(Check c) {
    DoughFormula plain = feed(c, c.text("parts"));
    DoughFormula salted = plain.toBuilder().salt(Share.ofPercent(c.number("salt"))).build();
    return likelyRipe(c, salted) / likelyRipe(c, plain);
  }

  private static RiseForecast whiteOrBrown(Check c) {
    Flour flour = FlourClass.named(c.text("fed").replace('_', ' ')).flour();
    String[] p = c.text("parts").split(":");
    DoughFormula feed =
        DoughFormula.feed(
            new Starter(Share.ofPercent(100), flour, StarterCondition.RIPE),
            Double.parseDouble(p[0]),
            Double.parseDouble(p[1]),
            Double.parseDouble(p[2]),
            flour);
    return RiseForecaster.standard().forecast(feed, temperature(c), 48);
  }

  private static Measured heightTimes(Check c) {
    Distribution percent = whiteOrBrown(c).greatestPercent();
    double[] times = new double[3];
    for (int i = 0; i < 3; i++) {
      times[i] = 1 + percent.quantile(0.1 + 0.4 * i).orElseThrow() / 100;
    }
    return new Measured(times[0], times[1], times[2]);
  }

  private static double peakOverDoubled(Check c) {
    RiseForecast forecast = whiteOrBrown(c);
    return forecast.beginsToFall().window().likely().orElseThrow()
        / forecast.hoursToRise(Rise.ofPercent(100)).likely().orElseThrow();
  }

  private static double likelySpecificVolume(Check c) {
    Distribution percent =
        RiseForecaster.standard().forecast(formula(c), temperature(c), 60).greatestPercent();
    double gasFree = 1000 / DoughProperties.of(formula(c)).densityKgPerM3(c.number("celsius"));
    double start = gasFree / (1 - Unknowns.USUAL_STARTING_AIR); // the seed's gas left out
    return start * (1 + percent.quantile(0.5).orElseThrow() / 100);
  }

  private static double phAtRipe(Check c) {
    RiseCurve curve = RiseModel.of(feed(c, c.text("parts")), temperature(c)).run(48);
    return curve.phAt(curve.hoursToRipe().orElseThrow());
  }
}
