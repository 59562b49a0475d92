package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Speech;
import doughtide.cli.args.TemperatureSteps;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.hand.Cautions;
import doughtide.cli.hand.DoughFiles;
import doughtide.cli.hand.DoughInHand;
import doughtide.cli.hand.NowSections;
import doughtide.cli.options.ClockOptions;
import doughtide.cli.options.ColdOptions;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.options.TemperatureOptions;
import doughtide.cli.options.WordsOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.document.DoughNotes;
import doughtide.core.document.DoughText;
import doughtide.core.document.ReadingsDocument;
import doughtide.core.document.RoomText;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Begins the file of a dough: what was mixed, when, and for which oven hour. */
public final class StartCommand implements Command {

  private static final String MIXED_AT = "mixed-at";
  private static final String ZONE = "zone";
  private static final String JAR_HEIGHT = "jar-height";
  private static final Duration YESTERDAY = Duration.ofHours(12);
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm", Locale.ROOT);

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("start", "begins the file of a dough just mixed")
        .operands("NAME", 1, 1)
        .everyday(
            "dough-temp",
            "starter",
            "hydration",
            "flour",
            "room",
            "mixed-at",
            "jar-height",
            "cold",
            "bake-at",
            "language",
            "format")
        .options(DoughOptions.specs())
        .options(
            TemperatureOptions.withoutJar().stream()
                .filter(option -> !option.name().equals(TemperatureOptions.TEMPS))
                .toList())
        .options(
            OptionSpec.value(
                JAR_HEIGHT,
                "HEIGHT",
                "62mm",
                "How high the dough stands in its sample jar now: you can then note heights."))
        .options(ProofOptions.specs())
        .options(ColdOptions.specs())
        .options(ClockOptions.specs())
        .options(StarterOptions.file(), OutputOptions.formatWithoutCsv(), WordsOptions.ofAnswer())
        .example("Mixed now", "saturday", "--dough-temp", "25C", "--starter", "20%")
        .example(
            "For tomorrow's oven, with a jar in which heights are read",
            "sunday",
            "--dough-temp",
            "26C",
            "--mixed-at",
            "9.30",
            "--cold",
            "4C",
            "--bake-at",
            "07:00",
            "--jar-height",
            "62mm")
        .note(
            "NAME.txt in this folder keeps it, never over another file; doughtide learn reads it,"
                + " too. What your kitchen says goes into it. Then: doughtide note and doughtide"
                + " now.")
        .note("Caution: " + Cautions.RAW)
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    OutputOptions.Format format = OutputOptions.format(arguments);
    if (format == OutputOptions.Format.CSV) {
      throw OutputOptions.noCsv("start");
    }
    Environment environment = session.environment();
    String name = DoughFiles.fresh(arguments.operands().get(0), environment);
    OutputFile file = OutputFile.of("NAME", name, OutputFile.Existing.KEEP, environment);
    DoughOptions.read(arguments, environment).doughTemperature(arguments);
    TemperatureOptions.refuseVesselWithoutRoom(arguments);
    ZonedDateTime mixed = mixed(arguments, environment);
    Map<String, String> head = head(arguments, mixed);
    checkRoom(arguments);
    String text = DoughNotes.started(head, arguments.has(JAR_HEIGHT));
    ReadingsDocument document =
        ReadingsDocument.read(
            text.lines().iterator(), ReadingsFile.settingInHand(name, environment));
    DoughInHand dough = DoughInHand.of(new ReadingsFile(document), arguments, environment);
    Speech speech = WordsOptions.speech(dough.arguments(), format);
    String time = ClockTimes.from(mixed).in(speech).startInWords();
    String done = speech.say("now.begun", Map.of("file", FileProblem.quoted(name), "time", time));
    Answer answer = NowSections.brief("start", done, dough, speech);
    file.write(text);
    NowCommand.print(answer, arguments, dough, session);
  }

  /** A clock time that lies far ahead was yesterday. */
  private static ZonedDateTime mixed(Arguments arguments, Environment environment) {
    ZoneId zone =
        arguments
            .text(ZONE)
            .map(name -> Quantities.zone("--" + ZONE, name))
            .orElseGet(environment::zone);
    ZonedDateTime now = environment.now().atZone(zone).truncatedTo(ChronoUnit.MINUTES);
    Optional<String> text = arguments.text(MIXED_AT);
    if (text.isEmpty()) {
      return now;
    }
    ZonedDateTime moment =
        ClockTimes.parse("--" + MIXED_AT, text.get(), zone, environment.now()).start();
    boolean yesterday = !ClockText.isDated(text.get()) && moment.isAfter(now.plus(YESTERDAY));
    return yesterday ? moment.minusDays(1) : moment;
  }

  /** Under the names of options; as lines of the file they would have those of the file. */
  private static void checkRoom(Arguments arguments) {
    arguments.temperature(RoomText.ROOM);
    RoomText.mass(arguments);
    RoomText.covered(arguments, arguments.catalogue());
    RoomText.cover(arguments, arguments.catalogue());
  }

  private static Map<String, String> head(Arguments arguments, ZonedDateTime mixed) {
    Map<String, String> head = new LinkedHashMap<>();
    head.put(MIXED_AT, MOMENT.format(mixed));
    head.put(ZONE, mixed.getZone().getId());
    List<String> keys = new ArrayList<>(DoughText.keys());
    keys.add(DoughOptions.DOUGH_TEMP);
    keys.addAll(RoomText.keys());
    keys.addAll(ReadingsDocument.plan());
    for (String key : keys) {
      if (arguments.offers(key)) {
        arguments.text(key).ifPresent(text -> head.put(key, text.isEmpty() ? "yes" : text));
      }
    }
    arguments
        .text(JAR_HEIGHT)
        .map(text -> Quantities.millimetres("--" + JAR_HEIGHT, text))
        .ifPresent(mm -> head.put("start-height", Checks.plain(mm) + " mm"));
    for (String key : List.of(DoughOptions.DOUGH_TEMP, RoomText.ROOM)) {
      if (TemperatureSteps.isSeveral(head.getOrDefault(key, ""))) {
        throw new InputException(
            "--" + key + " of a dough in hand is one temperature: note later ones as they come");
      }
    }
    return head;
  }
}
