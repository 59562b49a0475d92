package doughtide.report;

import doughtide.core.day.BakeDay;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayPlanner;
import doughtide.core.day.SearchControl;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import java.time.ZonedDateTime;
import java.util.List;

/** A planned day of one dough and one of two doughs, invented, each planned once. */
public final class SampleDays {

  public static final List<String> ONE_NAME = List.of("dough");
  public static final List<String> TWO_NAMES = List.of("country loaf of the class", "Fenside rye");

  /** The moment of hour 0. */
  public static final ZonedDateTime ZERO =
      ZonedDateTime.parse("2027-03-13T00:00+00:00[Europe/London]");

  private SampleDays() {}

  /** Planned when first asked for. */
  private static final class One {
    static final DayPlan DAY = plan(1, dough(FlourClass.STRONG_WHITE, 72));
  }

  private static final class Two {
    static final DayPlan DAY =
        plan(2, dough(FlourClass.STRONG_WHITE, 72), dough(FlourClass.WHOLEMEAL_WHEAT, 78));
  }

  public static DayPlan one() {
    return One.DAY;
  }

  public static DayPlan two() {
    return Two.DAY;
  }

  private static BakeDay dough(FlourClass flour, double hydration) {
    return BakeDay.builder()
        .readyAt(36)
        .bench(
            new BenchHours(
                List.of(
                    new BenchInterval(-17, -2),
                    new BenchInterval(7, 22),
                    new BenchInterval(31, 46))))
        .cold(Temperature.ofCelsius(4))
        .dough(
            DoughFormula.builder()
                .flour(flour.flour())
                .hydration(Share.ofPercent(hydration))
                .build())
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND)
        .doughCelsius(List.of(24.0))
        .starterPercents(List.of(20.0))
        .forecaster(RiseForecaster.standard().withMembers(32))
        .plans(1)
        .build();
  }

  private static DayPlan plan(int hands, BakeDay... doughs) {
    return DayPlanner.plan(List.of(doughs), hands, SearchControl.none()).days().get(0);
  }
}
