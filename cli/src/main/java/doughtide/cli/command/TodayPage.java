package doughtide.cli.command;

import doughtide.cli.answer.JsonWriter;
import doughtide.cli.answer.TextPage;
import doughtide.cli.args.Words;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.text.Understood;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.learning.Bake;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.learning.Reading;
import doughtide.core.learning.TodayUpdate;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;

/** The bake in hand: what its readings so far say about the hours to come. */
public final class TodayPage {

  private static final double ON_TIME_HOURS = 0.05;
  private static final int HOURS_WIDTH = 12;

  private final ReadingsFile file;
  private final Optional<LearnedStarter> starter;
  private final TodayUpdate update;

  public TodayPage(DoughInHand dough) {
    this.file = dough.file();
    this.starter = dough.starter();
    this.update = dough.update();
  }

  /**
   * Prints the page.
   *
   * @param rises the rises whose times are wanted
   */
  public void print(SortedSet<Rise> rises, OutputOptions.Format format, PrintStream out) {
    List<Rise> wanted = rises.stream().filter(rise -> rise.fraction() > highest()).toList();
    List<TodayUpdate.Outlook> outlooks = wanted.stream().map(update::outlook).toList();
    switch (format) {
      case TEXT -> printText(wanted, outlooks, out);
      case JSON -> printJson(wanted, outlooks, out);
      case CSV ->
          throw new InputException("--format csv is not made with --readings: use text or json");
    }
  }

  /** The same as a chart. */
  public TodayChart chart() {
    Bake bake = file.bake();
    return new TodayChart(
        bake, file.clock(), update.forecaster().forecast(bake.formula(), bake.temperature()));
  }

  private double highest() {
    return file.bake().readings().stream()
        .flatMap(reading -> reading.rise().stream())
        .mapToDouble(Rise::fraction)
        .max()
        .orElse(0);
  }

  private void printText(List<Rise> rises, List<TodayUpdate.Outlook> outlooks, PrintStream out) {
    Understood page = new Understood();
    Bake bake = file.bake();
    page.add(
        "Dough",
        bake.formula().flour().name()
            + "; starter "
            + Words.percent(100 * bake.formula().starterOfAddedFlour())
            + " of the flour added; hydration "
            + Words.percent(bake.formula().hydration())
            + "; salt "
            + Words.percent(bake.formula().salt()));
    file.assumed().ifPresent(words -> page.add("", "assumed: " + words));
    file.clock().ifPresent(clock -> page.add("Mixed", clock.startInWords()));
    page.add("Readings", readings());
    page.add("Starter", starter.map(TodayPage::described).orElse("not learned yet"));
    TextPage text = new TextPage().understood(page).gap();
    if (rises.isEmpty()) {
      text.sentence(
          "The dough has risen beyond every rise asked for; ask for another with --rise.");
    } else {
      table(text, rises, outlooks);
    }
    text.gap().sentence("Caution: raw flour and raw dough are not for eating.");
    text.lines().forEach(out::println);
  }

  private void table(TextPage page, List<Rise> rises, List<TodayUpdate.Outlook> outlooks) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("After mixing", "early", "likely", "late"));
    for (int i = 0; i < rises.size(); i++) {
      TodayUpdate.Outlook outlook = outlooks.get(i);
      rows.add(row("risen " + Words.percent(rises.get(i).percent()), outlook.now()));
      rows.add(row("  expected", outlook.before()));
    }
    page.table(rows).gap();
    page.sentence(
        "First the hours as they look now, below them what was expected before today's readings.");
    page.gap();
    for (int i = 0; i < rises.size(); i++) {
      page.sentence(
          Words.percent(rises.get(i).percent()) + " rise: " + pace(outlooks.get(i)) + ".", 2);
    }
  }

  private List<String> row(String label, TimeWindow window) {
    return List.of(label, cell(window.early()), cell(window.likely()), cell(window.late()));
  }

  /** To five minutes, as {@code rise} prints its hours. */
  private String cell(OptionalDouble hours) {
    if (hours.isEmpty()) {
      return "–";
    }
    double at = hours.getAsDouble();
    return RisePage.padded(Words.about(at), HOURS_WIDTH)
        + file.clock().map(clock -> clock.about(at)).orElse("");
  }

  private String readings() {
    List<Reading> all = file.bake().readings();
    String count = LearnCommand.counted(file.given(), "reading") + file.refused().words();
    Optional<Reading> last =
        all.stream().filter(reading -> reading.rise().isPresent()).reduce((a, b) -> b);
    return last.map(
            reading ->
                count
                    + "; the last rise "
                    + Words.percent(reading.rise().orElseThrow().percent())
                    + " after "
                    + Words.duration(reading.hours())
                    + file.clock().map(clock -> ", " + clock.at(reading.hours())).orElse(""))
        .orElse(count);
  }

  private static String described(LearnedStarter starter) {
    return "learned from "
        + LearnCommand.counted(starter.bakes(), "bake")
        + " and "
        + LearnCommand.counted(starter.readings(), "reading");
  }

  private String moment(double hours) {
    return Words.about(hours) + file.clock().map(clock -> ", " + clock.about(hours)).orElse("");
  }

  private String pace(TodayUpdate.Outlook outlook) {
    return ahead(outlook.aheadHours()) + "; " + look(outlook.nextLookHours());
  }

  private static String ahead(OptionalDouble hours) {
    if (hours.isEmpty()) {
      return "too early to say whether today is ahead or behind";
    }
    double ahead = hours.getAsDouble();
    if (Math.abs(ahead) < ON_TIME_HOURS) {
      return "today is on time";
    }
    long minutes = Math.round(Math.abs(ahead) * 60);
    return "today is "
        + (minutes < 60 ? minutes + " min" : Words.duration(Math.abs(ahead)))
        + (ahead > 0 ? " ahead of" : " behind")
        + " what was expected";
  }

  private String look(OptionalDouble hours) {
    return hours.isPresent()
        ? "look again after " + moment(hours.getAsDouble()) + ", that reading narrows it most"
        : "look now, the dough may soon be there";
  }

  private void printJson(List<Rise> rises, List<TodayUpdate.Outlook> outlooks, PrintStream out) {
    JsonWriter json = new JsonWriter(out);
    json.beginObject().field("schema", "doughtide/today/1");
    json.field("bake", file.bake().name()).field("readings", file.given());
    json.field("learnedFromBakes", (long) starter.map(LearnedStarter::bakes).orElse(0));
    json.name("rises").beginArray();
    for (int i = 0; i < rises.size(); i++) {
      TodayUpdate.Outlook outlook = outlooks.get(i);
      json.beginObject().field("risePercent", rises.get(i).percent(), 3);
      hours(json, outlook.now());
      json.name("expected").beginObject();
      hours(json, outlook.before());
      json.endObject();
      json.field("aheadHours", outlook.aheadHours(), 4);
      json.field("nextLookHours", outlook.nextLookHours(), 4);
      json.endObject();
    }
    json.endArray();
    json.name("cautions").beginArray().value(RiseCommand.CAUTION).endArray();
    json.endObject();
  }

  private static void hours(JsonWriter json, TimeWindow window) {
    json.field("hoursEarly", window.early(), 4);
    json.field("hoursLikely", window.likely(), 4).field("hoursLate", window.late(), 4);
  }
}
