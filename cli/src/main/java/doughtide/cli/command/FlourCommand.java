package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.file.OutputFile;
import doughtide.cli.options.FlourOptions;
import doughtide.cli.options.KeepOptions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.WordsOptions;
import doughtide.cli.session.Session;
import doughtide.core.document.FlourDocument;
import doughtide.core.flourtrial.AbsorptionFit;
import doughtide.core.flourtrial.BowlPlan;
import doughtide.core.flourtrial.BowlTest;
import doughtide.core.flourtrial.Experience;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.flourtrial.Scale;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.ShellWord;
import doughtide.core.quantity.Shorten;
import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.Charts;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The trial in small bowls that tells how much water a new flour takes. */
public final class FlourCommand implements Command {

  public static final List<String> CAUTIONS =
      List.of(
          "Raw flour and raw dough are not for tasting; wash your hands after the trial.",
          "Keep the flour's cereal away from people who must avoid it.");

  @Override
  public CommandSpec spec() {
    CommandSpec.Builder spec =
        CommandSpec.named("flour", "how much water a flour takes, by a trial in small bowls")
            .operands("plan | read FILE | save FILE", 0, 2)
            .action(
                "plan",
                "the bowls to mix for a new flour",
                List.of(
                    "bowl-flour",
                    "driest",
                    "wettest",
                    "step",
                    "scale",
                    "bowl-rest",
                    "flour",
                    "flour-file",
                    "flour-name",
                    "protein",
                    "moisture",
                    "ash",
                    "format"))
            .action(
                "read FILE",
                "what the grades of the bowls say",
                List.of(
                    "experience",
                    "flour",
                    "flour-file",
                    "flour-name",
                    "protein",
                    "moisture",
                    "ash",
                    "format",
                    "chart",
                    "language",
                    "degrees",
                    "clock-12h",
                    "overwrite"))
            .action(
                "save FILE",
                "keeps a flour for the other commands",
                List.of(
                    "hydration",
                    "trial",
                    "experience",
                    "flour",
                    "flour-file",
                    "flour-name",
                    "lot",
                    "date",
                    "protein",
                    "moisture",
                    "ash",
                    "format",
                    "keep-in-kitchen",
                    "overwrite"))
            .everyday(
                "flour",
                "flour-name",
                "protein",
                "experience",
                "hydration",
                "trial",
                "format",
                "chart")
            .options(FlourOptions.specs())
            .options(WordsOptions.specs())
            .options(
                OutputOptions.formatWithoutCsv(),
                OutputOptions.chart("bowls.pdf"),
                KeepOptions.spec(),
                OutputOptions.overwrite())
            .example(
                "Plan the bowls",
                "plan",
                "--bowl-flour",
                "50g",
                "--driest",
                "60%",
                "--wettest",
                "80%",
                "--step",
                "4%")
            .example(
                "Keep a flour's record",
                "save",
                "harrow.txt",
                "--flour-name",
                "Harrow strong white",
                "--flour",
                "strong white",
                "--protein",
                "12.4%",
                "--hydration",
                "71%")
            .note(
                "read takes a file with one grade a line: trial, person, hydration, grade; for"
                    + " example \"6 March, Ann, 72%, thin window\". save writes a record that rise,"
                    + " feed and water take with --flour-file.");
    CAUTIONS.forEach(caution -> spec.note("Caution: " + caution));
    return spec.build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    List<String> words = arguments.operands();
    String action = words.isEmpty() ? "" : words.get(0);
    if (OutputOptions.format(arguments) == OutputOptions.Format.CSV) {
      throw OutputOptions.noCsv("flour");
    }
    switch (action) {
      case "plan" -> plan(arguments, session);
      case "read" -> read(file(words, "read", "trial.csv"), arguments, session);
      case "save" -> save(file(words, "save", "harrow.txt"), arguments, session);
      default ->
          throw new InputException(
              (words.isEmpty()
                      ? "flour alone is not enough"
                      : "flour does not know " + ShellWord.of(Shorten.to(action, 40)))
                  + ": it needs one of plan, read FILE or save FILE, for example doughtide flour"
                  + " plan");
    }
  }

  private static String file(List<String> words, String action, String example) {
    if (words.size() < 2) {
      throw new InputException(
          "flour "
              + action
              + " needs a file: write for example doughtide flour "
              + action
              + " "
              + example);
    }
    return words.get(1);
  }

