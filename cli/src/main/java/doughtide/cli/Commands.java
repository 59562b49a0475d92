package doughtide.cli;

import doughtide.cli.args.CommandSpec;
import doughtide.cli.batch.BatchCommand;
import doughtide.cli.command.BakeDayCommand;
import doughtide.cli.command.ClassDayCommand;
import doughtide.cli.command.Command;
import doughtide.cli.command.FeedCommand;
import doughtide.cli.command.FlourCommand;
import doughtide.cli.command.HandoutCommand;
import doughtide.cli.command.KitchenCommand;
import doughtide.cli.command.LearnCommand;
import doughtide.cli.command.LeaveCommand;
import doughtide.cli.command.NoteCommand;
import doughtide.cli.command.NowCommand;
import doughtide.cli.command.RiseCommand;
import doughtide.cli.command.StartCommand;
import doughtide.cli.command.WantedCommand;
import doughtide.cli.command.WaterCommand;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Nearest;
import doughtide.core.quantity.Shorten;
import java.util.List;

/** The commands by name. A new command is one name and one case here. */
public final class Commands {

  /** In the order help lists them. */
  public static final List<String> NAMES =
      List.of(
          "rise",
          "wanted",
          "feed",
          "bake-day",
          "class-day",
          "start",
          "note",
          "now",
          "leave",
          "water",
          "flour",
          "batch",
          "learn",
          "handout",
          "kitchen");

  /** What people ask, and the words to type for it. */
  public static final List<CommandSpec.Example> QUESTIONS =
      List.of(
          asked("When is this dough ready?", "rise --dough-temp 25C --starter 20%"),
          asked(
              "When must I mix, to shape at seven?",
              "wanted --shape-at 19:00 --dough-temp 24C --starter 20%"),
          asked(
              "What do I feed tonight, for the morning?",
              "feed --fed-at 21:30 --ready-at 07:00 --starter-temp 20C --amount 120g"),
          asked("How warm must the water be?", "water --dough-temp 26C --room 21C"),
          asked(
              "I must leave at three: what now?",
              "leave --dough-temp 25C --mixed-at 10:00 --now 13:00 --leave-at 15:00 --back-at"
                  + " 19:30 --cold 4C --bake-at 07:30"));

  private Commands() {}

  private static CommandSpec.Example asked(String question, String words) {
    return new CommandSpec.Example(question, List.of(words.split(" ")));
  }

  /**
   * The command of this name; no other command's class is loaded.
   *
   * @throws InputException if there is none
   */
  public static Command named(String name) {
    return switch (name) {
      case "rise" -> new RiseCommand();
      case "wanted" -> new WantedCommand();
      case "feed" -> new FeedCommand();
      case "bake-day" -> new BakeDayCommand();
      case "class-day" -> new ClassDayCommand();
      case "start" -> new StartCommand();
      case "note" -> new NoteCommand();
      case "now" -> new NowCommand();
      case "leave" -> new LeaveCommand();
      case "water" -> new WaterCommand();
      case "flour" -> new FlourCommand();
      case "batch" -> new BatchCommand();
      case "learn" -> new LearnCommand();
      case "handout" -> new HandoutCommand();
      case "kitchen" -> new KitchenCommand();
      default -> throw unknown(name);
    };
  }

  private static InputException unknown(String name) {
    String quoted = "'" + Shorten.to(name, 40) + "'";
    String hint =
        Nearest.to(name, NAMES)
            .map(near -> "did you mean " + near + "?")
            .orElse("the commands are " + String.join(", ", NAMES));
    return new InputException(
        "there is no command " + quoted + ": " + hint + " (see doughtide --help)");
  }
}
