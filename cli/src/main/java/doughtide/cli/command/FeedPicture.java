package doughtide.cli.command;

import doughtide.cli.file.OutputFile;
import doughtide.core.feeding.RefreshmentPlan;
import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartOutput;
import doughtide.report.chart.ChartSize;
import doughtide.report.chart.FeedChart;
import doughtide.report.handout.FormulaWords;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Draws the last feeding into a file. */
final class FeedPicture {

  private FeedPicture() {}

  public static void write(FeedResult result, Words words, OutputFile file) {
    RefreshmentPlan.Step last = result.plan().last();
    String ratio = last.forecast().feeding().ratio().text();
    String title = words.say("chart.title.feed", Map.of("ratio", ratio));
    Optional<ZonedDateTime> fedAt = result.clock().map(clock -> clock.after(last.fromHours()));
    byte[] bytes =
        ChartOutput.bytes(
            FeedChart.of(title, subtitle(result, words), last.forecast(), fedAt, words),
            ChartFormat.ofFileName(file.shown()),
            ChartSize.A5_LANDSCAPE,
            FeedChart.caption(title, last.forecast(), fedAt, words));
    file.write(out -> out.write(bytes));
  }

  private static List<String> subtitle(FeedResult result, Words words) {
    int feeds = result.plan().steps().size();
    String which =
        feeds > 1
            ? words.say(
                    "chart.feedOf", Map.of("number", words.plain(feeds), "all", words.plain(feeds)))
                + " "
            : "";
    FormulaWords say = new FormulaWords(words);
    String flour = words.capitalized(say.flour(result.options().feeding().flour()));
    return List.of(which + flour + "; " + say.temperature(result.options().temperature().steps()));
  }
}
