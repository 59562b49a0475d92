package doughtide.cli.command;

import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.Words;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.Unknown;
import doughtide.core.quantity.Rise;
import doughtide.report.words.Advice;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Why a window is as wide as it is, and what would narrow it. */
final class Narrowing {

  private static final int MOST = 2;

  private Narrowing() {}

  /** What widens the time to a rise, largest first; nothing if few doughs reach it. */
  public static List<RiseAnswer.Widening> of(RiseForecast forecast, Rise at) {
    Map<Unknown, Double> shares = forecast.whatWidens(at);
    List<RiseAnswer.Widening> widens = new ArrayList<>();
    shares.forEach((unknown, share) -> widens.add(new RiseAnswer.Widening(unknown, share, at)));
    widens.sort((one, other) -> Double.compare(other.share(), one.share()));
    return widens;
  }

  /** Adds the list {@code widens} for other programs, and for people the largest two. */
  public static void add(List<RiseAnswer.Widening> widens, Section.Builder body) {
    Listing.Builder all = body.listing("widens", "");
    for (RiseAnswer.Widening each : widens) {
      all.row()
          .word("unknown", "", each.unknown(), "")
          .number("share", "", each.share(), Unit.SHARE)
          .number("risePercent", "", each.at().percent(), Unit.PERCENT)
          .word("text", "", Advice.english(each.unknown()).text())
          .word("remedy", "", Advice.english(each.unknown()).remedy());
    }
    List<RiseAnswer.Widening> most =
        widens.stream().limit(MOST).filter(each -> each.share() > 0).toList();
    if (!most.isEmpty()) {
      Section.Builder page = body.section("", heading(most.get(0)));
      for (RiseAnswer.Widening each : most) {
        page.say(
            Unit.SHARE.text(each.share()),
            Advice.english(each.unknown()).text() + ": " + Advice.english(each.unknown()).remedy());
      }
    }
  }

  private static String heading(RiseAnswer.Widening widest) {
    return "What would narrow the window (share of the spread of the time to "
        + Words.percent(widest.at().percent())
        + "):";
  }
}
