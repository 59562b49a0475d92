package doughtide.cli.command;

import doughtide.cli.answer.TextPage;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.TemperatureSteps;
import doughtide.cli.args.Words;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.text.Understood;
import doughtide.core.day.InverseAnswer.Reach;
import doughtide.core.day.InverseQuestions;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Starter;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Temperature;
import doughtide.report.words.Advice;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The answer to a question turned round, as a page of text. */
public final class WantedPage {

  private final WantedAnswer answer;
  private final WantedOptions options;
  private final TextPage page = new TextPage();

  private WantedPage(WantedAnswer answer) {
    this.answer = answer;
    this.options = answer.options();
  }

  public static List<String> of(WantedAnswer answer) {
    WantedPage page = new WantedPage(answer);
    page.understood();
    page.page.gap();
    page.said();
    if (answer.half().window().likely().isPresent() || answer.half().value().isPresent()) {
      page.page.gap();
      page.table();
      page.notes();
    }
    page.warnings();
    List<String> narrowing = Narrowing.lines(answer.widens());
    if (!narrowing.isEmpty()) {
      page.page.gap();
      narrowing.forEach(page.page::line);
    }
    page.page.gap();
    page.page.sentence(WantedCommand.CAUTION);
    return page.page.lines();
  }

  private void understood() {
    Understood understood = new Understood();
    DoughFormula formula = options.dough().formula();
    understood.add(
        "Dough",
        formula.flour().name()
            + "; hydration "
            + Words.percent(formula.hydration())
            + " (dough yield "
            + Words.rounded(formula.doughYield(), 1)
            + "); salt "
            + Words.percent(formula.salt()));
    understood.add("Starter", starter(formula));
    understood.add("Dough temperature", temperature());
    understood.add("Kitchen", Words.altitude(formula.altitude()));
    understood.add("Bulk ends", end());
    options
        .bulkHours()
        .ifPresent(
            hours ->
                understood.add(
                    "Wanted", "bulk fermentation of " + Words.duration(hours) + clock()));
    if (options.question() == WantedOptions.Question.MIX_AT) {
      understood.add("Wanted", "to shape " + options.clock().orElseThrow().startInWords());
    }
    page.understood(understood);
  }

  private String clock() {
    return options.clock().map(times -> ", mixed " + times.startInWords()).orElse("");
  }

  private String starter(DoughFormula formula) {
    Starter starter = formula.starter();
    String kind =
        Arguments.word(starter.condition())
            + ", "
            + starter.flour().name()
            + ", hydration "
            + Words.percent(starter.hydration());
    if (options.question() == WantedOptions.Question.STARTER) {
      return kind + "; its share is asked";
    }
    boolean assumed = options.dough().starterWord() == DoughOptions.StarterWord.ASSUMED;
    return share(formula) + (assumed ? " (assumed, say --starter)" : "") + "; " + kind;
  }

  private static String share(DoughFormula formula) {
    return Words.percent(100 * formula.starterOfAddedFlour())
        + " of the flour added = "
        + Words.percent(100 * formula.prefermentedFlour())
        + " prefermented flour";
  }

  private String temperature() {
    String own = options.stated().map(TemperatureSteps::words).orElse("asked");
    String at = options.room().isPresent() ? " at mixing, then drifting in a room of " : "";
    return own + options.room().map(room -> at + room.words()).orElse("");
  }

  private String end() {
    return options
        .end()
        .proof()
        .map(proof -> "in time for the loaf: " + ProofOptions.words(proof))
        .orElseGet(
            () ->
                "when the sample jar has risen "
                    + Words.percent(options.end().rise().orElseThrow().percent()));
  }

  private void said() {
    WantedAnswer.Row half = answer.half();
    if (half.value().isEmpty()) {
      page.sentence(
          "No time of mixing does it: half of the doughs never get there. Ask for a lower rise or"
              + " another proof.");
      return;
    }
    switch (half.reach()) {
      case ON_TIME -> page.sentence(found(half.value().getAsDouble()));
      case NOT_SO_SOON -> page.sentence(notSoSoon());
      case NOT_SO_LATE -> page.sentence(notSoLate());
    }
    if (half.reach() == Reach.ON_TIME || options.question() == WantedOptions.Question.STARTER) {
      weigh();
    }
    if (options.end().proof().isPresent() && answer.rise().likely().isPresent()) {
      page.sentence(
          "Shape when the sample jar has risen "
              + whole(answer.rise().likely())
              + " % ("
              + whole(answer.rise().low())
              + " to "
              + whole(answer.rise().high())
              + " %).");
    }
  }

  private static String whole(OptionalDouble percent) {
    return percent.isPresent() ? Words.rounded(percent.getAsDouble(), 0) : "–";
  }

  private String found(double value) {
    return switch (options.question()) {
      case STARTER -> "Starter: " + share(answer.formula()) + ".";
      case DOUGH_TEMP ->
          "Dough temperature after mixing: "
              + Words.temperature(Temperature.ofCelsius(value))
              + ". How warm to pour the water for it: doughtide water.";
      case MIX_AT -> {
        OptionalDouble nine = answer.rows().get(1).value();
        String latest =
            nine.isPresent()
                ? "Mix by " + at(nine.getAsDouble()) + ": then nine doughs in ten are there."
                : "No time of mixing gets nine doughs in ten there.";
        yield latest + " Half are when mixed at " + at(value) + ".";
      }
    };
  }

