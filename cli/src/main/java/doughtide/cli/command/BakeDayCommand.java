package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.day.BakeDayAnswer;
import doughtide.core.day.BakeDayPlanner;
import doughtide.core.quantity.InputException;
import java.util.Optional;

/** Plans a bake backward from the bread, so that every step falls when the baker is there. */
public final class BakeDayCommand implements Command {

  private static final String CALENDAR = "calendar";

  /** What to be careful with. */
  public static final String CAUTION =
      "Caution: raw flour and raw dough are not for eating; hot ovens, pots and steam burn.";

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
            "format")
        .options(BakeDayOptions.specs())
        .options(OutputOptions.format(), OutputOptions.chart("bake-day.pdf"), OutputOptions.paper())
        .options(
            OptionSpec.value(
                CALENDAR,
                "FILE",
                "bake.ics",
                "Also writes the best plan as a calendar (iCalendar, RFC 5545) with an alarm for"
                    + " each step."),
            OutputOptions.overwrite())
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
            "The margin of a step is how much later it may be until one dough in ten more is"
                + " spoiled. A loaf is good from 85 % of its rise until nine tenths of the greatest"
                + " height of its own dough, if it has not fallen or become weak. The rest of the plan keeps to the clock, and you shape when the sample"
                + " jar shows the rise given.")
        .note(CAUTION)
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    Environment environment = session.environment();
    OutputOptions.Format format = OutputOptions.format(arguments);
    Optional<OutputFile> chart = OutputOptions.chart(arguments, environment);
    OutputOptions.Paper paper = OutputOptions.paper(arguments);
    Optional<OutputFile> calendar = OutputOptions.file(CALENDAR, arguments, environment);
    calendar.ifPresent(BakeDayCommand::checkEnding);
    BakeDayOptions options = BakeDayOptions.read(arguments, environment);
    SearchLine progress = new SearchLine(session);
    BakeDayAnswer answer = BakeDayPlanner.plan(options.day(), progress);
    progress.end();
    if (answer.plans().isEmpty()) {
      throw new InputException(BakeDayWords.hindrance(answer, options.clock().times()));
    }
    chart.ifPresent(file -> BakeDayPicture.write(answer, options, file, paper));
    calendar.ifPresent(
        file -> BakeDayCalendar.write(answer.plans().get(0), options, file, environment.now()));
    switch (format) {
      case TEXT -> BakeDayPage.of(answer, options).forEach(session.out()::println);
      case JSON -> BakeDayJson.write(answer, options, session.out());
      case CSV -> BakeDayCsv.write(answer, options, session.out());
    }
  }

  public static void checkEnding(OutputFile file) {
    if (!file.ending().equals("ics")) {
      throw new InputException(
          "--calendar "
              + FileProblem.quoted(file.shown())
              + " must end in .ics: write for example --calendar bake.ics");
    }
  }
}
