package doughtide.cli.command.stage;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.core.dough.Starter;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.StagedForecast;
import doughtide.core.forecast.Distribution;
import doughtide.core.quantity.Mass;
import doughtide.report.words.FeedWords;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A starter built in stages as an answer. In data and clock times hours count from the first stage.
 */
public final class StageSections {

  private static final int VERSION = 2;
  private static final Mass USUAL_AMOUNT = Mass.ofGrams(100);

  private final StagedForecast found;
  private final Optional<ClockTimes> clock;
  private final Timeline timeline;
  private final List<FeedAmounts> amounts;
  private final Mass amount;

  private StageSections(StagedForecast found, Optional<ClockTimes> clock, Optional<Mass> wanted) {
    this.found = found;
    this.clock = clock;
    this.timeline = new Timeline(clock, "after the first stage", 0);
    this.amount = wanted.orElse(USUAL_AMOUNT);
    this.amounts = found.build().amounts(amount);
  }

  /**
   * The answer.
   *
   * @param clock from the first stage on
   * @param amount what the last stage is to make; 100 g unless said
   * @param cautions what to be careful with
   */
  public static Answer of(
      StagedForecast found,
      Optional<ClockTimes> clock,
      Optional<Mass> amount,
      List<String> cautions) {
    StageSections sections = new StageSections(found, clock, amount);
    Section.Builder body = Section.loose(sections.timeline);
    body.number("makesGrams", "", sections.amount.grams(), Unit.GRAMS)
        .number("readyHours", "", found.readyHours(), Unit.HOURS);
    clock.ifPresent(
        from ->
            body.word("zone", "", from.start().getZone().getId())
                .at("firstAt", "", 0, from)
                .at("readyAt", "", found.readyHours(), from));
    sections.stages(body.listing("stages", ""));
    body.paragraph()
        .say(
            "Each stage begins with the cells, the acid and the gas that the one before has when"
                + " it is handed on. A pH is good to about ± 0.2.");
    body.warnings(
        found.steps().stream()
            .flatMap(step -> step.forecast().warnings().stream())
            .distinct()
            .toList());
    sections.understood(body.section("seed", "Understood"));
    body.cautions(cautions);
    return Answer.of("feed", VERSION, sections.headline(), body).withTable(sections::table);
  }

  private String headline() {
    String seed =
        Words.grams(amounts.get(0).starterGrams())
            + " of starter become "
            + Words.grams(amount.grams())
            + " in "
            + (amounts.size() == 1 ? "one stage" : amounts.size() + " stages");
    OptionalDouble ready = found.readyHours();
    if (ready.isEmpty()) {
      return seed + ": a stage is not likely to be ripe within ten days.";
    }
    String when = new Value.Moment(ready, timeline).text();
    return seed
        + ": ready "
        + (clock.isPresent() ? when : "about " + when)
        + ", at pH "
        + ph(found.steps().get(found.steps().size() - 1).endPh(), 0.5)
        + ".";
  }

  private void stages(Listing.Builder all) {
    List<Feeding> feedings = found.build().feedings();
    for (int i = 0; i < found.steps().size(); i++) {
      StagedForecast.Step step = found.steps().get(i);
      Section.Builder row =
          all.row(heading(i), new Timeline(clock, "after this stage is made", step.fromHours()));
      step.stage().name().ifPresent(name -> row.word("name", "", name));
      row.number("fromHours", "", step.fromHours(), Unit.HOURS);
      clock.ifPresent(from -> row.at("from", "", step.fromHours(), from));
      weigh(amounts.get(i), feedings.get(i), row);
      row.number("celsius", "", step.stage().temperature().celsius(), Unit.CELSIUS)
          .flag("untilRipe", "", step.stage().hours().isEmpty())
          .number("hours", "", step.hours(), Unit.HOURS)
          .window("ripe", "Ripe from", step.forecast().ripe().plus(step.fromHours()))
          .window(
              "beginsToFall", "Begins to fall", step.forecast().falling().plus(step.fromHours()));
      range("startPh", "pH at first", step.startPh(), row);
      range("endPh", "pH handed on", step.endPh(), row);
    }
  }

