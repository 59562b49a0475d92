package doughtide.core.kinetics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Stream;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Repeats the least-squares fits behind {@link RateForm}: each curve, divided by its greatest value
 * and times a free scale, against the published rates of testdata/rate-fits.csv. Prints the
 * residuals and holds the constants of the enum against the fit.
 */
class RateFitPublishedTest {
  /** Constants agree with the fit to within this share; the fits are ill-conditioned. */
  private static final double RELATIVE = 1e-2;

  private static final double STEP = 1e-6;
  private static final String HUMILIS = "humilis";
  private static final String CEREVISIAE = "cerevisiae";
  private static final String BACTERIA = "bacteria";

  /**
   * @param group observations that share a free scale, from 0; a negative one means relative to 25
   *     °C, with no scale
   */
  record Observation(String microbe, List<String> forms, double celsius, double rate, int group) {}

  /** One curve of the enum, with how to make it from numbers and a start far from the answer. */
  record Fit(
      String microbe,
      RateForm form,
      double[] constants,
      double[] start,
      Function<double[], RateCurve> maker) {
    @Override
    public String toString() {
      return form + " " + microbe;
    }
  }

  static Stream<Fit> fits() {
    return Arrays.stream(RateForm.values())
        .flatMap(form -> Stream.of(HUMILIS, CEREVISIAE, BACTERIA).map(each -> fit(each, form)))
        .filter(fit -> !fit.toString().equals("CARDINAL " + CEREVISIAE)); // published, not fitted
  }

  private static Fit fit(String microbe, RateForm form) {
    RateCurve curve =
        switch (microbe) {
          case HUMILIS -> form.yeast(YeastKind.HUMILIS);
          case CEREVISIAE -> form.yeast(YeastKind.CEREVISIAE);
          default -> form.bacteria();
        };
    double warmest = microbe.equals(HUMILIS) ? 36 : 41;
    if (curve instanceof SchoolfieldCurve c) {
      return new Fit(
          microbe,
          form,
          new double[] {c.activationKJPerMol(), c.inactivationKJPerMol(), c.halfInactiveCelsius()},
          new double[] {70, 450, warmest - 5},
          p -> new SchoolfieldCurve(p[0], p[1], p[2], 0, 45));
    }
    if (curve instanceof CardinalCurve c) {
      return new Fit(
          microbe,
          form,
          new double[] {c.minimum(), c.optimum(), c.maximum()},
          new double[] {5, warmest - 8, warmest},
          p -> new CardinalCurve(p[0], p[1], p[2], 0, 45));
    }
    if (curve instanceof SquareRootCurve c) {
      return new Fit(
          microbe,
          form,
          new double[] {c.minimum(), c.maximum(), c.steepness()},
          new double[] {4, warmest + 0.5, 0.2},
          p -> new SquareRootCurve(p[0], p[1], p[2], 0, 45));
    }
    if (curve instanceof PowerExponentialCurve c) {
      return new Fit(
          microbe,
          form,
          new double[] {c.power(), c.decayPerCelsius(), c.maximum()},
          new double[] {2.5, 0.3, warmest + 1},
          p -> new PowerExponentialCurve(p[0], p[1], p[2], 0, 45));
    }
    throw new AssertionError("no fit is written for " + curve);
  }

  private static List<Observation> observations(Fit fit) throws IOException {
    Path folder = Path.of(System.getProperty("doughtide.testdata"));
    return Files.readAllLines(folder.resolve("rate-fits.csv")).stream()
        .filter(line -> !line.startsWith("#"))
        .skip(1)
        .map(line -> line.split(",", -1))
        .map(
            f ->
                new Observation(
                    f[0],
                    List.of(f[1].split(" ")),
                    Double.parseDouble(f[2]),
                    Double.parseDouble(f[3]),
                    Integer.parseInt(f[4])))
        .filter(o -> o.microbe().equals(fit.microbe()) && o.forms().contains(fit.form().name()))
        .toList();
  }

  private static double greatest(RateCurve curve) {
    return new BrentOptimizer(1e-10, 1e-12)
        .optimize(
            new MaxEval(500),
            GoalType.MAXIMIZE,
            new UnivariateObjectiveFunction(curve::rate),
            new SearchInterval(20, 38))
        .getValue();
  }

  /** Scale first, then the curve's own numbers. */
  private static double[] values(Fit fit, List<Observation> observations, double[] point) {
    RateCurve curve = fit.maker().apply(Arrays.copyOfRange(point, 1, point.length));
    double greatest = greatest(curve);
    return observations.stream()
        .mapToDouble(o -> curve.rate(o.celsius()) * (o.group() < 0 ? 1 : point[0] / greatest))
        .toArray();
  }

  private static MultivariateJacobianFunction model(Fit fit, List<Observation> observations) {
    return vector -> {
      double[] point = vector.toArray();
      double[] values = values(fit, observations, point);
      double[][] jacobian = new double[values.length][point.length];
      for (int j = 0; j < point.length; j++) {
        double step = STEP * Math.max(1, Math.abs(point[j]));
        double[] above = point.clone();
        double[] below = point.clone();
        above[j] += step;
        below[j] -= step;
        double[] high = values(fit, observations, above);
        double[] low = values(fit, observations, below);
        for (int i = 0; i < values.length; i++) {
          jacobian[i][j] = (high[i] - low[i]) / (2 * step);
        }
      }
      return new Pair<>(new ArrayRealVector(values), new Array2DRowRealMatrix(jacobian));
    };
  }

  private static Optimum refit(Fit fit, List<Observation> observations) {
    double[] start = new double[fit.start().length + 1];
    start[0] = 1;
    System.arraycopy(fit.start(), 0, start, 1, fit.start().length);
    return new LevenbergMarquardtOptimizer()
        .optimize(
            new LeastSquaresBuilder()
                .start(start)
                .target(observations.stream().mapToDouble(Observation::rate).toArray())
                .model(model(fit, observations))
                .maxEvaluations(5000)
                .maxIterations(5000)
                .build());
  }

  @ParameterizedTest
  @MethodSource("fits")
  void constantsOfTheEnumAreTheFit(Fit fit) throws IOException {
    List<Observation> observations = observations(fit);
    assertThat(observations).hasSizeGreaterThan(fit.constants().length + 1);
    Optimum optimum = refit(fit, observations);
    double[] point = optimum.getPoint().toArray();
    double[] fitted = Arrays.copyOfRange(point, 1, point.length);
    double[] residuals = optimum.getResiduals().toArray();
    System.out.printf(
        Locale.ROOT,
        "%s: %s (in use %s), scale %.4f, rms %.4f%n",
        fit,
        rounded(fitted),
        rounded(fit.constants()),
        point[0],
        optimum.getRMS());
    for (int i = 0; i < residuals.length; i++) {
      System.out.printf(
          Locale.ROOT,
          "  %5.1f °C  published %.3f  published minus fitted %+.3f%n",
          observations.get(i).celsius(),
          observations.get(i).rate(),
          residuals[i]);
    }
    for (int i = 0; i < fitted.length; i++) {
      assertThat(fit.constants()[i])
          .as("number %d of %s", i + 1, fit)
          .isCloseTo(fitted[i], within(RELATIVE * Math.abs(fitted[i])));
    }
  }

  private static String rounded(double[] values) {
    return Arrays.stream(values)
        .mapToObj(value -> String.format(Locale.ROOT, "%.4f", value))
        .toList()
        .toString();
  }
}
