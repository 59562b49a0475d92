package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Speech;
import doughtide.cli.command.lesson.LessonGrid;
import doughtide.cli.file.OutputFile;
import doughtide.cli.hand.Cautions;
import doughtide.cli.hand.DoughInHand;
import doughtide.cli.hand.HandPage;
import doughtide.cli.hand.NowSections;
import doughtide.cli.hand.PlannedLoaf;
import doughtide.cli.options.ClockOptions;
import doughtide.cli.options.ColdOptions;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.options.FormulaOptions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.PageOptions;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.options.TemperatureOptions;
import doughtide.cli.options.WordsOptions;
import doughtide.cli.session.Session;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.learning.JarError;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Rise;
import doughtide.report.phone.PhoneLesson;
import doughtide.report.phone.PhonePage;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/** When a dough has risen how far, and when it is past its best. */
public final class RiseCommand implements Command {

  private static final String RISE = "rise";
  private static final String TITLE = "title";
  private static final Set<Double> USUAL_PERCENT = Set.of(25.0, 30.0, 50.0, 75.0, 100.0);
  private static final int MOST_RISES = 20;

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("rise", "when the dough has risen how far")
        .everyday(
            "dough-temp",
            "room",
            "starter",
            "hydration",
            "flour",
            "mixed-at",
            "cold",
            "bake-at",
            "readings",
            "format",
            "chart",
            "page",
            "vary")
        .options(DoughOptions.specs())
        .options(TemperatureOptions.specs())
        .options(ProofOptions.specs())
        .options(ColdOptions.specs())
        .options(ColdOptions.core())
        .options(ColdOptions.keeping())
        .options(ClockOptions.specs())
        .options(StarterOptions.specs())
        .options(FormulaOptions.loaves())
        .options(
            rise(),
            StarterOptions.members(),
            OutputOptions.format(),
            OutputOptions.chart("rise.pdf"),
            OutputOptions.paper(),
            OptionSpec.value(
                TITLE, "TEXT", "Quayside bread class", "The heading of the chart and the page."),
            OutputOptions.overwrite())
        .options(WordsOptions.specs())
        .options(PageOptions.spec("dough.html"), LessonGrid.spec())
        .example(
            "A dough at 25 °C",
            "--dough-temp",
            "25C",
            "--starter",
            "20%",
            "--starter-hydration",
            "100%",
            "--hydration",
            "72%",
            "--salt",
            "2%")
        .example(
            "Warm, then cooler, with clock times",
            "--dough-temp",
            "78F,3h:22C",
            "--prefermented",
            "9.1%",
            "--flour",
            "white:80%,wholemeal wheat:20%",
            "--mixed-at",
            "2027-03-06T09:30",
            "--zone",
            "Europe/Berlin")
        .example(
            "A tub in a cool kitchen, with a sample jar beside it",
            "--dough-temp",
            "26C",
            "--room",
            "19C",
            "--dough-mass",
            "1.7kg",
            "--jar",
            "50g")
        .example(
            "Shaped in the evening, a night in the cold, baked at seven",
            "--dough-temp",
            "24C",
            "--mixed-at",
            "2027-03-06T14:00",
            "--cold",
            "4C",
            "--bake-at",
            "07:00")
        .example(
            "A chart to pin to the wall",
            "--dough-temp",
            "25C",
            "--chart",
            "rise.pdf",
            "--paper",
            "A5",
            "--title",
            "Quayside bread class")
        .example(
            "A page for the telephone",
            "--dough-temp",
            "25C",
            "--mixed-at",
            "2027-03-06T09:30",
            "--zone",
            "Europe/Berlin",
            "--page",
            "dough.html",
            "--language",
            "de")
        .example(
            "A lesson in a page: what warmth and starter change",
            "--dough-temp",
            "24C",
            "--vary",
            "dough-temp:20C,22C,24C,26C,28C",
            "--vary",
            "starter:10%,20%,30%",
            "--page",
            "lesson.html")
        .example(
            "Your own starter, learned before",
            "--dough-temp",
            "25C",
            "--starter-file",
            "starter.txt")
        .example(
            "The dough in hand",
            "--readings",
            "quayside-today.csv",
            "--starter-file",
            "starter.txt")
        .note("Caution: " + Cautions.RAW)
        .build();
  }

  /** The option for another rise. */
  static OptionSpec rise() {
    return OptionSpec.value(
            RISE,
            "RISE",
            "60%",
            "Another rise whose time is wanted, in per cent of the volume after mixing.")
        .repeatable();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    if (arguments.has(StarterOptions.READINGS)) {
      today(arguments, session);
      return;
    }
    DoughOptions dough = DoughOptions.read(arguments, session.environment());
    Optional<ClockTimes> clock = ClockOptions.read(arguments, session.environment());
    Optional<ProofOptions> proof = ProofOptions.read(arguments, clock);
    if (proof.isEmpty()) {
      ColdOptions.refuseProbe(arguments);
    }
    OutputOptions.Format format = OutputOptions.format(arguments);
    OutputOptions.Paper paper = OutputOptions.paper(arguments);
    OutputOptions.onlyWithPicture(TITLE, arguments);
    Words words = WordsOptions.ofChart(arguments);
    Optional<OutputFile> chart = OutputOptions.chart(arguments, session.environment());
    Optional<PageOptions> page = PageOptions.read(arguments, session.environment());
    Optional<LessonGrid> lesson =
        LessonGrid.read(arguments, dough, proof.isPresent(), session.environment());
    if (page.isPresent() && clock.isEmpty() && lesson.isEmpty()) {
      throw new InputException("--page shows clock times: add for example --mixed-at 09:30");
    }
    SortedSet<Rise> rises = rises(arguments);
    RiseForecaster forecaster = StarterOptions.forecaster(arguments, session.environment());
    TemperatureOptions temperature =
        TemperatureOptions.read(arguments, dough, clock, session.environment());
    RiseForecast forecast = forecaster.forecast(dough.formula(), temperature.dough());
    RiseAnswer answer =
        RiseAnswer.of(
            dough,
            arguments.text(TITLE),
            temperature,
            clock,
            forecast,
            rises,
            proof.map(each -> known(each, arguments, forecast, session)),
            FormulaOptions.weigh(arguments, dough.formula()));
    print(RiseSections.of(answer).fromKitchen(arguments.fromKitchen()), format, session);
    offerFirstEvening(answer, arguments, format, session);
    chart.ifPresent(file -> draw(answer, words, file, paper, format, session));
    page.ifPresent(each -> write(answer, lesson, each, format, arguments, session));
  }

  private static void write(
      RiseAnswer answer,
      Optional<LessonGrid> lesson,
      PageOptions page,
      OutputOptions.Format format,
      Arguments arguments,
      Session session) {
    if (!answer.isPossible()) {
      session
          .err()
          .println("doughtide: no page is written, because no hours can be given for this dough");
      return;
    }
    if (lesson.isPresent()) {
      write(answer, lesson.get(), page, arguments, session);
    } else {
      JarError jar = StarterOptions.jar(arguments, session.environment());
      page.write(words -> PhonePage.of(answer.forPhone(jar, words), words).html());
    }
    page.say(format, session.out());
  }

  private static void write(
      RiseAnswer answer,
      LessonGrid lesson,
      PageOptions page,
      Arguments arguments,
      Session session) {
    RiseForecaster forecaster = StarterOptions.forecaster(arguments, session.environment());
    List<Rise> rises = answer.passings().stream().map(RiseAnswer.Passing::rise).toList();
    page.write(
        words -> {
          String name = arguments.text(TITLE).orElseGet(() -> PhoneLesson.usualName(words));
          return PhonePage.of(
                  lesson.lesson(
                      name,
                      forecaster,
                      answer.clock(),
                      rises,
                      answer.asked().rise(),
                      answer.proof().map(PlannedLoaf::proof)),
                  words)
              .html();
        });
  }

  /** While nothing is known of the starter, an evening with it would tell the most. */
  private static void offerFirstEvening(
      RiseAnswer answer, Arguments arguments, OutputOptions.Format format, Session session) {
    if (format == OutputOptions.Format.TEXT
        && answer.isPossible()
        && !arguments.has(StarterOptions.STARTER_FILE)) {
      session
          .out()
          .println(
              "\nNothing is known of your starter yet. One evening with two jars makes this\n"
                  + "window yours: doughtide handout first-evening --out evening.pdf");
    }
  }

  /** The proof that is meant, with all that is known of its cold. */
  private static Proof known(
      ProofOptions options, Arguments arguments, RiseForecast forecast, Session session) {
    Proof kept = ColdOptions.kept(arguments, session.environment(), options.chosen(forecast));
    Proof taught = ColdOptions.taught(arguments, forecast, kept);
    ColdOptions.keep(arguments, session.environment(), taught);
    return taught;
  }

  /** The dough in hand, described by its file of readings. */
  private static void today(Arguments arguments, Session session) {
    OutputOptions.Format format = OutputOptions.format(arguments);
    OutputOptions.Paper paper = OutputOptions.paper(arguments);
    OutputOptions.onlyWithPicture(TITLE, arguments);
    Words words = WordsOptions.ofChart(arguments);
    Optional<OutputFile> chart = OutputOptions.chart(arguments, session.environment());
    Optional<PageOptions> page = PageOptions.read(arguments, session.environment());
    SortedSet<Rise> rises = rises(arguments);
    List<OptionSpec> described = new ArrayList<>(DoughOptions.specs());
    described.addAll(TemperatureOptions.specs());
    described.add(ColdOptions.core());
    described.addAll(ClockOptions.specs());
    described.add(FormulaOptions.loaves());
    described.add(LessonGrid.spec());
    DoughInHand dough = DoughInHand.read(arguments, described, session);
    dough.keepCold(arguments);
    NowCommand.print(NowSections.of(dough, rises, Speech.ENGLISH), arguments, dough, session);
    if (chart.isPresent()) {
      TodayChart drawn = TodayChart.of(dough);
      if (drawn.isPossible()) {
        drawn.write(arguments.text(TITLE), rises, words, chart.get(), paper);
        sayDrawn(chart.get(), format, session);
      } else {
        sayNothingDrawn(session);
      }
    }
    page.ifPresent(each -> HandPage.write(dough, rises, arguments.text(TITLE), each));
    page.ifPresent(each -> each.say(format, session.out()));
  }

  /** Whether a rise stands in every answer. */
  static boolean isUsual(Rise rise) {
    return USUAL_PERCENT.contains(rise.percent());
  }

  /** The rises whose times are wanted. */
  static SortedSet<Rise> rises(Arguments arguments) {
    SortedSet<Rise> rises = new TreeSet<>();
    for (double percent : USUAL_PERCENT) {
      rises.add(Rise.ofPercent(percent));
    }
    Checks.inRange("number of --rise", arguments.all(RISE).size(), 0, MOST_RISES, "");
    for (String text : arguments.all(RISE)) {
      Rise rise = Quantities.rise("--" + RISE, text);
      Checks.inRange("--" + RISE, rise.percent(), 1, 1000, "%");
      rises.add(rise);
    }
    return rises;
  }

  /** Prints an answer. */
  static void print(Answer answer, OutputOptions.Format format, Session session) {
    switch (format) {
      case TEXT -> answer.text(session.out());
      case JSON -> answer.json(session.out());
      case CSV -> answer.csv(session.out());
    }
  }

  private static void draw(
      RiseAnswer answer,
      Words words,
      OutputFile file,
      OutputOptions.Paper paper,
      OutputOptions.Format format,
      Session session) {
    if (!answer.isPossible()) {
      sayNothingDrawn(session);
      return;
    }
    RiseChartFile.write(answer, words, file, paper);
    sayDrawn(file, format, session);
  }

  private static void sayNothingDrawn(Session session) {
    session
        .err()
        .println("doughtide: no chart is drawn, because no hours can be given for this dough");
  }

  private static void sayDrawn(OutputFile file, OutputOptions.Format format, Session session) {
    if (format == OutputOptions.Format.TEXT) {
      OutputOptions.sayChart(Optional.of(file), session.out());
    }
  }
}
