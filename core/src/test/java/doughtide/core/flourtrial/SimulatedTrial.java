package doughtide.core.flourtrial;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Grades drawn from a flour whose limit is known. */
record SimulatedTrial(double limit, double[] cuts, double blur) {
  static SimulatedTrial random(Random random, AbsorptionPrior prior) {
    double limit = prior.limitPercent() + prior.sdPoints() * random.nextGaussian();
    double[] cuts = new double[4];
    cuts[3] = limit;
    for (int k = 2; k >= 0; k--) {
      cuts[k] = cuts[k + 1] - 5 * Math.exp(0.5 * random.nextGaussian());
    }
    return new SimulatedTrial(limit, cuts, Math.exp(0.5 * random.nextGaussian()));
  }

  List<GradedBowl> bowls(
      Random random,
      String trial,
      String person,
      double shift,
      double from,
      double step,
      int count) {
    List<GradedBowl> bowls = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double hydration = from + i * step;
      bowls.add(new GradedBowl(trial, person, hydration, grade(random, hydration - shift)));
    }
    return bowls;
  }

  private Grade grade(Random random, double hydration) {
    double u = random.nextDouble();
    double felt = hydration + blur * Math.log(u / (1 - u));
    int grade = 0;
    while (grade < 4 && felt > cuts[grade]) {
      grade++;
    }
    return Grade.values()[grade];
  }
}
