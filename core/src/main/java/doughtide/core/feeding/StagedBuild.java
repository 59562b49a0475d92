package doughtide.core.feeding;

import doughtide.core.Internal;
import doughtide.core.dough.Ingredients;
import doughtide.core.dough.OverallFormula;
import doughtide.core.dough.Starter;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A starter that is built up in stages, each from all that the one before has made.
 *
 * <pre>{@code
 * BuildStage levain = new BuildStage(Optional.of("levain"), new FeedRatio(1, 4, 4),
 *     OptionalDouble.empty(), flour, Temperature.ofCelsius(26), OptionalDouble.empty());
 * StagedBuild build = new StagedBuild(Starter.ripe(), List.of(levain), Altitude.SEA_LEVEL);
 * double flourGrams = build.amounts(Mass.ofGrams(300)).get(0).flourGrams();
 * }</pre>
 *
 * @param seed the starter that the first stage takes
 * @param stages 1 to 6, in order
 * @param altitude height of the kitchen
 */
@Internal
public record StagedBuild(Starter seed, List<BuildStage> stages, Altitude altitude)
    implements Serializable {

  /** Most stages of one build. */
  public static final int MOST_STAGES = 6;

  /**
   * @throws doughtide.core.quantity.InputException if there is no stage or more than six, or one
   *     cannot be fed so
   */
  public StagedBuild {
    Checks.given("altitude", altitude);
    stages = List.copyOf(stages);
    Checks.inRange("number of stages", stages.size(), 1, MOST_STAGES, "");
    feedings(seed, stages, altitude);
  }

  /** What is fed in each stage. */
  public List<Feeding> feedings() {
    return feedings(seed, stages, altitude);
  }

  private static List<Feeding> feedings(Starter seed, List<BuildStage> stages, Altitude altitude) {
    List<Feeding> feedings = new ArrayList<>();
    Starter starter = seed;
    for (BuildStage stage : stages) {
      Feeding feeding =
          new Feeding(starter, ratio(stage, starter), stage.flour(), Share.ofPercent(0), altitude);
      feedings.add(feeding);
      starter = feeding.ripened();
    }
    return List.copyOf(feedings);
  }

  private static FeedRatio ratio(BuildStage stage, Starter starter) {
    FeedRatio given = stage.ratio();
    if (stage.doughYield().isEmpty()) {
      return given;
    }
    double old = given.starter() / (1 + starter.hydration().fraction());
    double wanted = (stage.doughYield().getAsDouble() / 100 - 1) * (old + given.flour());
    double water = wanted - old * starter.hydration().fraction();
    return new FeedRatio(given.starter(), given.flour(), water);
  }

  /** The starter it makes. */
  public Starter ripened() {
    List<Feeding> feedings = feedings();
    return feedings.get(feedings.size() - 1).ripened();
  }

  /**
   * What to weigh in each stage; every stage makes just what the next one takes.
   *
   * @param use what the last one is to make
   */
  public List<FeedAmounts> amounts(Mass use) {
    List<Feeding> feedings = feedings();
    List<FeedAmounts> amounts = new ArrayList<>();
    double wanted = use.grams();
    for (int i = feedings.size() - 1; i >= 0; i--) {
      FeedAmounts each = feedings.get(i).making(wanted, 0);
      amounts.add(0, each);
      wanted = each.starterGrams();
    }
    return List.copyOf(amounts);
  }

  /**
   * All stages and a dough made with them, as one formula: flour and water of the seed, of each
   * stage, and what is added to the dough.
   *
   * @param dough what is weighed for the dough, its starter made in these stages
   */
  public OverallFormula with(Ingredients dough) {
    List<FeedAmounts> amounts = amounts(Mass.ofGrams(dough.starterGrams()));
    double seedGrams = amounts.get(0).starterGrams();
    double seedFlour = seedGrams / (1 + seed.hydration().fraction());
    List<OverallFormula.Stage> all = new ArrayList<>();
    all.add(stage("seed", seedFlour, seedGrams - seedFlour, 0));
    IntStream.range(0, stages.size())
        .forEach(
            i ->
                all.add(
                    stage(
                        stages.get(i).name().orElse("stage " + (i + 1)),
                        amounts.get(i).flourGrams(),
                        amounts.get(i).waterGrams(),
                        0)));
    all.add(stage("dough", dough.flourGrams(), dough.waterGrams(), dough.saltGrams()));
    return new OverallFormula(all);
  }

  private static OverallFormula.Stage stage(
      String name, double flourGrams, double waterGrams, double saltGrams) {
    List<OverallFormula.Item> items = new ArrayList<>();
    items.add(OverallFormula.Item.flour(flourGrams));
    if (waterGrams > 0) {
      items.add(OverallFormula.Item.water(waterGrams));
    }
    if (saltGrams > 0) {
      items.add(OverallFormula.Item.salt(saltGrams));
    }
    return new OverallFormula.Stage(name, items);
  }
}
