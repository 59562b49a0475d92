package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.hand.Cautions;
import doughtide.cli.session.Session;

/** Plans a bake backward from the bread, so that every step falls when the baker is there. */
public final class BakeDayCommand implements Command {

  @Override
  public CommandSpec spec() {
    return CommandSpec.named(
            "bake-day", "when to feed, mix, fold, shape and bake, between your hours")
        .everyday(
            "ready-at",
            "at-the-bench",
            "room",
            "cold",
            "loaves",
            "piece",
            "flour",
            "hydration",
            "zone",
            "calendar",
            "chart",
            "format",
            "again",
            "did",
            "now")
        .options(DayDough.specs().stream().map(DayAgain::unlessAgain).toList())
        .options(DayReport.specs("bake"))
        .options(DayAgain.specs())
        .example(
            "Two loaves for Sunday noon",
            "--ready-at",
            "2027-03-14T12:00",
            "--at-the-bench",
            "06:30-08:30,17:00-22:30",
            "--room",
            "21C",
            "--cold",
            "4C",
            "--loaves",
            "2",
            "--zone",
            "Europe/Berlin")
        .note(
            "The rest of a day that slipped: --again plan.json --did \"shape 14:40\" --now 15:30,"
                + " from the plan that --format json wrote.")
        .note(
            "The margin of a step is how much later it may be, while the rest keeps to the clock,"
                + " until one dough in ten more is spoiled or the next step that needs it would be"
                + " late. A loaf is good from 85 % of its rise until nine tenths of the greatest"
                + " height of its own dough, if it has not fallen or become weak. You shape when"
                + " the sample jar shows the rise given.")
        .note("Caution: " + Cautions.OVEN)
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    if (arguments.has(DayAgain.AGAIN)) {
      DayAgain.run("bake-day", arguments, session);
      return;
    }
    DayAgain.refuseAlone(arguments);
    DayReport.run("bake-day", arguments, session, DayOptions::ofOne);
  }
}
