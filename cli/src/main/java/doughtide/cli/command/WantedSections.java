package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.IngredientItems;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.TemperatureSteps;
import doughtide.cli.args.Words;
import doughtide.cli.hand.Cautions;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.options.WantedOptions;
import doughtide.core.day.question.InverseAnswer.Reach;
import doughtide.core.day.question.InverseQuestions;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The answer to a question turned round. */
final class WantedSections {

  private static final int VERSION = 2;

  private final WantedAnswer found;
  private final WantedOptions options;
  private final boolean mixing;
  private final Timeline timeline;

  private WantedSections(WantedAnswer found) {
    this.found = found;
    this.options = found.options();
    this.mixing = options.question() == WantedOptions.Question.MIX_AT;
    this.timeline = Timeline.sinceMixing(options.clock());
  }

  public static Answer of(WantedAnswer found) {
    WantedSections sections = new WantedSections(found);
    Section.Builder body = Section.loose(sections.timeline);
    body.word("asked", "", sections.options.question(), "")
        .number("wantedHours", "", sections.options.bulkHours(), Unit.HOURS)
        .word("reach", "", found.half().reach(), "");
    Listing rows = sections.rows();
    body.add(rows);
    sections.legend(body);
    sections.shape(body);
    sections.weigh(body);
    body.warnings(found.forecast().warnings());
    Narrowing.add(found.widens(), body);
    sections.understood(body.section("understood", "Understood"));
    body.cautions(List.of(Cautions.RAW));
    return Answer.of("wanted", VERSION, sections.headline(), body).withTable(() -> rows);
  }

  private String headline() {
    WantedAnswer.Row half = found.half();
    if (half.value().isEmpty()) {
      return "No time of mixing does it: half of the doughs never get there. Ask for a lower rise"
          + " or another proof.";
    }
    return switch (half.reach()) {
      case ON_TIME -> inTime(half.value().getAsDouble());
      case NOT_SO_SOON -> notSoSoon();
      case NOT_SO_LATE -> notSoLate(half.value().getAsDouble());
    };
  }

  private String inTime(double value) {
    return switch (options.question()) {
      case STARTER -> "Starter: " + share(found.formula()) + ".";
      case DOUGH_TEMP ->
          "Dough temperature after mixing: "
              + Unit.CELSIUS.text(value)
              + ". How warm to pour the water for it: doughtide water.";
      case MIX_AT -> mixAt(value);
    };
  }

  /** The likely hour first; where it has passed, what becomes of a dough mixed now. */
  private String mixAt(double hour) {
    ClockTimes shape = options.clock().orElseThrow();
    TimeWindow bulk = found.half().window();
    double now = Hours.between(shape.start(), options.now());
    if (hour < now) {
      double likely = now + bulk.likely().orElse(0);
      return "The hour to mix, "
          + at(hour)
          + ", has passed: mixed now, the dough is likely there at "
          + at(likely)
          + ". Ask for a later --shape-at, or take more starter or a warmer dough.";
    }
    return "Mix at " + at(hour) + ": likely there at " + at(0) + "." + look(hour, bulk) + latest();
  }

  private String look(double mixed, TimeWindow bulk) {
    return bulk.early().isPresent()
        ? " Look from "
            + at(mixed + bulk.early().getAsDouble())
            + " on, when a lively dough is there."
        : "";
  }

  private String latest() {
    OptionalDouble nine = found.rows().get(1).value();
    if (nine.isEmpty()) {
      return " No time of mixing gets nine doughs in ten there by then.";
    }
    double now = Hours.between(options.clock().orElseThrow().start(), options.now());
    double by = nine.getAsDouble();
    return by < now ? "" : " To be sure of it, nine doughs in ten, mix by " + at(by) + ".";
  }

  private String at(double hour) {
    return options.clock().orElseThrow().about(hour);
  }

  private static String share(DoughFormula formula) {
    return Words.percent(100 * formula.starterOfAddedFlour())
        + " of the flour added = "
        + Words.percent(100 * formula.prefermentedFlour())
        + " prefermented flour";
  }

