package doughtide.cli.hand;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.ClockTimes;
import doughtide.core.day.question.LeaveOption;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.ShapeForecast;
import doughtide.report.words.DayWords;
import doughtide.report.words.Language;
import java.util.List;
import java.util.Optional;

/** The ways out when the baker must leave, the best first, as an answer. */
public final class LeaveSections {

  private static final DayWords WORDS =
      new DayWords(doughtide.report.words.Words.in(Language.ENGLISH));

  private static final int VERSION = 2;
  private static final double NONE = 0.05; // fewer doughs than one in twenty are none

  private final List<LeaveOption> ways;
  private final ClockTimes clock;

  private LeaveSections(List<LeaveOption> ways, ClockTimes clock) {
    this.ways = ways;
    this.clock = clock;
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
    LeaveSections sections = new LeaveSections(ways, clock);
    Section.Builder body = Section.loose(Timeline.sinceMixing(Optional.of(clock)));
    body.at("now", "", now, clock);
    sections.add(body);
    Section.Builder understood = body.section("", "Understood");
    understood.say("Mixed", clock.startInWords()).say("Now", clock.at(now));
    about.forEach(each -> understood.say("Dough", each));
    body.cautions(List.of(Cautions.OVEN));
    return Answer.of("leave", VERSION, sections.headline(), body);
  }

  /** Some ways out, to be added to an answer about more. */
  static LeaveSections among(List<LeaveOption> ways, ClockTimes clock) {
    return new LeaveSections(ways, clock);
  }

  /** Adds the ways out. */
  void add(Section.Builder body) {
    Listing.Builder options = body.listing("options", "");
    for (int i = 0; i < ways.size(); i++) {
      data(options.row(), ways.get(i));
      page(body.section("", which(i) + does(ways.get(i), clock)), ways.get(i));
    }
  }

  private boolean anyRight() {
    return ways.get(0).goodShare() >= NONE;
  }

  /** The best of them in a sentence. */
  String headline() {
    LeaveOption best = ways.get(0);
    return anyRight()
        ? "Best: "
            + does(best, clock)
            + ". In the oven at "
            + clock.at(best.ovenHours())
            + ": "
            + right(best)
            + "."
        : "None of these brings the dough right; the least bad comes first.";
  }

  private static String right(LeaveOption way) {
    long right = (long) Math.floor(way.goodShare() * 10 + 1e-9);
    return ofTen(right, "is right", "are right");
  }

  /** How many doughs of ten do something. */
  public static String ofTen(long doughs, String does, String allDo) {
    return doughs == 0
        ? "none of 10 doughs " + does
        : doughs + (doughs == 1 ? " dough in 10 " + does : " doughs in 10 " + allDo);
  }

  private String which(int i) {
    return i > 0 ? "Or: " : anyRight() ? "Best: " : "First: ";
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
    to.say("  The dough has then risen " + range(way.riseWhenShaped()).text() + ".", 2)
        .say(
            "  In the oven at "
                + clock.at(way.ovenHours())
                + ": risen "
                + range(way.riseAtBake()).text()
                + "; "
                + right(way)
                + ".",
            2)
        .say("  " + bestTime(way), 2);
  }

  private static String does(LeaveOption way, ClockTimes clock) {
    StringBuilder words = new StringBuilder(WORDS.leave(way.kind()));
    if (way.tubIntoColdHours().isPresent()) {
      words.append(", into the cold at ").append(clock.at(way.tubIntoColdHours().getAsDouble()));
    }
    boolean byJar =
        way.kind() == LeaveOption.Kind.SHAPE_AT_POINT
            || way.kind() == LeaveOption.Kind.SHAPE_AFTER_BACK
            || way.kind() == LeaveOption.Kind.TUB_IN_COLD_LONGER;
    return words
        .append(byJar ? ", likely in the baskets by " : ", in the baskets by ")
        .append(byJar ? clock.about(way.shapedHours()) : clock.at(way.shapedHours()))
        .toString();
  }

  private String bestTime(LeaveOption way) {
    TimeWindow from = way.bakeFrom();
    TimeWindow until = way.bakeUntil();
    if (until.likely().isPresent() && until.likely().getAsDouble() <= way.shapedHours() + 0.1) {
      return "It is likely past its best when shaped: bake it at once in a tin, or as flat bread.";
    }
    if (from.likely().isEmpty()) {
      return "It is likely not risen enough a day after the oven's hour.";
    }
    return "Good to bake likely from "
        + clock.about(from.likely().getAsDouble())
        + (until.likely().isPresent()
            ? " until " + clock.about(until.likely().getAsDouble()) + "."
            : ", for a day and more.");
  }

  private static Value.Range range(ShapeForecast.RiseRange rise) {
    return new Value.Range(rise.low(), rise.likely(), rise.high(), Unit.PERCENT);
  }
}
