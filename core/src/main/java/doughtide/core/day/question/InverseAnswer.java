package doughtide.core.day.question;

import doughtide.core.Internal;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.ShapeForecast;
import java.util.Optional;

/**
 * The answer to a question turned round: with which starter share, or at which dough temperature,
 * bulk fermentation ends after a wanted time.
 *
 * @param half with it half of the doughs are there by the wanted time: the likely answer
 * @param oneInTen with it one dough in ten is; empty if none is with any value
 * @param nineInTen with it nine doughs in ten are; empty if so many are not with any value
 * @param forecast the dough with {@code half}
 * @param rise that the sample jar shows at the end of bulk fermentation then
 */
@Internal
public record InverseAnswer(
    Choice half,
    Optional<Choice> oneInTen,
    Optional<Choice> nineInTen,
    RiseForecast forecast,
    ShapeForecast.RiseRange rise) {

  /** Whether the wanted time can be had. */
  @Internal
  public enum Reach {
    /** It can. */
    ON_TIME,
    /** Even at the quick end it takes longer. */
    NOT_SO_SOON,
    /** Even at the slow end it is done sooner. */
    NOT_SO_LATE
  }

  /**
   * A share or a temperature.
   *
   * @param value starter in per cent of the flour added, or °C; the nearest possible where the time
   *     cannot be had
   * @param reach whether the wanted time can be had
   * @param window when bulk fermentation ends with this value, hours since mixing
   */
  @Internal
  public record Choice(double value, Reach reach, TimeWindow window)
      implements java.io.Serializable {}
}
