package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.session.Session;

/** Plans several doughs on one day that share one oven and some pairs of hands. */
public final class ClassDayCommand implements Command {

  @Override
  public CommandSpec spec() {
    return CommandSpec.named(
            "class-day", "several doughs on one day that share one oven and some pairs of hands")
        .operands("FILE", 1, 1)
        .everyday(
            "ready-at",
            "at-the-bench",
            "room",
            "cold",
            "oven-capacity",
            "hands",
            "zone",
            "calendar",
            "chart",
            "format")
        .options(DayOptions.specsBesideFile())
        .options(DayReport.specs("class"))
        .example(
            "The doughs of a class, two persons, six loaves in the oven",
            "class.csv",
            "--ready-at",
            "2027-03-14T12:00",
            "--at-the-bench",
            "07:00-22:00",
            "--cold",
            "4C",
            "--oven-capacity",
            "6",
            "--hands",
            "2",
            "--zone",
            "Europe/Berlin")
        .note(
            "FILE is a CSV file with a line for each dough, 1 to 16. Its columns are named like the"
                + " options of bake-day, with units in the cells: "
                + DayOptions.columns()
                + "; an empty cell means the default. - reads standard input.")
        .note(
            "Loaves of several doughs go into the oven together where there is room, and one"
                + " feeding serves all doughs for which it is ripe. Where the day is not possible,"
                + " the smallest change that makes it so is named.")
        .note(DayReport.CAUTION)
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    DayReport.run("class-day", arguments, session, DayOptions::ofFile);
  }
}
