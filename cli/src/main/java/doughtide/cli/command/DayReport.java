package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.command.again.DayCalendar;
import doughtide.cli.command.roster.RosterGroup;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.PageOptions;
import doughtide.cli.options.PagesOptions;
import doughtide.cli.options.PrintedNames;
import doughtide.cli.options.WordsOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.day.DayAnswer;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayPlanner;
import doughtide.core.day.SearchControl;
import doughtide.core.quantity.InputException;
import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartSize;
import doughtide.report.chart.Charts;
import doughtide.report.chart.DrawnChart;
import doughtide.report.handout.ClassDayPages;
import doughtide.report.phone.PhonePage;
import doughtide.report.words.Words;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;

/** Plans a day of one dough or several and writes it as page, data, chart and calendar. */
final class DayReport {

  /** What to be careful with. */
  private static final String CALENDAR = "calendar";

  private static final String SEARCH_LIMIT = "search-limit";

  /** What a day without plan is refused for. */
  private static final List<String> ASKED = List.of(PlanClock.READY_AT, PlanClock.BENCH);

  private DayReport() {}

  /**
   * The options of what is written and of the search.
   *
   * @param name of files, for examples
   */
  static OptionSpec[] specs(String name) {
    List<OptionSpec> words = WordsOptions.specs();
    return new OptionSpec[] {
      OptionSpec.value(
          SEARCH_LIMIT,
          "TIME",
          "3s",
          "Ends the search for plans after this time and gives the best found by then; without it"
              + " the search goes on to its end."),
      OutputOptions.format(),
      OutputOptions.chart(name + "-day.pdf"),
      OutputOptions.paper(),
      words.get(0),
      words.get(1),
      words.get(2),
      OptionSpec.value(
          CALENDAR,
          "FILE",
          name + ".ics",
          "Also writes the best plan as a calendar (iCalendar, RFC 5545) with an alarm before each"
              + " step."),
      PageOptions.spec(name + ".html"),
      OutputOptions.overwrite()
    };
  }

  /**
   * Runs a command.
   *
   * @param read reads its doughs
   */
  static void run(
      String command,
      Arguments arguments,
      Session session,
      BiFunction<Arguments, Environment, DayOptions> read) {
    Written written = Written.read(command, arguments, session);
    Optional<Duration> limit = limit(arguments);
    DayOptions options = read.apply(arguments, session.environment());
    DayAnswer found = plan(options, limit, arguments, session);
    DayText text = new DayText(options, found.days().get(0));
    written.write(
        Shown.of(text),
        new DayCalendar(options.planId(), 0, text.times()),
        text.entries(),
        new DaySections(command, options, found, written.words()).answer());
  }

  /**
   * What is written of a day beside its answer.
   *
   * @param command that is run
   * @param arguments as given
   * @param session where it runs
   * @param format of the answer
   * @param paper of the chart
   * @param chart if one is asked for
   * @param words of it
   * @param calendar if one is asked for
   * @param page if one is asked for
   * @param pages if they are asked for
   */
  record Written(
      String command,
      Arguments arguments,
      Session session,
      OutputOptions.Format format,
      OutputOptions.Paper paper,
      Optional<OutputFile> chart,
      Words words,
      Optional<OutputFile> calendar,
      Optional<PageOptions> page,
      Optional<PagesOptions> pages) {

    static Written read(String command, Arguments arguments, Session session) {
      Environment environment = session.environment();
      return new Written(
          command,
          arguments,
          session,
          OutputOptions.format(arguments),
          OutputOptions.paper(arguments),
          OutputOptions.chart(arguments, environment),
          WordsOptions.ofChart(arguments),
          DayReport.calendar(arguments, environment),
          PageOptions.read(arguments, environment),
          PagesOptions.read(arguments, environment));
    }

    void write(Shown shown, DayCalendar empty, List<DayCalendar.Entry> entries, Answer answer) {
      if (chart.isPresent() || pages.isPresent()) {
        PrintedNames.tell(shown.names(), arguments);
      }
      if (pages.isPresent()) {
        PrintedNames.tell(
            shown.students().stream().map(ClassDayPages.Student::name).toList(), arguments);
      }
      chart.ifPresent(file -> draw(shown, words, file, paper));
      calendar.ifPresent(file -> empty.write(entries, command, file, session.environment().now()));
      page.ifPresent(each -> each.write(with -> DayReport.page(shown, with)));
      Optional<String> printed =
          pages.map(each -> each.write(shown.pages(each.words()), shown.ready().toLocalDate()));
      switch (format) {
        case TEXT -> answer.text(session.out());
        case JSON -> answer.fromKitchen(arguments.fromKitchen()).json(session.out());
        case CSV -> answer.csv(session.out());
      }
      page.ifPresent(each -> each.say(format, session.out()));
      PagesOptions.say(printed, format, session.out());
    }
  }