  private String at(double hour) {
    return options.clock().orElseThrow().about(hour);
  }

  private String notSoSoon() {
    String takes =
        answer.half().window().likely().isPresent()
            ? " bulk fermentation still takes "
                + Words.about(answer.half().window().likely().getAsDouble())
                + " (likely)."
            : " half of the doughs never get there.";
    return switch (options.question()) {
      case STARTER ->
          "No starter share does it: even with "
              + Words.percent(InverseQuestions.MOST_STARTER_PERCENT)
              + " of the flour added, the most that is looked at,"
              + takes
              + " That comes nearest. Quicker: a warmer dough, or a lower rise.";
      case DOUGH_TEMP, MIX_AT ->
          "No dough temperature does it: even at "
              + Words.temperature(Temperature.ofCelsius(InverseQuestions.WARMEST_CELSIUS))
              + ", the warmest that is looked at,"
              + takes
              + " That comes nearest. Quicker: more starter, or a lower rise.";
    };
  }

  private String notSoLate() {
    String takes =
        answer.half().window().likely().stream()
            .mapToObj(hours -> " it is over after " + Words.about(hours) + " (likely).")
            .findFirst()
            .orElse(" a slower dough does not get there at all.");
    double value = answer.half().value().orElseThrow();
    return switch (options.question()) {
      case STARTER ->
          "No starter share makes it last so long: with "
              + Words.percent(value)
              + " of the flour added"
              + takes
              + " That comes nearest. Slower: a cooler dough, or a part of the time in the cold.";
      case DOUGH_TEMP, MIX_AT ->
          "No dough temperature makes it last so long: at "
              + Words.temperature(Temperature.ofCelsius(value))
              + takes
              + " That comes nearest. Slower: less starter, or a part of the time in the cold.";
    };
  }

  private void weigh() {
    options
        .amount()
        .ifPresent(amount -> page.sentence(Words.weigh(amount.ingredients(answer.formula()))));
  }

  private void table() {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of(heading(), options.question().column(), "early", "likely", "late"));
    for (WantedAnswer.Row row : answer.rows()) {
      if (isWorthSaying(row)) {
        rows.add(cells(row));
      }
    }
    page.table(rows);
  }

  /** Where not even half of the doughs can be in time, the nearest is said once. */
  private boolean isWorthSaying(WantedAnswer.Row row) {
    return row.doughs() == WantedAnswer.Doughs.HALF
        || answer.half().reach() == Reach.ON_TIME
        || (row.value().isPresent() && row.reach() == Reach.ON_TIME);
  }

  private List<String> cells(WantedAnswer.Row row) {
    return List.of(
        row.doughs().words(),
        value(row),
        cell(row, row.window().early()),
        cell(row, row.window().likely()),
        cell(row, row.window().late()));
  }

  private String heading() {
    return options.bulkHours().stream()
        .mapToObj(hours -> "There after " + Words.duration(hours))
        .findFirst()
        .orElseGet(() -> "There at " + at(0));
  }

  private String value(WantedAnswer.Row row) {
    if (row.value().isEmpty()) {
      return "none";
    }
    double value = row.value().getAsDouble();
    String bound = bound(row);
    return switch (options.question()) {
      case STARTER -> bound + Words.percent(value);
      case DOUGH_TEMP -> bound + Words.rounded(value, 1) + " °C";
      case MIX_AT -> at(value);
    };
  }

  private static String bound(WantedAnswer.Row row) {
    if (row.doughs() == WantedAnswer.Doughs.HALF || row.reach() == Reach.ON_TIME) {
      return "";
    }
    return row.reach() == Reach.NOT_SO_SOON ? "over " : "under ";
  }

  private String cell(WantedAnswer.Row row, OptionalDouble hours) {
    if (hours.isEmpty() || !bound(row).isEmpty()) {
      return "–";
    }
    double after = hours.getAsDouble();
    if (options.question() == WantedOptions.Question.MIX_AT) {
      return row.value().isPresent() ? at(row.value().getAsDouble() + after) : "–";
    }
    Optional<String> clock = options.clock().map(times -> times.about(after));
    return clock.orElseGet(() -> Words.about(after));
  }

  private void notes() {
    page.gap();
    page.sentence(
        "One dough in ten is there before the early time, half before the likely one, nine in ten"
            + " before the late one."
            + (hasGaps() ? " –: so many are not, with any that is looked at." : ""));
  }

  private boolean hasGaps() {
    return answer.rows().stream()
        .filter(this::isWorthSaying)
        .anyMatch(row -> cells(row).contains("–"));
  }

  private void warnings() {
    for (Warning warning : answer.forecast().warnings()) {
      page.gap();
      page.sentence("! " + Advice.english(warning).sentences(), 2);
    }
  }
}
