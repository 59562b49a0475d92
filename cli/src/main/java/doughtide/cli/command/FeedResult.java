package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.options.FeedOptions;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.RatioAnswer;
import doughtide.core.feeding.RefreshmentPlan;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a page says about feeding.
 *
 * @param options what was asked
 * @param plan the feedings
 * @param answer how the ratio was found, where it was asked for
 * @param nearestCelsius how warm or cool the jar must be where no ratio is ready at the wanted hour
 * @param clock clock times from the first feeding on
 * @param readyAt when it is wanted
 * @param amounts what to weigh at each feeding; empty if no amount was given
 * @param remarks what to know about the times
 */
record FeedResult(
    FeedOptions options,
    RefreshmentPlan plan,
    Optional<RatioAnswer> answer,
    OptionalInt nearestCelsius,
    Optional<ClockTimes> clock,
    Optional<ZonedDateTime> readyAt,
    List<FeedAmounts> amounts,
    List<String> remarks) {

  public static final List<String> CAUTIONS =
      List.of(
          "Leave the lid loose: gas under a closed lid breaks glass.",
          "Mould of any colour, or pink or orange streaks: throw the starter away.",
          "Raw flour and starter are not for tasting.");
}
