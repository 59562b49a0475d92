package doughtide.report.phone;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.document.ReadingsDocument;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingForecast;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.feeding.RefreshmentPlan;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.learning.JarError;
import doughtide.core.learning.Reading;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.nio.charset.StandardCharsets;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.OptionalDouble;
import org.htmlunit.html.DomElement;
import org.htmlunit.html.DomNode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The page of a fed starter in a browser without a screen. */
class PhoneStarterTest {

  private static final ZonedDateTime FED =
      ZonedDateTime.parse("2027-03-05T21:00+01:00[Europe/Berlin]");
  private static final Words ENGLISH = Words.in(Language.ENGLISH);

  private static RefreshmentPlan plan;
  private final PhoneBrowser phone = new PhoneBrowser();

  @BeforeAll
  static void feedTwice() {
    FeedingPlanner planner = FeedingPlanner.with(RiseForecaster.standard().withMembers(64));
    plan =
        planner.refresh(
            Feeding.of(new FeedRatio(1, 2, 2)),
            2,
            TemperatureTrace.steady(Temperature.ofCelsius(25)));
  }

  @AfterEach
  void close() {
    phone.close();
  }

  private static PhoneStarter starter(Words words) {
    return PhoneStarter.of(plan, plan.amounts(Mass.ofGrams(100)), FED, JarError.standard(), words);
  }

  /** Three hours after the second feed. */
  private void open(Words words) {
    PhoneStarter starter = starter(words);
    String html = PhonePage.of(starter, words).html();
    phone.open("s.html", html, starter.fedAt().plusHours(3).toInstant());
  }

  @Test
  void tellsWhenItIsRipeAndWhenEachFeedIs() {
    open(ENGLISH);
    PhoneStarter starter = starter(ENGLISH);
    FeedingForecast last = plan.last().forecast();
    PhoneClock clock = new PhoneClock(starter.fedAt(), 24, false, ENGLISH);
    assertThat(phone.text(".answer"))
        .startsWith("Plan to use it about " + clock.at(last.readyHours()))
        .contains("begins to fall about " + clock.at(last.falling().likely()));
    assertThat(phone.text(".left"))
        .isEqualTo("in " + ENGLISH.hours(last.readyHours().orElseThrow() - 3));
    assertThat(phone.texts("tr[data-event='falls'] td"))
        .containsExactly(
            clock.at(last.falling().early()),
            clock.at(last.falling().likely()),
            clock.at(last.falling().late()));
    assertThat(phone.texts(".steps li strong"))
        .containsExactly(
            "feed the starter", "feed the starter", "ripe", "use it", "begins to fall");
    assertThat(phone.texts(".steps .clock").get(0)).isEqualTo("Fri 21:00");
    assertThat(phone.texts(".steps .seen").get(1)).matches("1:2:2: \\d+\u00a0g \\+ \\d+.*");
    assertThat(phone.texts(".dots circle")).hasSize(20);
    assertThat(phone.requests()).isEqualTo(1);
  }

  /** A starter that stands higher than half of them then is ripe sooner. */
  @Test
  void aReadingMovesThePlan() {
    open(ENGLISH);
    double likely = plan.last().forecast().rise().likelyPercentAt(2.5);
    PhoneStarter starter = starter(ENGLISH);
    PhoneClock clock = new PhoneClock(starter.fedAt(), 24, false, ENGLISH);
    String before = phone.text(".answer");
    String use = phone.text("[data-event='ready'] .clock");
    String at = clock.at(OptionalDouble.of(2.5)).replaceAll(".* ", "");
    phone.read(String.valueOf(Math.round(likely * 1.3)), at);
    assertThat(phone.text(".message")).isEmpty();
    assertThat(phone.text(".answer")).startsWith("Plan to use it about").isNotEqualTo(before);
    assertThat(phone.text("[data-event='ready'] .clock")).isNotEqualTo(use);
    assertThat(phone.text(".look")).contains("ahead");
    assertThat(phone.texts(".over .cross")).hasSize(2);
    ReadingsDocument read =
        ReadingsDocument.read(
            phone.textArea().lines().iterator(), ReadingsDocument.Setting.of("page"));
    assertThat(read.refused().count()).isZero();
    assertThat(read.mixed().map(ZonedDateTime::toLocalDate))
        .contains(starter.fedAt().toLocalDate());
    assertThat(read.bake().readings()).hasSize(1);
    Reading reading = read.bake().readings().get(0);
    assertThat(reading.rise()).contains(Rise.ofPercent(Math.round(likely * 1.3)));
    phone.click(".readings button");
    assertThat(phone.text(".answer")).isEqualTo(before);
  }

  /** The cross of a reading lies where the chart's own axis has that height. */
  @Test
  void theChartHasItsHeightsInTimes() {
    open(ENGLISH);
    String[] frame =
        ((DomElement) phone.page().querySelector(".over")).getAttribute("data-frame").split(" ");
    assertThat(Double.parseDouble(frame[2])).isZero(); // one time the first height
    assertThat(Double.parseDouble(frame[3])).isGreaterThan(50);
  }

  @ParameterizedTest
  @EnumSource
  void everyLanguageTellsOfAStarterAlone(Language language) {
    Words words = Words.in(language);
    open(words);
    phone.read("30", "05:00");
    String text = phone.page().asNormalizedText();
    assertThat(text).doesNotContain("undefined", "NaN", "{");
    assertThat(phone.texts("li")).contains(words.say("caution.mould"));
    for (DomNode label : phone.page().querySelectorAll("label")) {
      assertThat(label.getTextContent()).isNotBlank();
    }
    assertThat(PhonePage.of(starter(words), words).html().getBytes(StandardCharsets.UTF_8))
        .hasSizeLessThan(400_000);
  }

  @Test
  void needsNothingToWeigh() {
    PhoneStarter starter = PhoneStarter.of(plan, List.of(), FED, JarError.standard(), ENGLISH);
    phone.open("s.html", PhonePage.of(starter, ENGLISH).html(), FED.toInstant());
    assertThat(phone.texts(".steps .seen").get(0)).isEqualTo("1:2:2");
  }
}
