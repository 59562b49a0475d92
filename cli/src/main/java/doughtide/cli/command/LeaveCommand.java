package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Words;
import doughtide.cli.hand.Absence;
import doughtide.cli.hand.Cautions;
import doughtide.cli.hand.DoughInHand;
import doughtide.cli.hand.LeaveSections;
import doughtide.cli.hand.WaysOut;
import doughtide.cli.options.ClockOptions;
import doughtide.cli.options.ColdOptions;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.options.TemperatureOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.day.question.InverseQuestions;
import doughtide.core.day.question.LeaveOption;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.learning.Reading;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.InputException;
import doughtide.report.words.Advice;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What can be done when the baker must leave during bulk fermentation. */
public final class LeaveCommand implements Command {

  private static final String LEAVE_AT = "leave-at";
  private static final String BACK_AT = "back-at";
  private static final String NOW = "now";

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("leave", "what to do when you must leave during bulk fermentation")
        .everyday(
            "leave-at",
            "back-at",
            "now",
            "mixed-at",
            "dough-temp",
            "starter",
            "room",
            "cold",
            "bake-at",
            "proof-temp",
            "readings")
        .options(DoughOptions.specs())
        .options(TemperatureOptions.withoutJar())
        .options(ClockOptions.specs())
        .options(Absence.specs().stream().map(OptionSpec::required).toList())
        .options(
            OptionSpec.value(NOW, "TIME", "13:00", "What the clock says now.")
                .withDefault(
                    "the time now, where that is between mixing and leaving, or the last of the"
                        + " --readings"))
        .options(ProofOptions.specs())
        .options(ColdOptions.specs())
        .options(StarterOptions.specs())
        .options(OutputOptions.formatWithoutCsv())
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
        .example(
            "The dough in hand, with its readings so far",
            "--readings",
            "quayside-today.csv",
            "--leave-at",
            "14:00",
            "--back-at",
            "18:00",
            "--cold",
            "4C",
            "--bake-at",
            "07:00")
        .note(
            "Right at the oven: from 85 % of the rise wanted there until nine tenths of the"
                + " greatest height of its own dough, and neither fallen nor weak.")
        .note("Caution: " + Cautions.OVEN)
        .build();
  }

  /** A dough that is rising, with its clock. */
  private record Rising(
      ClockTimes clock, RiseForecast bulk, OptionalDouble lastReadingHours, List<String> words) {}

  @Override
  public void run(Arguments given, Session session) {
    OutputOptions.Format format = OutputOptions.format(given);
    if (format == OutputOptions.Format.CSV) {
      throw OutputOptions.noCsv("leave");
    }
    Optional<DoughInHand> inHand =
        given.has(StarterOptions.READINGS)
            ? Optional.of(DoughInHand.read(given, replaced(), session))
            : Optional.empty();
    Arguments arguments = inHand.map(DoughInHand::arguments).orElse(given);
    Rising rising =
        inHand
            .map(LeaveCommand::inHand)
            .orElseGet(() -> described(arguments, session.environment()));
    ClockTimes clock = rising.clock();
    double leave = Absence.hour(arguments, LEAVE_AT, clock, 0);
    double back = Absence.hour(arguments, BACK_AT, clock, leave);
    double now = now(arguments, rising, leave, session.environment());
    Proof chosen =
        ProofOptions.read(arguments, Optional.of(clock))
            .orElseThrow(Absence::withoutLoaves)
            .chosen(rising.bulk());
    Proof proof = ColdOptions.kept(arguments, session.environment(), chosen);
    List<LeaveOption> options =
        InverseQuestions.leaveAt(
            rising.bulk(), now, leave, back, proof, TemperatureOptions.doughMass(arguments));
    if (options.isEmpty()) {
      throw new InputException(nothing(rising.bulk()));
    }
    Answer answer = LeaveSections.of(rising.words(), options, clock, now);
    if (format == OutputOptions.Format.JSON) {
      answer.fromKitchen(arguments.fromKitchen()).json(session.out());
    } else {
      answer.text(session.out());
    }
  }

  private static String nothing(RiseForecast bulk) {
    if (bulk.isPossible()) {
      return "nothing can be done in these hours: the oven's hour comes before the loaves are"
          + " shaped, bake later";
    }
    return Advice.english(bulk.warnings().get(0)).sentences();
  }

  /** Options that the file of a dough in hand takes the place of. */
  private static List<OptionSpec> replaced() {
    List<OptionSpec> replaced = new ArrayList<>(DoughOptions.specs());
    replaced.addAll(ClockOptions.specs());
    TemperatureOptions.withoutJar().stream()
        .filter(option -> !option.name().equals(TemperatureOptions.DOUGH_MASS))
        .forEach(replaced::add);
    return replaced;
  }

  private static Rising described(Arguments arguments, Environment environment) {
    RiseForecaster forecaster = StarterOptions.forecaster(arguments, environment);
    ClockTimes clock =
        ClockOptions.read(arguments, environment).orElseThrow(() -> arguments.missing("mixed-at"));
    DoughOptions dough = DoughOptions.read(arguments, environment);
    TemperatureOptions temperature =
        TemperatureOptions.readWithMass(arguments, dough, Optional.of(clock), environment);
    RiseForecast bulk =
        forecaster.forecast(dough.formula(), temperature.dough(), WaysOut.RUN_HOURS);
    List<String> words =
        temperature.vessel().isPresent() || arguments.has(TemperatureOptions.TEMPS)
            ? List.of(temperature.words())
            : List.of();
    return new Rising(clock, bulk, OptionalDouble.empty(), words);
  }

  private static Rising inHand(DoughInHand dough) {
    ClockTimes clock =
        dough
            .clock()
            .orElseThrow(
                () ->
                    new InputException(
                        "the file of --readings does not say when the dough was mixed: add a line"
                            + " at its top, for example mixed at: 2027-03-06T10:00"));
    RiseForecast bulk = dough.forecast(WaysOut.RUN_HOURS);
    List<Reading> readings = dough.file().bake().readings();
    OptionalDouble last =
        readings.isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(readings.get(readings.size() - 1).hours());
    return new Rising(
        clock,
        bulk,
        last,
        List.of(
            "with "
                + Words.counted(dough.file().given(), "reading")
                + dough.file().leftOutWords()
                + "; it is taken to keep its last temperature"));
  }

  private static double now(
      Arguments arguments, Rising rising, double leave, Environment environment) {
    ClockTimes clock = rising.clock();
    if (arguments.has(NOW)) {
      double now = Absence.hour(arguments, NOW, clock, -1);
      if (now > leave) {
        throw new InputException("--now lies after --leave-at: give the earlier time first");
      }
      return now;
    }
    double now =
        Duration.between(clock.start().toInstant(), environment.now()).toSeconds() / 3600.0;
    if (now >= 0 && now <= leave) {
      return now;
    }
    double last = rising.lastReadingHours().orElse(Double.NaN);
    if (last >= 0 && last <= leave) {
      return last;
    }
    throw new InputException(
        "the time now is not between mixing and leaving: give it, for example --now 13:00");
  }
}
