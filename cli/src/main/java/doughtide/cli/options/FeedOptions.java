package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.TemperatureSteps;
import doughtide.cli.file.FlourFile;
import doughtide.cli.session.Environment;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Share;
import java.util.List;
import java.util.Optional;

/**
 * The options of a feeding.
 *
 * @param feeding starter and feed; where no ratio was given, one part of each with the water that
 *     keeps the starter's hydration
 * @param ratioGiven the ratio as given
 * @param temperature of the jar's contents
 * @param refreshments how many feedings
 * @param amount what is to be used
 * @param keep what is to be kept back
 * @param scale the smallest step that the scale shows
 */
public record FeedOptions(
    Feeding feeding,
    Optional<FeedRatio> ratioGiven,
    TemperatureSteps temperature,
    int refreshments,
    Optional<Mass> amount,
    Optional<Mass> keep,
    Mass scale) {

  public static final String RATIO = "ratio";
  private static final String STARTER_TEMP = "starter-temp";
  public static final String AMOUNT = "amount";
  private static final String KEEP = "keep";
  private static final String SCALE = "scale";
  private static final String STARTER_HYDRATION = "starter-hydration";
  private static final String STARTER_CONDITION = "starter-condition";
  private static final String STARTER_FLOUR = "starter-flour";
  private static final String FLOUR = "flour";
  private static final String SALT = "salt";
  private static final String REFRESHMENTS = "refreshments";
  private static final String ALTITUDE = "altitude";

  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
            RATIO,
            "PARTS",
            "1:5:5",
            "The feed in parts by mass, in this order: starter kept, flour given, water given."
                + " Without it, --ready-at and --fed-at find the ratio."),
        OptionSpec.value(
            STARTER_TEMP,
            "TEMP",
            "22C",
            "Temperature of what is in the jar, °C or °F. If it changes: 26C,3h:20C is 26 °C for"
                + " three hours after the first feeding, then 20 °C. The room of a kitchen file"
                + " stands in for it."),
        OptionSpec.value(
            AMOUNT, "MASS", "120g", "How much ripe starter is to be used; gives what to weigh."),
        OptionSpec.value(KEEP, "MASS", "20g", "How much to keep back, with --amount.")
            .withDefault("enough for the same feed again"),
        OptionSpec.value(SCALE, "MASS", "1g", "The smallest step your scale shows.")
            .withDefault("1g"),
        OptionSpec.value(
                STARTER_HYDRATION,
                "SHARE",
                "100%",
                "Water over flour in the starter that is fed, 40 to 300%.")
            .withDefault("100%"),
        OptionSpec.value(
                STARTER_CONDITION,
                "WORD",
                "from cold",
                "How the starter is when it is fed: ripe, young, past best or from cold.")
            .withDefault("ripe"),
        OptionSpec.value(
                FLOUR, "FLOUR", "rye", "The flour given: " + FlourClass.names() + ", or a mix.")
            .withDefault("white"),
        FlourFile.option(),
        OptionSpec.value(STARTER_FLOUR, "FLOUR", "rye", "The flour the starter was kept on.")
            .withDefault("as --flour"),
        OptionSpec.value(SALT, "SHARE", "2%", "Salt in per cent of the flour given, 0 to 4%.")
            .withDefault("0%"),
        OptionSpec.value(
                REFRESHMENTS,
                "COUNT",
                "2",
                "How many feeds follow one another, each when the one before is ripe, 1 to 6.")
            .withDefault("1"),
        OptionSpec.value(
                ALTITUDE, "HEIGHT", "1500m", "Height of the kitchen above the sea, m or ft.")
            .withDefault("sea level"));
  }

  public static FeedOptions read(Arguments arguments, Environment environment) {
    arguments.exclusive(FLOUR, FlourFile.OPTION);
    arguments.needs(KEEP, AMOUNT, "120g");
    TemperatureSteps temperature =
        arguments.temperatureSteps(STARTER_TEMP).orElseThrow(() -> arguments.missing(STARTER_TEMP));
    temperature.dough("--" + STARTER_TEMP);
    Optional<FeedRatio> ratio =
        arguments.text(RATIO).map(text -> core(Quantities.feedRatio("--" + RATIO, text)));
    return new FeedOptions(
        feeding(arguments, environment, ratio),
        ratio,
        temperature,
        arguments.count(REFRESHMENTS, 1, FeedingPlanner.MOST_REFRESHMENTS).orElse(1),
        arguments.mass(AMOUNT),
        arguments.mass(KEEP),
        scale(arguments));
  }

  private static Mass scale(Arguments arguments) {
    Mass scale = arguments.mass(SCALE).orElse(Mass.ofGrams(1));
    Checks.inRange("--" + SCALE, scale.grams(), 0.01, 100, "g");
    return scale;
  }

  private static Feeding feeding(
      Arguments arguments, Environment environment, Optional<FeedRatio> ratio) {
    Flour flour =
        FlourFile.read(arguments, environment)
            .map(FlourRecord::toFlour)
            .or(() -> arguments.flour(FLOUR))
            .orElse(FlourClass.WHITE.flour());
    Starter starter =
        new Starter(
            arguments.share(STARTER_HYDRATION).orElse(Share.ofPercent(100)),
            arguments.flour(STARTER_FLOUR).orElse(flour),
            arguments.condition(STARTER_CONDITION).orElse(StarterCondition.RIPE));
    return new Feeding(
        starter,
        ratio.orElseGet(() -> FeedRatio.oneTo(1, starter.hydration())),
        flour,
        arguments.share(SALT).orElse(Share.ofPercent(0)),
        arguments.altitude(ALTITUDE).orElse(Altitude.SEA_LEVEL));
  }

  private static FeedRatio core(Quantities.FeedRatio typed) {
    return new FeedRatio(typed.starter(), typed.flour(), typed.water());
  }
}
