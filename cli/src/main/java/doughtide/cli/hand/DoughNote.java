package doughtide.cli.hand;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.DayOfClock;
import doughtide.cli.args.Speech;
import doughtide.cli.file.DocumentFile;
import doughtide.cli.file.FileNames;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.document.DoughNotes;
import doughtide.core.document.ReadingsDocument;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A line for the file of a dough, put into it.
 *
 * @param text of the file with the line
 * @param document the same, read
 * @param said what was understood, in words
 */
public record DoughNote(String text, ReadingsDocument document, String said) {

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter CLOCK_TO_SECONDS =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
  private static final String INTO_COLD = "into the cold";
  private static final Duration MAY_BE_AHEAD = Duration.ofMinutes(15);

  /**
   * Puts what was typed into the text of a file; nothing is written.
   *
   * @param name of the file
   * @param speech the language in which it is told what was understood
   * @throws InputException if the file cannot be read, or has no place for it
   */
  public static DoughNote of(String name, NoteWords words, Speech speech, Session session) {
    Environment environment = session.environment();
    ReadingsFile file = ReadingsFile.inHand("NAME", name, ReadingsFile.BadLines.SKIP, session);
    ReadingsDocument.Setting setting = ReadingsFile.settingInHand(name, environment);
    ReadingsDocument before = file.document();
    ZonedDateTime at = at(before, words, environment);
    DoughNotes.Line line =
        new DoughNotes.Line(
            time(before, at),
            rise(before, words),
            words.celsius(),
            words.core(),
            words.ph(),
            remark(words));
    String text = text(name, environment);
    String noted =
        DocumentFile.named(
            name,
            () ->
                words.intoCold()
                    ? DoughNotes.intoCold(text, line, setting)
                    : words.shaped()
                        ? DoughNotes.shaped(text, line, setting)
                        : DoughNotes.with(text, line, setting));
    ReadingsDocument after = ReadingsDocument.read(noted.lines().iterator(), setting);
    return new DoughNote(noted, after, said(before, at, line, words, speech));
  }

  private static String remark(NoteWords words) {
    if (words.intoCold()) {
      return INTO_COLD;
    }
    return words.shaped() ? "shaped" : words.folded() ? "fold" : "";
  }

  /**
   * Puts how the loaf came out into the text of a file; nothing is written.
   *
   * @param name of the file
   * @param speech the language in which it is told what was understood
   * @throws InputException if the file cannot be read
   */
  public static DoughNote of(String name, LoafNote loaf, Speech speech, Environment environment) {
    ReadingsDocument.Setting setting = ReadingsFile.settingInHand(name, environment);
    String before = text(name, environment);
    String noted =
        DocumentFile.named(
            name, () -> DoughNotes.with(before, loaf.result(), loaf.words(), setting));
    ReadingsDocument after = ReadingsDocument.read(noted.lines().iterator(), setting);
    return new DoughNote(
        noted, after, speech.say("note.result", Map.of("result", loaf.said(speech))));
  }

