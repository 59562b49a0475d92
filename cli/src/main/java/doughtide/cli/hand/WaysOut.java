package doughtide.cli.hand;

import doughtide.cli.options.TemperatureOptions;
import doughtide.core.day.question.InverseQuestions;
import doughtide.core.day.question.LeaveOption;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.Proof;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What can be done with a dough that the baker cannot wait for.
 *
 * @param absence from which hour to which
 * @param late whether she is away because the dough runs late, not because she must go
 * @param options the best first
 */
public record WaysOut(Absence absence, boolean late, List<LeaveOption> options) {

  /** Past the greatest height, by which the end of a loaf's best time is told. */
  public static final double RUN_HOURS = 72;

  private static final int SHOWN = 3;
  private static final double LATE_HOURS = 0.5;
  private static final double BACK_BEFORE_OVEN_HOURS = 1;

  /** Copies the list. */
  public WaysOut {
    options = List.copyOf(options);
  }

  /** The best three for an absence. */
  static WaysOut of(DoughInHand dough, Proof proof, Absence absence, boolean late) {
    RiseForecast bulk = dough.forecast(RUN_HOURS);
    List<LeaveOption> all =
        InverseQuestions.leaveAt(
            bulk,
            dough.nowHours(),
            absence.leaveHours(),
            absence.backHours(),
            proof,
            TemperatureOptions.doughMass(dough.arguments()));
    return new WaysOut(absence, late, all.stream().limit(SHOWN).toList());
  }

  /**
   * The absence of a baker whose dough runs late: she goes when she meant to have shaped, and is
   * back in time to shape before the oven is hot.
   *
   * @param meant when the shape point was expected
   * @param likely when it is expected now
   */
  static Optional<Absence> late(
      OptionalDouble meant, OptionalDouble likely, Proof proof, double nowHours) {
    boolean isLate =
        meant.isPresent()
            && likely.orElse(Double.POSITIVE_INFINITY) > meant.getAsDouble() + LATE_HOURS;
    if (!isLate || proof.ovenHour().isEmpty()) {
      return Optional.empty();
    }
    double leave = Math.max(nowHours, meant.getAsDouble() + proof.restHours());
    double back = proof.ovenHour().getAsDouble() - proof.restHours() - BACK_BEFORE_OVEN_HOURS;
    return back > leave ? Optional.of(new Absence(leave, back)) : Optional.empty();
  }
}
