package doughtide.cli.hand;

import doughtide.cli.args.Speech;
import doughtide.cli.args.Words;
import doughtide.cli.options.TemperatureOptions;
import doughtide.core.day.question.InverseQuestions;
import doughtide.core.day.question.LeaveOption;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.Mass;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a dough is likely like whose shape point has long passed, and what helps: by what the model
 * says of the dough now, and of the loaf if it is shaped now.
 */
final class LongPast {

  private static final double LONG_HOURS = 1; // starting value
  private static final double HALF = 0.5;
  private static final double SOON_HOURS = 0.25;

  private final Proof plan;
  private final RiseForecast bulk;
  private final double now;
  private final Mass mass;
  private final Moments moments;
  private final Speech speech;

  /**
   * @param bulk with its readings, told for long enough
   * @param now hours since mixing
   * @param mass of all the dough
   */
  private LongPast(
      Proof plan, RiseForecast bulk, double now, Mass mass, Moments moments, Speech speech) {
    this.plan = plan;
    this.bulk = bulk;
    this.now = now;
    this.mass = mass;
    this.moments = moments;
    this.speech = speech;
  }

  /** Whether so long after its shape point it is not enough to shape the dough. */
  static boolean isLong(double shapeHours, double nowHours) {
    return nowHours > shapeHours + LONG_HOURS;
  }

  /**
   * What to do, and below it how long ago it was likely ready and what it has risen since.
   *
   * @param shapeHours hours since mixing when it was likely ready
   */
  static String sentences(
      DoughInHand dough, Proof plan, double shapeHours, Moments moments, Speech speech) {
    Mass mass = TemperatureOptions.doughMass(dough.arguments());
    double now = Math.min(dough.nowHours(), WaysOut.RUN_HOURS - plan.restHours());
    RiseForecast bulk = dough.forecast(WaysOut.RUN_HOURS);
    LongPast past = new LongPast(plan, bulk, now, mass, moments, speech);
    Map<String, String> values =
        Map.of(
            "hours", Words.about(dough.nowHours() - shapeHours),
            "time", moments.of(shapeHours),
            "rise", LoafSections.whole(bulk.likelyPercentAt(now)));
    return past.advice() + "\n" + speech.say("past.ready", values);
  }

  /** What to do with a dough of which no loaf is planned, if it is likely past its best. */
  static Optional<String> pastBest(DoughInHand dough, Speech speech) {
    double now = Math.min(dough.nowHours(), WaysOut.RUN_HOURS);
    return pastBest(dough.forecast(WaysOut.RUN_HOURS), now, speech);
  }

  private static Optional<String> pastBest(RiseForecast bulk, double now, Speech speech) {
    double share = bulk.pastBest().probabilityBy(now);
    return share < HALF
        ? Optional.empty()
        : Optional.of(
            speech.say("past.dough", Map.of("doughs", Long.toString(Math.round(10 * share)))));
  }

  private String advice() {
    return pastBest(bulk, now, speech).orElseGet(this::ofShapedNow);
  }

  private String ofShapedNow() {
    return InverseQuestions.leaveAt(bulk, now, now, now, plan, mass).stream()
        .filter(each -> each.kind() == LeaveOption.Kind.SHAPE_NOW)
        .findFirst()
        .map(this::advice)
        .orElseGet(() -> speech.say("past.otherOven"));
  }

  private String advice(LeaveOption shaped) {
    OptionalDouble until = shaped.bakeUntil().likely();
    double last = until.orElse(Double.POSITIVE_INFINITY);
    String oven = moments.of(shaped.ovenHours());
    if (last >= shaped.ovenHours()) {
      String rise = LoafSections.likely(shaped.riseAtBake());
      return speech.say("past.good", Map.of("oven", oven, "rise", rise));
    }
    return last > shaped.shapedHours() + SOON_HOURS
        ? speech.say("past.sooner", Map.of("until", moments.of(until), "oven", oven))
        : speech.say("past.atOnce");
  }
}
