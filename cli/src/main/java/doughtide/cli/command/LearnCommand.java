package doughtide.cli.command;

import doughtide.cli.Main;
import doughtide.cli.answer.TextPage;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Words;
import doughtide.cli.file.FileNames;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.file.StarterFile;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.learning.Bake;
import doughtide.core.learning.Learned;
import doughtide.core.learning.LearnedParameter;
import doughtide.core.learning.Learner;
import doughtide.core.learning.Misfit;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.report.words.Advice;
import doughtide.report.words.LearnedWords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Learns a baker and starter from a folder of readings. */
public final class LearnCommand implements Command {

  private static final String SAVE = "save";
  private static final int MOST_FILES = 1000;
  private static final Rise HALF = Rise.ofPercent(50);

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("learn", "learns your starter from the readings of past bakes")
        .operands("FOLDER", 1, 1)
        .options(
            OptionSpec.value(
                SAVE, "FILE", "starter.json", "Keeps what was learned, for rise --starter-file."),
            OutputOptions.formatWithoutCsv(),
            OutputOptions.overwrite(),
            ReadingsFile.skipOption())
        .example("From a folder of readings", "quayside-bakes", "--save", "starter.json")
        .note(
            "The folder holds one .csv file a bake: lines such as 'starter: 20%', 'hydration: 72%',"
                + " 'dough temp: 25C', 'mixed at: 09:30', then a table with the heading"
                + " 'time;rise %;dough temp C;pH;note'. A column 'height mm' instead of 'rise %'"
                + " needs a line 'start height: 52 mm'.")
        .note("Leave a sample jar's lid loose: a closed jar of rising dough can burst.")
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) throws IOException {
    OutputOptions.Format format = OutputOptions.format(arguments);
    if (format == OutputOptions.Format.CSV) {
      throw OutputOptions.noCsv("learn");
    }
    Optional<OutputFile> save = OutputOptions.file(SAVE, arguments, session.environment());
    String folder = arguments.operands().get(0);
    List<ReadingsFile> files = new ArrayList<>();
    for (String name : names(folder, session.environment())) {
      files.add(ReadingsFile.read("FOLDER", name, ReadingsFile.badLines(arguments), session));
    }
    List<Bake> bakes = files.stream().map(ReadingsFile::bake).toList();
    Learned learned = Learner.standard().learn(bakes);
    Bake last = bakes.get(bakes.size() - 1);
    Learned.Narrowing windows = learned.narrowing(last.formula(), last.temperature(), HALF);
    if (save.isPresent()) {
      StarterFile.write(learned.starter(Main.version()), save.get());
    }
    if (format == OutputOptions.Format.JSON) {
      LearnJson.write(learned, files, windows, HALF, session.out());
      return;
    }
    TextPage page = page(learned, files, windows);
    save.ifPresent(file -> page.gap().line("Saved in " + FileProblem.quoted(file.shown())));
    page.lines().forEach(session.out()::println);
  }

  /** The files of readings in a folder, in order of their names. */
  private static List<String> names(String folder, Environment environment) throws IOException {
    Path path = FileNames.path("FOLDER", folder, environment);
    if (!Files.isDirectory(path)) {
      throw new InputException(
          FileProblem.quoted(folder)
              + (Files.exists(path) ? " is a file" : " does not exist")
              + ": give the folder that holds your readings, one .csv file a bake");
    }
    try (Stream<Path> all = Files.list(path)) {
      List<String> names =
          all.map(each -> each.getFileName().toString())
              .filter(each -> each.toLowerCase(Locale.ROOT).endsWith(".csv"))
              .filter(each -> !each.startsWith("."))
              .sorted()
              .map(each -> folder.endsWith("/") ? folder + each : folder + "/" + each)
              .toList();
      if (names.isEmpty()) {
        throw new InputException(
            FileProblem.quoted(folder) + " holds no .csv file: put one file a bake there");
      }
      if (names.size() > MOST_FILES) {
        throw new InputException(
            FileProblem.quoted(folder)
                + " holds "
                + names.size()
                + " files, at most "
                + MOST_FILES
                + " are read: keep the newest there");
      }
      return names;
    }
  }

  private static TextPage page(
      Learned learned, List<ReadingsFile> files, Learned.Narrowing windows) {
    TextPage page = new TextPage();
    page.line("Read");
    for (ReadingsFile file : files) {
      page.sentence("  " + described(file), 4);
    }
    page.gap();
    page.sentence(
        "Learned from "
            + counted(learned.bakes(), "bake")
            + " and "
            + counted(learned.readings(), "reading")
            + ". Eight in ten of your next doughs lie in the range given.");
    page.gap();
    parameters(page, learned.parameters());
    page.gap();
    misfits(page, learned);
    narrowing(page, windows, files.get(files.size() - 1).bake());
    return page;
  }

  private static String described(ReadingsFile file) {
    Bake bake = file.bake();
    String thinned =
        bake.readings().size() < file.given()
            ? " (as " + bake.readings().size() + " means over a quarter of an hour)"
            : "";
    return bake.name()
        + ": "
        + counted(file.given(), "reading")
        + thinned
        + file.leftOutWords()
        + file.assumed().map(words -> "; assumed: " + words).orElse("");
  }

  public static String counted(long count, String thing) {
    return count + " " + thing + (count == 1 ? "" : "s");
  }

  private static void parameters(TextPage page, List<LearnedParameter> parameters) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("", "before", "after"));
    for (LearnedParameter each : parameters) {
      LearnedWords words = LearnedWords.english(each);
      rows.add(
          List.of(words.name() + ", " + words.unit(), range(each.before()), range(each.after())));
    }
    page.table(rows).gap();
    List<List<String>> meanings = new ArrayList<>();
    for (LearnedParameter each : parameters) {
      LearnedWords words = LearnedWords.english(each);
      meanings.add(List.of(words.name(), words.meaning()));
    }
    page.line("In words").table(meanings);
  }

  private static String range(LearnedParameter.Range range) {
    int decimals = range.high() - range.low() < 0.1 ? 3 : 2;
    return fixed(range.middle(), decimals)
        + " ("
        + fixed(range.low(), decimals)
        + " to "
        + fixed(range.high(), decimals)
        + ")";
  }

  /** With all decimals, so that the column is even; no minus before 0. */
  private static String fixed(double value, int decimals) {
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return text.matches("-0\\.0+") ? text.substring(1) : text;
  }

  private static void misfits(TextPage page, Learned learned) {
    if (learned.bakes() < 2) {
      return;
    }
    if (learned.misfits().isEmpty()) {
      page.line("All bakes fit each other.");
    }
    for (Misfit misfit : learned.misfits()) {
      page.sentence("Does not fit the others: " + misfit.bake(), 2);
      page.sentence(
          "  likeliest reason: " + Advice.english(misfit.reason()).text() + amount(misfit), 4);
      if (!misfit.alsoPossible().isEmpty()) {
        page.sentence(
            "  nearly as likely: "
                + misfit.alsoPossible().stream()
                    .map(reason -> Advice.english(reason).text())
                    .collect(Collectors.joining("; ")),
            4);
      }
      page.sentence("  what helps: " + Advice.english(misfit.reason()).remedy(), 4);
    }
    page.gap();
  }

  private static String amount(Misfit misfit) {
    String size = Words.rounded(Math.abs(misfit.amount()), 0);
    String warmer = misfit.amount() > 0 ? "warmer" : "colder";
    return switch (misfit.reason()) {
      case TEMPERATURE_OFF -> " (it was about " + size + " °C " + warmer + " than noted)";
      case STARTER_PAST_RIPE, STARTER_LIVELIER -> " (about " + size + " % of its usual vigour)";
      case START_HEIGHT_WRONG ->
          " (heights read about "
              + size
              + " % "
              + (misfit.amount() > 0 ? "too high" : "too low")
              + ")";
      case UNEXPLAINED -> "";
    };
  }

  private static void narrowing(TextPage page, Learned.Narrowing windows, Bake last) {
    page.sentence("Hours from mixing to 50 % rise, for a dough like '" + last.name() + "'");
    page.line("  before   " + RiseWords.window(windows.before()));
    page.line("  learned  " + RiseWords.window(windows.after()));
    windows
        .share()
        .ifPresent(
            share ->
                page.line(
                    "  the window is "
                        + Words.rounded(Math.abs(share) * 100, 0)
                        + " % "
                        + (share >= 0 ? "narrower" : "wider")));
  }
}
