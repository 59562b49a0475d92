package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.quantity.Share;
import java.util.List;
import org.junit.jupiter.api.Test;

/** At the bench from 6 to 8 and from 18 to 22, in a room of 21 °C; mixed at 31:00 or so. */
class FeedSearchTest {
  private static final FeedRatio EQUAL = FeedRatio.oneTo(1, Share.ofPercent(100));
  private static final BakeDay DAY =
      BakeDay.builder()
          .readyAt(60)
          .bench(new BenchHours(BenchHoursTest.intervals(6, 8, 18, 22)))
          .starterPercents(List.of(20.0))
          .doughCelsius(List.of(24.0))
          .build();
  private static final DayModel MODEL = new DayModel(DAY);

  private static FeedSearch search(BakeDay day) {
    return new FeedSearch(MODEL, day);
  }

  @Test
  void theStarterIsFedWhenSomebodyIsThereAndIsRipeWithMostRoom() {
    FeedSearch search = search(DAY);
    FeedChoice best = search.best(31).orElseThrow();

    assertThat(best.mixHour()).isEqualTo(31);
    assertThat(DAY.bench().contains(best.feedHour(), best.feedHour() + HandsOnTime.FEED_HOURS))
        .isTrue();
    assertThat(search.isRipe(best)).isTrue();
    for (double hour = 18; hour <= 21.5; hour += 0.5) {
      for (double parts : new double[] {1, 2, 5, 10, 20}) {
        FeedChoice other = search.at(hour, 31, FeedRatio.oneTo(parts, Share.ofPercent(100)));
        assertThat(other.slackHours()).isLessThanOrEqualTo(best.slackHours());
      }
    }
    assertThat(search.at(18.5, 31, best.ratio()).ageHours()).isEqualTo(12.5);
  }

  /** Two and a half hours before mixing at the latest, a day and two hours at the soonest. */
  @Test
  void feedingsTooLateOrTooSoonAreNone() {
    assertThat(search(DAY).best(7)).isEmpty();
    assertThat(search(DAY).best(49)).isEmpty();
    assertThat(search(DAY).best(38).orElseThrow().feedHour()).isBetween(18.0, 22.0);
    assertThat(search(DAY).best(24).orElseThrow().feedHour()).isLessThanOrEqualTo(21.5);
  }

  @Test
  void aFeedingForAnotherDoughServesWhereItIsWellRipe() {
    FeedSearch search = search(DAY);
    FeedChoice best = search.best(31).orElseThrow();

    assertThat(search.sharedWith(31, List.of(best))).contains(best);
    assertThat(search.sharedWith(best.feedHour() + best.ripeHours() + 0.2, List.of(best)))
        .isEmpty();
    assertThat(search.sharedWith(best.feedHour() + best.fallingHours() + 1, List.of(best)))
        .isEmpty();
    assertThat(search.sharedWith(31, List.of())).isEmpty();
  }

  @Test
  void aStarterFromTheColdIsThereWheneverItIsWanted() {
    FeedSearch cold = search(DAY.toBuilder().starterInCold(48).build());
    FeedChoice choice = cold.best(31).orElseThrow();

    assertThat(choice.ageHours()).isEqualTo(48);
    assertThat(choice.slackHours()).isEqualTo(48);
    assertThat(cold.at(20, 31, EQUAL)).isEqualTo(choice);
  }

  /** What is fed is fed: it is used an hour and a half before it is ripe, and not sooner. */
  @Test
  void aStarterThatIsFedNeedNotBeJustRipe() {
    FeedSearch fed = search(DAY.toBuilder().fed(20, EQUAL).build());
    double ripe = search(DAY).at(20, 31, EQUAL).ripeHours();

    assertThat(fed.best(20 + ripe - 1.4).orElseThrow().feedHour()).isEqualTo(20);
    assertThat(fed.best(20 + ripe - 1.6)).isEmpty();
    assertThat(fed.at(5, 20 + ripe, FeedRatio.oneTo(9, Share.ofPercent(100))).slackHours())
        .isCloseTo(0, within(1e-9));
    assertThat(search(DAY).isRipe(new FeedChoice(20, 24, EQUAL, 4, 7))).isFalse();
    assertThat(search(DAY).isRipe(new FeedChoice(20, 24.1, EQUAL, 4, 7))).isTrue();
  }
}
