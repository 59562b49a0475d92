package doughtide.cli.hand;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Speech;
import doughtide.core.day.question.LeaveOption;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.ShapeForecast;
import doughtide.report.words.DayWords;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The ways out when the baker must leave, the best first, as an answer. */
public final class LeaveSections {

  private static final int VERSION = 2;
  private static final double NONE = 0.05; // fewer doughs than one in twenty are none

  private final List<LeaveOption> ways;
  private final ClockTimes clock;
  private final Speech speech;

  private LeaveSections(List<LeaveOption> ways, Timeline timeline) {
    this.ways = ways;
    this.clock = timeline.clock().orElseThrow();
    this.speech = timeline.speech();
  }

  /**
   * The answer.
   *
   * @param about the dough, in sentences
   * @param ways the best first, not none
   * @param clock hours since mixing as clock times
   * @param now hours since mixing
   */
  public static Answer of(
      List<String> about, List<LeaveOption> ways, ClockTimes clock, double now) {
    Timeline timeline = Timeline.sinceMixing(Optional.of(clock));
    LeaveSections sections = new LeaveSections(ways, timeline);
    Section.Builder body = Section.loose(timeline);
    body.at("now", "", now, clock);
    sections.add(body);
    Section.Builder understood = body.section("", "Understood");
    understood.say("Mixed", clock.startInWords()).say("Now", clock.at(now));
    about.forEach(each -> understood.say("Dough", each));
    body.cautions(List.of(Cautions.OVEN));
    return Answer.of("leave", VERSION, sections.headline(), body);
  }

  /** Some ways out, to be added to an answer about more, whose hours have a clock. */
  static LeaveSections among(List<LeaveOption> ways, Timeline timeline) {
    return new LeaveSections(ways, timeline);
  }

  /** Adds the ways out. */
  void add(Section.Builder body) {
    Listing.Builder options = body.listing("options", "");
    for (int i = 0; i < ways.size(); i++) {
      data(options.row(), ways.get(i));
      page(body.section("", which(i, does(ways.get(i)))), ways.get(i));
    }
  }

  private boolean anyRight() {
    return ways.get(0).goodShare() >= NONE;
  }

  /** The best of them in a sentence. */
  String headline() {
    LeaveOption best = ways.get(0);
    return anyRight()
        ? speech.say(
            "away.bestOf",
            Map.of(
                "does", does(best),
                "time", clock.at(best.ovenHours()),
                "right", right(best)))
        : speech.say("away.noneRight");
  }

  private String right(LeaveOption way) {
    long right = (long) Math.floor(way.goodShare() * 10 + 1e-9);
    return right == 0 ? speech.say("away.right.none") : speech.counted("away.right", right);
  }

  /** How many doughs of ten do something. */
  public static String ofTen(long doughs, String does, String allDo) {
    return doughs == 0
        ? "none of 10 doughs " + does
        : doughs + (doughs == 1 ? " dough in 10 " + does : " doughs in 10 " + allDo);
  }

  private String which(int i, String does) {
    String key = i > 0 ? "away.or" : anyRight() ? "away.best" : "away.first";
    return speech.say(key, Map.of("does", does));
  }

  private void data(Section.Builder row, LeaveOption way) {
    row.word("kind", "", way.kind(), "");
    if (way.tubIntoColdHours().isPresent()) {
      row.at("tubIntoColdAt", "", way.tubIntoColdHours(), clock);
    }
    row.at("shapedAt", "", way.shapedHours(), clock)
        .number("riseWhenShapedPercent", "", way.riseWhenShaped().likely(), Unit.PERCENT)
        .quantity("riseWhenShapedPercent", "", range(way.riseWhenShaped()))
        .at("ovenAt", "", way.ovenHours(), clock)
        .number("riseAtBakePercent", "", way.riseAtBake().likely(), Unit.PERCENT)
        .quantity("riseAtBakePercent", "", range(way.riseAtBake()))
        .window("bakeFrom", "", way.bakeFrom())
        .window("bakeUntil", "", way.bakeUntil())
        .number("goodShare", "", way.goodShare(), Unit.SHARE);
  }

  private void page(Section.Builder to, LeaveOption way) {
    String risen = range(way.riseWhenShaped()).text(speech);
    Map<String, String> oven =
        Map.of(
            "time", clock.at(way.ovenHours()),
            "rise", range(way.riseAtBake()).text(speech),
            "right", right(way));
    to.say("  " + speech.say("away.risen", Map.of("rise", risen)), 2)
        .say("  " + speech.say("away.oven", oven), 2)
        .say("  " + bestTime(way), 2);
  }

  private String does(LeaveOption way) {
    StringBuilder words = new StringBuilder(new DayWords(speech.words()).leave(way.kind()));
    if (way.tubIntoColdHours().isPresent()) {
      String at = clock.at(way.tubIntoColdHours().getAsDouble());
      words.append(", ").append(speech.say("away.intoCold", Map.of("time", at)));
    }
    boolean byJar =
        way.kind() == LeaveOption.Kind.SHAPE_AT_POINT
            || way.kind() == LeaveOption.Kind.SHAPE_AFTER_BACK
            || way.kind() == LeaveOption.Kind.TUB_IN_COLD_LONGER;
    return words
        .append(", ")
        .append(
            byJar
                ? speech.say("away.likelyShaped", Map.of("time", clock.about(way.shapedHours())))
                : speech.say("away.shaped", Map.of("time", clock.at(way.shapedHours()))))
        .toString();
  }

  private String bestTime(LeaveOption way) {
    TimeWindow from = way.bakeFrom();
    TimeWindow until = way.bakeUntil();
    if (until.likely().isPresent() && until.likely().getAsDouble() <= way.shapedHours() + 0.1) {
      return speech.say("away.pastBest");
    }
    if (from.likely().isEmpty()) {
      return speech.say("away.notRisen");
    }
    String good = clock.about(from.likely().getAsDouble());
    return until.likely().isPresent()
        ? speech.say(
            "away.goodUntil",
            Map.of("from", good, "until", clock.about(until.likely().getAsDouble())))
        : speech.say("away.goodOn", Map.of("from", good));
  }

  private static Value.Range range(ShapeForecast.RiseRange rise) {
    return new Value.Range(rise.low(), rise.likely(), rise.high(), Unit.PERCENT);
  }
}
