package doughtide.cli.hand;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.options.PageOptions;
import doughtide.core.forecast.Ensemble;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.Warning;
import doughtide.core.learning.JarError;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.report.phone.PhoneDough;
import doughtide.report.phone.PhonePage;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.stream.Stream;

/** A dough in hand as a page for the telephone, which goes on with its readings. */
public final class HandPage {

  private final DoughInHand dough;
  private final SortedSet<Rise> rises;

  private HandPage(DoughInHand dough, SortedSet<Rise> rises) {
    this.dough = dough;
    this.rises = rises;
  }

  /**
   * Writes the page: the members before any reading, the readings that weight them, and the answer
   * of the program with these readings.
   *
   * @param rises whose times are shown, with 50 %
   * @param title of the page instead of the name of the dough
   * @throws InputException if it is not known when the dough was mixed
   */
  public static void write(
      DoughInHand dough, SortedSet<Rise> rises, Optional<String> title, PageOptions page) {
    PhoneDough shown = new HandPage(dough, rises).shown(title);
    page.write(words -> PhonePage.of(shown, words).html());
  }

  private PhoneDough shown(Optional<String> title) {
    ZonedDateTime mixedAt = mixedAt();
    RiseForecast before = dough.live().expected();
    return new PhoneDough(
        title.orElse(dough.file().bake().name()),
        mixedAt,
        before,
        dough.starter().map(LearnedStarter::jar).orElseGet(JarError::standard),
        dough.asked(rises),
        List.copyOf(rises),
        dough.loaf().map(loaf -> ofMembers(loaf, before)),
        Optional.empty(),
        Optional.of(told()),
        List.of(),
        warnings());
  }

  private ZonedDateTime mixedAt() {
    return dough
        .clock()
        .map(ClockTimes::start)
        .orElseThrow(
            () ->
                new InputException(
                    "--page shows clock times: write a line 'mixed at: 09:30' at the top of the"
                        + " dough's file"));
  }

  /** The loaf, with the hours of the members that the page weights. */
  private PhoneDough.Loaf ofMembers(PlannedLoaf loaf, RiseForecast before) {
    int members = Math.min(before.ensemble().size(), Ensemble.USUAL_SIZE);
    double[] ends = dough.live().shapeHoursOfFirst(members);
    return new PhoneDough.Loaf(loaf.proof(), loaf.shape().withEndsOfMembers(ends));
  }

  private PhoneDough.Told told() {
    return new PhoneDough.Told(
        dough.file().bake().readings(),
        dough.forecast(),
        dough.loaf().map(PlannedLoaf::shape),
        dough.expected(rises),
        dough.nextLookHours(dough.awaited(rises)));
  }

  private List<Warning> warnings() {
    return Stream.concat(
            dough.forecast().warnings().stream(),
            dough.loaf().stream().flatMap(loaf -> loaf.shape().warnings().stream()))
        .distinct()
        .toList();
  }
}
