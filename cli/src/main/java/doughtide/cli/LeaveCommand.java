package doughtide.cli;

import doughtide.core.forecast.Proof;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.ShapeForecast;
import doughtide.core.planning.InverseQuestions;
import doughtide.core.planning.LeaveOption;
import doughtide.core.quantity.InputException;
import java.io.PrintStream;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** What can be done when the baker must leave during bulk fermentation. */
final class LeaveCommand implements Command {

  private static final String LEAVE_AT = "leave-at";
  private static final String BACK_AT = "back-at";
  private static final String NOW = "now";
  private static final double LONGEST_HOURS = 72;

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("leave", "what to do when you must leave during bulk fermentation")
        .options(DoughOptions.specs())
        .options(ClockOptions.specs())
        .options(
            OptionSpec.value(LEAVE_AT, "TIME", "15:00", "When you must leave: a time after mixing.")
                .required(),
            OptionSpec.value(
                    BACK_AT, "TIME", "19:00", "When you are back: a time after --leave-at.")
                .required(),
            OptionSpec.value(NOW, "TIME", "13:00", "What the clock says now.")
                .withDefault("the time now, where that is between mixing and leaving"))
        .options(ProofOptions.specs())
        .options(StarterOptions.file())
        .options(OutputOptions.format())
        .example(
            "Leaving at three, baking tomorrow",
            "--dough-temp",
            "25C",
            "--mixed-at",
            "2027-03-06T10:00",
            "--now",
            "13:00",
            "--leave-at",
            "15:00",
            "--back-at",
            "19:30",
            "--cold",
            "4C",
            "--bake-at",
            "07:30",
            "--zone",
            "Europe/Berlin")
        .note("Right at the oven: 85 to 125 % of the rise wanted there, and not past its best.")
        .note(BakeDayCommand.CAUTION)
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    OutputOptions.Format format = OutputOptions.format(arguments);
    if (format == OutputOptions.Format.CSV) {
      throw new InputException("--format csv is not written by leave: use text or json");
    }
    ClockTimes clock =
        ClockOptions.read(arguments, session.environment())
            .orElseThrow(() -> arguments.missing("mixed-at"));
    DoughOptions dough = DoughOptions.read(arguments, session.environment());
    double leave = hour(arguments, LEAVE_AT, clock, 0);
    double back = hour(arguments, BACK_AT, clock, leave);
    double now = now(arguments, clock, leave, session.environment());
    RiseForecast bulk =
        StarterOptions.forecaster(arguments, session.environment())
            .forecast(
                dough.formula(),
                dough.doughTemperature(arguments),
                Math.min(back + 2, LONGEST_HOURS));
    Proof proof =
        ProofOptions.read(arguments, Optional.of(clock))
            .orElseThrow(
                () ->
                    new InputException(
                        "how the loaves wait is missing: add --cold 4C --bake-at 07:30, or"
                            + " --proof-temp 24C"))
            .chosen(bulk);
    List<LeaveOption> options = InverseQuestions.leaveAt(bulk, now, leave, back, proof);
    if (options.isEmpty()) {
      throw new InputException(
          "nothing can be done in these hours: the oven's hour comes before the loaves are shaped,"
              + " bake later");
    }
    if (format == OutputOptions.Format.JSON) {
      json(options, clock, session.out());
    } else {
      page(options, clock, now).forEach(session.out()::println);
    }
  }

  private static double now(
      Arguments arguments, ClockTimes clock, double leave, Environment environment) {
    if (arguments.has(NOW)) {
      double now = hour(arguments, NOW, clock, 0);
      if (now > leave) {
        throw new InputException("--now lies after --leave-at: give the earlier time first");
      }
      return now;
    }
    double now =
        Duration.between(clock.start().toInstant(), environment.now()).toSeconds() / 3600.0;
    if (now < 0 || now > leave) {
      throw new InputException(
          "the time now is not between mixing and leaving: give it, for example --now 13:00");
    }
    return now;
  }

  /** The first such time more than an hour after mixing and after the one before it. */
  private static double hour(Arguments arguments, String option, ClockTimes clock, double after) {
    String text = arguments.text(option).orElseThrow(() -> arguments.missing(option));
    return clock.hoursUntil("--" + option, text).stream()
        .filter(hours -> hours > after)
        .filter(hours -> hours <= LONGEST_HOURS - 2)
        .findFirst()
        .orElseThrow(
            () ->
                new InputException(
                    Quantities.shown("--" + option, text)
                        + " must come later, and within three days after mixing: check the times"));
  }

  private static List<String> page(List<LeaveOption> options, ClockTimes clock, double now) {
    TextPage page = new TextPage();
    page.sentence("Mixed " + clock.startInWords() + "; now " + clock.at(now) + ".");
    int number = 1;
    for (LeaveOption option : options) {
      page.gap();
      page.sentence(
          (number == 1 ? "Best: " : "Or: ")
              + option.kind().words()
              + ", in the baskets by "
              + clock.at(option.shapedHours())
              + ".");
      page.sentence("  The dough has then risen " + range(option.riseWhenShaped()) + ".", 2);
      page.sentence(
          "  In the oven at "
              + clock.at(option.ovenHours())
              + ": risen "
              + range(option.riseAtBake())
              + "; "
              + (long) Math.floor(option.goodShare() * 10 + 1e-9)
              + " doughs in 10 are right.",
          2);
      page.sentence(
          "  Good to bake from "
              + at(option.bakeFrom().likely(), clock)
              + " until "
              + at(option.bakeUntil().likely(), clock)
              + " (likely).",
          2);
      number++;
    }
    page.gap();
    page.sentence(BakeDayCommand.CAUTION);
    return page.lines();
  }

  private static String at(OptionalDouble hours, ClockTimes clock) {
    return hours.isPresent() ? clock.at(hours.getAsDouble()) : "later than a day";
  }

  private static String range(ShapeForecast.RiseRange rise) {
    return percent(rise.low()) + " to " + percent(rise.high()) + " %";
  }

  private static String percent(OptionalDouble value) {
    return Words.rounded(value.orElse(Double.NaN), 0);
  }

  private static void json(List<LeaveOption> options, ClockTimes clock, PrintStream out) {
    JsonWriter json = new JsonWriter(out);
    json.beginObject().field("schema", "doughtide/leave/1").name("options").beginArray();
    for (LeaveOption option : options) {
      json.beginObject()
          .field("kind", option.kind().name().toLowerCase(Locale.ROOT))
          .field("shapedAt", clock.iso(option.shapedHours()))
          .field("riseWhenShapedPercent", option.riseWhenShaped().likely(), 1)
          .field("ovenAt", clock.iso(option.ovenHours()))
          .field("riseAtBakeLowPercent", option.riseAtBake().low(), 1)
          .field("riseAtBakePercent", option.riseAtBake().likely(), 1)
          .field("riseAtBakeHighPercent", option.riseAtBake().high(), 1)
          .field("goodShare", option.goodShare(), 3)
          .endObject();
    }
    json.endArray().endObject();
  }
}
