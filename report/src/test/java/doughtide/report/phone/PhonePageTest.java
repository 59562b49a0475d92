package doughtide.report.phone;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.document.ReadingsDocument;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.learning.Reading;
import doughtide.core.loaf.JarRule;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.htmlunit.html.DomElement;
import org.htmlunit.html.DomNode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The page in a browser without a screen. */
class PhonePageTest {

  private static final ZonedDateTime MIXED =
      ZonedDateTime.parse("2027-03-06T14:00+01:00[Europe/Berlin]");
  private static final Instant AT_FIVE = Instant.parse("2027-03-06T16:00:00Z"); // 17:00 in Berlin
  private static final Words ENGLISH = Words.in(Language.ENGLISH);

  private static PhoneDough loaf;
  private static String page;
  private final PhoneBrowser phone = new PhoneBrowser();

  @BeforeAll
  static void forecast() {
    RiseForecast forecast =
        RiseForecaster.standard()
            .withMembers(64)
            .keepingCurves()
            .forecast(
                DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(25)));
    Proof proof = Proof.inColdUntil(Temperature.ofCelsius(4), 17);
    loaf =
        PhoneDough.of("Saturday", MIXED, forecast, Rise.ofPercent(50))
            .with(new PhoneDough.Loaf(proof, ShapeForecaster.of(forecast, proof).forecast()));
    page = PhonePage.of(loaf, ENGLISH).html();
  }

  @AfterEach
  void close() {
    phone.close();
  }

  private static PhoneDough named(String name) {
    return new PhoneDough(
        name,
        MIXED,
        loaf.forecast(),
        loaf.jar(),
        loaf.asked(),
        loaf.rises(),
        loaf.loaf(),
        loaf.plan(),
        loaf.told(),
        loaf.widens(),
        loaf.warnings());
  }

  private void open(PhoneDough dough) {
    String html =
        dough.equals(loaf) ? page : PhonePage.of(dough, ENGLISH).html(); // one page for most tests
    phone.open("x.html", html, AT_FIVE);
  }

  @Test
  void saysWhenToShapeAndHowLongUntilThen() {
    open(loaf);
    double likely = loaf.loaf().orElseThrow().shape().hours().likely().orElseThrow();
    PhoneClock clock = new PhoneClock(MIXED, 24, false, ENGLISH);
    assertThat(phone.text(".answer"))
        .startsWith("Shape about " + clock.at(OptionalDouble.of(likely)))
        .contains("Eight of ten");
    assertThat(phone.text(".left")).isEqualTo("in " + ENGLISH.hours(likely - 3));
    assertThat(phone.texts(".dots circle")).hasSize(20);
    int left = phone.page().querySelectorAll(".dots .to-come").size();
    assertThat(phone.text(".dots-left")).isEqualTo(left + " of 20 still to come.");
    assertThat(phone.texts(".over .now")).hasSize(2);
    assertThat(phone.texts(".steps li")).hasSizeGreaterThan(4);
    assertThat(phone.requests()).isEqualTo(1);
  }

  @Test
  void timesAreThoseOfTheDoughAfterTheClocksChanged() {
    ZonedDateTime before = ZonedDateTime.parse("2027-03-27T20:00+01:00[Europe/Berlin]");
    PhoneClock clock = new PhoneClock(before, 24, false, ENGLISH);
    PhoneDough night =
        new PhoneDough(
            "night",
            before,
            loaf.forecast(),
            loaf.jar(),
            loaf.asked(),
            loaf.rises(),
            loaf.loaf(),
            loaf.plan(),
            loaf.told(),
            List.of(),
            List.of());
    phone.open("x.html", PhonePage.of(night, ENGLISH).html(), before.toInstant());
    for (double hours : new double[] {0, 3.5, 3.97, 4.99, 5.01, 11.3}) {
      assertThat(phone.run("doughs[0].clock.at(" + hours + ")"))
          .isEqualTo(clock.at(OptionalDouble.of(hours)));
    }
    assertThat(phone.run("doughs[0].clock.at(6)")).isEqualTo("Sun 03:00");
    assertThat(clock.at(OptionalDouble.of(3.97))).isEqualTo("Sun 00:00"); // 23:58 in truth
  }

  @Test
  void aReadingMovesTheAnswerAndStaysAfterAReload() {
    open(loaf);
    String before = phone.text(".answer");
    phone.read("30", "16:30");
    assertThat(phone.text(".message")).isEmpty();
    String after = phone.text(".answer");
    assertThat(after).startsWith("Shape about").isNotEqualTo(before);
    assertThat(phone.text(".look")).contains("ahead");
    assertThat(phone.texts(".over .cross")).hasSize(2);
    phone.click("[data-step] input");
    open(loaf);
    assertThat(phone.text(".answer")).isEqualTo(after);
    assertThat(phone.texts(".readings li span")).containsExactly("16:30 · 30%");
    assertThat(phone.run("document.querySelector('[data-step] input').checked")).isEqualTo("true");
    phone.click(".readings button");
    assertThat(phone.text(".answer")).isEqualTo(before);
    assertThat(phone.text("td.likely"))
        .isEqualTo(
            new PhoneClock(MIXED, 24, false, ENGLISH)
                .at(loaf.loaf().orElseThrow().shape().hours().likely()));
  }

  /** As the command for a dough in hand does: the next rise that was not read yet. */
  @Test
  void aRiseThatWasReadGivesWayToTheNextOne() {
    open(PhoneDough.of("Saturday", MIXED, loaf.forecast(), Rise.ofPercent(50)));
    String first = phone.text(".answer");
    assertThat(first).startsWith("Risen 50% about");
    phone.read("55", "16:30");
    assertThat(phone.text(".answer")).startsWith("Risen 75% about");
    assertThat(phone.text(".look")).contains("ahead");
    phone.read("80", "16:50");
    assertThat(phone.text(".answer")).startsWith("Risen 100% about");
    phone.click(".readings li:last-child button");
    assertThat(phone.text(".answer")).startsWith("Risen 75% about");
    phone.click(".readings button");
    assertThat(phone.text(".answer")).isEqualTo(first);
    phone.read("120", "16:30");
    assertThat(phone.text(".answer")).startsWith("Risen 50% about"); // none of its rises is ahead
  }

  /**
   * The program told of the next rise; without the reading the page tells of half as much again.
   */
  @Test
  void aRiseWhoseReadingIsTakenAwayIsAwaitedAgain() {
    RiseForecast forecast = loaf.forecast();
    PhoneDough.Told told =
        new PhoneDough.Told(
            List.of(Reading.ofRise(2.5, Rise.ofPercent(55))),
            forecast,
            Optional.empty(),
            forecast.hoursToRise(Rise.ofPercent(75)).likely(),
            OptionalDouble.empty());
    open(PhoneDough.of("Saturday", MIXED, forecast, Rise.ofPercent(75)).with(told));
    assertThat(phone.text(".answer")).startsWith("Risen 75% about");
    phone.click(".readings button");
    assertThat(phone.text(".answer"))
        .startsWith(
            "Risen 50% about "
                + new PhoneClock(MIXED, 24, false, ENGLISH)
                    .at(forecast.hoursToRise(Rise.ofPercent(50)).likely()));
  }

  @Test
  void twoDoughsOfOneSiteDoNotMix() {
    open(loaf);
    phone.read("30", "16:30");
    phone.open("y.html", PhonePage.of(named("Sunday"), ENGLISH).html(), AT_FIVE);
    assertThat(phone.texts(".readings li")).isEmpty();
    open(loaf);
    assertThat(phone.texts(".readings li")).hasSize(1);
  }

  /** Each of a class keeps its own readings, on one page, too. */
  @Test
  void aClassOfTwelveIsSmallAndItsDoughsDoNotMix() {
    List<String> names =
        List.of(
            "Anna 1", "Anna 2", HOSTILE.get(0), "\"><b", "e", "f", "g", "h", "i", "j", "k", "l");
    BrowserKitchen kitchen = new BrowserKitchen(MIXED, 128);
    String large = PhonePage.ofDoughs("Saturday", kitchen.doughs(names), ENGLISH).html();
    assertThat(large.getBytes(StandardCharsets.UTF_8)).hasSizeLessThan(1_500_000);
    String html =
        PhonePage.ofDoughs("Saturday", kitchen.doughs(names.subList(0, 3)), ENGLISH).html();
    phone.open("c.html", html, AT_FIVE);
    assertThat(phone.texts("h2.name")).isEqualTo(names.subList(0, 3));
    phone.read("30", "16:30"); // of the first
    phone.open("c.html", html, AT_FIVE);
    assertThat(phone.texts("#d1 .readings li")).hasSize(1);
    assertThat(phone.texts("#d2 .readings li, #d3 .readings li")).isEmpty();
    assertThat(phone.texts("script")).hasSize(1);
  }

  @Test
  void saysWhenNoHourSuitsAnyMore() {
    open(loaf);
    phone.run("doughs[0].events[0].members.fill(Infinity)");
    phone.read("30", "16:30");
    assertThat(phone.text(".answer")).isEqualTo(ENGLISH.say("phone.lesson.noShape"));
  }

  /** Copying that a browser refuses leaves the text selected and says so; so does sharing. */
  @Test
  void saysWhenTheTextCannotBeCopied() {
    open(loaf);
    phone.run(
        "navigator.clipboard = undefined; document.execCommand = () => false;"
            + " document.querySelector('.copy').click()");
    assertThat(phone.text(".kept")).isEqualTo(ENGLISH.say("phone.notCopied"));
    assertThat(phone.run("document.activeElement.className")).isEqualTo("text");
    phone.click(".download");
    assertThat(phone.text(".kept")).isEqualTo(ENGLISH.say("phone.saved"));
  }

  @Test
  void takesMillimetresAndTemperatures() {
    open(loaf);
    phone.choose(".unit", "mm");
    phone.read("65", "16:30");
    assertThat(phone.text(".message")).contains("just after mixing");
    phone.type(".start-height", "50");
    phone.read("65", "16:30");
    assertThat(phone.texts(".readings li span")).containsExactly("16:30 · 30%");
    phone.type(".degrees", "28,5");
    phone.read("", "16:45");
    assertThat(phone.text(".message"))
        .contains("28.5\u00a0°C", "25.0\u00a0°C", "ask the program again");
  }

  @Test
  void whatLeavesThePageIsWhatLearnReads() {
    open(loaf);
    phone.type(".degrees", "25.2");
    phone.read("30", "16:30");
    phone.read("42,5", "17:00");
    ReadingsDocument read =
        ReadingsDocument.read(
            phone.textArea().lines().iterator(), ReadingsDocument.Setting.of("page"));
    assertThat(read.refused().count()).isZero();
    assertThat(read.mixed()).contains(MIXED);
    assertThat(read.bake().formula().hydration()).isEqualTo(loaf.forecast().formula().hydration());
    assertThat(read.bake().readings())
        .containsExactly(
            Reading.ofRise(2.5, Rise.ofPercent(30)).withCelsius(25.2),
            Reading.ofRise(3, Rise.ofPercent(42.5)));
  }

  @Test
  void refusesWhatIsNoHeight() {
    open(loaf);
    for (String typed : List.of("", "much", "2000", "-70")) {
      phone.run("document.querySelector('.message').textContent = ''");
      phone.read(typed, "16:30");
      assertThat(phone.text(".message")).as(typed).contains("for example 35");
      assertThat(phone.texts(".readings li")).isEmpty();
    }
  }

  /** As the command says it: at this hour and this height wait so much, or shape now. */
  @Test
  void saysWhatToDoAtAHeightOfTheJar() {
    open(loaf);
    PhoneClock clock = new PhoneClock(MIXED, 24, false, ENGLISH);
    List<JarRule.AtHour> looks = loaf.loaf().orElseThrow().shape().rule().looks();
    assertThat(looks).isNotEmpty();
    List<String> said = phone.texts(".rule li");
    assertThat(said).hasSameSizeAs(looks);
    for (int i = 0; i < looks.size(); i++) {
      double now = looks.get(i).waits().get(0).risePercent();
      assertThat(said.get(i))
          .startsWith("At " + clock.at(looks.get(i).hours()))
          .contains(ENGLISH.percent(Math.rint(now), 0) + " or more: shape now")
          .contains("wait 30");
    }
  }

  @Test
  void doubtsAReadingAndSaysWhenItNoLongerFits() {
    open(loaf);
    phone.read("400", "16:30");
    assertThat(phone.text(".message")).contains("does not fit");
    phone.click(".readings button");
    assertThat(phone.text(".message")).isEmpty();
    phone.read("20", "15:00");
    phone.read("40", "16:00");
    phone.read("60", "16:30");
    phone.read("80", "17:00");
    assertThat(phone.text(".message")).contains("ask the program again");
  }

  /** A dough in hand; the program's answer is of other doughs than the members of the page. */
  private static PhoneDough.Told told() {
    RiseForecast cooler =
        RiseForecaster.standard()
            .withMembers(64)
            .forecast(
                DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(22)));
    return new PhoneDough.Told(
        List.of(Reading.ofRise(2.5, Rise.ofPercent(30))),
        cooler,
        Optional.of(ShapeForecaster.of(cooler, loaf.loaf().orElseThrow().proof()).forecast()),
        OptionalDouble.of(5),
        OptionalDouble.of(4.5));
  }

  /** Before and after another reading was there for a while. */
  @Test
  void saysWhatTheProgramSaidAsLongAsTheReadingsAreTheSame() {
    PhoneDough.Told told = told();
    PhoneClock clock = new PhoneClock(MIXED, 24, false, ENGLISH);
    double likely = told.shape().orElseThrow().hours().likely().orElseThrow();
    String rise =
        ENGLISH.percent(Math.rint(told.shape().orElseThrow().rise().likely().orElseThrow()), 0);
    open(loaf.with(told));
    assertThat(phone.texts(".readings li span")).containsExactly("16:30 · 30%");
    List<String> first = everyAnswer();
    assertThat(phone.text(".answer"))
        .startsWith("Shape about " + clock.at(OptionalDouble.of(likely)) + ", when")
        .contains(rise);
    assertThat(phone.text(".look"))
        .isEqualTo(
            ENGLISH.hours(likely - 5)
                + " behind what was expected. Look at 18:30: a reading then narrows it most.");
    assertThat(phone.text(".left")).isEqualTo("in " + ENGLISH.hours(likely - 3));
    assertThat(phone.texts(".over .band")).isEmpty();
    assertThat(phone.texts(".over .cross")).hasSize(2);
    phone.read("33", "16:45");
    assertThat(everyAnswer()).isNotEqualTo(first);
    assertThat(phone.text(".message")).contains("off the program");
    assertThat(phone.texts(".over .cross")).hasSize(4);
    phone.click(".readings li:last-child button");
    assertThat(everyAnswer()).isEqualTo(first);
    phone.click(".readings button");
    assertThat(phone.texts(".over .cross")).isEmpty();
    assertThat(phone.text(".answer")).isNotEqualTo(first.get(0));
  }

  private List<String> everyAnswer() {
    return phone.texts(".answer, .look, .left, .dots-left, .message, td, [data-step] .clock");
  }

  @Test
  void everyStepHasAnAlarm() {
    open(loaf);
    for (DomNode link : phone.page().querySelectorAll(".alarm")) {
      String href = ((DomElement) link).getAttribute("href");
      assertThat(href).startsWith("data:text/calendar;charset=utf-8,BEGIN%3AVCALENDAR");
      String text = URLDecoder.decode(href.replace("+", "%2B"), StandardCharsets.UTF_8);
      assertThat(text)
          .containsPattern("DTSTART:2027030[67]T[0-9]{6}Z\r\n")
          .endsWith("END:VCALENDAR");
      assertThat(text.lines().skip(1))
          .allSatisfy(
              line -> assertThat(line.getBytes(StandardCharsets.UTF_8)).hasSizeLessThan(76));
      assertThat(((DomElement) link).getAttribute("aria-label")).isNotBlank();
    }
  }

  @ParameterizedTest
  @EnumSource
  void everyLanguageOpens(Language language) {
    Words words = Words.in(language);
    String html = PhonePage.of(loaf, words).html();
    phone.open("x.html", html, AT_FIVE);
    assertThat(phone.attribute("html", "lang")).isEqualTo(language.tag());
    assertThat(phone.text(".left"))
        .isEqualTo(
            words.say(
                "phone.in",
                Map.of(
                    "hours",
                    words.hours(
                        loaf.loaf().orElseThrow().shape().hours().likely().orElseThrow() - 3))));
    phone.read("30", "16:30");
    assertThat(phone.texts(".readings li span")).containsExactly("16:30 · " + words.percent(30, 0));
    assertThat(phone.page().asNormalizedText()).doesNotContain("undefined", "NaN", "{");
  }

  private static final List<String> HOSTILE =
      List.of(
          "<script>alert(1)</script>&amp;\"'",
          "</script><script>x()</script>",
          "]]>",
          "<!-- -->",
          "<?x y?>",
          "</svg><a href='javascript:x'/>",
          "\" onload=\"x",
          "{{title}} {step}",
          "a\\,;b\u0000\u001b[31m");

  /** All of them in one name: none can end where the next begins. */
  @Test
  void aNameStaysText() {
    String name = String.join(" | ", HOSTILE);
    open(named(name));
    String shown = name.replaceAll("[\u0000\u001b]", " ").strip();
    assertThat(phone.text("h1")).isEqualTo(shown);
    assertThat(phone.texts("script")).hasSize(1);
    assertThat(phone.page().querySelectorAll("iframe, object, embed, base, link")).isEmpty();
    phone.read("30", "16:30");
    assertThat(phone.texts(".readings li")).hasSize(1);
  }

  /** Nothing from outside, no script but the one whose sum the policy names. */
  @Test
  void thePolicyForbidsEverythingElse() {
    String html = page;
    open(loaf);
    assertThat(phone.attribute("meta[http-equiv]", "content"))
        .startsWith("default-src 'none'; script-src 'sha256-")
        .doesNotContain("unsafe");
    assertThat(html)
        .doesNotContain("eval(", "Function(", "innerHTML", "http://www.w3.org/1999/xhtml")
        .doesNotContainPattern("(?i)\\son[a-z]+\\s*=\\s*[\"']")
        .doesNotContainPattern("(?i)\\sstyle\\s*=")
        .doesNotContainPattern("(?i)(src|href)=\"(?!#)");
    assertThat(html.getBytes(StandardCharsets.UTF_8)).hasSizeLessThan(400_000);
  }

  @Test
  void everyFieldHasALabelAndEveryIdIsOne() {
    open(loaf);
    for (DomNode field : phone.page().querySelectorAll("input, select, textarea")) {
      assertThat(field.getParentNode().getNodeName()).isEqualTo("label");
      assertThat(field.getParentNode().getTextContent()).isNotBlank();
    }
    List<String> ids =
        phone.page().querySelectorAll("[id]").stream()
            .map(node -> ((DomElement) node).getId())
            .toList();
    assertThat(ids).doesNotHaveDuplicates();
    assertThat(phone.attribute(".answer", "role")).isEqualTo("status");
  }
}
