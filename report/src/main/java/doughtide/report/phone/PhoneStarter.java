package doughtide.report.phone;

import doughtide.core.Internal;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.FeedingForecast;
import doughtide.core.feeding.RefreshmentPlan;
import doughtide.core.learning.JarError;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A fed starter as a page for the telephone tells it.
 *
 * <pre>{@code
 * RefreshmentPlan plan = FeedingPlanner.with(RiseForecaster.standard()).refresh(feeding, 1, temperature);
 * PhoneStarter starter = PhoneStarter.of(plan, List.of(), fedAt, JarError.standard(), words);
 * String html = PhonePage.of(starter, words).html();
 * }</pre>
 *
 * @param name as printed; anything, it stays text
 * @param fedAt the last feed, hour 0 of the page; its zone is the one of all times
 * @param forecast from the last feed on; hours must be possible
 * @param jar how the jar is misread
 * @param feeds all of them, ascending; the last is at hour 0
 */
@Internal
public record PhoneStarter(
    String name, ZonedDateTime fedAt, FeedingForecast forecast, JarError jar, List<Feed> feeds) {

  /** Copies the list. */
  public PhoneStarter {
    feeds = List.copyOf(feeds);
  }

  /**
   * A feed.
   *
   * @param hours after the last feed, so 0 or negative
   * @param ratio parts of starter, flour and water
   * @param amounts what to weigh, if that is known
   */
  @Internal
  public record Feed(double hours, FeedRatio ratio, Optional<FeedAmounts> amounts) {}

  /**
   * The last of one feeding or more, with the name of its ratio and day.
   *
   * @param plan the feedings
   * @param amounts what to weigh at each, or none
   * @param firstFedAt when the first is fed
   * @param jar how the jar is misread
   * @param words of the language
   */
  public static PhoneStarter of(
      RefreshmentPlan plan,
      List<FeedAmounts> amounts,
      ZonedDateTime firstFedAt,
      JarError jar,
      Words words) {
    double last = plan.last().fromHours();
    ZonedDateTime fedAt = firstFedAt.plusSeconds(Math.round(last * 3600));
    List<Feed> feeds = new ArrayList<>();
    for (RefreshmentPlan.Step step : plan.steps()) {
      Optional<FeedAmounts> weighed =
          amounts.isEmpty() ? Optional.empty() : Optional.of(amounts.get(feeds.size()));
      feeds.add(new Feed(step.fromHours() - last, step.forecast().feeding().ratio(), weighed));
    }
    return new PhoneStarter(name(plan, fedAt, words), fedAt, plan.last().forecast(), jar, feeds);
  }

  private static String name(RefreshmentPlan plan, ZonedDateTime fedAt, Words words) {
    return new PhoneWords(words, true)
        .say(
            "name",
            Map.of(
                "ratio", plan.last().forecast().feeding().ratio().text(),
                "date", words.date(fedAt.toLocalDate())));
  }
}
