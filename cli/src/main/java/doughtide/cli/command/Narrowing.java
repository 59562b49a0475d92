package doughtide.cli.command;

import doughtide.cli.args.Words;
import doughtide.cli.text.Paragraph;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.Unknown;
import doughtide.core.quantity.Rise;
import doughtide.report.words.Advice;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Why a window is as wide as it is, and what would narrow it. */
public final class Narrowing {

  private static final int MOST = 2;
  private static final int LEAD = 6;

  private Narrowing() {}

  /** What widens the time to a rise, largest first; nothing if few doughs reach it. */
  public static List<RiseAnswer.Widening> of(RiseForecast forecast, Rise at) {
    Map<Unknown, Double> shares = forecast.whatWidens(at);
    List<RiseAnswer.Widening> widens = new ArrayList<>();
    shares.forEach((unknown, share) -> widens.add(new RiseAnswer.Widening(unknown, share, at)));
    widens.sort((one, other) -> Double.compare(other.share(), one.share()));
    return widens;
  }

  /** The largest two in words, under a heading; nothing if there are none. */
  public static List<String> lines(List<RiseAnswer.Widening> widens) {
    List<RiseAnswer.Widening> most =
        widens.stream().limit(MOST).filter(each -> each.share() > 0).toList();
    List<String> lines = new ArrayList<>();
    if (most.isEmpty()) {
      return lines;
    }
    lines.add(
        "What would narrow the window (share of the spread of the time to "
            + Words.percent(most.get(0).at().percent())
            + "):");
    for (RiseAnswer.Widening each : most) {
      Advice advice = Advice.english(each.unknown());
      lines.addAll(
          Paragraph.lines(
              RisePage.padded(Words.rounded(100 * each.share(), 0) + " %", LEAD),
              advice.text() + ": " + advice.remedy()));
    }
    return lines;
  }
}