  private static void plan(Arguments arguments, Session session) {
    if (arguments.operands().size() > 1) {
      throw new InputException(
          "flour plan takes no file: leave out '"
              + Shorten.to(arguments.operands().get(1), 40)
              + "'");
    }
    FlourOptions.refuse(arguments, "plan", "chart", FlourOptions.TRIAL, FlourOptions.HYDRATION);
    WordsOptions.ofChart(arguments);
    FlourRecord record = FlourOptions.record(arguments, session.environment());
    BowlTest test = BowlTest.of(record.toFlour());
    Scale scale =
        arguments
            .mass(FlourOptions.SCALE)
            .map(mass -> new Scale(mass.grams()))
            .orElse(Scale.ONE_GRAM);
    BowlPlan plan =
        BowlPlan.of(
                arguments.mass(FlourOptions.BOWL_FLOUR).orElse(Mass.ofGrams(50)),
                arguments.share(FlourOptions.DRIEST).orElse(test.driest()),
                arguments.share(FlourOptions.WETTEST).orElse(test.wettest()),
                arguments.share(FlourOptions.STEP).orElse(Share.ofPercent(4)),
                scale)
            .withRest(arguments.hours(FlourOptions.BOWL_REST).orElse(0.5) * 60);
    OutputOptions.Format format = OutputOptions.format(arguments);
    arguments.refuseUnasked("flour plan");
    print(FlourSections.plan(record, plan).fromKitchen(arguments.fromKitchen()), format, session);
  }

  private static void read(String name, Arguments arguments, Session session) {
    refusePlanning(arguments, "read");
    FlourOptions.refuse(arguments, "read", FlourOptions.TRIAL, FlourOptions.HYDRATION);
    Optional<OutputFile> chart = OutputOptions.chart(arguments, session.environment());
    List<GradedBowl> bowls = FlourOptions.grades("flour read", name, session.environment());
    FlourRecord record = FlourOptions.record(arguments, session.environment()).withBowls(bowls);
    AbsorptionFit fit = record.fit().orElseThrow();
    Words words = WordsOptions.ofChart(arguments);
    var experience = FlourOptions.experience(arguments);
    OutputOptions.Format format = OutputOptions.format(arguments);
    arguments.refuseUnasked("flour read");
    chart.ifPresent(file -> draw(record, fit, experience, words, file));
    print(
        FlourSections.read(record, fit, experience).fromKitchen(arguments.fromKitchen()),
        format,
        session);
    if (format == OutputOptions.Format.TEXT) {
      OutputOptions.sayChart(chart, session.out());
    }
  }

  private static void print(Answer answer, OutputOptions.Format format, Session session) {
    if (format == OutputOptions.Format.JSON) {
      answer.json(session.out());
    } else {
      answer.text(session.out());
    }
  }

  private static void draw(
      FlourRecord record, AbsorptionFit fit, Experience baker, Words words, OutputFile file) {
    String title = words.say("chart.title.flour", Map.of("flour", record.name()));
    byte[] bytes =
        Charts.in(words)
            .flour(title, fit, BowlTest.of(record.toFlour()), baker)
            .bytes(ChartFormat.ofFileName(file.shown()));
    file.write(out -> out.write(bytes));
  }

  private static void save(String name, Arguments arguments, Session session) {
    refusePlanning(arguments, "save");
    FlourOptions.refuse(arguments, "save", "chart");
    WordsOptions.ofChart(arguments);
    OutputFile.Existing existing =
        arguments.has("overwrite") ? OutputFile.Existing.REPLACE : OutputFile.Existing.KEEP;
    OutputFile file = OutputFile.of("flour save", name, existing, session.environment());
    FlourRecord described = FlourOptions.record(arguments, session.environment());
    List<GradedBowl> bowls = new ArrayList<>(described.bowls());
    arguments
        .text(FlourOptions.TRIAL)
        .ifPresent(
            trial -> bowls.addAll(FlourOptions.grades("--trial", trial, session.environment())));
    FlourRecord graded = described.withBowls(bowls);
    var experience = FlourOptions.experience(arguments);
    OutputOptions.Format format = OutputOptions.format(arguments);
    boolean keeps = KeepOptions.asked(arguments);
    FlourRecord record =
        arguments
            .share(FlourOptions.HYDRATION)
            .map(Share::percent)
            .or(
                () ->
                    graded
                        .fit()
                        .map(fit -> fit.workingHydration(experience))
                        .map(share -> Math.rint(share.percent())))
            .map(graded::withHydrationPercent)
            .orElse(graded);
    arguments.refuseUnasked("flour save");
    file.write(FlourDocument.text(record));
    if (keeps) {
      KeepOptions.keepFile(arguments, session.environment(), "flour-file", file);
    }
    List<String> lines = FlourDocument.text(record).lines().toList();
    print(
        FlourSections.saved(record, file.shown(), lines).fromKitchen(arguments.fromKitchen()),
        format,
        session);
  }

  private static void refusePlanning(Arguments arguments, String action) {
    FlourOptions.refuse(
        arguments,
        action,
        FlourOptions.BOWL_FLOUR,
        FlourOptions.DRIEST,
        FlourOptions.WETTEST,
        FlourOptions.STEP,
        FlourOptions.SCALE,
        FlourOptions.BOWL_REST);
  }
}
