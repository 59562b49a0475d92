package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.FlourFile;
import doughtide.cli.file.KitchenFile;
import doughtide.cli.file.StarterFile;
import doughtide.cli.options.KitchenOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.cli.text.OneLine;
import doughtide.core.document.Kitchen;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.io.PrintStream;
import java.util.List;
import java.util.Optional;

/** Shows, checks and sets what the baker's kitchen is like. */
public final class KitchenCommand implements Command {

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("kitchen", "what stays the same in your kitchen, kept once")
        .operands("[show | check | set KEY VALUE | unset KEY]", 0, 3)
        .options(KitchenOptions.file())
        .example("What your kitchen says, and where it is kept", "--kitchen", "kitchen.txt")
        .example(
            "Your room, kept for every later call", "set", "room", "19C", "--kitchen", "mine.txt")
        .example("Another kitchen", "set", "piece", "850g", "--kitchen", "school.txt")
        .note(
            "Keys: "
                + String.join(", ", Kitchen.keys())
                + ". An option on the command line wins over the kitchen, --no-kitchen leaves it"
                + " out. Without --kitchen the file is the one that DOUGHTIDE_KITCHEN names, else"
                + " kitchen.txt in your folder of settings.")
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) throws IOException {
    List<String> words = arguments.operands();
    String action = words.isEmpty() ? "show" : words.get(0);
    Environment environment = session.environment();
    KitchenFile file = file(arguments, environment);
    switch (action + " " + words.size()) {
      case "show 0", "show 1" -> show(file, environment, session.out());
      case "check 1" -> check(file, environment, session.out());
      case "set 3" -> set(file, words.get(1), Optional.of(words.get(2)), session);
      case "unset 2" -> set(file, words.get(1), Optional.empty(), session);
      default ->
          throw new InputException(
              "kitchen "
                  + FileProblem.quoted(String.join(" ", words))
                  + " is not understood: write kitchen, kitchen check, kitchen set room 19C or"
                  + " kitchen unset room");
    }
  }

  private static KitchenFile file(Arguments arguments, Environment environment) {
    return KitchenFile.of(arguments.text(KitchenFile.OPTION), environment)
        .orElseThrow(
            () ->
                new InputException(
                    "there is no place for settings here: name the file, for example --kitchen"
                        + " kitchen.txt"));
  }

  private static void show(KitchenFile file, Environment environment, PrintStream out) {
    Kitchen kitchen = file.exists() ? file.read(environment) : Kitchen.empty();
    if (kitchen.values().isEmpty()) {
      out.println(
          "Nothing is kept of your kitchen yet: write for example doughtide kitchen set room 19C");
    }
    kitchen.values().forEach((key, value) -> out.println(OneLine.of(key + ": " + value)));
    out.println();
    out.println("Kept in " + OneLine.of(file.shown()));
  }

  /** Reads the file, and the files that it names. */
  private static void check(KitchenFile file, Environment environment, PrintStream out) {
    if (!file.exists()) {
      throw new InputException(
          FileProblem.quoted(file.shown())
              + " does not exist: write for example doughtide kitchen set room 19C");
    }
    Kitchen kitchen = file.read(environment);
    kitchen
        .text("flour-file")
        .ifPresent(name -> FlourFile.read("flour-file", file.beside(name), environment));
    kitchen
        .text("starter-file")
        .ifPresent(name -> StarterFile.read("starter-file", file.beside(name), environment));
    out.println(
        "All "
            + kitchen.values().size()
            + " values of "
            + OneLine.of(file.shown())
            + " can be used.");
  }

  private static void set(KitchenFile file, String key, Optional<String> value, Session session)
      throws IOException {
    file.set(key, value, session.environment());
    session
        .out()
        .println(
            OneLine.of(
                (value.isPresent() ? "Kept: " + key + ": " + value.get() : "Taken out: " + key)
                    + ", in "
                    + file.shown()));
  }
}
