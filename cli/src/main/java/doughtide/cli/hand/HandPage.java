package doughtide.cli.hand;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.options.PageOptions;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.learning.JarError;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.report.phone.PhoneDough;
import doughtide.report.phone.PhonePage;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;

/** A dough in hand as a page for the telephone, which goes on with its readings. */
public final class HandPage {

  private static final Rise HALF = Rise.ofPercent(50);

  private HandPage() {}

  /**
   * Writes the page: the members before any reading, and the readings that weight them.
   *
   * @param rises whose times are shown, with 50 %
   * @param title of the page instead of the name of the dough
   * @throws InputException if it is not known when the dough was mixed
   */
  public static void write(
      DoughInHand dough, SortedSet<Rise> rises, Optional<String> title, PageOptions page) {
    ZonedDateTime mixedAt =
        dough
            .clock()
            .map(ClockTimes::start)
            .orElseThrow(
                () ->
                    new InputException(
                        "--page shows clock times: write a line 'mixed at: 09:30' at the top of the"
                            + " dough's file"));
    RiseForecast forecast = dough.live().expected();
    PhoneDough shown =
        new PhoneDough(
            title.orElse(dough.file().bake().name()),
            mixedAt,
            forecast,
            dough.starter().map(LearnedStarter::jar).orElseGet(JarError::standard),
            HALF,
            List.copyOf(rises),
            dough
                .planned()
                .map(DoughInHand.Planned::proof)
                .map(
                    proof ->
                        new PhoneDough.Loaf(proof, ShapeForecaster.of(forecast, proof).forecast())),
            Optional.empty(),
            dough.file().bake().readings(),
            List.of(),
            forecast.warnings());
    page.write(words -> PhonePage.of(shown, words).html());
  }
}
