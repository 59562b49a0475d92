package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.text.Paragraph;
import doughtide.cli.text.Understood;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.report.words.Advice;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The answer as a page of text. */
public final class RisePage {

  private static final int LABEL = 15;
  private static final int NARROW = 14;
  private static final int CLOCK = 11;

  private final RiseAnswer answer;
  private final Optional<ClockTimes> clock;
  private final List<String> lines = new ArrayList<>();

  private RisePage(RiseAnswer answer) {
    this.answer = answer;
    this.clock = answer.clock();
  }

  /** The lines of the page, at most 80 columns each. */
  public static List<String> of(RiseAnswer answer) {
    RisePage page = new RisePage(answer);
    page.understood();
    if (answer.isPossible()) {
      page.table();
      page.warmth();
      page.loaf();
      page.jar();
    }
    page.warnings();
    page.narrowing();
    page.lines.add("");
    page.lines.add("Caution: " + RiseCommand.CAUTION);
    return page.lines;
  }

  private void understood() {
    Understood block = new Understood();
    answer.dough().describe(block, answer.temperature().words());
    answer.temperature().vessel().ifPresent(vessel -> block.add("Vessel", vessel));
    answer.proof().ifPresent(loaf -> block.add("Loaf", ProofOptions.words(loaf.proof())));
    clock.ifPresent(times -> block.add("Mixed", times.startInWords()));
    lines.addAll(block.lines());
  }

  private void table() {
    lines.add("");
    lines.add(head());
    for (RiseAnswer.Passing passing : answer.passings()) {
      lines.add(row("risen " + Words.percent(passing.rise().percent()), passing.when()));
    }
    lines.add(row("past its best", answer.over()));
    lines.add("");
    say(
        "",
        "One dough in ten is there before the early time, half before the likely one, nine in"
            + " ten before the late one."
            + (hasGaps()
                ? " –: not reached in the "
                    + Words.rounded(answer.forecast().hours(), 0)
                    + " hours looked at."
                : ""));
    clock
        .flatMap(times -> times.clockChange(answer.forecast().hours()))
        .ifPresent(change -> say("", "Clock: " + change + "."));
    if (lines.stream().anyMatch(line -> line.matches(".*\\d\\d:\\d\\d[AB].*"))) {
      say("", "A and B: the first and the second of the hour that comes twice.");
    }
  }

  private String head() {
    return clock.isPresent()
        ? padded(row("", "early", "likely", "late"), LABEL + 3 * CLOCK) + "after mixing"
        : row("After mixing", "early", "likely", "late");
  }

  /** The dough's own temperature, where it changes. */
  private void warmth() {
    if (!answer.drifts()) {
      return;
    }
    String course =
        answer.warmth().stream()
            .filter(each -> List.of(1.0, 2.0, 4.0, 6.0, 8.0, 12.0, 16.0).contains(each.hours()))
            .map(
                each ->
                    Words.rounded(each.hours(), 0)
                        + " h "
                        + Words.rounded(each.celsius(), 1)
                        + " °C")
            .collect(Collectors.joining(", "));
    lines.add("");
    say("", "The dough itself, likely, after: " + course + ".");
  }

  private void loaf() {
    answer
        .night()
        .ifPresent(night -> new NightPage(answer, night, this::row).lines().forEach(lines::add));
  }

  private void jar() {
    answer
        .jar()
        .filter(jar -> jar.reads().likely().isPresent())
        .ifPresent(
            jar -> {
              lines.add("");
              say(
                  "",
                  "Sample jar of "
                      + Words.grams(answer.temperature().jar().orElseThrow().mass().grams())
                      + ": when the dough has risen "
                      + whole(jar.point().percent())
                      + ", the jar reads "
                      + whole(jar.reads().likely().getAsDouble())
                      + " ("
                      + whole(jar.reads().low().orElseThrow())
                      + " to "
                      + whole(jar.reads().high().orElseThrow())
                      + "). It takes on the room's temperature sooner: the dough is then at "
                      + Words.rounded(jar.doughCelsius(), 1)
                      + " °C, the jar at "
                      + Words.rounded(jar.jarCelsius(), 1)
                      + " °C.");
            });
  }

  public static String whole(double percent) {
    return Words.rounded(percent, 0) + " %";
  }

  private boolean hasGaps() {
    return answer.passings().stream().anyMatch(p -> p.when().late().isEmpty())
        || answer.over().late().isEmpty();
  }

  /** Hours after mixing, or clock times and behind them the hours from early to late. */
  private String row(String label, TimeWindow when) {
    String cells = row(label, cell(when.early()), cell(when.likely()), cell(when.late()));
    return clock.isPresent() ? padded(cells, LABEL + 3 * CLOCK) + elapsed(when) : cells;
  }

  private String row(String label, String early, String likely, String late) {
    int width = clock.isPresent() ? CLOCK : NARROW;
    StringBuilder row = new StringBuilder(padded(label, LABEL));
    row.append(padded(early, width)).append(padded(likely, width)).append(late);
    return row.toString().stripTrailing();
  }

  private String cell(OptionalDouble hours) {
    if (hours.isEmpty()) {
      return "–";
    }
    return clock
        .map(times -> times.about(hours.getAsDouble()))
        .orElseGet(() -> Words.about(hours.getAsDouble()));
  }

  private static String elapsed(TimeWindow when) {
    if (when.early().isEmpty()) {
      return "–";
    }
    String from = Words.about(when.early().getAsDouble());
    return when.late().isPresent()
        ? from + " – " + Words.about(when.late().getAsDouble())
        : "from " + from;
  }

  private void warnings() {
    for (Warning warning : answer.warnings()) {
      lines.add("");
      Advice advice = Advice.english(warning);
      say("! ", advice.text());
      if (!advice.remedy().isEmpty()) {
        say("  ", advice.remedy());
      }
    }
  }

  private void narrowing() {
    List<String> narrowing = Narrowing.lines(answer.widens());
    if (!narrowing.isEmpty()) {
      lines.add("");
      lines.addAll(narrowing);
    }
  }

  private void say(String lead, String text) {
    lines.addAll(Paragraph.lines(lead, text));
  }

  public static String padded(String text, int width) {
    return text + " ".repeat(Math.max(1, width - text.length()));
  }
}
