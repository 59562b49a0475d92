package doughtide.cli.command.stage;

import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.core.day.BakePlan;
import doughtide.core.day.DayPlan;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Mass;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;

/**
 * The stages of the starters of a day.
 *
 * @param names of its doughs
 * @param times from hour 0 of the day
 */
public record DayStages(List<String> names, ClockTimes times) {

  /** The stages of a dough's starter as data, with the grams that this dough needs. */
  public void data(BakePlan plan, Section.Builder to) {
    BuildTimes build = plan.day().stages().orElseThrow();
    Listing.Builder rows = to.listing("stages", "");
    Mass use = Mass.ofGrams(plan.ingredients().starterGrams());
    List<FeedAmounts> amounts = build.build().amounts(use);
    ClockTimes first = ClockTimes.from(times.after(plan.feed().feedHour()));
    for (int i = 0; i < amounts.size(); i++) {
      BuildStage stage = build.build().stages().get(i);
      BuildTimes.Stage when = build.stages().get(i);
      Section.Builder row = rows.row();
      row.word("name", "", stage.name().orElse(""))
          .at("from", "", when.fromHours(), first)
          .number("celsius", "", stage.temperature().celsius(), Unit.CELSIUS)
          .number("starterGrams", "", amounts.get(i).starterGrams(), Unit.GRAMS)
          .number("flourGrams", "", amounts.get(i).flourGrams(), Unit.GRAMS)
          .number("waterGrams", "", amounts.get(i).waterGrams(), Unit.GRAMS)
          .number("endPh", "", when.endPh(), Unit.PH);
      row.section("ripe", "", new Timeline(Optional.of(first), "after the first stage", 0))
          .window(Section.HERE, "", when.ripe());
    }
  }

  /**
   * Each stage in words, once for all doughs that it is for: when it is ripe, how sour it gets.
   *
   * @param which doughs, by number
   */
  public void tables(DayPlan day, IntPredicate which, Section.Builder body) {
    Map<List<Object>, List<Integer>> builds = new LinkedHashMap<>();
    for (int i = 0; i < day.plans().size(); i++) {
      BakePlan plan = day.plans().get(i);
      if (which.test(i) && plan.day().stages().isPresent()) {
        List<Object> build = List.of(plan.day().stages().get(), plan.feed().feedHour());
        builds.computeIfAbsent(build, key -> new ArrayList<>()).add(i);
      }
    }
    builds.values().forEach(doughs -> table(day.plans().get(doughs.get(0)), doughs, body));
  }

  private void table(BakePlan plan, List<Integer> doughs, Section.Builder body) {
    BuildTimes build = plan.day().stages().orElseThrow();
    String whose =
        names.size() == 1
            ? ""
            : ": " + doughs.stream().map(names::get).collect(Collectors.joining(", "));
    Listing.Builder rows =
        body.listing("", "Stages of the starter (a pH is good to about ± 0.2)" + whose);
    for (int i = 0; i < build.stages().size(); i++) {
      BuildTimes.Stage stage = build.stages().get(i);
      TimeWindow ripe = stage.ripe().plus(plan.feed().feedHour());
      rows.row()
          .say(" ", build.build().stages().get(i).name().orElse("stage " + (i + 1)))
          .say("made", times.about(plan.feed().feedHour() + stage.fromHours()))
          .say("ripe from", clock(ripe.early()))
          .say("to", clock(ripe.late()))
          .say("pH then", Words.rounded(stage.endPh(), 1));
    }
  }

  private String clock(OptionalDouble hour) {
    return hour.isPresent() ? times.about(hour.getAsDouble()) : Value.NONE;
  }
}
