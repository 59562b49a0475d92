package doughtide.cli.command;

import doughtide.cli.Main;
import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.DocumentFile;
import doughtide.cli.file.FileNames;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.file.StarterFile;
import doughtide.cli.hand.DoughInHand;
import doughtide.cli.options.ColdOptions;
import doughtide.cli.options.KeepOptions;
import doughtide.cli.options.KitchenOptions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.cli.text.OneLine;
import doughtide.core.document.DoughNotes;
import doughtide.core.document.Vocabulary;
import doughtide.core.learning.Bake;
import doughtide.core.learning.Learned;
import doughtide.core.learning.Learner;
import doughtide.core.learning.LearningPrior;
import doughtide.core.learning.LoafResult;
import doughtide.core.learning.StarterRoutine;
import doughtide.core.learning.TargetBelief;
import doughtide.core.loaf.Cold;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Learns a baker and starter from a folder of readings. */
public final class LearnCommand implements Command {

  private static final String SAVE = "save";
  private static final String SAVE_COLD = "save-cold";
  private static final String ROUTINE = "starter-routine";
  private static final int MOST_FILES = 1000;
  private static final int MOST_NAMED = 5;
  private static final Rise HALF = Rise.ofPercent(50);

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("learn", "learns your starter from the readings of past bakes")
        .operands("FOLDER", 1, 1)
        .options(
            OptionSpec.value(
                SAVE, "FILE", "starter.txt", "Keeps what was learned, for rise --starter-file."),
            OptionSpec.value(
                SAVE_COLD,
                "FILE",
                "cold.txt",
                "Keeps what readings of the core taught of your cold, for rise" + " --cold-file."),
            OptionSpec.value(
                    ROUTINE,
                    "WORD",
                    "kept",
                    "How the starter lives: kept (fed on schedule, used at its peak) or irregular;"
                        + " the more regular, the more your readings tell.")
                .withDefault("unknown"),
            KeepOptions.spec(),
            OutputOptions.formatWithoutCsv(),
            OutputOptions.overwrite(),
            ReadingsFile.skipOption(),
            ReadingsFile.skipFilesOption())
        .example("From a folder of readings", "quayside-bakes", "--save", "starter.txt")
        .note(
            "The folder holds one .csv or .txt file a bake: lines such as 'starter: 20%',"
                + " 'hydration: 72%', 'dough temp: 25C', 'mixed at: 09:30', then a table with the"
                + " heading 'time;rise %;dough temp C;pH;note'. A column 'height mm' instead of"
                + " 'rise %' needs a line 'start height: 52 mm'. A column 'core temp C' is a probe"
                + " in the middle of the loaf in the cold; it needs lines 'cold: 4C' and 'hold:"
                + " 12h', and better 'into cold: 21:30', too.")
        .note("Leave a sample jar's lid loose: a closed jar of rising dough can burst.")
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) throws IOException {
    OutputOptions.Format format = OutputOptions.format(arguments);
    if (format == OutputOptions.Format.CSV) {
      throw OutputOptions.noCsv("learn");
    }
    boolean keeps = KeepOptions.asked(arguments);
    Optional<OutputFile> named = OutputOptions.file(SAVE, arguments, session.environment());
    Optional<OutputFile> save =
        keeps && named.isEmpty()
            ? Optional.of(
                KeepOptions.besideKitchen(arguments, session.environment(), "starter.txt"))
            : named;
    String folder = arguments.operands().get(0);
    List<ReadingsFile> files =
        ReadingsFile.readAll("FOLDER", names("FOLDER", folder, session), arguments, session);
    List<Bake> bakes = files.stream().map(ReadingsFile::bake).toList();
    StarterRoutine routine =
        arguments.text(ROUTINE).map(StarterRoutine::named).orElse(StarterRoutine.UNKNOWN);
    Learned learned = Learner.standard().with(LearningPrior.of(routine)).learn(bakes);
    Bake last = bakes.get(bakes.size() - 1);
    Learned.Narrowing windows = learned.narrowing(last.formula(), last.temperature(), HALF);
    if (save.isPresent()) {
      StarterFile.write(learned.starter(Main.version()), save.get());
      if (keeps) {
        KeepOptions.keepFile(arguments, session.environment(), "starter-file", save.get());
      }
    }
    Optional<Cold> cold = cold(files, arguments, session.environment());
    Optional<OutputFile> saveCold = saveCold(cold, arguments, session.environment());
    Answer answer =
        LearnSections.of(learned, files, windows, HALF, cold, loaves(files, arguments, session));
    if (format == OutputOptions.Format.JSON) {
      answer.fromKitchen(arguments.fromKitchen()).json(session.out());
      return;
    }
    answer.text(session.out());
    Stream.of(save, saveCold)
        .flatMap(Optional::stream)
        .forEach(file -> session.out().println("\nSaved in " + FileProblem.quoted(file.shown())));
  }

  /** How the loaves came out; what was noted of their shaping is weighed. */
  private static List<TargetBelief.Loaf> loaves(
      List<ReadingsFile> files, Arguments arguments, Session session) {
    return files.stream()
        .flatMap(
            file ->
                file.document().head().result().stream()
                    .map(result -> loaf(file, result, arguments, session)))
        .toList();
  }

  private static TargetBelief.Loaf loaf(
      ReadingsFile file, LoafResult result, Arguments arguments, Session session) {
    if (file.document().head().shapedHours().isEmpty()) {
      return new TargetBelief.Loaf(result, 1);
    }
    DoughInHand dough = inHand(file, arguments, session.environment());
    return DocumentFile.named(file.bake().name(), () -> dough.judged(result));
  }

  /** A bake as the commands on a dough in hand see it. */
  private static DoughInHand inHand(
      ReadingsFile file, Arguments arguments, Environment environment) {
    Arguments asked = arguments.as(KitchenOptions.added(new NowCommand().spec()));
    return DocumentFile.named(file.bake().name(), () -> DoughInHand.of(file, asked, environment));
  }

  /** What is known of the cold after the nights whose core was read, one after another. */
  private static Optional<Cold> cold(
      List<ReadingsFile> files, Arguments arguments, Environment environment) {
    Optional<Cold> known = Optional.empty();
    for (ReadingsFile file : files) {
      if (!file.document().head().core().readings().isEmpty()) {
        DoughInHand dough = inHand(file, arguments, environment);
        Optional<Cold> before = known;
        known = Optional.of(DocumentFile.named(file.bake().name(), () -> dough.taught(before)));
      }
    }
    return known;
  }

  private static Optional<OutputFile> saveCold(
      Optional<Cold> cold, Arguments arguments, Environment environment) {
    Optional<OutputFile> named = OutputOptions.file(SAVE_COLD, arguments, environment);
    if (named.isPresent() && cold.isEmpty()) {
      throw new InputException(
          "--save-cold keeps what a probe taught: no file of readings has a column 'core temp C'");
    }
    boolean keeps = KeepOptions.asked(arguments);
    cold.ifPresent(each -> ColdOptions.write(arguments, environment, each, named, keeps));
    return named;
  }

  /** By its name; other texts that this program keeps are told by their first line. */
  private static boolean mayHoldReadings(Path file) {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    if (name.startsWith(".") || !name.endsWith(".txt")) {
      return name.endsWith(".csv") && !name.startsWith(".");
    }
    try (BufferedReader lines = Files.newBufferedReader(file)) {
      String first = String.valueOf(lines.readLine());
      return !first.startsWith("# doughtide ") || first.matches("# doughtide (readings|dough)");
    } catch (IOException e) {
      return true;
    }
  }

  /** Whether it has the heading of such a table; what cannot be read is told of later. */
  private static boolean hasTable(String option, String name, Environment environment) {
    Vocabulary vocabulary = environment.catalogue().vocabulary();
    try {
      return DocumentFile.read(option, name, environment, lines -> hasTable(lines, vocabulary));
    } catch (InputException unreadable) {
      return true;
    }
  }

  private static boolean hasTable(Iterator<String> lines, Vocabulary vocabulary) {
    while (lines.hasNext()) {
      if (DoughNotes.hasTable(lines.next(), vocabulary)) {
        return true;
      }
    }
    return false;
  }

  /** The files of readings in a folder, in order of their names; other texts are left out. */
  static List<String> names(String option, String folder, Session session) throws IOException {
    Environment environment = session.environment();
    Path path = FileNames.path(option, folder, environment);
    if (!Files.isDirectory(path)) {
      throw new InputException(
          FileProblem.quoted(folder)
              + (Files.exists(path) ? " is a file" : " does not exist")
              + ": give the folder that holds your readings, one file a bake");
    }
    Map<Boolean, List<String>> names;
    try (Stream<Path> all = Files.list(path)) {
      names =
          all.filter(LearnCommand::mayHoldReadings)
              .map(each -> each.getFileName().toString())
              .sorted()
              .map(each -> folder.endsWith("/") ? folder + each : folder + "/" + each)
              .collect(Collectors.partitioningBy(name -> hasTable(option, name, environment)));
    }
    List<String> readings = names.getOrDefault(true, List.of());
    List<String> others = names.getOrDefault(false, List.of());
    checkCount(folder, readings.size(), others);
    sayOthers(others, session);
    return readings;
  }

  private static void checkCount(String folder, int files, List<String> others) {
    if (files == 0) {
      String first =
          others.stream()
              .findFirst()
              .map(each -> " (" + FileProblem.quoted(each) + " has no table)")
              .orElse("");
      throw new InputException(
          FileProblem.quoted(folder)
              + " holds no .csv or .txt file of readings"
              + first
              + ": put one file a bake there, with a"
              + " table that begins with a line such as time;rise %");
    }
    if (files > MOST_FILES) {
      throw new InputException(
          FileProblem.quoted(folder)
              + " holds "
              + files
              + " files, at most "
              + MOST_FILES
              + " are read: keep the newest there");
    }
  }

  private static void sayOthers(List<String> others, Session session) {
    if (!others.isEmpty()) {
      String named =
          others.stream()
              .limit(MOST_NAMED)
              .map(FileProblem::quoted)
              .collect(Collectors.joining(", "));
      int more = others.size() - MOST_NAMED;
      String rest = more > 0 ? " and " + more + " more" : "";
      String why = "Left out, for no line in it begins a table of readings: ";
      session.err().println(OneLine.of(why + named + rest));
    }
  }
}
