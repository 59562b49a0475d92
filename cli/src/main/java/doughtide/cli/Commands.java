package doughtide.cli;

import doughtide.cli.batch.BatchCommand;
import doughtide.cli.command.BakeDayCommand;
import doughtide.cli.command.ClassDayCommand;
import doughtide.cli.command.Command;
import doughtide.cli.command.FeedCommand;
import doughtide.cli.command.FlourCommand;
import doughtide.cli.command.HandoutCommand;
import doughtide.cli.command.LearnCommand;
import doughtide.cli.command.LeaveCommand;
import doughtide.cli.command.RiseCommand;
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
          "leave",
          "water",
          "flour",
          "batch",
          "learn",
          "handout");

  private Commands() {}

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
      case "leave" -> new LeaveCommand();
      case "water" -> new WaterCommand();
      case "flour" -> new FlourCommand();
      case "batch" -> new BatchCommand();
      case "learn" -> new LearnCommand();
      case "handout" -> new HandoutCommand();
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
