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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Shows, checks and sets what the baker's kitchen is like. */
public final class KitchenCommand implements Command {

  /** The action, and every key with its value. */
  private static final int MOST_WORDS = 1 + 2 * Kitchen.keys().size();

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("kitchen", "what stays the same in your kitchen, kept once")
        .operands("[show | check | set KEY VALUE … | unset KEY …]", 0, MOST_WORDS)
        .options(KitchenOptions.file())
        .example("What your kitchen says, and where it is kept", "--kitchen", "kitchen.txt")
        .example(
            "Your room and your cold, kept for every later call",
            "set",
            "room",
            "19C",
            "cold",
            "4C",
            "--kitchen",
            "mine.txt")
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
    List<String> rest = words.isEmpty() ? words : words.subList(1, words.size());
    switch (action) {
      case "set" -> change(file, set(rest), session);
      case "unset" -> change(file, unset(rest), session);
      case "show" -> {
        checkAlone(rest, words);
        show(file, environment, session.out());
      }
      case "check" -> {
        checkAlone(rest, words);
        check(file, environment, session.out());
      }
      default -> throw notUnderstood(words);
    }
  }

  private static void checkAlone(List<String> rest, List<String> words) {
    if (!rest.isEmpty()) {
      throw notUnderstood(words);
    }
  }

  private static InputException notUnderstood(List<String> words) {
    return new InputException(
        "kitchen "
            + FileProblem.quoted(String.join(" ", words))
            + " is not understood: write kitchen, kitchen check, kitchen set room 19C or"
            + " kitchen unset room");
  }

  private static Map<String, Optional<String>> set(List<String> words) {
    if (words.isEmpty() || words.size() % 2 != 0) {
      throw new InputException(
          "kitchen set "
              + FileProblem.quoted(String.join(" ", words))
              + " takes a key and its value in turn, for example kitchen set room 19C cold 4C: put"
              + " a value that holds spaces in quotes");
    }
    Map<String, Optional<String>> changes = new LinkedHashMap<>();
    for (int i = 0; i < words.size(); i += 2) {
      add(changes, words.get(i), Optional.of(words.get(i + 1)));
    }
    return changes;
  }

  private static Map<String, Optional<String>> unset(List<String> words) {
    if (words.isEmpty()) {
      throw new InputException("kitchen unset names no key: write for example kitchen unset room");
    }
    Map<String, Optional<String>> changes = new LinkedHashMap<>();
    words.forEach(key -> add(changes, key, Optional.empty()));
    return changes;
  }

  private static void add(
      Map<String, Optional<String>> changes, String key, Optional<String> value) {
    if (changes.put(key, value) != null) {
      throw new InputException("kitchen names " + FileProblem.quoted(key) + " twice: name it once");
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

  private static void change(
      KitchenFile file, Map<String, Optional<String>> changes, Session session) throws IOException {
    file.set(changes, session.environment());
    String text =
        changes.entrySet().stream()
            .map(each -> each.getKey() + each.getValue().map(value -> ": " + value).orElse(""))
            .collect(Collectors.joining(", "));
    boolean kept = changes.values().iterator().next().isPresent();
    session
        .out()
        .println(OneLine.of((kept ? "Kept: " : "Taken out: ") + text + ", in " + file.shown()));
  }
}
