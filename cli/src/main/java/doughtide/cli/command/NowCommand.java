package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Speech;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.hand.Absence;
import doughtide.cli.hand.Cautions;
import doughtide.cli.hand.DoughFiles;
import doughtide.cli.hand.DoughInHand;
import doughtide.cli.hand.HandPage;
import doughtide.cli.hand.NowSections;
import doughtide.cli.options.ColdOptions;
import doughtide.cli.options.KitchenOptions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.PageOptions;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.options.TemperatureOptions;
import doughtide.cli.options.WordsOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.quantity.Rise;
import java.util.Optional;
import java.util.SortedSet;

/** How a dough in hand stands: when to shape, when to look, how far ahead or behind it is. */
public final class NowCommand implements Command {

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("now", "when to shape the dough in hand, and when to look next")
        .operands("[NAME]", 0, 1)
        .everyday("leave-at", "back-at", "cold", "bake-at", "rise", "page", "language", "format")
        .options(Absence.specs())
        .options(
            OptionSpec.value(DoughInHand.NOW, "TIME", "13:00", "What the clock says now.")
                .withDefault("the time now"))
        .options(ProofOptions.specs())
        .options(ColdOptions.specs())
        .options(
            TemperatureOptions.withoutJar().stream()
                .filter(option -> option.name().equals(TemperatureOptions.DOUGH_MASS))
                .toList())
        .options(RiseCommand.rise(), StarterOptions.file(), ReadingsFile.skipOption())
        .options(OutputOptions.format(), PageOptions.spec("dough.html"), OutputOptions.overwrite())
        .options(WordsOptions.ofAnswerAndPage())
        .example("The newest dough of this folder that is in hand")
        .example("One of several, or a file typed by hand", "saturday")
        .example(
            "I must go at three, and bake tomorrow",
            "--leave-at",
            "15:00",
            "--back-at",
            "18:00",
            "--cold",
            "4C",
            "--bake-at",
            "07:00")
        .note(
            "Doughs begin with doughtide start; the options change what the file of the dough says,"
                + " for this answer.")
        .note("Caution: " + Cautions.RAW)
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    OutputOptions.Format format = OutputOptions.format(arguments);
    Environment environment = session.environment();
    Optional<PageOptions> page = PageOptions.read(arguments, environment);
    WordsOptions.scaleAndClockOnlyWithPicture(arguments);
    String name =
        arguments.operands().isEmpty()
            ? DoughFiles.newest(environment)
            : DoughFiles.named(arguments.operands().get(0), environment);
    ReadingsFile file =
        ReadingsFile.inHand("NAME", name, ReadingsFile.badLines(arguments), session);
    DoughInHand dough = DoughInHand.of(file, arguments, environment);
    SortedSet<Rise> rises = RiseCommand.rises(arguments);
    Speech speech = WordsOptions.speech(dough.arguments(), format);
    print(NowSections.of(dough, rises, speech), arguments, dough, session);
    page.ifPresent(each -> HandPage.write(dough, rises, Optional.empty(), each));
    page.ifPresent(each -> each.say(format, speech, session.out()));
  }

  /** Prints an answer about a dough in hand, and what it took from the kitchen. */
  static void print(Answer answer, Arguments asked, DoughInHand dough, Session session) {
    RiseCommand.print(answer, OutputOptions.format(asked), session);
    asked.part(dough.arguments());
    KitchenOptions.say(asked, answer.speech(), session.out());
  }
}