  /**
   * A day for a chart or a page.
   *
   * @param day what is shown
   * @param names of its doughs
   * @param zero the moment of hour 0
   * @param ready when the bread is wanted
   * @param students of a class
   */
  record Shown(
      DayPlan day,
      List<String> names,
      ZonedDateTime zero,
      ZonedDateTime ready,
      List<ClassDayPages.Student> students) {
    static Shown of(DayText text) {
      DayOptions options = text.options();
      var times = options.clock().times();
      return new Shown(
          text.day(),
          options.names(),
          times.start(),
          times.after(options.clock().readyHour()),
          RosterGroup.students(options.groups()));
    }

    private ClassDayPages pages(Words words) {
      return new ClassDayPages(title(words), day, names, zero, students);
    }

    private String title(Words words) {
      return words.say("chart.title.day", Map.of("time", words.dayAndClock(ready)));
    }
  }

  private static String page(Shown shown, Words words) {
    return PhonePage.of(shown.pages(words), words).html();
  }

  private static Optional<Duration> limit(Arguments arguments) {
    OptionalDouble hours = arguments.hours(SEARCH_LIMIT);
    if (hours.isEmpty()) {
      return Optional.empty();
    }
    if (hours.getAsDouble() <= 0) {
      throw new InputException(
          "--search-limit must be longer than nothing: write for example --search-limit 3s");
    }
    return Optional.of(Duration.ofMillis(Math.round(hours.getAsDouble() * 3_600_000)));
  }

  private static DayAnswer plan(
      DayOptions options, Optional<Duration> limit, Arguments arguments, Session session) {
    SearchLine line = new SearchLine(session);
    Environment environment = session.environment();
    Optional<Instant> end = limit.map(environment.now()::plus);
    SearchControl control =
        SearchControl.none()
            .withProgress(line)
            .changingFrom(options.clock().hour(options.clock().now()))
            .stoppingWhen(() -> end.isPresent() && environment.now().isAfter(end.get()));
    DayAnswer found = DayPlanner.plan(options.doughs(), options.hands(), control);
    line.end();
    if (found.days().isEmpty()) {
      throw noPlan(ASKED, DayText.obstacle(found, options), arguments);
    }
    return found;
  }

  /** The refusal of a day without plan, behind what was asked. */
  static InputException noPlan(List<String> asked, String why, Arguments arguments) {
    return new InputException("day.no-plan", arguments.behind(asked, why));
  }

  private static Optional<OutputFile> calendar(Arguments arguments, Environment environment) {
    Optional<OutputFile> calendar = OutputOptions.file(CALENDAR, arguments, environment);
    calendar.ifPresent(DayReport::checkEnding);
    return calendar;
  }

  private static void checkEnding(OutputFile file) {
    if (!file.ending().equals("ics")) {
      throw new InputException(
          "--calendar "
              + FileProblem.quoted(file.shown())
              + " must end in .ics: write for example --calendar bake.ics");
    }
  }

  private static void draw(Shown shown, Words words, OutputFile file, OutputOptions.Paper paper) {
    write(
        Charts.in(words).day(shown.title(words), shown.day(), shown.names(), shown.zero()),
        file,
        paper);
  }

  /** Writes a chart into a file of its kind. */
  static void write(DrawnChart chart, OutputFile file, OutputOptions.Paper paper) {
    ChartSize size =
        paper == OutputOptions.Paper.A4 ? ChartSize.A4_LANDSCAPE : ChartSize.A5_LANDSCAPE;
    byte[] bytes = chart.bytes(ChartFormat.ofFileName(file.shown()), size);
    file.write(out -> out.write(bytes));
  }
}
