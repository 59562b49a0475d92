package doughtide.cli.hand;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.CliRun;
import doughtide.cli.TestEnvironment;
import doughtide.cli.answer.Answer;
import doughtide.cli.args.ArgumentParser;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.Speech;
import doughtide.cli.command.NowCommand;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.options.KitchenOptions;
import doughtide.cli.session.Session;
import doughtide.core.document.ReadingsDocument;
import doughtide.core.learning.LoafResult;
import doughtide.core.quantity.Rise;
import doughtide.report.words.Language;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The answers about a dough in hand, each in the language of who reads it. */
class HandLanguagesTest {
  private static final String HEAD =
      "mixed at: 2027-03-06T09:30\nstarter: 20%\nhydration: 72%\nflour: white 80%, rye 20%\n"
          + "dough temp: 25C\n";
  private static final String NIGHT = "cold: 4C\nbake at: 7:00\n";
  private static final String READ = "\ntime;rise %;dough temp C;note\n2027-03-06 12:30;30;24.5;\n";
  private static final String ODD = "2027-03-06 13:00;700;;\n";
  private static final Pattern ENGLISH =
      Pattern.compile(
          "(?i)\\b(the|and|of|dough|loaf|jar|shaped?|risen|look|cold|oven|starter|about|until|from"
              + "|with|when|likely|reading|readings|after|first|flour|fold|middle)\\b");
  private static final Pattern WORD = Pattern.compile("\\p{L}{3,}");

  @TempDir Path folder;

  private TestEnvironment environment(String moment) {
    Instant now = Instant.parse(moment + ":00Z");
    return new TestEnvironment(folder, () -> now, false);
  }

  private DoughInHand dough(String file, String moment, String... words) {
    TestEnvironment environment = environment(moment);
    Arguments arguments =
        new ArgumentParser(KitchenOptions.added(new NowCommand().spec()), environment.catalogue())
            .parse(List.of(words));
    ReadingsDocument document =
        ReadingsDocument.read(
            file.lines().iterator(), ReadingsFile.settingInHand("mine.txt", environment));
    return DoughInHand.of(new ReadingsFile(document), arguments, environment);
  }

  private static List<String> text(Answer answer) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    answer.text(new PrintStream(bytes, true, StandardCharsets.UTF_8));
    return bytes.toString(StandardCharsets.UTF_8).lines().toList();
  }

  /** No line of words is the English one, and no other holds an English word of the trade. */
  private static void isInEveryLanguage(Function<Speech, Answer> answer) {
    List<String> english = text(answer.apply(Speech.ENGLISH));
    for (Language language : Language.values()) {
      if (language != Language.ENGLISH) {
        List<String> other = text(answer.apply(new Speech(language)));
        assertThat(String.join("\n", other)).as(language.tag()).doesNotContainPattern(ENGLISH);
        assertThat(other)
            .filteredOn(line -> WORD.matcher(line).find())
            .isNotEmpty()
            .doesNotContainAnyElementsOf(english)
            .allSatisfy(line -> assertThat(line.codePointCount(0, line.length())).isLessThan(82));
      }
    }
  }

  private static TreeSet<Rise> rises() {
    return new TreeSet<>(List.of(Rise.ofPercent(50), Rise.ofPercent(100)));
  }

  @Test
  void noEnglishSentenceIsLeft() {
    DoughInHand night =
        dough(HEAD + NIGHT + READ, "2027-03-06T12:40", "--leave-at", "14:00", "--back-at", "18:00");
    isInEveryLanguage(speech -> NowSections.of(night, rises(), speech));
  }

  @Test
  @Tag("long")
  void noEnglishSentenceIsLeftOfOtherLoaves() {
    DoughInHand odd = dough(HEAD + READ + ODD, "2027-03-06T13:05");
    isInEveryLanguage(speech -> NowSections.brief("note", "", odd, speech));
    String[] away = {"--leave-at", "14:00", "--back-at", "18:00"};
    DoughInHand alone = dough(HEAD + NIGHT + READ, "2027-03-06T12:40", away);
    isInEveryLanguage(speech -> NowSections.of(alone, rises(), speech));
    isInEveryLanguage(speech -> NowSections.ofResult("", LoafResult.UNDER, alone, speech));
    String shaped = HEAD + NIGHT + "shaped: 2027-03-06 14:00\n" + READ;
    DoughInHand night = dough(shaped, "2027-03-06T14:10");
    isInEveryLanguage(speech -> NowSections.of(night, rises(), speech));
    DoughInHand room = dough(HEAD + "proof temp: 24C\n" + READ, "2027-03-06T12:40");
    isInEveryLanguage(speech -> NowSections.of(room, rises(), speech));
    DoughInHand late = dough(HEAD + NIGHT + READ, "2027-03-06T20:40");
    isInEveryLanguage(speech -> NowSections.of(late, rises(), speech));
  }

  @ParameterizedTest
  @ValueSource(strings = {"de", "fr", "es", "pt"})
  void whatIsNotedIsToldInTheLanguage(String language) throws IOException {
    Session session = new Session(System.out, System.err, environment("2027-03-06T15:00"));
    Files.writeString(folder.resolve("mine.txt"), HEAD + READ);
    Speech speech = new Speech(Language.of(language));
    for (String typed : List.of("fold", "14:20 shaped", "into-cold", "14:30 30% 24.5C")) {
      NoteWords words = NoteWords.of(List.of(typed.split(" ")));
      assertThat(DoughNote.of("mine.txt", words, speech, session).said())
          .containsPattern("1[45]:\\d0, .")
          .doesNotContainPattern(ENGLISH)
          .doesNotContain("24.5");
    }
    assertThat(LoafNote.of(List.of("under", "crumb", "tight")).said(speech))
        .doesNotContain("under", "crumb")
        .endsWith(" tight");
  }

  @Test
  void theKitchenSaysWhichLanguage() throws IOException {
    Files.writeString(folder.resolve("kitchen.txt"), "language: es\n");
    Files.writeString(folder.resolve("mine.txt"), HEAD + READ);
    TestEnvironment environment = environment("2027-03-06T12:40");
    CliRun run = CliRun.in(environment, "note", "fold", "--kitchen", "kitchen.txt");

    assertThat(run.err()).isEmpty();
    List<String> lines = run.out().lines().toList();
    assertThat(lines.get(0)).isEqualTo("Anotado en 'mine.txt': sáb 12:40, pliegue.");
    assertThat(lines.get(1)).startsWith("Habrá subido un 50 % hacia ");
    assertThat(lines)
        .filteredOn(line -> line.contains("--no-kitchen"))
        .singleElement()
        .isEqualTo("De la cocina (--no-kitchen lo omite): language es");
  }

  @Test
  void dataAreTheSameInEveryLanguage() throws IOException {
    Files.writeString(folder.resolve("kitchen.txt"), "language: pt\n");
    Files.writeString(folder.resolve("mine.txt"), HEAD + READ);
    TestEnvironment environment = environment("2027-03-06T12:40");
    CliRun english = CliRun.in(environment, "now", "--format", "json");
    String[] kitchen = {"now", "--format", "json", "--kitchen", "kitchen.txt"};
    String[] unknown = {"now", "--format", "json", "--language", "xx"};

    assertThat(CliRun.in(environment, kitchen).out()).isEqualTo(english.out());
    assertThat(CliRun.in(environment, unknown).refusal()).contains("use en, de, fr, es or pt");
  }
}