  private String notSoSoon() {
    OptionalDouble likely = found.half().window().likely();
    String takes =
        likely.isPresent()
            ? " bulk fermentation still takes " + Words.about(likely.getAsDouble()) + " (likely)."
            : " half of the doughs never get there.";
    return options.question() == WantedOptions.Question.STARTER
        ? "No starter share does it: even with "
            + Words.percent(InverseQuestions.MOST_STARTER_PERCENT)
            + " of the flour added, the most that is looked at,"
            + takes
            + " That comes nearest. Quicker: a warmer dough, or a lower rise."
        : "No dough temperature does it: even at "
            + Words.temperature(Temperature.ofCelsius(InverseQuestions.WARMEST_CELSIUS))
            + ", the warmest that is looked at,"
            + takes
            + " That comes nearest. Quicker: more starter, or a lower rise.";
  }

  private String notSoLate(double value) {
    OptionalDouble likely = found.half().window().likely();
    String takes =
        likely.isPresent()
            ? " it is over after " + Words.about(likely.getAsDouble()) + " (likely)."
            : " a slower dough does not get there at all.";
    return options.question() == WantedOptions.Question.STARTER
        ? "No starter share makes it last so long: with "
            + Words.percent(value)
            + " of the flour added"
            + takes
            + " That comes nearest. Slower: a cooler dough, or a part of the time in the cold."
        : "No dough temperature makes it last so long: at "
            + Words.temperature(Temperature.ofCelsius(value))
            + takes
            + " That comes nearest. Slower: less starter, or a part of the time in the cold.";
  }

  private Listing rows() {
    Listing.Builder rows = new Listing.Builder("answers", "", timeline);
    for (WantedAnswer.Row each : found.rows()) {
      Timeline own = own(each);
      Section.Builder row = rows.row("", own);
      row.word("doughsInTime", "", each.doughs(), "");
      value(row, each);
      row.word("reach", "", each.reach(), "").window(Section.HERE, "", each.window());
      if (isWorthSaying(each)) {
        row.say(heading(), each.doughs().words())
            .say(options.question().column(), words(each))
            .say("early", cell(each, own, each.window().early()))
            .say("likely", cell(each, own, each.window().likely()))
            .say("late", cell(each, own, each.window().late()));
      }
    }
    return rows.build();
  }

  /** Where the time of mixing is asked, each row has a time of its own. */
  private Timeline own(WantedAnswer.Row row) {
    if (!mixing || row.value().isEmpty()) {
      return timeline;
    }
    ClockTimes shape = options.clock().orElseThrow();
    return Timeline.sinceMixing(
        Optional.of(ClockTimes.from(shape.after(row.value().getAsDouble()))));
  }

  private void value(Section.Builder to, WantedAnswer.Row row) {
    switch (options.question()) {
      case STARTER -> {
        OptionalDouble share =
            row.value().isPresent()
                ? OptionalDouble.of(100 * found.formula(row).prefermentedFlour())
                : row.value();
        to.number("starterOfAddedFlourPercent", "", row.value(), Unit.PERCENT, 3)
            .number("prefermentedFlourPercent", "", share, Unit.PERCENT, 3);
      }
      case DOUGH_TEMP -> to.number("doughCelsius", "", row.value(), Unit.CELSIUS, 2);
      case MIX_AT -> to.at("mixAt", "", row.value(), options.clock().orElseThrow());
    }
  }

  /** Where not even half of the doughs can be in time, the nearest is said once. */
  private boolean isWorthSaying(WantedAnswer.Row row) {
    boolean half = row.doughs() == WantedAnswer.Doughs.HALF;
    return half
        ? row.value().isPresent() || row.window().likely().isPresent()
        : found.half().reach() == Reach.ON_TIME && found.half().value().isPresent()
            || (row.value().isPresent() && row.reach() == Reach.ON_TIME);
  }

  private String heading() {
    OptionalDouble hours = options.bulkHours();
    return hours.isPresent()
        ? "There after " + Words.duration(hours.getAsDouble())
        : "There at " + at(0);
  }

