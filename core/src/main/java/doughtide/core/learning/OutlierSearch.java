package doughtide.core.learning;

import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.Unknown;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Fits all bakes, finds those that do not fit the others, and the likeliest reason: the one thing
 * that, if it may be far off in that bake alone, explains its readings best (ratio of the evidence
 * by Laplace's method, the rest held at the joint fit). The worst bake is then fitted with that one
 * thing freed, so that it no longer pulls the others, and the search goes on.
 */
final class OutlierSearch {
  private static final int SIZE = LearningPrior.SIZE;
  private static final double DOUBT = 3; // log of odds of 20 to 1
  private static final double CLOSE = Math.log(5); // odds at which two reasons are told apart
  private static final double BAD_MEAN_SQUARE = 2.5; // about 1 where the noise is as stated
  private static final int LEAST_BAKES = 3; // of two that differ nobody can say which is off
  private static final List<OutlierReason> CAUSES =
      List.of(
          OutlierReason.TEMPERATURE_OFF,
          OutlierReason.STARTER_PAST_RIPE,
          OutlierReason.START_HEIGHT_WRONG);

  private final List<BakeResponse> responses;
  private final List<String> names;
  private final LearningPrior prior;
  private final ReadingNoise noise;
  private final int[] varying;
  private final double[][] deviations;
  private final List<Outlier> outliers = new ArrayList<>();
  private PosteriorFit fit;

  private OutlierSearch(
      List<BakeResponse> responses, List<String> names, LearningPrior prior, ReadingNoise noise) {
    this.responses = responses;
    this.names = names;
    this.prior = prior;
    this.noise = noise;
    this.varying = varying(prior.bakeDeviation());
    this.deviations = new double[responses.size()][];
    Arrays.setAll(deviations, b -> prior.bakeDeviation());
    TwoLevelProblem problem = problem(responses);
    this.fit = PosteriorFit.of(problem, new double[problem.parameters()]);
  }

  private static int[] varying(double[] bakeDeviation) {
    boolean[] possible = new boolean[SIZE];
    for (int i = 0; i < SIZE; i++) {
      possible[i] = bakeDeviation[i] > 0;
      for (OutlierReason cause : CAUSES) {
        possible[i] |= cause.freed(bakeDeviation)[i] > 0;
      }
    }
    return IntStream.range(0, SIZE).filter(i -> possible[i]).toArray();
  }

  static OutlierSearch of(
      List<BakeResponse> responses, List<String> names, LearningPrior prior, ReadingNoise noise) {
    OutlierSearch search = new OutlierSearch(responses, names, prior, noise);
    if (responses.size() >= LEAST_BAKES) {
      search.search();
    } else if (responses.size() == 2) {
      search.compareTwo();
    }
    return search;
  }

  PosteriorFit fit() {
    return fit;
  }

  List<Outlier> outliers() {
    return outliers;
  }

  /** The joint problem with what has been freed so far. */
  TwoLevelProblem problem(List<BakeResponse> all) {
    double[][] root = new double[SIZE][SIZE];
    for (int i = 0; i < SIZE; i++) {
      root[i][i] = prior.bakerDeviation()[i];
    }
    return new TwoLevelProblem(all, prior.mean(), root, deviations, varying, noise);
  }

  private void search() {
    boolean[] freed = new boolean[responses.size()];
    for (int round = 0; round < responses.size() / LEAST_BAKES; round++) {
      Optional<Candidate> worst = worst(freed);
      if (worst.isEmpty()) {
        break;
      }
      freed[worst.get().bake()] = true;
      free(worst.get());
    }
    addUnexplained(freed);
  }

  /** Two bakes that contradict each other are both named, and none is doubted more. */
  private void compareTwo() {
    for (int b = 0; b < responses.size(); b++) {
      Candidate best = best(b);
      if (best.logGain() > DOUBT) {
        outliers.add(outlier(best));
      }
    }
  }

  private record Candidate(
      int bake, OutlierReason cause, double logGain, double[] off, List<OutlierReason> close) {}

  private Optional<Candidate> worst(boolean[] freed) {
    Candidate worst = null;
    for (int b = 0; b < responses.size(); b++) {
      if (freed[b] || !isSuspicious(b)) {
        continue;
      }
      Candidate best = best(b);
      if (best.logGain() > DOUBT && (worst == null || best.logGain() > worst.logGain())) {
        worst = best;
      }
    }
    return Optional.ofNullable(worst);
  }

  /**
   * A cause can release no more than what the bake's own deviations cost under the prior and what
   * its residuals exceed their number by; most bakes need no closer look.
   */
  private boolean isSuspicious(int bake) {
    double cost = 0;
    int offset = problem(responses).offset(bake);
    for (int v = 0; v < varying.length; v++) {
      double score = fit.scores()[offset + v];
      cost += score * score / 2;
    }
    double[] residuals = residuals(bake);
    double excess = -residuals.length / 2.0;
    for (double residual : residuals) {
      excess -= noise.logLikelihood(residual);
    }
    return residuals.length > 0 && cost + Math.max(excess, 0) > DOUBT;
  }

  private double[] residuals(int bake) {
    double[] x = problem(responses).coordinates(fit.scores(), bake);
    return responses.get(bake).residuals(x);
  }

  private Candidate best(int bake) {
    double usual = alone(bake, prior.bakeDeviation()).logEvidence();
    List<Candidate> all = new ArrayList<>();
    for (OutlierReason cause : CAUSES) {
      double[] deviation = cause.freed(prior.bakeDeviation());
      PosteriorFit own = alone(bake, deviation);
      double[] off = new double[SIZE];
      for (int v = 0; v < varying.length; v++) {
        off[varying[v]] = deviation[varying[v]] * own.scores()[SIZE + v];
      }
      all.add(named(bake, cause, own.logEvidence() - usual, off));
    }
    all.sort(Comparator.comparingDouble(Candidate::logGain).reversed());
    Candidate best = all.get(0);
    List<OutlierReason> close =
        all.stream()
            .skip(1)
            .filter(each -> best.logGain() - each.logGain() < CLOSE)
            .map(Candidate::cause)
            .toList();
    return new Candidate(bake, best.cause(), best.logGain(), best.off(), close);
  }

  private static Candidate named(int bake, OutlierReason cause, double logGain, double[] off) {
    boolean livelier =
        cause == OutlierReason.STARTER_PAST_RIPE && off[Unknown.VIGOUR.ordinal()] > 0;
    OutlierReason name = livelier ? OutlierReason.STARTER_LIVELIER : cause;
    return new Candidate(bake, name, logGain, off, List.of());
  }

  /** One bake with the baker held at the joint fit. */
  private PosteriorFit alone(int bake, double[] deviation) {
    double[] mean = prior.mean();
    for (int i = 0; i < SIZE; i++) {
      mean[i] += prior.bakerDeviation()[i] * fit.scores()[i];
    }
    TwoLevelProblem problem =
        new TwoLevelProblem(
            List.of(responses.get(bake)),
            mean,
            new double[SIZE][SIZE],
            new double[][] {deviation},
            varying,
            noise);
    return PosteriorFit.of(problem, new double[problem.parameters()]);
  }

  private void free(Candidate candidate) {
    deviations[candidate.bake()] = candidate.cause().freed(prior.bakeDeviation());
    fit = PosteriorFit.of(problem(responses), fit.scores());
    outliers.add(outlier(candidate));
  }

  private Outlier outlier(Candidate candidate) {
    double[] off = candidate.off();
    double vigour = 100 * Math.exp(off[Unknown.VIGOUR.ordinal()]);
    double amount =
        switch (candidate.cause()) {
          case TEMPERATURE_OFF -> off[Unknown.TEMPERATURE.ordinal()];
          case STARTER_PAST_RIPE, STARTER_LIVELIER -> vigour;
          case START_HEIGHT_WRONG -> 100 * Math.expm1(off[LearningPrior.JAR]);
          case UNEXPLAINED -> 0;
        };
    return new Outlier(
        names.get(candidate.bake()),
        candidate.cause(),
        amount,
        candidate.close(),
        candidate.logGain());
  }

  private void addUnexplained(boolean[] freed) {
    for (int b = 0; b < responses.size(); b++) {
      double[] residuals = residuals(b);
      double square = 0;
      for (double residual : residuals) {
        square += noise.robust(residual) * noise.robust(residual) / residuals.length;
      }
      if (!freed[b] && square > BAD_MEAN_SQUARE) {
        outliers.add(new Outlier(names.get(b), OutlierReason.UNEXPLAINED, 0, List.of(), 0));
      }
    }
  }
}
