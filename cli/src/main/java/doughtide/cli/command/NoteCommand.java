package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.Speech;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.hand.DoughFiles;
import doughtide.cli.hand.DoughInHand;
import doughtide.cli.hand.DoughNote;
import doughtide.cli.hand.LoafNote;
import doughtide.cli.hand.NoteWords;
import doughtide.cli.hand.NowSections;
import doughtide.cli.options.KitchenOptions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.WordsOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.quantity.InputException;
import java.util.Map;

/** Adds a line to the file of a dough in hand. */
public final class NoteCommand implements Command {

  private static final int MOST_WORDS = 60;

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("note", "adds what you read off the dough in hand to its file")
        .operands("[NAME] [TIME] WHAT …", 0, MOST_WORDS)
        .options(OutputOptions.formatWithoutCsv(), WordsOptions.ofAnswer())
        .example("At half past one: risen 44 %, 24 °C", "13:30", "44%", "24C")
        .example("Now: a height in the jar", "78mm")
        .example("Of one of several doughs", "saturday", "9.30", "44%")
        .example("A fold, now", "fold")
        .example("The loaf is shaped, now", "shaped")
        .example("The loaf goes into the cold, now", "into-cold")
        .example("A probe in its middle, in the cold", "core", "12C")
        .example("How the loaf came out", "result", "right", "crumb", "even", "crust", "brown")
        .note(
            "Without NAME the newest dough of this folder that is in hand is meant. A height needs"
                + " the height at the start (doughtide start --jar-height). The file is replaced as"
                + " a whole; every other line in it stays as it was.")
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    OutputOptions.Format format = OutputOptions.format(arguments);
    if (format == OutputOptions.Format.CSV) {
      throw OutputOptions.noCsv("note");
    }
    NoteWords words = NoteWords.of(arguments.operands());
    if (words.isEmpty()) {
      throw new InputException(
          words
                  .name()
                  .map(name -> FileProblem.quoted(name) + " alone notes nothing")
                  .orElse("nothing is noted")
              + ": write for example doughtide note 13:30 44% 24C");
    }
    Environment environment = session.environment();
    Arguments asked = arguments.as(KitchenOptions.added(new NowCommand().spec()));
    Speech speech = WordsOptions.speech(asked, format);
    String name =
        words
            .name()
            .map(typed -> DoughFiles.named(typed, environment))
            .orElseGet(() -> DoughFiles.newest(environment));
    DoughNote note =
        words.isResult()
            ? DoughNote.of(name, LoafNote.of(words.result()), speech, environment)
            : DoughNote.of(name, words, speech, session);
    OutputFile.of("NAME", name, OutputFile.Existing.RENEW, environment).write(note.text());
    String done =
        speech.say("now.noted", Map.of("file", FileProblem.quoted(name), "what", note.said()));
    try {
      DoughInHand dough = DoughInHand.of(new ReadingsFile(note.document()), asked, environment);
      Answer answer =
          words.isResult()
              ? NowSections.ofResult(
                  done,
                  note.document().head().result().orElseThrow(),
                  dough,
                  WordsOptions.speech(dough.arguments(), format))
              : NowSections.brief(
                  "note", done, dough, WordsOptions.speech(dough.arguments(), format));
      NowCommand.print(answer, arguments, dough, session);
    } catch (InputException noHours) {
      session.out().println(Speech.plain(done));
      arguments.note(String.valueOf(noHours.getMessage()));
    }
  }
}
