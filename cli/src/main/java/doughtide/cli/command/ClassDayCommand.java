package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.command.roster.Absent;
import doughtide.cli.command.roster.JarSections;
import doughtide.cli.file.OutputFile;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.hand.Cautions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.PagesOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.options.WordsOptions;
import doughtide.cli.session.Session;
import doughtide.core.forecast.RiseForecaster;
import doughtide.report.words.Words;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** Plans several doughs on one day that share one oven and some pairs of hands. */
public final class ClassDayCommand implements Command {

  private static final String JARS = "jars";
  private static final int MEMBERS = 128;

  @Override
  public CommandSpec spec() {
    return CommandSpec.named(
            "class-day", "several doughs on one day that share one oven and some pairs of hands")
        .operands("[FILE]", 0, 1)
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
            "pages",
            "page",
            "again",
            "format")
        .options(DayOptions.specsBesideFile())
        .options(Absent.spec())
        .options(DayReport.specs("class"))
        .options(PagesOptions.specs())
        .options(
            OptionSpec.value(
                JARS,
                "FOLDER",
                "readings",
                "Afterwards, instead of a plan: the jars of the class against their forecasts, one"
                    + " file of readings a jar as for doughtide learn; --chart draws them all."))
        .options(DayAgain.specs())
        .options(DayAgain.loaves())
        .options(ReadingsFile.skipFilesOption())
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
        .example(
            "Each student's grams and times, printed",
            "class.csv",
            "--roster",
            "roster.txt",
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
            "--pages",
            "class-pages.pdf")
        .example("Afterwards, all jars", "--jars", "quayside-bakes", "--chart", "jars.pdf")
        .note(
            "FILE is a CSV file with a line for each dough, 1 to 16. Its columns are named like the"
                + " options of bake-day, with units in the cells: "
                + DayOptions.columns()
                + "; an empty cell means what your kitchen file says, else the default. - reads"
                + " standard input.")
        .note(
            "The rest of a day that slipped: --again plan.json --did \"rye shape 14:40\" --now"
                + " 15:30, from the plan that --format json wrote.")
        .note(
            "Loaves of several doughs go into the oven together where there is room; one feeding"
                + " serves all doughs for which it is ripe, and one build in stages (--stage) all"
                + " that can be mixed within an hour of its ripe time. Where the day is not"
                + " possible, the smallest change that makes it so is named.")
        .note(
            "--page class.html is one page for all telephones, with first names only (of the"
                + " doughs, where no roster names students): send it as a file, by e-mail or"
                + " messenger.")
        .note("Caution: " + Cautions.OVEN)
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) throws IOException {
    if (arguments.has(JARS)) {
      jars(arguments, session);
      return;
    }
    if (arguments.has(DayAgain.AGAIN)) {
      DayAgain.run("class-day", arguments, session);
      return;
    }
    DayAgain.refuseAlone(arguments);
    arguments.needs(DayAgain.LOAVES, DayAgain.AGAIN, "plan.json");
    DayReport.run("class-day", arguments, session, DayOptions::ofFile);
  }

  private static void jars(Arguments arguments, Session session) throws IOException {
    OutputOptions.Format format = OutputOptions.format(arguments);
    String folder = arguments.text(JARS).orElseThrow();
    Optional<OutputFile> chart = OutputOptions.chart(arguments, session.environment());
    OutputOptions.Paper paper = OutputOptions.paper(arguments);
    Words words = WordsOptions.ofChart(arguments);
    RiseForecaster forecaster =
        StarterOptions.forecaster(arguments, session.environment()).withMembers(MEMBERS);
    List<ReadingsFile> files =
        ReadingsFile.readAll(
            "--" + JARS, LearnCommand.names("--" + JARS, folder, session), arguments, session);
    arguments.refuseUnasked("--" + JARS);
    JarSections jars = new JarSections(files, forecaster);
    chart.ifPresent(file -> DayReport.write(jars.chart(words), file, paper));
    Answer answer = jars.answer(List.of(Cautions.RAW));
    switch (format) {
      case TEXT -> answer.text(session.out());
      case JSON -> answer.json(session.out());
      case CSV -> answer.csv(session.out());
    }
  }
}
