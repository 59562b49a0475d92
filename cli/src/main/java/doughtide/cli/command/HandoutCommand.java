package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.file.OutputFile;
import doughtide.cli.options.ClockOptions;
import doughtide.cli.options.ColdOptions;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.options.HandoutKind;
import doughtide.cli.options.HandoutOptions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.cli.text.OneLine;
import doughtide.core.quantity.InputException;
import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartOutput;
import doughtide.report.chart.ChartSize;
import doughtide.report.handout.ComparisonPage;
import doughtide.report.handout.Handout;
import doughtide.report.page.Page;
import java.util.ArrayList;
import java.util.List;

/** Pages for the wall and for the class. */
public final class HandoutCommand implements Command {

  @Override
  public CommandSpec spec() {
    CommandSpec.Builder spec =
        CommandSpec.named("handout", "a page for the wall or the class, as PDF")
            .operands("KIND", 1, 1)
            .everyday(
                "out",
                "paper",
                "language",
                "students",
                "vary",
                "dough-temp",
                "starter",
                "mixed-at",
                "cold",
                "bake-at")
            .options(HandoutOptions.specs())
            .options(HandoutPages.specs())
            .options(DoughOptions.specs())
            .options(ClockOptions.specs())
            .options(ProofOptions.specs())
            .options(ColdOptions.specs())
            .example(
                "The day of one dough, with a night in the cold",
                "bake-sheet",
                "--out",
                "bake-sheet.pdf",
                "--dough-temp",
                "25C",
                "--mixed-at",
                "2027-03-06T09:30",
                "--zone",
                "Europe/Berlin",
                "--cold",
                "4C",
                "--hold",
                "14h")
            .example(
                "An exercise for a class, with the teacher's answers",
                "comparison",
                "--out",
                "warmth.pdf",
                "--vary",
                "dough-temp:20C,23C,26C",
                "--students",
                "--language",
                "fr")
            .example("For the wall", "hours-table", "--out", "hours.pdf", "--paper", "letter")
            .note(
                "Cold and proof are for the bake-sheet, clock times for it and for first-evening"
                    + " (when the jars are fed).")
            .note("Caution: raw flour and raw dough are not for eating.");
    for (HandoutKind kind : HandoutKind.values()) {
      spec.action(kind.typed(), kind.summary(), List.of());
    }
    return spec.build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    Environment environment = session.environment();
    HandoutOptions options = HandoutOptions.read(arguments, environment);
    boolean forStudents = arguments.has(HandoutOptions.STUDENTS);
    if (forStudents && options.kind() != HandoutKind.COMPARISON) {
      throw new InputException(
          "--" + HandoutOptions.STUDENTS + " is for comparison only: leave it out");
    }
    HandoutPages pages = new HandoutPages(arguments, environment, options);
    List<Target> targets = new ArrayList<>();
    Handout handout;
    if (forStudents) {
      OutputFile answers = beside(options, "answers", "pdf", arguments, environment);
      ComparisonPage comparison = pages.comparison();
      handout = comparison;
      Handout exercise = comparison.exercise(ComparisonPage.Edition.STUDENT);
      Handout answered = comparison.exercise(ComparisonPage.Edition.TEACHER);
      targets.add(new Target(exercise, options.out()));
      targets.add(new Target(answered, answers));
    } else if (options.kind() == HandoutKind.CLASS_PAGES) {
      List<HandoutPages.Named> named = pages.classPages();
      handout = named.get(0).handout();
      for (HandoutPages.Named each : named) {
        OutputFile file =
            each.suffix().isEmpty()
                ? options.out()
                : beside(options, each.suffix(), "pdf", arguments, environment);
        targets.add(new Target(each.handout(), file));
      }
    } else {
      handout = pages.handout();
      targets.add(new Target(handout, options.out()));
    }
    arguments.refuseUnasked(options.kind().typed());
    List<Printed> charts = new ArrayList<>();
    options
        .chartFormat()
        .ifPresent(format -> charts(handout, format, options, arguments, environment, charts));
    List<Printed> files = new ArrayList<>();
    targets.forEach(target -> files.add(target.printed(options)));
    files.addAll(charts);
    write(files, session);
  }

  /** A handout, not yet printed, and the file that it goes to. */
  private record Target(Handout handout, OutputFile file) {
    Printed printed(HandoutOptions options) {
      List<Page> pages = handout.pages(options.format(), options.words(), options.date());
      return new Printed(file, Page.together(pages), pages.size());
    }
  }

  /**
   * A file to write.
   *
   * @param sides how many sides of paper it takes
   */
  @SuppressWarnings("ArrayRecordComponent") // only read, in this class
  private record Printed(OutputFile file, byte[] bytes, int sides) {
    String words() {
      return OneLine.of(file.shown()) + (sides > 1 ? ", " + sides + " sides" : "");
    }
  }

  private static OutputFile beside(
      HandoutOptions options,
      String suffix,
      String ending,
      Arguments arguments,
      Environment environment) {
    OutputFile.Existing existing =
        arguments.has(OutputOptions.OVERWRITE)
            ? OutputFile.Existing.REPLACE
            : OutputFile.Existing.KEEP;
    return OutputFile.of("--out", options.beside(suffix, ending), existing, environment);
  }

  private static void charts(
      Handout handout,
      ChartFormat format,
      HandoutOptions options,
      Arguments arguments,
      Environment environment,
      List<Printed> files) {
    List<Handout.NamedChart> charts = handout.charts(options.words());
    if (charts.isEmpty()) {
      throw new InputException(options.kind().typed() + " has no chart: leave --charts-as out");
    }
    String ending = Arguments.word(format);
    for (Handout.NamedChart chart : charts) {
      files.add(
          new Printed(
              beside(options, chart.name(), ending, arguments, environment),
              ChartOutput.bytes(chart.chart(), format, ChartSize.A5_LANDSCAPE, chart.caption()),
              1));
    }
  }

  private static void write(List<Printed> files, Session session) {
    files.forEach(printed -> printed.file().write(out -> out.write(printed.bytes())));
    files.forEach(printed -> session.out().println("Written: " + printed.words()));
  }
}
