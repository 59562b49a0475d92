package doughtide.cli.command;

import doughtide.cli.answer.JsonWriter;
import doughtide.cli.answer.TextPage;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.core.day.LeaveOption;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.ShapeForecast;
import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** The ways out, the best first. */
public final class LeavePage {

  private static final double NONE = 0.05; // fewer doughs than one in twenty are none

  private LeavePage() {}

  public static List<String> text(
      List<String> about, List<LeaveOption> options, ClockTimes clock, double now) {
    TextPage page = new TextPage();
    page.sentence("Mixed " + clock.startInWords() + "; now " + clock.at(now) + ".");
    about.forEach(page::sentence);
    boolean anyRight = options.get(0).goodShare() >= NONE;
    if (!anyRight) {
      page.gap();
      page.sentence("None of these brings the dough right; the least bad comes first.");
    }
    for (int i = 0; i < options.size(); i++) {
      LeaveOption option = options.get(i);
      page.gap();
      String which = i > 0 ? "Or: " : anyRight ? "Best: " : "First: ";
      page.sentence(which + does(option, clock) + ".");
      page.sentence("  The dough has then risen " + range(option.riseWhenShaped()) + ".", 2);
      page.sentence(
          "  In the oven at "
              + clock.at(option.ovenHours())
              + ": risen "
              + range(option.riseAtBake())
              + "; "
              + (long) Math.floor(option.goodShare() * 10 + 1e-9)
              + " doughs in 10 are right.",
          2);
      page.sentence("  " + bestTime(option, clock), 2);
    }
    page.gap();
    page.sentence(BakeDayCommand.CAUTION);
    return page.lines();
  }

  private static String does(LeaveOption option, ClockTimes clock) {
    StringBuilder words = new StringBuilder(option.kind().words());
    if (option.tubIntoColdHours().isPresent()) {
      words.append(", into the cold at ").append(clock.at(option.tubIntoColdHours().getAsDouble()));
    }
    boolean byJar =
        option.kind() == LeaveOption.Kind.SHAPE_AT_POINT
            || option.kind() == LeaveOption.Kind.SHAPE_AFTER_BACK
            || option.kind() == LeaveOption.Kind.TUB_IN_COLD_LONGER;
    return words
        .append(byJar ? ", likely in the baskets by " : ", in the baskets by ")
        .append(byJar ? clock.about(option.shapedHours()) : clock.at(option.shapedHours()))
        .toString();
  }

  private static String bestTime(LeaveOption option, ClockTimes clock) {
    TimeWindow from = option.bakeFrom();
    TimeWindow until = option.bakeUntil();
    if (until.likely().isPresent() && until.likely().getAsDouble() <= option.shapedHours() + 0.1) {
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

  private static String range(ShapeForecast.RiseRange rise) {
    String low = percent(rise.low());
    String high = percent(rise.high());
    return (low.equals(high) ? low : low + " to " + high) + " %";
  }

  private static String percent(OptionalDouble value) {
    return Words.rounded(value.orElse(Double.NaN), 0);
  }

  public static void json(
      List<LeaveOption> options, ClockTimes clock, double now, PrintStream out) {
    JsonWriter json = new JsonWriter(out);
    json.beginObject().field("schema", "doughtide/leave/1").field("now", clock.iso(now));
    json.name("options").beginArray();
    for (LeaveOption option : options) {
      json.beginObject()
          .field("kind", option.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
      if (option.tubIntoColdHours().isPresent()) {
        json.field("tubIntoColdAt", clock.iso(option.tubIntoColdHours().getAsDouble()));
      }
      json.field("shapedAt", clock.iso(option.shapedHours()))
          .field("riseWhenShapedLowPercent", option.riseWhenShaped().low(), 1)
          .field("riseWhenShapedPercent", option.riseWhenShaped().likely(), 1)
          .field("riseWhenShapedHighPercent", option.riseWhenShaped().high(), 1)
          .field("ovenAt", clock.iso(option.ovenHours()))
          .field("riseAtBakeLowPercent", option.riseAtBake().low(), 1)
          .field("riseAtBakePercent", option.riseAtBake().likely(), 1)
          .field("riseAtBakeHighPercent", option.riseAtBake().high(), 1)
          .field("goodShare", option.goodShare(), 3)
          .endObject();
    }
    json.endArray().name("cautions").beginArray();
    json.value(BakeDayCommand.CAUTION.replaceFirst("^Caution: ", "")).endArray().endObject();
  }
}