  private static String text(String name, Environment environment) {
    try {
      return Files.readString(FileNames.path("NAME", name, environment), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw FileProblem.of(name, e);
    }
  }

  private static ZonedDateTime at(
      ReadingsDocument document, NoteWords words, Environment environment) {
    ZonedDateTime mixed =
        document
            .mixed()
            .orElseThrow(
                () ->
                    new InputException(
                        "the file does not say when the dough was mixed: add a line at its top, for"
                            + " example mixed at: 2027-03-06T10:00"));
    ZonedDateTime now = environment.now().atZone(mixed.getZone());
    double lastHours = document.head().lastHours();
    ZonedDateTime last = mixed.plusSeconds(Math.round(3600 * Math.max(0, lastHours)));
    boolean free = lastHours < 0;
    if (words.time().isEmpty()) {
      ZonedDateTime minute = now.truncatedTo(ChronoUnit.MINUTES);
      return minute.isAfter(last) || free && minute.equals(last)
          ? minute
          : now.truncatedTo(ChronoUnit.SECONDS);
    }
    DayOfClock days = new DayOfClock(now.toLocalDate(), environment.catalogue().vocabulary());
    String typed = days.dated("TIME", words.time().get());
    ZonedDateTime at =
        ClockText.isDated(typed)
            ? ClockText.moment("TIME", typed, now.toLocalDate(), mixed.getZone())
            : next(typed, last, free);
    if (at.isAfter(now.plus(MAY_BE_AHEAD))) {
      throw new InputException(
          "TIME "
              + typed
              + " is not after the line before it, or still to come: it is "
              + CLOCK.format(now)
              + ", and the file goes to "
              + CLOCK.format(last)
              + "; to change a line, change the file");
    }
    return at;
  }

  /** The first such time after the last line. */
  private static ZonedDateTime next(String typed, ZonedDateTime last, boolean free) {
    LocalTime time = ClockText.time("TIME", typed);
    LocalDateTime local = last.toLocalDate().atTime(time);
    ZonedDateTime same = local.atZone(last.getZone());
    for (ZonedDateTime each : List.of(same, same.withLaterOffsetAtOverlap())) {
      if (each.isAfter(last) || free && each.equals(last)) {
        return ClockText.existing("TIME", typed, local, last.getZone()).equals(same) ? each : same;
      }
    }
    return ClockText.existing("TIME", typed, local.plusDays(1), last.getZone());
  }

  /**
   * With its date where the head tells the date of mixing, and with the offset of an hour that
   * comes twice.
   */
  private static String time(ReadingsDocument document, ZonedDateTime at) {
    String clock = (at.getSecond() == 0 ? CLOCK : CLOCK_TO_SECONDS).format(at);
    if (!document.head().dated()) {
      return clock;
    }
    boolean twice = at.getZone().getRules().getValidOffsets(at.toLocalDateTime()).size() > 1;
    return at.toLocalDate() + " " + clock + (twice ? at.getOffset().getId() : "");
  }

  private static Optional<Rise> rise(ReadingsDocument document, NoteWords words) {
    if (words.rise().isPresent() && words.height().isPresent()) {
      throw new InputException("a rise and a height say the same: note one of them");
    }
    if (words.rise().isPresent()) {
      return words.rise().map(text -> Quantities.rise("rise", text));
    }
    return words
        .height()
        .map(text -> Quantities.millimetres("height", text))
        .map(mm -> new Rise(mm / startMm(document) - 1));
  }

  private static double startMm(ReadingsDocument document) {
    return document
        .head()
        .startMm()
        .orElseThrow(
            () ->
                new InputException(
                    "a height needs the height at the start: add a line at the top of the file, for"
                        + " example start height: 52 mm"));
  }

  private static String said(
      ReadingsDocument document,
      ZonedDateTime at,
      DoughNotes.Line line,
      NoteWords words,
      Speech speech) {
    List<String> parts = new ArrayList<>();
    line.rise()
        .map(rise -> Map.of("rise", speech.percent(rise.percent())))
        .ifPresent(rise -> parts.add(speech.say("note.risen", rise)));
    line.celsius()
        .ifPresent(celsius -> parts.add(speech.temperature(Temperature.ofCelsius(celsius))));
    line.core()
        .ifPresent(
            core ->
                parts.add(
                    speech.say(
                        "note.middle",
                        Map.of("temperature", speech.temperature(Temperature.ofCelsius(core))))));
    line.ph().ifPresent(ph -> parts.add("pH " + speech.rounded(ph, 2)));
    happened(words).ifPresent(key -> parts.add(speech.say(key)));
    ZonedDateTime mixed = document.mixed().orElseThrow();
    double hours = Duration.between(mixed, at).toSeconds() / 3600.0;
    return ClockTimes.from(mixed).in(speech).at(hours) + ", " + String.join(", ", parts);
  }

  private static Optional<String> happened(NoteWords words) {
    if (words.intoCold()) {
      return Optional.of("note.intoCold");
    }
    return words.shaped()
        ? Optional.of("note.shaped")
        : words.folded() ? Optional.of("note.fold") : Optional.empty();
  }
}
