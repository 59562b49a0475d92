package doughtide.report.phone;

import doughtide.core.Internal;
import doughtide.report.handout.ClassDayPages;
import doughtide.report.words.Refusal;
import doughtide.report.words.Words;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.text.DecimalFormatSymbols;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One HTML file for the telephone: the answer, how long until then, the chart, the steps to tick,
 * and weights for the readings that are typed into it. It loads nothing, and its policy forbids it
 * to. Immutable; the same dough gives the same file.
 */
@Internal
public final class PhonePage {

  /** Texts that the page fills in itself; the bundles have them under {@code phone.}. */
  private static final List<String> WORDS =
      List.of(
          "shape",
          "risen",
          "ready",
          "never",
          "lesson.noShape",
          "window",
          "open",
          "in",
          "ago",
          "about",
          "left",
          "now",
          "ahead",
          "behind",
          "onTime",
          "look",
          "lookNow",
          "thin",
          "off",
          "warmer",
          "remove",
          "copied",
          "notCopied",
          "notShared",
          "saved",
          "notKept",
          "badHeight",
          "badStart",
          "badDegrees",
          "badTime",
          "badTwice",
          "doubt.CLOCK_WRONG",
          "doubt.MARK_MOVED",
          "doubt.OTHER_DOUGH");

  /** Texts that the page of a lesson fills in itself. */
  private static final List<String> WORDS_OF_LESSON =
      List.of(
          "never",
          "lesson.risen",
          "lesson.shape",
          "lesson.noShape",
          "lesson.window",
          "lesson.open",
          "lesson.isGiven",
          "lesson.same",
          "lesson.later",
          "lesson.sooner");

  private final String title;
  private final PhoneWords say;
  private final List<String> spoken;
  private final List<String> scripts;
  private final Markup body;

  private PhonePage(
      String title, PhoneWords say, List<String> spoken, List<String> scripts, Markup body) {
    this.title = title;
    this.say = say;
    this.spoken = spoken;
    this.scripts = scripts;
    this.body = body;
  }

  private static PhonePage of(String title, List<PhoneSubject> subjects, Words words) {
    return new PhonePage(
        title,
        subjects.get(0).say(),
        WORDS,
        List.of("common.js", "weights.js", "page.js"),
        articles(subjects, words));
  }

  static PhonePage ofDoughs(String title, List<PhoneDough> doughs, Words words) {
    List<PhoneSubject> subjects = new ArrayList<>();
    for (PhoneDough dough : doughs) {
      Refusal.ifImpossible(dough.forecast());
      subjects.add(new DoughSubject(dough, words));
    }
    return of(title, subjects, words);
  }

  /**
   * The page of one dough, with at most 512 members of its forecast.
   *
   * @throws doughtide.core.quantity.InputException if no hours can be given for it
   */
  public static PhonePage of(PhoneDough dough, Words words) {
    return ofDoughs(dough.name(), List.of(dough), words);
  }

  /**
   * The page of a planned day, with a list where there are several doughs, each with at most 128
   * members then.
   *
   * @param day its plan, doughs and students, of whom only first names are shown; where it has no
   *     students its doughs are named after them
   */
  @Internal
  public static PhonePage of(ClassDayPages day, Words words) {
    return ofDoughs(day.title(), new PhoneDay(day, words).doughs(), words);
  }

  /**
   * The page of a starter that is fed, with at most 512 members of its forecast.
   *
   * @throws doughtide.core.quantity.InputException if no hours can be given for it
   */
  public static PhonePage of(PhoneStarter starter, Words words) {
    Refusal.ifImpossible(starter.forecast().rise());
    return of(starter.name(), List.of(new StarterSubject(starter, words)), words);
  }

  /**
   * The page of a dough in which one thing or two can be changed by sliders.
   *
   * @throws doughtide.core.quantity.InputException if no hours can be given for one of its doughs
   */
  public static PhonePage of(PhoneLesson lesson, Words words) {
    lesson.doughs().forEach(Refusal::ifImpossible);
    return new PhonePage(
        lesson.name(),
        new PhoneWords(words, false),
        WORDS_OF_LESSON,
        List.of("common.js", "lesson.js"),
        new LessonBody(lesson, words).markup());
  }

  /**
   * What a dough without a name is called.
   *
   * @param mixedAt when it was mixed
   */
  public static String usualName(ZonedDateTime mixedAt, Words words) {
    return words.say("phone.name", Map.of("date", words.date(mixedAt.toLocalDate())));
  }

  /** The file, as UTF-8 text. */
  public String html() {
    String style = Template.of("page.css").text();
    String script =
        scripts.stream().map(each -> Template.of(each).text()).collect(Collectors.joining("\n"));
    return Template.of("page.html")
            .fill(
                Map.ofEntries(
                    Map.entry("language", Markup.text(words().language().tag())),
                    Map.entry("title", Markup.text(title)),
                    Map.entry("style", new Markup(style)),
                    Map.entry("script", new Markup(script)),
                    Map.entry("styleHash", Markup.text(hash(style))),
                    Map.entry("scriptHash", Markup.text(hash(script))),
                    Map.entry("gap", Markup.text(gap())),
                    Map.entry("clock", Markup.text(is12Hours() ? "12" : "24")),
                    Map.entry("decimal", Markup.text(decimal())),
                    Map.entry("noScript", Markup.text(say.say("noScript"))),
                    Map.entry("made", Markup.text(say.say("made"))),
                    Map.entry("awake", Markup.text(say.say("awake"))),
                    Map.entry("doughs", body),
                    Map.entry("words", spoken())))
            .html()
        + "\n";
  }

  private static Markup articles(List<PhoneSubject> subjects, Words words) {
    List<PhonePart> parts = new ArrayList<>();
    for (PhoneSubject subject : subjects) {
      parts.add(new PhonePart(subject, words, parts.size() + 1, subjects.size()));
    }
    List<Markup> all = new ArrayList<>();
    if (parts.size() > 1) {
      Markup lines = Markup.all(parts.stream().map(PhonePart::line).toList());
      all.add(
          Template.of("contents.html")
              .fill(Map.of("what", Markup.text(words.say("phone.doughs")), "lines", lines)));
    }
    parts.forEach(part -> all.add(part.markup()));
    return Markup.all(all);
  }

  private Words words() {
    return say.words();
  }

  private Markup spoken() {
    Template word = Template.of("word.html");
    return Markup.all(
        spoken.stream()
            .map(
                key ->
                    word.fill(
                        Map.of(
                            "key", Markup.text(key),
                            "text", Markup.text(say.say(key)))))
            .toList());
  }

  /** What stands between a number and its sign for per cent. */
  private String gap() {
    return words().percent(1, 0).replace("1", "").replace("%", "");
  }

  private boolean is12Hours() {
    return Stream.of("am", "pm")
        .anyMatch(words().clock(ZonedDateTime.parse("2000-01-01T01:00Z"))::endsWith);
  }

  private String decimal() {
    return String.valueOf(
        DecimalFormatSymbols.getInstance(words().language().locale()).getDecimalSeparator());
  }

  /** As a content-security policy names what it allows. */
  private static String hash(String text) {
    try {
      byte[] sum =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return "sha256-" + Base64.getEncoder().encodeToString(sum);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
