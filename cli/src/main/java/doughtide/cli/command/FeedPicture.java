package doughtide.cli.command;

import doughtide.cli.file.OutputFile;
import doughtide.core.feeding.RefreshmentPlan;
import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartOutput;
import doughtide.report.chart.ChartSize;
import doughtide.report.chart.FeedChart;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;

/** Draws the last feeding into a file. */
public final class FeedPicture {

  private FeedPicture() {}

  public static void write(FeedResult result, OutputFile file) {
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
