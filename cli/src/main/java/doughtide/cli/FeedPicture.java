package doughtide.cli;

import doughtide.core.planning.RefreshmentPlan;
import doughtide.report.ChartFormat;
import doughtide.report.ChartOutput;
import doughtide.report.ChartSize;
import doughtide.report.FeedChart;
import doughtide.report.Language;
import doughtide.report.Words;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;

/** Draws the last feeding into a file. */
final class FeedPicture {

  private FeedPicture() {}

  static void write(FeedResult result, OutputFile file) {
    RefreshmentPlan.Step last = result.plan().last();
    String title = "Starter fed: " + last.forecast().feeding().ratio().words();
    Optional<ZonedDateTime> fedAt = result.clock().map(clock -> clock.after(last.fromHours()));
    Words words = Words.in(Language.ENGLISH);
    byte[] bytes =
        ChartOutput.bytes(
            FeedChart.of(title, subtitle(result), last.forecast(), fedAt, words),
            ChartFormat.ofFileName(file.shown()),
            ChartSize.A5_LANDSCAPE,
            FeedChart.caption(title, last.forecast(), fedAt, words));
    file.write(out -> out.write(bytes));
  }

  private static List<String> subtitle(FeedResult result) {
    int feeds = result.plan().steps().size();
    String which = feeds > 1 ? "Feed " + feeds + " of " + feeds + "; " : "";
    String flour = result.options().feeding().flour().name();
    return List.of(which + flour + "; " + result.options().temperature().words());
  }
}