  private String heading(int i) {
    StagedForecast.Step step = found.steps().get(i);
    BuildStage stage = step.stage();
    String moment = new Value.Moment(OptionalDouble.of(step.fromHours()), timeline).text();
    String first = clock.map(from -> ", " + from.at(0)).orElse("");
    String when = i == 0 ? first : ", " + moment;
    String stands =
        step.hours().isEmpty()
            ? "not ripe in ten days"
            : Words.about(step.hours().getAsDouble())
                + (stage.hours().isEmpty() ? ", until ripe" : "");
    return "Stage "
        + (i + 1)
        + stage.name().map(name -> ", " + name).orElse("")
        + when
        + ": "
        + Words.temperature(stage.temperature())
        + ", "
        + stands;
  }

  private void weigh(FeedAmounts each, Feeding feeding, Section.Builder row) {
    row.number("starterGrams", "", each.starterGrams(), Unit.GRAMS)
        .number("flourGrams", "", each.flourGrams(), Unit.GRAMS)
        .number("waterGrams", "", each.waterGrams(), Unit.GRAMS)
        .number("totalGrams", "", each.totalGrams(), Unit.GRAMS)
        .word("flour", "", feeding.flour().name())
        .word("ratioInWords", "", FeedWords.english().parts(feeding.ratio()))
        .number("doughYield", "", 100 + feeding.hydration().percent(), Unit.NONE);
    row.say(
        "Weigh",
        Words.grams(each.starterGrams())
            + (each.equals(amounts.get(0)) ? " starter, " : " of the stage before, ")
            + Words.grams(each.flourGrams())
            + " "
            + feeding.flour().name()
            + ", "
            + Words.grams(each.waterGrams())
            + " water; dough yield "
            + Words.rounded(100 + feeding.hydration().percent(), 0));
  }

  private static void range(String key, String label, Distribution ph, Section.Builder row) {
    row.range(key, "", ph.quantile(0.1), ph.quantile(0.5), ph.quantile(0.9), Unit.PH)
        .say(label, ph(ph, 0.5) + " (" + ph(ph, 0.1) + " to " + ph(ph, 0.9) + ")");
  }

  private static String ph(Distribution of, double level) {
    return of.quantile(level).stream()
        .mapToObj(value -> Words.rounded(value, 1))
        .findFirst()
        .orElse(Value.NONE);
  }

  private void understood(Section.Builder to) {
    Starter seed = found.build().seed();
    to.word("condition", "", Arguments.word(seed.condition()))
        .word("flour", "", seed.flour().name())
        .number("hydrationPercent", "", seed.hydration().percent(), Unit.PERCENT)
        .say(
            "Starter taken",
            Arguments.word(seed.condition())
                + ", "
                + seed.flour().name()
                + ", hydration "
                + Words.percent(seed.hydration()));
    clock.ifPresent(from -> to.say("First stage", from.startInWords()));
  }

  /** For CSV: a row a stage. */
  private Listing table() {
    Listing.Builder rows = new Listing.Builder("stages", "", timeline);
    for (int i = 0; i < found.steps().size(); i++) {
      StagedForecast.Step step = found.steps().get(i);
      Section.Builder row = rows.row();
      row.number("stage", "", i + 1, Unit.COUNT)
          .word("name", "", step.stage().name().orElse(""))
          .number("fromHours", "", step.fromHours(), Unit.HOURS)
          .number("hours", "", step.hours(), Unit.HOURS);
      row.number("starterGrams", "", amounts.get(i).starterGrams(), Unit.GRAMS)
          .number("flourGrams", "", amounts.get(i).flourGrams(), Unit.GRAMS)
          .number("waterGrams", "", amounts.get(i).waterGrams(), Unit.GRAMS)
          .number("endPh", "", step.endPh().quantile(0.5), Unit.PH);
    }
    return rows.build();
  }
}
