package doughtide.core.day.question;

import doughtide.core.Internal;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.SentRecord;
import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * One way out when the baker must leave during bulk fermentation. Hours count from mixing.
 *
 * @param kind what is done
 * @param tubIntoColdHours when the tub goes into the cold, if it does
 * @param shapedHours when the loaves are in their baskets
 * @param riseWhenShaped rise of the dough when bulk fermentation ends, per cent
 * @param ovenHours when they go into the oven
 * @param riseAtBake rise at the oven, per cent
 * @param bakeFrom when they become good to bake
 * @param bakeUntil until when they are
 * @param goodShare share of doughs that come out right at the oven hour, 0…1
 */
@Internal
public record LeaveOption(
    Kind kind,
    OptionalDouble tubIntoColdHours,
    double shapedHours,
    ShapeForecast.RiseRange riseWhenShaped,
    double ovenHours,
    ShapeForecast.RiseRange riseAtBake,
    TimeWindow bakeFrom,
    TimeWindow bakeUntil,
    double goodShare)
    implements Serializable {
  /** What is done. */
  @Internal
  public enum Kind {
    /** Shape at once. */
    SHAPE_NOW,
    /** Shape when the dough is at its shape point, which comes before leaving. */
    SHAPE_AT_POINT,
    /** Wait as long as possible and shape just before leaving. */
    SHAPE_BEFORE_LEAVING,
    /** Leave the dough where it is and shape when back. */
    SHAPE_WHEN_BACK,
    /** Leave the dough where it is; its shape point comes some time after coming back. */
    SHAPE_AFTER_BACK,
    /** The tub waits in the cold and is shaped, cold, when back. */
    TUB_IN_COLD,
    /** The tub stays in the cold until its shape point, some time after coming back. */
    TUB_IN_COLD_LONGER
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