  private String words(WantedAnswer.Row row) {
    if (row.value().isEmpty()) {
      return "none";
    }
    double value = row.value().getAsDouble();
    return switch (options.question()) {
      case STARTER -> bound(row) + Words.percent(value);
      case DOUGH_TEMP -> bound(row) + Words.rounded(value, 1) + " °C";
      case MIX_AT -> at(value);
    };
  }

  private static String bound(WantedAnswer.Row row) {
    if (row.doughs() == WantedAnswer.Doughs.HALF || row.reach() == Reach.ON_TIME) {
      return "";
    }
    return row.reach() == Reach.NOT_SO_SOON ? "over " : "under ";
  }

  private static String cell(WantedAnswer.Row row, Timeline own, OptionalDouble hours) {
    return bound(row).isEmpty() ? own.moment(hours) : Value.NONE;
  }

  private void legend(Section.Builder body) {
    if (!isWorthSaying(found.half())) {
      return;
    }
    boolean gaps =
        found.rows().stream()
            .filter(this::isWorthSaying)
            .anyMatch(row -> !bound(row).isEmpty() || row.window().late().isEmpty());
    body.paragraph()
        .say(
            "One dough in ten is there before the early time, half before the likely one, nine in"
                + " ten before the late one."
                + (gaps ? " –: so many are not, with any that is looked at." : ""));
  }

  private void shape(Section.Builder body) {
    Value.Range rise =
        new Value.Range(
            found.rise().low(), found.rise().likely(), found.rise().high(), Unit.PERCENT);
    body.number("shapeRisePercent", "", found.rise().likely(), Unit.PERCENT)
        .quantity("shapeRisePercent", "", rise);
    if (options.end().proof().isPresent() && found.rise().likely().isPresent()) {
      body.paragraph().say("Shape when the sample jar has risen " + rise.text() + ".");
    }
  }

  private void weigh(Section.Builder body) {
    if (options.amount().isEmpty()) {
      return;
    }
    var weigh = options.amount().get().ingredients(found.formula());
    IngredientItems.add(weigh, body);
    boolean inTime = found.half().reach() == Reach.ON_TIME;
    if (inTime || options.question() == WantedOptions.Question.STARTER) {
      body.paragraph().say(Words.weigh(weigh));
    }
  }

  private void understood(Section.Builder to) {
    if (options.question() == WantedOptions.Question.STARTER) {
      options.dough().describeWithoutShare(to, temperature());
    } else {
      options.dough().describe(to, temperature());
    }
    options.room().ifPresent(room -> to.word("room", "", room.words()));
    options
        .end()
        .rise()
        .ifPresent(
            rise ->
                to.say(
                        "Bulk ends",
                        "when the sample jar has risen " + Words.percent(rise.percent()))
                    .number("risePercent", "", rise.percent(), Unit.PERCENT));
    options
        .end()
        .proof()
        .ifPresent(
            proof ->
                to.say("Bulk ends", "in time for the loaf: " + ProofOptions.words(proof))
                    .word("loaf", "", ProofOptions.words(proof)));
    to.number("members", "", found.forecast().ensemble().size(), Unit.COUNT);
    wanted(to);
  }

  private void wanted(Section.Builder to) {
    if (options.bulkHours().isPresent()) {
      to.say(
          "Wanted",
          "bulk fermentation of "
              + Words.duration(options.bulkHours().getAsDouble())
              + options.clock().map(times -> ", mixed " + times.startInWords()).orElse(""));
    }
    if (options.clock().isPresent()) {
      ClockTimes clock = options.clock().get();
      if (mixing) {
        to.say("Wanted", "to shape " + clock.startInWords());
      }
      to.at(mixing ? "shapeAt" : "mixedAt", "", 0, clock)
          .word("zone", "", clock.start().getZone().getId());
    }
  }

  private String temperature() {
    String own = options.stated().map(TemperatureSteps::words).orElse("asked");
    String at = options.room().isPresent() ? " at mixing, then drifting in a room of " : "";
    return own + options.room().map(room -> at + room.words()).orElse("");
  }
}
