package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.hand.Cautions;
import doughtide.cli.options.ClockOptions;
import doughtide.cli.options.ColdOptions;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.options.TemperatureOptions;
import doughtide.cli.options.WantedOptions;
import doughtide.cli.session.Session;

/** The questions turned round: which starter share, which dough temperature, when to mix. */
public final class WantedCommand implements Command {

  @Override
  public CommandSpec spec() {
    return CommandSpec.named(
            "wanted", "the starter or dough temperature for a wanted bulk time, or when to mix")
        .everyday(
            "bulk",
            "shape-at",
            "dough-temp",
            "starter",
            "rise",
            "room",
            "all-flour",
            "cold",
            "bake-at",
            "mixed-at",
            "format")
        .options(WantedOptions.specs())
        .options(DoughOptions.specs())
        .options(TemperatureOptions.vesselSpecs())
        .options(ProofOptions.specs())
        .options(ColdOptions.specs())
        .options(ClockOptions.specs())
        .options(StarterOptions.file())
        .options(OutputOptions.format())
        .example(
            "How much starter for six hours",
            "--bulk",
            "6h",
            "--dough-temp",
            "24C",
            "--hydration",
            "72%",
            "--all-flour",
            "1000g")
        .example("How warm a dough for six hours", "--bulk", "6h", "--starter", "15%")
        .example(
            "When to mix, to shape at seven and bake in the morning",
            "--shape-at",
            "2027-03-06T19:00",
            "--starter",
            "15%",
            "--dough-temp",
            "24C",
            "--cold",
            "4C",
            "--bake-at",
            "07:00",
            "--zone",
            "Europe/Berlin")
        .note(
            "Answers from 0.5 to 60 % starter and from 14 to 28 °C. Leave out what you ask for:"
                + " of time, starter and dough temperature two are given.")
        .note("Caution: " + Cautions.RAW)
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    OutputOptions.Format format = OutputOptions.format(arguments);
    WantedOptions options = WantedOptions.read(arguments, session.environment());
    WantedAnswer answer =
        WantedAnswer.of(options, StarterOptions.forecaster(arguments, session.environment()));
    switch (format) {
      case TEXT -> WantedSections.of(answer).text(session.out());
      case JSON ->
          WantedSections.of(answer).fromKitchen(arguments.fromKitchen()).json(session.out());
      case CSV -> WantedSections.of(answer).csv(session.out());
    }
  }
}
