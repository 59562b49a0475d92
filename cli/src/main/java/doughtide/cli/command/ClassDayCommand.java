package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.OutputFile;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.day.SharedAnswer;
import doughtide.core.day.SharedDay;
import doughtide.core.quantity.InputException;
import java.util.Optional;

/** Plans several doughs on one day that share one oven and some pairs of hands. */
public final class ClassDayCommand implements Command {

  private static final String CALENDAR = "calendar";

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
        .options(ClassDayOptions.specs())
        .options(
            OutputOptions.format(),
            OutputOptions.chart("class-day.pdf"),
            OutputOptions.paper(),
            OptionSpec.value(
                CALENDAR,
                "FILE",
                "class.ics",
                "Also writes the day as a calendar (iCalendar, RFC 5545) with an alarm for each"
                    + " step."),
            OutputOptions.overwrite())
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
                + ClassDayOptions.columns()
                + "; an empty cell means the default. - reads standard input.")
        .note(
            "Loaves of several doughs go into the oven together where there is room, and one"
                + " feeding serves all doughs for which it is ripe. Where the day is not possible,"
                + " the smallest change that makes it so is named.")
        .note(BakeDayCommand.CAUTION)
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    Environment environment = session.environment();
    OutputOptions.Format format = OutputOptions.format(arguments);
    OutputOptions.Paper paper = OutputOptions.paper(arguments);
    Optional<OutputFile> chart = OutputOptions.chart(arguments, environment);
    Optional<OutputFile> calendar = OutputOptions.file(CALENDAR, arguments, environment);
    calendar.ifPresent(BakeDayCommand::checkEnding);
    ClassDayOptions options = ClassDayOptions.read(arguments, environment);
    SearchLine progress = new SearchLine(session);
    SharedAnswer answer = SharedDay.plan(options.days(), options.hands(), progress);
    progress.end();
    if (answer.misfit().isPresent()) {
      throw new InputException(ClassDayWords.misfit(answer, options));
    }
    calendar.ifPresent(file -> ClassDayCalendar.write(answer, options, file, environment.now()));

    chart.ifPresent(file -> ClassDayPicture.write(answer, options, file, paper));
    switch (format) {
      case TEXT -> ClassDayPage.of(answer, options).forEach(session.out()::println);
      case JSON -> ClassDayJson.write(answer, options, session.out());
      case CSV -> ClassDayCsv.write(answer, options, session.out());
    }
  }
}
