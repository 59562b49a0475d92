package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.Words;
import doughtide.cli.file.ReadingsFile;
import doughtide.core.learning.Bake;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.learning.Reading;
import doughtide.core.learning.TodayUpdate;
import doughtide.core.quantity.Rise;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;

/** The bake in hand: what its readings so far say about the hours to come, as an answer. */
public final class TodaySections {

  private static final int VERSION = 2;
  private static final double ON_TIME_HOURS = 0.05;
  private static final Rise HALF = Rise.ofPercent(50);

  private record Ahead(Rise rise, TodayUpdate.Outlook outlook) {}

  private final ReadingsFile file;
  private final Optional<LearnedStarter> starter;
  private final Timeline timeline;

  private TodaySections(DoughInHand dough) {
    this.file = dough.file();
    this.starter = dough.starter();
    this.timeline = Timeline.sinceMixing(file.clock());
  }

  /**
   * The answer.
   *
   * @param rises the rises whose times are wanted
   */
  public static Answer of(DoughInHand dough, SortedSet<Rise> rises) {
    TodaySections sections = new TodaySections(dough);
    List<Ahead> ahead =
        rises.stream()
            .filter(rise -> rise.fraction() > sections.highest())
            .map(rise -> new Ahead(rise, dough.update().outlook(rise)))
            .toList();
    Section.Builder body = Section.loose(sections.timeline);
    body.word("bake", "", sections.file.bake().name())
        .number("readings", "", sections.file.given(), Unit.COUNT)
        .number(
            "learnedFromBakes",
            "",
            sections.starter.map(LearnedStarter::bakes).orElse(0),
            Unit.COUNT);
    sections.rises(ahead, body);
    sections.understood(body.section("", "Understood"));
    body.cautions(List.of(RiseCommand.CAUTION));
    return Answer.of("today", VERSION, sections.headline(ahead), body);
  }

  private double highest() {
    return file.bake().readings().stream()
        .flatMap(reading -> reading.rise().stream())
        .mapToDouble(Rise::fraction)
        .max()
        .orElse(0);
  }

  private String headline(List<Ahead> ahead) {
    if (ahead.isEmpty()) {
      return "The dough has risen beyond every rise asked for; ask for another with --rise.";
    }
    Ahead first =
        ahead.stream().filter(each -> each.rise().equals(HALF)).findFirst().orElse(ahead.get(0));
    return "Risen "
        + Words.percent(first.rise().percent())
        + " about "
        + new Value.Window(first.outlook().now(), timeline).text()
        + ". "
        + capital(pace(first.outlook()))
        + ".";
  }

  private void rises(List<Ahead> ahead, Section.Builder body) {
    Listing.Builder rises = body.listing("rises", "");
    for (Ahead each : ahead) {
      double percent = each.rise().percent();
      rises
          .row()
          .number("risePercent", "", percent, Unit.PERCENT)
          .window(Section.HERE, "risen " + Words.percent(percent), each.outlook().now())
          .window("expected", "  expected", each.outlook().before())
          .number("aheadHours", "", each.outlook().aheadHours(), Unit.HOURS)
          .number("nextLookHours", "", each.outlook().nextLookHours(), Unit.HOURS);
    }
    if (!ahead.isEmpty()) {
      body.paragraph()
          .say(
              "First the time as it looks now, below it what was expected before today's"
                  + " readings.");
    }
    Section.Builder paces = body.paragraph();
    for (Ahead each : ahead) {
      paces.say(Words.percent(each.rise().percent()) + " rise: " + pace(each.outlook()) + ".", 2);
    }
  }

  private void understood(Section.Builder to) {
    Bake bake = file.bake();
    to.say(
        "Dough",
        bake.formula().flour().name()
            + "; starter "
            + Words.percent(100 * bake.formula().starterOfAddedFlour())
            + " of the flour added; hydration "
            + Words.percent(bake.formula().hydration())
            + "; salt "
            + Words.percent(bake.formula().salt()));
    file.assumed().ifPresent(words -> to.say("Assumed", words));
    file.clock().ifPresent(clock -> to.say("Mixed", clock.startInWords()));
    to.say("Readings", readings());
    to.say("Starter", starter.map(TodaySections::described).orElse("not learned yet"));
  }

  private String readings() {
    List<Reading> all = file.bake().readings();
    String count = LearnCommand.counted(file.given(), "reading") + file.leftOutWords();
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
    return "today is "
        + Words.duration(Math.abs(ahead))
        + (ahead > 0 ? " ahead of" : " behind")
        + " what was expected";
  }

  private String look(OptionalDouble hours) {
    return hours.isPresent()
        ? "look again after " + timeline.moment(hours) + ": that reading narrows it most"
        : "look now, the dough may soon be there";
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
