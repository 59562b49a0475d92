package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.options.MixerOptions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.WaterOptions;
import doughtide.cli.session.Session;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** The temperature of the water, of the dough it gives, and what mixing did. */
public final class WaterCommand implements Command {

  private static final String RULES = "rules";

  public static final List<String> CAUTIONS =
      List.of(
          "Water above 45 °C kills the starter where they meet, and hotter water scalds.",
          "Raw flour and raw dough are not for tasting.");

  @Override
  public CommandSpec spec() {
    CommandSpec.Builder spec =
        CommandSpec.named("water", "how warm the water must be for a wanted dough temperature")
            .everyday(
                "dough-temp",
                "room",
                "flour-temp",
                "starter-temp",
                "friction",
                "warming",
                "tap",
                "pour",
                "got",
                "dough-mass",
                "bowl",
                "format")
            .options(WaterOptions.specs())
            .options(MixerOptions.specs())
            .options(
                OptionSpec.flag(
                    RULES, "Also the trade's rules, and why they differ from the balance of heat."))
            .options(OutputOptions.formatWithoutCsv())
            .example(
                "Water for a dough of 26 °C",
                "--dough-temp",
                "26C",
                "--room",
                "21C",
                "--flour-temp",
                "20C",
                "--starter-temp",
                "24C",
                "--friction",
                "4C",
                "--dough-mass",
                "1800g")
            .example(
                "A summer kitchen, with ice",
                "--dough-temp",
                "24C",
                "--room",
                "31C",
                "--tap",
                "24C",
                "--warming",
                "3C",
                "--bowl",
                "steel:600g")
            .example("Which dough this water gives", "--pour", "30C", "--room", "70F")
            .example("What mixing did", "--pour", "30C", "--got", "25.5C", "--room", "21C")
            .note(
                "The answer is a balance of heat, which weighs what is mixed. The trade's rule that"
                    + " --rules shows beside it, wanted temperature times the number of factors"
                    + " less the factors known, counts all as equally heavy.");
    CAUTIONS.forEach(spec::note);
    return spec.build();
  }

  @Override
  public void run(Arguments arguments, Session session) throws IOException {
    OutputOptions.Format format = OutputOptions.format(arguments);
    if (format == OutputOptions.Format.CSV) {
      throw OutputOptions.noCsv("water");
    }
    arguments.exclusive(WaterOptions.DOUGH_TEMP, WaterOptions.POUR);
    MixerOptions.check(arguments);
    WaterOptions options = WaterOptions.read(arguments, session.environment());
    Optional<Temperature> wanted = arguments.temperature(WaterOptions.DOUGH_TEMP);
    Optional<Temperature> pour = arguments.temperature(WaterOptions.POUR);
    Optional<Temperature> got = arguments.temperature(WaterOptions.GOT);
    Optional<Temperature> tap = arguments.temperature(WaterOptions.TAP);
    if (wanted.isEmpty() && pour.isEmpty()) {
      throw new InputException(
          "--dough-temp is missing: write for example --dough-temp 25C, or --pour 30C to ask what"
              + " dough that water gives");
    }
    if (got.isPresent() && pour.isEmpty()) {
      throw new InputException(
          "--got needs the water as it was poured: add for example --pour 30C");
    }
    if (tap.isPresent() && wanted.isEmpty()) {
      throw new InputException("--tap says nothing with --pour: leave it out");
    }
    WaterAnswers answers = WaterAnswers.of(options, wanted, pour, got, tap);
    Optional<String> kept = Optional.empty();
    if (answers.question() instanceof WaterAnswers.Mixed mixed) {
      kept = MixerOptions.keep(arguments, session.environment(), mixed.mixing());
    }
    Answer answer = WaterSections.of(answers, arguments.has(RULES));
    if (format == OutputOptions.Format.JSON) {
      answer.fromKitchen(arguments.fromKitchen()).json(session.out());
    } else {
      answer.text(session.out());
      kept.ifPresent(session.out()::println);
    }
  }
}
